import { Injectable } from '@nestjs/common';
import { leaveReachJob } from '../open-points/reach-job.js';
import type { Asked, Change } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { refuseContradiction, voidFact } from '../journal/void-fact.js';
import { raisePoint } from '../open-points/raise-point.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { NotFound, Refusal } from '../platform/refusal.js';
import type { BagStatus } from './bag-status.js';
import { BagWeighing } from './bag-weighing.entity.js';
import { bagOf, type BagRow } from './bulk-bags.js';
import { changeBagState } from './change-bag-state.js';
import { addWeighing, pointAtWeighing } from './weigh-bag.js';
import type { CorrectWeighingForm } from './weighing.form.js';

/** What stands after a correction. */
export interface CorrectedWeighing {
  readonly bagId: string;
  /** The weighing in the place of the old one; null where none took place. */
  readonly weighingId: string | null;
  readonly netGrams: number | null;
  readonly status: BagStatus;
  readonly remainingGrams: number;
}

/**
 * A weighing did not take place, or something in it was wrong: it becomes void, and a right one takes its place. A
 * correction is recorded wherever the bag is by now; where sugar of it went on, a point is opened.
 * Refusals: `already-corrected`, `nothing-corrected`, `weigh-back-belongs-to-tip`, `bag-needs-its-weight`,
 * `time-before-fill-start`, `gross-below-tare`, `net-not-above-zero`, `bag-changed-meanwhile`; not found: bag-weighing, scale.
 */
@Injectable()
export class CorrectWeighing {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, weighingId: string, form: CorrectWeighingForm): Promise<CorrectedWeighing> {
    return this.changes.run(asked, { ...form, weighingId }, async (tx, change) => {
      refuseContradiction(form);
      const { old, bag } = await findWeighing(tx, asked.actor.siteId, weighingId);
      await refuseThis(tx, bag, old, form);
      await voidFact(tx, BagWeighing, old.id, change);
      const newId = await this.replace(tx, bag, old, form);
      const after = await bagOf(tx, bag.id);
      const state = await settleState(tx, bag, after, change);
      await this.raisePoints(tx, { before: bag, after, change, personId: asked.actor.personId });
      await leaveReachJob(tx, { id: this.ids.next(), siteId: asked.actor.siteId, holdId: null, at: change.recordedAt });
      return {
        answer: { bagId: bag.id, weighingId: newId, netGrams: after.netGrams, ...state },
        entry: {
          action: 'correct-weighing',
          subject: { kind: 'bulk-bag', id: bag.id },
          touches: [{ kind: 'bag-weighing', id: old.id }],
          before: { grossGrams: old.grossGrams, tareGrams: old.tareGrams, netGrams: bag.netGrams },
          after: { why: form.why, weighingId: newId, netGrams: after.netGrams, ...state },
          reason: form.reason,
        },
      };
    });
  }

  private async replace(tx: Tx, bag: BagRow, old: BagWeighing, form: CorrectWeighingForm): Promise<string | null> {
    if (form.why === 'did-not-occur') return null;
    const id = this.ids.next();
    const weighedAt = form.weighedAt ?? old.weighedAt;
    if (weighedAt < bag.fillStartedAt) {
      throw new Refusal('time-before-fill-start', {
        bag: bag.number,
        startedAt: bag.fillStartedAt,
        filledAt: weighedAt,
      });
    }
    await addWeighing(tx, {
      id,
      bagId: bag.id,
      occasion: old.occasion,
      grossGrams: form.grossGrams ?? old.grossGrams,
      tareGrams: form.tareGrams ?? old.tareGrams,
      isPresetTare: form.isPresetTare ?? old.isPresetTare,
      scaleId: form.scaleId ?? old.scaleId,
      weighedAt,
      personId: old.personId,
      // The bag was filled like this: the record becomes right even where it is over its safe load.
      hasHappened: true,
    });
    return id;
  }

  private async raisePoints(
    tx: Tx,
    made: { before: BagRow; after: BagRow; change: Change; personId: string | null },
  ): Promise<void> {
    const { id, siteId, number, status } = made.before;
    const nextId = (): string => this.ids.next();
    const at = made.change.recordedAt;
    const isOverSafeLoad = (made.after.grossGrams ?? 0) > made.after.safeLoadGrams;
    const weighed = { netGrams: made.after.netGrams ?? 0, isDoubtful: made.after.isDoubtful, isOverSafeLoad };
    await pointAtWeighing(tx, {
      ...weighed,
      nextId,
      siteId,
      bagId: id,
      bagNumber: number,
      personId: made.personId,
      at,
    });
    const further = furtherCauses[status];
    if (further === undefined || made.before.netGrams === made.after.netGrams) return;
    const subject = { kind: 'bulk-bag', id };
    await raisePoint(tx, { id: nextId(), siteId, ...further, facts: { bag: number }, subject, at });
  }
}

/** Who must look, where the sugar has gone on by the old weight. */
const furtherCauses: Partial<Record<BagStatus, { cause: string; role: 'quality-officer' | 'dispatch-clerk' }>> = {
  opened: { cause: 'weight-corrected-after-tip', role: 'quality-officer' },
  hanging: { cause: 'weight-corrected-after-tip', role: 'quality-officer' },
  empty: { cause: 'weight-corrected-after-tip', role: 'quality-officer' },
  loaded: { cause: 'weight-corrected-after-loading', role: 'dispatch-clerk' },
  dispatched: { cause: 'weight-corrected-after-loading', role: 'dispatch-clerk' },
};

async function findWeighing(tx: Tx, siteId: string, weighingId: string): Promise<{ old: BagWeighing; bag: BagRow }> {
  const old = await tx.findOne(BagWeighing, { id: weighingId });
  const bag = old === null ? null : await bagOf(tx, old.bagId);
  if (old === null || bag?.siteId !== siteId) throw new NotFound('bag-weighing', weighingId);
  return { old, bag };
}

async function refuseThis(tx: Tx, bag: BagRow, old: BagWeighing, form: CorrectWeighingForm): Promise<void> {
  if (old.voidedBy !== null) throw new Refusal('already-corrected', { id: old.id });
  if (old.occasion === 'weighed-back') throw new Refusal('weigh-back-belongs-to-tip', { bag: bag.number });
  if (form.why === 'incorrect-data') {
    const { grossGrams, tareGrams, isPresetTare, scaleId, weighedAt } = form;
    const given = [grossGrams, tareGrams, isPresetTare, scaleId, weighedAt];
    if (given.every((field) => field === undefined || field === null)) throw new Refusal('nothing-corrected');
    return;
  }
  if (old.occasion !== 'filled') return;
  const others = await tx.find(BagWeighing, { bagId: bag.id, voidedBy: null });
  if (bag.status !== 'full' || others.length > 1) throw new Refusal('bag-needs-its-weight', { bag: bag.number });
}

/** What is left in a whole bag is its net; a bag that was never weighed at the end of its filling still hangs there. */
async function settleState(
  tx: Tx,
  before: BagRow,
  after: BagRow,
  change: Change,
): Promise<{ status: BagStatus; remainingGrams: number }> {
  const isWhole = before.remainingGrams === before.netGrams;
  const status: BagStatus = after.netGrams === null ? 'filling' : before.status;
  const remainingGrams = isWhole ? (after.netGrams ?? 0) : before.remainingGrams;
  const expected = { status: [before.status], remainingGrams: before.remainingGrams };
  const to = { status, remainingGrams, placeId: before.placeId, at: change.recordedAt };
  if (!(await changeBagState(tx, before.id, expected, to))) {
    throw new Refusal('bag-changed-meanwhile', { bag: before.number });
  }
  return { status, remainingGrams };
}
