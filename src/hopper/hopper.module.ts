import { Module } from '@nestjs/common';
import { ChangeoverApi } from './changeover.api.js';
import './changeover.sentences.js';
import './changeover.sentences.es.js';
import { ChooseFlowModel } from './choose-flow-model.js';
import { CloseReworkBin } from './close-rework-bin.js';
import { CorrectEmpty } from './correct-empty.js';
import { CorrectTip } from './correct-tip.js';
import { EndTip } from './end-tip.js';
import { FlowModelApi } from './flow-model.api.js';
import { FlowController } from './flow.controller.js';
import './flow.sentences.js';
import './flow.sentences.es.js';
import './hopper-pages.sentences.js';
import './hopper-pages.sentences.es.js';
import { HopperApi, HopperRecordsApi } from './hopper.api.js';
import { HopperController, HopperPeriodController } from './hopper.controller.js';
import './hopper.sentences.js';
import './hopper.sentences.es.js';
import './level-findings.sentences.js';
import './level-findings.sentences.es.js';
import { LevelWatch } from './level-watch.js';
import { PointAtLevel } from './point-at-level.js';
import { DoRung } from './do-rung.js';
import { DropChangeover } from './drop-changeover.js';
import { OpenChangeover } from './open-changeover.js';
import { RecordTrial } from './record-trial.js';
import { RefusalsMet } from './refusals-met.js';
import { ProveEmpty } from './prove-empty.js';
import { ReworkBinApi } from './rework-bin.api.js';
import { RunDown } from './run-down.js';
import { RunStartApi } from './run-start.api.js';
import { SeeLevel } from './see-level.js';
import { SettleCandidate } from './settle-candidate.js';
import { StartRun } from './start-run.js';
import { TipBag } from './tip-bag.js';
import { TipOneOfSeveral } from './tip-one-of-several.js';
import { TipReworkBin } from './tip-rework-bin.js';
import './tip-events.js';
import { TipApi, TipCorrectionApi } from './tip.api.js';
import { WithdrawFlowModel, WithdrawTrial } from './withdraw-flow-fact.js';

const commands = [
  StartRun,
  TipBag,
  EndTip,
  TipOneOfSeveral,
  SettleCandidate,
  CorrectTip,
  CorrectEmpty,
  SeeLevel,
  RunDown,
  ProveEmpty,
  CloseReworkBin,
  TipReworkBin,
  OpenChangeover,
  DoRung,
  DropChangeover,
  RecordTrial,
  WithdrawTrial,
  ChooseFlowModel,
  WithdrawFlowModel,
];

@Module({
  controllers: [
    TipApi,
    TipCorrectionApi,
    HopperApi,
    HopperRecordsApi,
    RunStartApi,
    ReworkBinApi,
    ChangeoverApi,
    FlowModelApi,
    FlowController,
    HopperController,
    HopperPeriodController,
  ],
  providers: [...commands, LevelWatch, PointAtLevel, RefusalsMet],
  exports: [...commands, LevelWatch, RefusalsMet],
})
export class HopperModule {}
