import { Injectable } from '@nestjs/common';
import { bagStandingsOf } from '../disposition/standings.js';
import { bagsOf } from '../drying/bulk-bags.js';
import { latenessReason } from '../drying/lateness-reason.js';
import type { Asked, Change } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { openRun } from '../packing/open-run.js';
import { formatOf, gradesOfFormat, hopperOfLine, lineOf } from '../plant/plant-facts.js';
import type { FormatRow, HopperRow, NamedRow } from '../plant/plant-rows.js';
import type { Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { settleOccurredAt } from '../platform/occurred-at.js';
import { NotFound, Refusal } from '../platform/refusal.js';
import { pointAtBroken, refuseBroken, type BrokenRule } from './broken-rules.js';
import { contentOf } from './hopper-content.js';
import { againstChangeover } from './changeover-rule.js';
import type { StartRunForm } from './hopper.form.js';
import { takePeriodAt } from './take-period.js';

export interface StartRunAnswer {
  readonly id: string;
  readonly number: string;
  readonly lineId: string;
  readonly formatId: string;
  readonly hopperId: string;
  readonly periodId: string;
  readonly startedAt: Instant;
  readonly broken: readonly string[];
}

interface Start {
  readonly line: NamedRow;
  readonly format: FormatRow;
  readonly hopper: HopperRow;
  readonly periodId: string;
  readonly startedAt: Instant;
}

/** How many bags a refusal names; the rest is a number. */
const bagsNamed = 5;

/**
 * A run of a format starts on a line. Nothing that the hopper may still hold may be of a grade that the format does not
 * take.
 * Refusals: `line-has-no-hopper`, `line-has-open-run`, `line-was-running`, `before-first-period`, those of the time;
 * unless it has happened: `hopper-holds-other-grade`, `changeover-not-finished`.
 */
@Injectable()
export class StartRun {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: StartRunForm): Promise<StartRunAnswer> {
    return this.changes.run(asked, form, async (tx, change) => {
      const reason = latenessReason(form);
      const { occurredAt, statedAt } = settleOccurredAt(form.startedAt ?? null, change.recordedAt, reason);
      const start = await this.takeStart(tx, asked, form, occurredAt);
      const answer = await this.start(tx, asked, { start, hasHappened: form.happened ?? false, change });
      return {
        answer,
        entry: {
          action: 'start-run',
          subject: { kind: 'packing-run', id: answer.id },
          touches: [
            { kind: 'packing-line', id: answer.lineId },
            { kind: 'hopper', id: answer.hopperId },
            { kind: 'hopper-period', id: answer.periodId },
          ],
          after: { ...answer },
          reason,
          occurredAt,
          statedAt,
        },
      };
    });
  }

  private async takeStart(tx: Tx, { actor }: Asked, form: StartRunForm, startedAt: Instant): Promise<Start> {
    const { siteId } = actor;
    const line = await lineOf(tx, form.lineId);
    if (line.siteId !== siteId) throw new NotFound('packing-line', form.lineId);
    const format = await formatOf(tx, form.formatId);
    if (format.siteId !== siteId) throw new NotFound('pack-format', form.formatId);
    const hopperId = await hopperOfLine(tx, line.id, startedAt);
    if (hopperId === null) throw new Refusal('line-has-no-hopper', { line: line.code });
    const moment = { siteId, hopperId, at: startedAt, nextId: () => this.ids.next() };
    const { hopper, period } = await takePeriodAt(tx, moment);
    return { line, format, hopper, periodId: period.id, startedAt };
  }

  private async start(
    tx: Tx,
    { actor }: Asked,
    { start, hasHappened, change }: { readonly start: Start; readonly hasHappened: boolean; readonly change: Change },
  ): Promise<StartRunAnswer> {
    const { siteId } = actor;
    const { line, format, hopper, periodId, startedAt } = start;
    const broken = [...(await againstChangeover(tx, line, format.id)), ...(await brokenByContent(tx, hopper, format))];
    refuseBroken(broken, hasHappened);
    const id = this.ids.next();
    const run = { id, siteId, lineId: line.id, formatId: format.id, startedAt, countId: this.ids.next() };
    const { number } = await openRun(tx, run);
    const subject = { kind: 'packing-run', id };
    await pointAtBroken(tx, broken, { nextId: () => this.ids.next(), siteId, subject, at: change.recordedAt });
    return {
      ...{ id, number, lineId: line.id, formatId: format.id, hopperId: hopper.id, periodId, startedAt },
      broken: broken.map(({ code }) => code),
    };
  }
}

async function brokenByContent(from: ReadFrom, hopper: HopperRow, format: FormatRow): Promise<readonly BrokenRule[]> {
  const { bags } = await contentOf(from, hopper.id);
  const bagIds = bags.map(({ bagId }) => bagId);
  const taken = await gradesOfFormat(from, format.id);
  const standings = await bagStandingsOf(from, bagIds);
  const others = bagIds.filter((bagId) => !taken.includes(standings.get(bagId)?.gradeId ?? ''));
  if (others.length === 0) return [];
  const named = (await bagsOf(from, others.slice(0, bagsNamed))).map(({ number }) => number).join(', ');
  const facts = { hopper: hopper.code, format: format.name, bagCount: others.length, bags: named };
  return [{ code: 'hopper-holds-other-grade', facts }];
}
