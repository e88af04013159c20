import { Module } from '@nestjs/common';
import { FillWeightModule } from '../../fill-weight/fill-weight.module.js';
import { TracingModule } from '../../tracing/tracing.module.js';
import { HandSampleController } from './hand-sample.controller.js';
import './hand-samples.sentences.js';
import './hand-samples.sentences.es.js';
import { SampleCorrectionController } from './sample-correction.controller.js';
import { WeighingSetUpController } from './weighing-set-up.controller.js';

/** Packs that are weighed by hand, and how weighing is planned and watched. */
@Module({
  imports: [FillWeightModule, TracingModule],
  controllers: [HandSampleController, SampleCorrectionController, WeighingSetUpController],
})
export class HandSamplesDeskModule {}
