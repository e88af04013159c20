import { Controller, Get, Inject, Param, ParseUUIDPipe, Post, Query } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import type { Asked } from '../../journal/entry-draft.js';
import { AddCheckPlan } from '../../line-checks/add-check-plan.js';
import { ChangeCheckPlan } from '../../line-checks/change-check-plan.js';
import { EndCheckPlanForm } from '../../line-checks/check-plan.form.js';
import { planAt, plansOfSite } from '../../line-checks/check-plans.js';
import { EndCheckPlan } from '../../line-checks/end-check-plan.js';
import { ofSite } from '../../plant/of-site.js';
import { lineOf } from '../../plant/plant-facts.js';
import { formatsOf, linesOf } from './lines-and-formats.js';
import { May } from '../../platform/actor.js';
import { Clock } from '../../platform/clock.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm, type TakenForScript } from '../../platform/web/sent-form.js';
import { AddPlanOnPageForm, ChangePlanOnPageForm, NewPlanQuery, newPlanOfPage, planOfPage } from './check-page.form.js';
import { changePlanPage, newPlanPage } from './check-plan.page.js';
import { checkPlansPage } from './check-plans.page.js';

/** What is checked at the lines: set up by whoever answers for it. */
@ApiExcludeController()
@Controller('set-up/checks')
export class CheckPlansController {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly clock: Clock,
    private readonly addPlan: AddCheckPlan,
    private readonly changePlan: ChangeCheckPlan,
    private readonly endPlan: EndCheckPlan,
  ) {}

  @Get()
  @May('plan-checks')
  async list(@Looking() viewer: Viewer): Promise<VNode> {
    const { siteId } = viewer.actor;
    const plans = await plansOfSite(this.reader, siteId, this.clock.now());
    return checkPlansPage({ viewer, plans, lines: await linesOf(this.reader, siteId) });
  }

  @Get('new')
  @May('plan-checks')
  fresh(@Looking() viewer: Viewer, @Query() query: NewPlanQuery): Promise<VNode> {
    return this.newPage(viewer, query, null);
  }

  @Post('new')
  @May('plan-checks')
  add(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Query() query: NewPlanQuery,
  ): Promise<VNode | TakenForScript | null> {
    return sent.take({
      form: AddPlanOnPageForm,
      timeZone: viewer.timeZone,
      act: (form) => this.addPlan.execute(asked, newPlanOfPage(form)),
      next: () => '/set-up/checks',
      says: () => ({ code: 'said-plan-set', facts: {} }),
      again: (trouble) => this.newPage(viewer, query, trouble),
    });
  }

  @Get(':planId')
  @May('plan-checks')
  one(@Looking() viewer: Viewer, @Param('planId', ParseUUIDPipe) planId: string): Promise<VNode> {
    return this.planPage(viewer, planId, null);
  }

  @Post(':planId')
  @May('plan-checks')
  change(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('planId', ParseUUIDPipe) planId: string,
  ): Promise<VNode | TakenForScript | null> {
    return sent.take({
      form: ChangePlanOnPageForm,
      timeZone: viewer.timeZone,
      act: (form) => this.changePlan.execute(asked, planId, planOfPage(form)),
      next: () => '/set-up/checks',
      says: () => ({ code: 'said-plan-set', facts: {} }),
      again: (trouble) => this.planPage(viewer, planId, trouble),
    });
  }

  @Post(':planId/end')
  @May('plan-checks')
  end(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('planId', ParseUUIDPipe) planId: string,
  ): Promise<VNode | TakenForScript | null> {
    return sent.take({
      form: EndCheckPlanForm,
      timeZone: viewer.timeZone,
      act: (form) => this.endPlan.execute(asked, planId, form),
      next: () => '/set-up/checks',
      says: () => ({ code: 'said-plan-ended', facts: {} }),
      again: (trouble) => this.planPage(viewer, planId, trouble),
    });
  }

  private async newPage(viewer: Viewer, query: NewPlanQuery, trouble: FormTrouble | null): Promise<VNode> {
    const line = ofSite(viewer.actor, 'packing-line', await lineOf(this.reader, query.line));
    const formats = await formatsOf(this.reader, viewer.actor.siteId);
    return newPlanPage({ viewer, line, kind: query.kind, formats, trouble });
  }

  private async planPage(viewer: Viewer, planId: string, trouble: FormTrouble | null): Promise<VNode> {
    const plan = await planAt(this.reader, viewer.actor.siteId, planId, this.clock.now());
    return changePlanPage({ viewer, plan, trouble });
  }
}
