import { Module } from '@nestjs/common';
import { HopperModule } from '../../hopper/hopper.module.js';
import { PackingModule } from '../../packing/packing.module.js';
import { TracingModule } from '../../tracing/tracing.module.js';
import './corrections.sentences.js';
import './corrections.sentences.es.js';
import { EmptyCorrectionController } from './empty-correction.controller.js';
import { RunCorrectionController } from './run-correction.controller.js';
import { TipCorrectionController } from './tip-correction.controller.js';

/** What was recorded wrongly is put right, after what that changes was looked at. */
@Module({
  imports: [HopperModule, PackingModule, TracingModule],
  controllers: [TipCorrectionController, RunCorrectionController, EmptyCorrectionController],
})
export class CorrectionsDeskModule {}
