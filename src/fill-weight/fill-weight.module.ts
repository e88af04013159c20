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
import './hand-plan/hand-plan.sentences.js';
import './hand-plan/hand-plan.sentences.es.js';
import './silence/silence.sentences.js';
import './silence/silence.sentences.es.js';
import './mqtt/mqtt.sentences.js';
import './mqtt/mqtt.sentences.es.js';
import { ReceiveWeigherCheck } from './checks/receive-weigher-check.js';
import { WeigherCheckApi } from './checks/weigher-check.api.js';
import './checks/weigher-check.sentences.js';
import './checks/weigher-check.sentences.es.js';
import { FillWeightsApi } from './fill-weights.api.js';
import { EndHandPlan } from './hand-plan/end-hand-plan.js';
import { HandPlanApi } from './hand-plan/hand-plan.api.js';
import { SetHandPlan } from './hand-plan/set-hand-plan.js';
import { WatchHandSamples } from './hand-plan/watch-hand-samples.js';
import { HandSampleApi } from './hand-sample.api.js';
import { CorrectTare } from './kept/correct-tare.js';
import { DropOldWeights } from './kept/drop-old-weights.js';
import { DropWeights } from './kept/drop-weights.js';
import { KeptWeightsApi } from './kept/kept-weights.api.js';
import { SealWeights } from './kept/seal-weights.js';
import { WithdrawTareCorrection } from './kept/withdraw-tare-correction.js';
import { LineFillApi } from './line-fill/line-fill.api.js';
import { LineFillController } from './line-fill/line-fill.controller.js';
import './line-fill/line-fill.sentences.js';
import './line-fill/line-fill.sentences.es.js';
import { FormatSaleApi } from './format-sales/format-sale.api.js';
import { FormatSalesController } from './format-sales/format-sales.controller.js';
import './format-sales/format-sales.sentences.js';
import './format-sales/format-sales.sentences.es.js';
import { SetFormatSale } from './format-sales/set-format-sale.js';
import { ChangeSetting } from './line-settings/change-setting.js';
import { CorrectSetting } from './line-settings/correct-setting.js';
import { LineSettingApi } from './line-settings/line-setting.api.js';
import { LineSettingsController } from './line-settings/line-settings.controller.js';
import './line-settings/line-settings.sentences.js';
import './line-settings/line-settings.sentences.es.js';
import { LookAtWeighing } from './look-at-weighing.js';
import { MessageDesk } from './mqtt/message-desk.js';
import { MessagePoints } from './mqtt/message-points.js';
import { MqttLine } from './mqtt/mqtt-line.js';
import { ReceiveCheckMessage } from './mqtt/receive-check-message.js';
import { ReceiveMessage } from './mqtt/receive-message.js';
import { InstallPackWeigher } from './install-pack-weigher.js';
import './set-up/pack-weighers.sentences.js';
import './set-up/pack-weighers.sentences.es.js';
import { WeigherActs } from './set-up/weigher-acts.js';
import { PackWeighersController } from './set-up/pack-weighers.controller.js';
import { PeopleModule } from '../people/people.module.js';
import { FilesController } from './files/files.controller.js';
import './files/files.sentences.js';
import './files/files.sentences.es.js';
import { SetFileLayout } from './files/set-file-layout.js';
import { StoreWeightFile } from './files/store-weight-file.js';
import { WeightFileApi } from './files/weight-file.api.js';
import { WeightFiles } from './files/weight-files.js';
import { BatchesInHand } from './incoming/batches-in-hand.js';
import { PackWeigherApi } from './pack-weigher.api.js';
import { ReceiveWeights } from './receive-weights.js';
import { RunWeightsApi } from './run-weights/run-weights.api.js';
import { RunSights } from './run-weights/run-sights.js';
import { IssueWeightReport } from './report/issue-weight-report.js';
import { WeightReportController } from './report/weight-report.controller.js';
import './report/weight-report.sentences.js';
import './report/weight-report.sentences.es.js';
import { RunController } from './run.controller.js';
import { SetSilence } from './silence/set-silence.js';
import { SilenceApi } from './silence/silence.api.js';
import { WatchSilences } from './silence/watch-silences.js';
import { SetWeigherWay } from './set-weigher-way.js';
import { WeighingFromStart } from './weighing-from-start.js';
import { WeighHandSample } from './weigh-hand-sample.js';
import { WithdrawPackWeigher } from './withdraw-pack-weigher.js';

const commands = [
  AddPackWeigher,
  ChangeSetting,
  CorrectHandSample,
  CorrectSetting,
  CorrectTare,
  DropOldWeights,
  DropWeights,
  IssueWeightReport,
  InstallPackWeigher,
  EndHandPlan,
  ReceiveWeights,
  ReceiveCheckMessage,
  ReceiveMessage,
  ReceiveWeigherCheck,
  SealWeights,
  SetHandPlan,
  SetSilence,
  SetFileLayout,
  SetFormatSale,
  SetWeigherWay,
  StoreWeightFile,
  WeighHandSample,
  WithdrawPackWeigher,
  WithdrawTareCorrection,
];

@Module({
  imports: [PeopleModule],
  controllers: [
    FilesController,
    WeightFileApi,
    FillWeightsApi,
    FormatSaleApi,
    FormatSalesController,
    HandPlanApi,
    HandSampleApi,
    KeptWeightsApi,
    LineFillApi,
    LineFillController,
    LineSettingApi,
    LineSettingsController,
    PackWeigherApi,
    PackWeighersController,
    RunController,
    RunWeightsApi,
    SilenceApi,
    WeigherCheckApi,
    WeightReportController,
  ],
  providers: [
    ...commands,
    LookAtWeighing,
    MessageDesk,
    MessagePoints,
    MqttLine,
    RunSights,
    WeigherActs,
    WatchHandSamples,
    WatchSilences,
    WeighingFromStart,
    BatchesInHand,
    WeightFiles,
  ],
  exports: [...commands, MqttLine],
})
export class FillWeightModule {}
