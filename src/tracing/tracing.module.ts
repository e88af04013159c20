import { Module } from '@nestjs/common';
import { DispositionModule } from '../disposition/disposition.module.js';
import { DryingModule } from '../drying/drying.module.js';
import { FillWeightModule } from '../fill-weight/fill-weight.module.js';
import { HopperModule } from '../hopper/hopper.module.js';
import { PackingModule } from '../packing/packing.module.js';
import { PalletsModule } from '../pallets/pallets.module.js';
import { PeopleModule } from '../people/people.module.js';
import { PlantModule } from '../plant/plant.module.js';
import './check-holds.sentences.js';
import './check-holds.sentences.es.js';
import { ClockPreviewApi } from './clock-preview.api.js';
import { CorrectionRipple } from './correction-ripple.js';
import { HoldController } from './hold.controller.js';
import { HoldReachApi } from './hold-reach.api.js';
import { HoldSinceLastGood } from './hold-since-last-good.js';
import { NarrowHold } from './narrow-hold.js';
import { NarrowingApi } from './narrowing.api.js';
import './narrowing.sentences.js';
import './narrowing.sentences.es.js';
import { PlaceHold } from './place-hold.js';
import { ThreadApi } from './thread.api.js';
import './quality.sentences.js';
import './quality.sentences.es.js';
import './tracing.sentences.js';
import './tracing.sentences.es.js';
import { ReachApi } from './reach.api.js';
import './reach.sentences.js';
import './reach.sentences.es.js';
import './ripple.sentences.js';
import './ripple.sentences.es.js';
import { RunPreviewApi } from './run-preview.api.js';
import { TarePreviewApi } from './tare-preview.api.js';
import { TipPreviewApi } from './tip-preview.api.js';
import { UnitPreviewApi } from './unit-preview.api.js';
import { WatchReach } from './watch-reach.js';

@Module({
  imports: [
    PlantModule,
    PeopleModule,
    DispositionModule,
    DryingModule,
    PackingModule,
    FillWeightModule,
    HopperModule,
    PalletsModule,
  ],
  controllers: [
    ThreadApi,
    HoldController,
    HoldReachApi,
    NarrowingApi,
    ClockPreviewApi,
    TarePreviewApi,
    TipPreviewApi,
    RunPreviewApi,
    UnitPreviewApi,
    ReachApi,
  ],
  providers: [PlaceHold, HoldSinceLastGood, NarrowHold, WatchReach, CorrectionRipple],
  exports: [PlaceHold, HoldSinceLastGood, NarrowHold, CorrectionRipple],
})
export class TracingModule {}
