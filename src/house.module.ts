import { Module, type DynamicModule } from '@nestjs/common';
import { DiscoveryModule } from '@nestjs/core';
import { JournalModule } from './journal/journal.module.js';
import { PlatformModule, type Ground } from './platform/platform.module.js';
import { PlantModule } from './plant/plant.module.js';
import { PeopleModule } from './people/people.module.js';
import { OpenPointsModule } from './open-points/open-points.module.js';
import { DryingModule } from './drying/drying.module.js';
import { LaboratoryModule } from './laboratory/laboratory.module.js';
import { DispositionModule } from './disposition/disposition.module.js';
import { PackingModule } from './packing/packing.module.js';
import { LineChecksModule } from './line-checks/line-checks.module.js';
import { FillWeightModule } from './fill-weight/fill-weight.module.js';
import { HopperModule } from './hopper/hopper.module.js';
import { PalletsModule } from './pallets/pallets.module.js';
import { DispatchModule } from './dispatch/dispatch.module.js';
import { ReconciliationModule } from './reconciliation/reconciliation.module.js';
import { TracingModule } from './tracing/tracing.module.js';
import { ComplaintsModule } from './complaints/complaints.module.js';
import { RecallsModule } from './recalls/recalls.module.js';
import { DesksModule } from './desks/desks.module.js';
import { ComplaintsDeskModule } from './desks/complaints/complaints-desk.module.js';
import { RecallsDeskModule } from './desks/recalls/recalls-desk.module.js';
import { QualityDeskModule } from './desks/quality/quality-desk.module.js';

/** All rooms, in the order of the product's way. */
@Module({})
export class HouseModule {
  static on(ground: Ground, annexe?: DynamicModule): DynamicModule {
    return {
      module: HouseModule,
      imports: [
        DiscoveryModule,
        PlatformModule.on(ground),
        JournalModule,
        PlantModule,
        PeopleModule,
        OpenPointsModule,
        DryingModule,
        LaboratoryModule,
        DispositionModule,
        PackingModule,
        LineChecksModule,
        FillWeightModule,
        HopperModule,
        PalletsModule,
        DispatchModule,
        ReconciliationModule,
        TracingModule,
        ComplaintsModule,
        RecallsModule,
        DesksModule,
        ComplaintsDeskModule,
        RecallsDeskModule,
        QualityDeskModule,
        ...(annexe === undefined ? [] : [annexe]),
      ],
    };
  }
}
