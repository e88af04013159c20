import { Body, Controller, Get, Inject, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../journal/entry-draft.js';
import { May, type Actor } from '../platform/actor.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { Acting, Asking } from '../platform/web/request.js';
import { ChooseFlowModel } from './choose-flow-model.js';
import { ChooseFlowModelForm, RecordTrialForm, WithdrawFlowFactForm } from './flow-model.form.js';
import { readFlowView, type FlowView } from './flow-view.js';
import { RecordTrial, type TrialAnswer } from './record-trial.js';
import { trialOf, type FittedTrial } from './tracer-trials.js';
import { WithdrawFlowModel, WithdrawTrial } from './withdraw-flow-fact.js';

const id = '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10';
const validFrom = '2026-03-12T06:00:00.000Z';

@ApiTags('hoppers')
@Controller('api')
export class FlowModelApi {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly recordTrial: RecordTrial,
    private readonly withdrawTrial: WithdrawTrial,
    private readonly chooseModel: ChooseFlowModel,
    private readonly withdrawModel: WithdrawFlowModel,
  ) {}

  @Get('hoppers/:id/flow')
  @May('read')
  @ApiOperation({ summary: 'How a hopper is taken to flow, since when, and the tracer trials made on it' })
  @ApiOkResponse({ schema: { example: { hopper: { id, code: 'H1' }, models: [], trials: [] } } })
  flow(@Acting() actor: Actor, @Param('id', ParseUUIDPipe) hopperId: string): Promise<FlowView> {
    return readFlowView(this.reader, actor.siteId, hopperId);
  }

  @Get('tracer-trials/:id')
  @May('read')
  @ApiOperation({ summary: 'One tracer trial with its samples and what they say of the hopper' })
  trial(@Acting() actor: Actor, @Param('id', ParseUUIDPipe) trialId: string): Promise<FittedTrial> {
    return trialOf(this.reader, actor.siteId, trialId);
  }

  @Post('hoppers/:id/trials')
  @May('keep-flow-models')
  @ApiOperation({ summary: 'A tracer trial was made: two bags that differ in colour, and samples behind the hopper' })
  @ApiCreatedResponse({ schema: { example: { id, number: 1 } } })
  record(
    @Asking() asked: Asked,
    @Param('id', ParseUUIDPipe) hopperId: string,
    @Body() form: RecordTrialForm,
  ): Promise<TrialAnswer> {
    return this.recordTrial.execute(asked, hopperId, form);
  }

  @Post('tracer-trials/:id/withdrawal')
  @May('keep-flow-models')
  @ApiOperation({ summary: 'A trial was not made, or was written down wrongly' })
  @ApiCreatedResponse({ schema: { example: { id } } })
  takeTrialBack(
    @Asking() asked: Asked,
    @Param('id', ParseUUIDPipe) trialId: string,
    @Body() form: WithdrawFlowFactForm,
  ): Promise<{ readonly id: string }> {
    return this.withdrawTrial.execute(asked, trialId, form);
  }

  @Post('hoppers/:id/flow-models')
  @May('keep-flow-models')
  @ApiOperation({
    summary: 'From an instant on a hopper is taken to flow so; all but first in, first out needs a trial',
  })
  @ApiCreatedResponse({ schema: { example: { id, validFrom } } })
  choose(
    @Asking() asked: Asked,
    @Param('id', ParseUUIDPipe) hopperId: string,
    @Body() form: ChooseFlowModelForm,
  ): Promise<{ readonly id: string; readonly validFrom: string }> {
    return this.chooseModel.execute(asked, hopperId, form);
  }

  @Post('flow-models/:id/withdrawal')
  @May('keep-flow-models')
  @ApiOperation({ summary: 'A flow model was not chosen, or wrongly' })
  @ApiCreatedResponse({ schema: { example: { id } } })
  takeModelBack(
    @Asking() asked: Asked,
    @Param('id', ParseUUIDPipe) modelId: string,
    @Body() form: WithdrawFlowFactForm,
  ): Promise<{ readonly id: string }> {
    return this.withdrawModel.execute(asked, modelId, form);
  }
}
