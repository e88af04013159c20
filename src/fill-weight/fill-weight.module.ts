import { Module } from '@nestjs/common';
import { CorrectHandSample } from './correct-hand-sample.js';
import './fill-weight.sentences.js';
import './fill-weight.sentences.es.js';
import { HandSampleApi } from './hand-sample.api.js';
import { RunController } from './run.controller.js';
import { WeighHandSample } from './weigh-hand-sample.js';

const commands = [CorrectHandSample, WeighHandSample];

@Module({ controllers: [HandSampleApi, RunController], providers: commands, exports: commands })
export class FillWeightModule {}
