import { Module } from '@nestjs/common';
import { AddPackWeigher } from './add-pack-weigher.js';
import { CorrectHandSample } from './correct-hand-sample.js';
import './fill-weight.sentences.js';
import './fill-weight.sentences.es.js';
import './setpoint.sentences.js';
import './setpoint.sentences.es.js';
import './weight-pictures.sentences.js';
import './weight-pictures.sentences.es.js';
import './run-weights/run-weights.sentences.js';
import './run-weights/run-weights.sentences.es.js';
import './verdict.sentences.js';
import './verdict.sentences.es.js';
import './incoming/incoming.sentences.js';
import './incoming/incoming.sentences.es.js';
import { FillWeightsApi, WeightsInHand } from './fill-weights.api.js';
import { HandSampleApi } from './hand-sample.api.js';
import { CorrectTare } from './kept/correct-tare.js';
import { DropWeights } from './kept/drop-weights.js';
import { KeptWeightsApi } from './kept/kept-weights.api.js';
import { SealWeights } from './kept/seal-weights.js';
import { WithdrawTareCorrection } from './kept/withdraw-tare-correction.js';
import { PackWeigherApi } from './pack-weigher.api.js';
import { ReceiveWeights } from './receive-weights.js';
import { RunWeightsApi } from './run-weights/run-weights.api.js';
import { RunController } from './run.controller.js';
import { WeighHandSample } from './weigh-hand-sample.js';
import { WithdrawPackWeigher } from './withdraw-pack-weigher.js';

const commands = [
  AddPackWeigher,
  CorrectHandSample,
  CorrectTare,
  DropWeights,
  ReceiveWeights,
  SealWeights,
  WeighHandSample,
  WithdrawPackWeigher,
  WithdrawTareCorrection,
];

@Module({
  controllers: [FillWeightsApi, HandSampleApi, KeptWeightsApi, PackWeigherApi, RunController, RunWeightsApi],
  providers: [...commands, WeightsInHand],
  exports: commands,
})
export class FillWeightModule {}
