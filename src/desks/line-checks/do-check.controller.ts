import { Controller, Get, Inject, Param, ParseUUIDPipe, Post, Query } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import type { Asked } from '../../journal/entry-draft.js';
import { CheckLine } from '../../line-checks/check-line.js';
import type { CheckPlanRow } from '../../line-checks/check-plan-rows.js';
import { planAt } from '../../line-checks/check-plans.js';
import { dueCheckOf, dueChecks } from '../../line-checks/due-checks.js';
import { checksOfLineSince } from '../../line-checks/line-checks.js';
import { openRunOfLine } from '../../packing/packing-runs.js';
import { intendedCodeOf } from '../../packing/printed-codes.js';
import { peopleOf } from '../../people/people.js';
import { ofSite } from '../../plant/of-site.js';
import { lineOf, shiftAt } from '../../plant/plant-facts.js';
import { May, MayBeQueued } from '../../platform/actor.js';
import { Clock } from '../../platform/clock.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { NotFound } from '../../platform/refusal.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm, type TakenForScript } from '../../platform/web/sent-form.js';
import { checkedBy } from './checked-by.js';
import { CheckOnPageForm, checkOfPage, DoCheckQuery, readingsOfPage } from './check-page.form.js';
import { doCheckPage } from './do-check.page.js';
import { lineChecksPage } from './line-checks.page.js';

/** The checks of a line: what is due, and making one. */
@ApiExcludeController()
@Controller('line/:lineId/checks')
export class DoCheckController {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly clock: Clock,
    private readonly checkLine: CheckLine,
  ) {}

  @Get()
  @May('read')
  async list(@Looking() viewer: Viewer, @Param('lineId', ParseUUIDPipe) lineId: string): Promise<VNode> {
    const now = this.clock.now();
    const line = ofSite(viewer.actor, 'packing-line', await lineOf(this.reader, lineId));
    const due = await dueChecks(this.reader, lineId, now);
    const { startsAt } = await shiftAt(this.reader, line.siteId, now);
    const done = await checksOfLineSince(this.reader, lineId, startsAt);
    const by = await checkedBy(this.reader, done);
    return lineChecksPage({ viewer, line, run: await openRunOfLine(this.reader, lineId), due, done, by });
  }

  @Get(':planId')
  @May('check-line')
  one(
    @Looking() viewer: Viewer,
    @Param('lineId', ParseUUIDPipe) lineId: string,
    @Param('planId', ParseUUIDPipe) planId: string,
    @Query() query: DoCheckQuery,
  ): Promise<VNode> {
    return this.page(viewer, { lineId, planId }, { bag: query.bag ?? null, trouble: null });
  }

  @Post(':planId')
  @May('check-line')
  @MayBeQueued()
  check(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('lineId', ParseUUIDPipe) lineId: string,
    @Param('planId', ParseUUIDPipe) planId: string,
  ): Promise<VNode | TakenForScript | null> {
    return sent.take({
      form: CheckOnPageForm,
      times: ['checkedAt'],
      timeZone: viewer.timeZone,
      act: async (form) => {
        const plan = await this.plan(viewer, { lineId, planId });
        // What was kept on a device has happened: it is judged as any other, whatever that page had said of it.
        const isSigned = plan.kind === 'weigher' && (asked.happening ?? null) === null;
        const check = isSigned ? readingsOfPage(plan, form) : checkOfPage(plan, form);
        return { plan, ...(await this.checkLine.execute(asked, planId, check)) };
      },
      next: ({ id, passed }) => (passed ? `/line/${lineId}/checks` : `/checks/${id}`),
      says: ({ plan, passed }) => {
        return { code: passed ? 'said-check-passed' : 'said-check-failed', facts: { station: plan.station } };
      },
      again: (trouble) => this.page(viewer, { lineId, planId }, { bag: null, trouble }),
    });
  }

  private async page(
    viewer: Viewer,
    at: { readonly lineId: string; readonly planId: string },
    shown: { readonly bag: string | null; readonly trouble: FormTrouble | null },
  ): Promise<VNode> {
    const now = this.clock.now();
    const plan = await this.plan(viewer, at);
    const due = await dueCheckOf(this.reader, plan, now);
    const run = plan.kind === 'printed-code' ? await openRunOfLine(this.reader, plan.lineId) : null;
    const code = run === null ? null : await intendedCodeOf(this.reader, run, now);
    return doCheckPage({ viewer, due, code, people: await this.others(viewer, plan), ...shown });
  }

  private async plan(viewer: Viewer, at: { lineId: string; planId: string }): Promise<CheckPlanRow> {
    const plan = await planAt(this.reader, viewer.actor.siteId, at.planId, this.clock.now());
    if (plan.lineId !== at.lineId) throw new NotFound('check-plan', at.planId);
    return plan;
  }

  /** Who may have seen it too; asked only where somebody has to. */
  private async others(viewer: Viewer, plan: CheckPlanRow): Promise<{ readonly id: string; readonly name: string }[]> {
    if (!plan.needsSecondPerson) return [];
    const people = await peopleOf(this.reader, viewer.actor.siteId, { before: null, limit: 200 });
    return people
      .filter(({ id, roles }) => id !== viewer.actor.personId && roles.length > 0)
      .map(({ id, name, code }) => ({ id, name: name ?? code }));
  }
}
