import { leaveReachJob } from '../open-points/reach-job.js';
import { Injectable } from '@nestjs/common';
import { findBag } from '../drying/bulk-bags.js';
import { latenessReason } from '../drying/lateness-reason.js';
import type { Asked, Change } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { settleAsked, type SettledAsk } from '../journal/settle-asked.js';
import { personOf } from '../people/people.js';
import type { Instant } from '../platform/clock.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { pointAtAlreadyIn } from './already-in.js';
import { pointAtBroken, refuseBroken } from './broken-rules.js';
import { leaveLevelJob } from './level-job.js';
import { putTip, type OffDraft } from './put-tip.js';
import { takePeriodAt } from './take-period.js';
import type { TipBagForm } from './tip.form.js';
import { tipWitness } from './tip-witness.js';
import { brokenByTipping, refuseTippedSince, refuseUntippable } from './tipping-rules.js';

export interface TipAnswer {
  readonly id: string;
  readonly periodId: string;
  readonly bagId: string;
  readonly bag: string;
  readonly netGrams: number;
  readonly openedAt: Instant;
  /** Null: the bag hangs. */
  readonly offAt: Instant | null;
  /** Rules of the house that it broke; it was recorded because it has happened. */
  readonly broken: readonly string[];
}

/**
 * A bag's spout is opened over a hopper, and its sugar goes in: whole, unless the bag is weighed back when it comes off.
 * Refusals: `bag-not-closed`, `bag-already-tipped`, `bag-tipped-since`, `bag-loaded`, `off-before-open`,
 * `before-first-period`, those of the time; unless it has happened: `bag-rejected`, `bag-on-hold`, `grade-not-taken`, `bag-waiting`,
 * `bag-has-bad-result`, `too-much-at-risk`. Said to be in already: `no-refusal-met`.
 */
@Injectable()
export class TipBag {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: TipBagForm): Promise<TipAnswer> {
    return this.changes.run(asked, form, async (tx, change) => {
      const stated = { statedAt: form.openedAt ?? null, reason: latenessReason(form), happened: form.happened };
      const settled = settleAsked(asked, stated, change.recordedAt);
      const answer = await this.tip(tx, asked, form, { settled, change });
      const { occurredAt, statedAt, reason } = settled;
      return {
        answer,
        entry: {
          action: 'tip-bag',
          subject: { kind: 'bulk-bag', id: answer.bagId },
          touches: [
            { kind: 'hopper', id: form.hopperId },
            { kind: 'hopper-period', id: answer.periodId },
            { kind: 'tip', id: answer.id },
          ],
          after: {
            ...{ tip: answer.id, netGrams: answer.netGrams, openedAt: occurredAt, offAt: answer.offAt },
            ...{ identifiedBy: form.identifiedBy ?? 'scan', secondPersonId: form.secondPersonId ?? null },
            broken: answer.broken,
          },
          reason,
          occurredAt,
          statedAt,
        },
      };
    });
  }

  private async tip(
    tx: Tx,
    asked: Asked,
    form: TipBagForm,
    { settled, change }: { readonly settled: SettledAsk; readonly change: Change },
  ): Promise<TipAnswer> {
    const { siteId } = asked.actor;
    const nextId = (): string => this.ids.next();
    const at = settled.occurredAt;
    const { hopper, period } = await takePeriodAt(tx, { siteId, hopperId: form.hopperId, at, nextId });
    const bag = await findBag(tx, siteId, form.bag);
    await refuseUntippable(tx, bag);
    await refuseTippedSince(tx, bag, at);
    const isAlreadyIn = form.alreadyIn ?? false;
    if (isAlreadyIn) await pointAtAlreadyIn(tx, asked.actor, { bag, hopper, nextId, now: change.recordedAt });
    const hasHappened = isAlreadyIn || settled.hasHappened;
    const { isLate } = settled;
    const broken = await brokenByTipping(tx, bag, { hopper, at });
    refuseBroken(broken, hasHappened);
    const secondPersonId = form.secondPersonId ?? null;
    if (secondPersonId !== null) await personOf(tx, siteId, secondPersonId);
    const id = nextId();
    const off = offOf(asked, form, { at, id: nextId(), change });
    await putTip(tx, {
      ...{ id, siteId, periodId: period.id, hopperId: hopper.id, bag, openedAt: at, secondPersonId, hasHappened, off },
      ...{ identifiedBy: form.identifiedBy ?? 'scan', isLate, recordedAt: change.recordedAt },
    });
    const subject = { kind: 'bulk-bag', id: bag.id };
    const facts = await tipWitness(tx, asked, { broken, hopper, at });
    await pointAtBroken(tx, broken, { nextId, siteId, subject, facts, at: change.recordedAt });
    await leaveLevelJob(tx, { id: nextId(), periodId: period.id, at: change.recordedAt });
    if (isLate || hasHappened) await leaveReachJob(tx, { id: nextId(), siteId, holdId: null, at: change.recordedAt });
    return {
      ...{ id, periodId: period.id, bagId: bag.id, bag: bag.number, netGrams: bag.remainingGrams, openedAt: at },
      ...{ offAt: off?.offAt ?? null, broken: broken.map(({ code }) => code) },
    };
  }
}

/** The end of a tip that is entered with its beginning: the bag is off and empty. */
export function offOf(
  asked: Asked,
  form: { readonly isOff?: boolean | null; readonly offAt?: Instant | null },
  { at, id, change }: { readonly at: Instant; readonly id: string; readonly change: Change },
): OffDraft | null {
  const offAt = form.offAt ?? (form.isOff === true ? at : null);
  if (offAt === null) return null;
  const { occurredAt } = settleAsked(asked, { statedAt: offAt, reason: 'with its tip' }, change.recordedAt);
  return { id, offAt: occurredAt, restGrams: 0, weighingId: null, placeId: null };
}
