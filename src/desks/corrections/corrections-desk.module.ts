import { Module } from '@nestjs/common';
import { DryingModule } from '../../drying/drying.module.js';
import { HopperModule } from '../../hopper/hopper.module.js';
import { PackingModule } from '../../packing/packing.module.js';
import { PlantModule } from '../../plant/plant.module.js';
import { TracingModule } from '../../tracing/tracing.module.js';
import { CodeCorrectionController } from './code-correction.controller.js';
import { CoderClockController } from './coder-clock.controller.js';
import './coder-clock.sentences.js';
import './coder-clock.sentences.es.js';
import './corrections.sentences.js';
import './corrections.sentences.es.js';
import { EmptyCorrectionController } from './empty-correction.controller.js';
import { RemovalCorrectionController } from './removal-correction.controller.js';
import { RunCorrectionController } from './run-correction.controller.js';
import { TipCorrectionController } from './tip-correction.controller.js';
import { WeighingCorrectionController } from './weighing-correction.controller.js';

/** What was recorded wrongly is put right, after what that changes was looked at. */
@Module({
  imports: [PlantModule, DryingModule, HopperModule, PackingModule, TracingModule],
  controllers: [
    TipCorrectionController,
    RunCorrectionController,
    CodeCorrectionController,
    CoderClockController,
    RemovalCorrectionController,
    WeighingCorrectionController,
    EmptyCorrectionController,
  ],
})
export class CorrectionsDeskModule {}
