import { Module } from '@nestjs/common';
import { DryingModule } from '../../drying/drying.module.js';
import { LaboratoryModule } from '../../laboratory/laboratory.module.js';
import { PlantModule } from '../../plant/plant.module.js';
import { TracingModule } from '../../tracing/tracing.module.js';
import { CloseHere } from './close-here.js';
import { DryerBagController } from './dryer-bag.controller.js';
import { DryerPages } from './dryer-pages.js';
import { DryerController } from './dryer.controller.js';
import './dryer.sentences.js';
import './dryer.sentences.es.js';
import { MovesController } from './moves.controller.js';
import { ReceiptsController } from './receipts.controller.js';
import { ScalesController } from './scales.controller.js';
import { OwnWeighingController } from './weighing.controller.js';

@Module({
  imports: [DryingModule, LaboratoryModule, PlantModule, TracingModule],
  controllers: [
    MovesController,
    ReceiptsController,
    ScalesController,
    OwnWeighingController,
    DryerController,
    DryerBagController,
  ],
  providers: [CloseHere, DryerPages],
})
export class DryerDeskModule {}
