import { Controller, Get, Inject, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import type { Asked } from '../journal/entry-draft.js';
import { namesOf } from '../people/people.js';
import { hopperOf } from '../plant/plant-facts.js';
import { May } from '../platform/actor.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import type { FormTrouble } from '../platform/web/form-trouble.js';
import { Asking, Looking, type Viewer } from '../platform/web/request.js';
import { Sent, type SentForm, type TakenForScript } from '../platform/web/sent-form.js';
import { ChooseFlowModel } from './choose-flow-model.js';
import { ChooseFlowModelForm, WithdrawFlowFactForm } from './flow-model.form.js';
import { modelOf } from './flow-models.js';
import { TrialOnPageForm, trialOfPage } from './flow-page.form.js';
import { flowPage, type FlowTrouble } from './flow.page.js';
import { namesInFlow, readFlowView } from './flow-view.js';
import { hopperOfSite } from './hopper-views.js';
import { newTrialPage } from './new-trial.page.js';
import { RecordTrial } from './record-trial.js';
import { trialOf } from './tracer-trials.js';
import { trialPage } from './trial.page.js';
import { WithdrawFlowModel, WithdrawTrial } from './withdraw-flow-fact.js';

type Answer = Promise<VNode | TakenForScript | null>;

/** How a hopper is taken to flow: the choice, and the trials that it rests on. */
@ApiExcludeController()
@Controller()
export class FlowController {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly recordTrial: RecordTrial,
    private readonly withdrawTrial: WithdrawTrial,
    private readonly chooseModel: ChooseFlowModel,
    private readonly withdrawModel: WithdrawFlowModel,
  ) {}

  @Get('hoppers/:id/flow')
  @May('read')
  flow(@Looking() viewer: Viewer, @Param('id', ParseUUIDPipe) hopperId: string): Promise<VNode> {
    return this.page(viewer, hopperId, null);
  }

  @Post('hoppers/:id/flow')
  @May('keep-flow-models')
  choose(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) hopperId: string,
  ): Answer {
    return sent.take({
      form: ChooseFlowModelForm,
      times: ['validFrom'],
      timeZone: viewer.timeZone,
      act: (form) => this.chooseModel.execute(asked, hopperId, form),
      next: () => `/hoppers/${hopperId}/flow`,
      says: () => ({ code: 'said-flow-chosen', facts: {} }),
      again: (form) => this.page(viewer, hopperId, { of: 'choose', form }),
    });
  }

  @Get('hoppers/:id/trials/new')
  @May('keep-flow-models')
  async fresh(@Looking() viewer: Viewer, @Param('id', ParseUUIDPipe) hopperId: string): Promise<VNode> {
    return this.newTrial(viewer, hopperId, null);
  }

  @Post('hoppers/:id/trials/new')
  @May('keep-flow-models')
  record(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) hopperId: string,
  ): Answer {
    return sent.take({
      form: TrialOnPageForm,
      times: ['madeAt'],
      timeZone: viewer.timeZone,
      act: (form) => this.recordTrial.execute(asked, hopperId, trialOfPage(form)),
      next: ({ id }) => `/tracer-trials/${id}`,
      says: ({ number }) => ({ code: 'said-trial-recorded', facts: { number } }),
      again: (trouble) => this.newTrial(viewer, hopperId, trouble),
    });
  }

  @Get('tracer-trials/:id')
  @May('read')
  trial(@Looking() viewer: Viewer, @Param('id', ParseUUIDPipe) trialId: string): Promise<VNode> {
    return this.trialPage(viewer, trialId, null);
  }

  @Post('tracer-trials/:id/withdrawal')
  @May('keep-flow-models')
  async takeTrialBack(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) trialId: string,
  ): Answer {
    const { trial } = await trialOf(this.reader, viewer.actor.siteId, trialId);
    return sent.take({
      form: WithdrawFlowFactForm,
      timeZone: viewer.timeZone,
      act: (form) => this.withdrawTrial.execute(asked, trialId, form),
      next: () => `/hoppers/${trial.hopperId}/flow`,
      says: () => ({ code: 'said-trial-withdrawn', facts: { number: trial.number } }),
      again: (trouble) => this.trialPage(viewer, trialId, trouble),
    });
  }

  @Post('flow-models/:id/withdrawal')
  @May('keep-flow-models')
  async takeModelBack(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) modelId: string,
  ): Answer {
    const { hopperId } = await modelOf(this.reader, modelId);
    return sent.take({
      form: WithdrawFlowFactForm,
      timeZone: viewer.timeZone,
      act: (form) => this.withdrawModel.execute(asked, modelId, form),
      next: () => `/hoppers/${hopperId}/flow`,
      says: () => ({ code: 'said-flow-withdrawn', facts: {} }),
      again: (form) => this.page(viewer, hopperId, { of: modelId, form }),
    });
  }

  private async page(viewer: Viewer, hopperId: string, trouble: FlowTrouble | null): Promise<VNode> {
    const view = await readFlowView(this.reader, viewer.actor.siteId, hopperId);
    return flowPage({ viewer, view, names: await namesInFlow(this.reader, view), trouble });
  }

  private async newTrial(viewer: Viewer, hopperId: string, trouble: FormTrouble | null): Promise<VNode> {
    return newTrialPage({ viewer, hopper: await hopperOfSite(this.reader, viewer.actor.siteId, hopperId), trouble });
  }

  private async trialPage(viewer: Viewer, trialId: string, trouble: FormTrouble | null): Promise<VNode> {
    const found = await trialOf(this.reader, viewer.actor.siteId, trialId);
    const { hopperId, personId } = found.trial;
    const names = await namesOf(this.reader, personId === null ? [] : [personId]);
    const { code } = await hopperOf(this.reader, hopperId);
    return trialPage({ viewer, hopperCode: code, found, by: names.get(personId ?? '') ?? '–', trouble });
  }
}
