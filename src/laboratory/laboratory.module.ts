import { Module } from '@nestjs/common';
import { CorrectResult } from './correct-result.js';
import { CorrectSample } from './correct-sample.js';
import './laboratory.sentences.js';
import './laboratory.sentences.es.js';
import { ReportResult } from './report-result.js';
import { SampleApi } from './sample.api.js';
import { SampleController } from './sample.controller.js';
import { TakeSample } from './take-sample.js';

const commands = [TakeSample, ReportResult, CorrectResult, CorrectSample];

@Module({ controllers: [SampleApi, SampleController], providers: commands, exports: commands })
export class LaboratoryModule {}
