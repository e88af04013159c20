import { leaveReachJob } from '../open-points/reach-job.js';
import { Injectable } from '@nestjs/common';
import { bagStandingsOf } from '../disposition/standings.js';
import { bagsOf } from '../drying/bulk-bags.js';
import { latenessReason } from '../drying/lateness-reason.js';
import type { Asked, Change } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { settleAsked, type SettledAsk } from '../journal/settle-asked.js';
import { gradeOf } from '../plant/plant-facts.js';
import type { Instant } from '../platform/clock.js';
import { isTakenKey } from '../platform/database/constraint-errors.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { Refusal } from '../platform/refusal.js';
import { parentsOfBins } from './addition-facts.js';
import { pointAtBroken, refuseBroken, type BrokenRule } from './broken-rules.js';
import { sourcesOfRanges } from './hopper-links.js';
import { leaveLevelJob } from './level-job.js';
import { putOff } from './put-tip.js';
import { findReworkBin, type ReworkBinRow } from './rework-bins.js';
import { takePeriodAt } from './take-period.js';
import { Tip } from './tip.entity.js';
import type { TipReworkBinForm } from './tip.form.js';
import { againstFormats, type AtHopper } from './tipping-rules.js';

export interface BinTipAnswer {
  readonly id: string;
  readonly periodId: string;
  readonly binId: string;
  readonly bin: string;
  readonly netGrams: number;
  readonly openedAt: Instant;
  readonly broken: readonly string[];
}

/**
 * A rework bin goes back into a hopper, at once and whole.
 * Refusals: `bin-already-tipped`, `bin-not-closed-then`, `before-first-period`, those of the time; unless it has
 * happened: `grade-not-taken`, `bag-on-hold`, `bag-rejected` for what it may hold.
 */
@Injectable()
export class TipReworkBin {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: TipReworkBinForm): Promise<BinTipAnswer> {
    return this.changes.run(asked, form, async (tx, change) => {
      const stated = { statedAt: form.openedAt ?? null, reason: latenessReason(form), happened: form.happened };
      const settled = settleAsked(asked, stated, change.recordedAt);
      const answer = await this.tip(tx, asked, form, { settled, change });
      const { occurredAt, statedAt, reason } = settled;
      return {
        answer,
        entry: {
          action: 'tip-rework-bin',
          subject: { kind: 'rework-bin', id: answer.binId },
          touches: [
            { kind: 'hopper', id: form.hopperId },
            { kind: 'hopper-period', id: answer.periodId },
            { kind: 'tip', id: answer.id },
          ],
          after: { tip: answer.id, netGrams: answer.netGrams, openedAt: occurredAt, broken: answer.broken },
          reason,
          occurredAt,
          statedAt,
        },
      };
    });
  }

  private async tip(
    tx: Tx,
    { actor }: Asked,
    form: TipReworkBinForm,
    { settled, change }: { readonly settled: SettledAsk; readonly change: Change },
  ): Promise<BinTipAnswer> {
    const { siteId } = actor;
    const nextId = (): string => this.ids.next();
    const at = settled.occurredAt;
    const { hopper, period } = await takePeriodAt(tx, { siteId, hopperId: form.hopperId, at, nextId });
    const bin = await findReworkBin(tx, siteId, form.bin);
    if (bin.tipId !== null) throw new Refusal('bin-already-tipped', { bin: bin.number, at: bin.openedAt });
    if (at < bin.closedAt) throw new Refusal('bin-not-closed-then', { bin: bin.number, closedAt: bin.closedAt });
    const hasHappened = form.happened ?? false;
    const broken = await brokenByBin(tx, bin, { hopper, at });
    refuseBroken(broken, hasHappened);
    const id = nextId();
    await putBinTip(tx, {
      ...{ id, siteId, periodId: period.id, source: 'rework-bin', bagId: null, binId: bin.id, netGrams: bin.netGrams },
      ...{ openedAt: at, identifiedBy: 'scan', secondPersonId: null, hasHappened, isLate: settled.lateMinutes > 0 },
      voidedBy: null,
    });
    await putOff(tx, id, { id: nextId(), offAt: at, restGrams: 0, weighingId: null, placeId: null });
    const subject = { kind: 'rework-bin', id: bin.id };
    await pointAtBroken(tx, broken, { nextId, siteId, subject, at: change.recordedAt });
    await leaveLevelJob(tx, { id: nextId(), periodId: period.id, at: change.recordedAt });
    await leaveReachJob(tx, { id: nextId(), siteId, holdId: null, at: change.recordedAt });
    return {
      ...{ id, periodId: period.id, binId: bin.id, bin: bin.number, netGrams: bin.netGrams, openedAt: at },
      broken: broken.map(({ code }) => code),
    };
  }
}

async function putBinTip(tx: Tx, tip: Tip): Promise<void> {
  try {
    await tx.insert(Tip, tip);
  } catch (error) {
    // The unique bin among good tips closes the race of two hoppers.
    if (isTakenKey(error)) throw new Refusal('bin-already-tipped', { bin: tip.binId, at: null });
    throw error;
  }
}

/** What is in a bin came from bags that may have been held or rejected since, or of a grade that does not go here. */
async function brokenByBin(from: ReadFrom, bin: ReworkBinRow, place: AtHopper): Promise<readonly BrokenRule[]> {
  const sources = await sourcesOfRanges(from, await parentsOfBins(from, [bin.id]));
  const bagIds = [...new Set(sources.map(({ bagId }) => bagId))];
  const numbers = new Map((await bagsOf(from, bagIds)).map(({ id, number }) => [id, number]));
  const broken: BrokenRule[] = [];
  for (const [bagId, standing] of await bagStandingsOf(from, bagIds)) {
    const bag = `${bin.number} (${numbers.get(bagId) ?? bagId})`;
    const [hold] = standing.holds;
    const { verdict, reason } = standing.decision;
    if (verdict === 'rejected') broken.push({ code: 'bag-rejected', facts: { bag, reason } });
    if (hold !== undefined)
      broken.push({ code: 'bag-on-hold', facts: { bag, hold: hold.number, reason: hold.reason } });
    const grade = await gradeOf(from, standing.gradeId);
    broken.push(...(await againstFormats(from, { what: bag, grade }, place)));
  }
  return broken;
}
