import { Controller, Get, Inject, Param, ParseUUIDPipe, Post, Query, Res } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { FastifyReply } from 'fastify';
import type { VNode } from 'preact';
import type { Asked } from '../../journal/entry-draft.js';
import { planAt } from '../../line-checks/check-plans.js';
import { CorrectLineCheck } from '../../line-checks/correct-line-check.js';
import { CorrectLineCheckForm, LineCheckQuery } from '../../line-checks/line-check.form.js';
import { lineCheckOf, lineChecksOf } from '../../line-checks/line-checks.js';
import { linesOf } from './lines-and-formats.js';
import { May } from '../../platform/actor.js';
import { Clock } from '../../platform/clock.js';
import { HeavyReads } from '../../platform/database/heavy-reads.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { countText } from '../../platform/web/figures-text.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Asking, Looking, type Said, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm, type TakenForScript } from '../../platform/web/sent-form.js';
import { HoldSinceLastGood, type HeldSince } from '../../tracing/hold-since-last-good.js';
import { suspectsOfCheck } from '../../tracing/suspects-of-check.js';
import { HoldTheseForm } from './check-page.form.js';
import { checkedBy } from './checked-by.js';
import { checkLogPage } from './check-log.page.js';
import { checkResultPage } from './check-result.page.js';
import { kilogramsOf, totalOf } from './place-table.js';

/** The checks that were made, each with what it makes suspect. */
@ApiExcludeController()
@Controller('checks')
export class CheckLogController {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly heavy: HeavyReads,
    private readonly clock: Clock,
    private readonly holdSince: HoldSinceLastGood,
    private readonly correctCheck: CorrectLineCheck,
  ) {}

  @Get()
  @May('read')
  async list(@Looking() viewer: Viewer, @Query() query: LineCheckQuery): Promise<VNode> {
    const { siteId } = viewer.actor;
    const limit = query.limit ?? 50;
    const checks = await lineChecksOf(this.reader, siteId, { ...query, limit });
    const by = await checkedBy(this.reader, checks);
    const older = checks.length === limit ? (checks.at(-1)?.id ?? null) : null;
    return checkLogPage({ viewer, query, checks, by, lines: await linesOf(this.reader, siteId), older });
  }

  /** Where an open point of a plan leads: to the check that failed, else to the plan's place on its line. */
  @Get('plans/:planId')
  @May('read')
  async plan(
    @Looking() viewer: Viewer,
    @Param('planId', ParseUUIDPipe) planId: string,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const { siteId } = viewer.actor;
    const plan = await planAt(this.reader, siteId, planId, this.clock.now());
    const [last] = await lineChecksOf(this.reader, siteId, { planId, limit: 1 });
    await reply.redirect(last?.passed === false ? `/checks/${last.id}` : `/line/${plan.lineId}/checks`, 303);
  }

  @Get(':checkId')
  @May('read')
  one(@Looking() viewer: Viewer, @Param('checkId', ParseUUIDPipe) checkId: string): Promise<VNode> {
    return this.page(viewer, checkId, null);
  }

  @Post(':checkId/hold')
  @May('place-holds')
  hold(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('checkId', ParseUUIDPipe) checkId: string,
  ): Promise<VNode | TakenForScript | null> {
    return sent.take({
      form: HoldTheseForm,
      timeZone: viewer.timeZone,
      act: () => this.holdSince.execute(asked, { check: checkId }),
      next: () => `/checks/${checkId}`,
      says: saidOfHold,
      again: (trouble) => this.page(viewer, checkId, trouble),
    });
  }

  @Post(':checkId/correction')
  @May('correct')
  correct(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('checkId', ParseUUIDPipe) checkId: string,
  ): Promise<VNode | TakenForScript | null> {
    return sent.take({
      form: CorrectLineCheckForm,
      timeZone: viewer.timeZone,
      act: (form) => this.correctCheck.execute(asked, checkId, form),
      next: () => `/checks/${checkId}`,
      says: () => ({ code: 'said-check-taken-back', facts: {} }),
      again: (trouble) => this.page(viewer, checkId, trouble),
    });
  }

  private async page(viewer: Viewer, checkId: string, trouble: FormTrouble | null): Promise<VNode> {
    const check = await lineCheckOf(this.reader, viewer.actor.siteId, checkId);
    const by = (await checkedBy(this.reader, [check])).get(checkId) ?? '';
    const isOfPacks = !check.passed && !check.isVoid && check.bagId === null;
    const suspects = isOfPacks
      ? await this.heavy.snapshot((from) => suspectsOfCheck(from, check, this.clock.now()))
      : null;
    return checkResultPage({ viewer, check, by, suspects, trouble });
  }
}

/** What was held: its numbers, and of packs how many and how heavy. */
function saidOfHold({ holds, places }: HeldSince): Said {
  const hold = holds.map(({ number }) => number).join(', ');
  if (places.length === 0) return { code: 'said-held', facts: { hold } };
  const { packCount, milligrams } = totalOf(places);
  return { code: 'said-held-packs', facts: { hold, packs: countText(packCount), kilograms: kilogramsOf(milligrams) } };
}
