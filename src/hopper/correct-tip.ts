import { leaveReachJob } from '../open-points/reach-job.js';
import { Injectable } from '@nestjs/common';
import { BagWeighing } from '../drying/bag-weighing.entity.js';
import { findBag, type BagRow } from '../drying/bulk-bags.js';
import { addWeighing } from '../drying/weigh-bag.js';
import type { Asked, Change } from '../journal/entry-draft.js';
import { refuseContradiction } from '../journal/void-fact.js';
import { RecordChange } from '../journal/record-change.js';
import type { HopperRow } from '../plant/plant-rows.js';
import type { Instant } from '../platform/clock.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { settleOccurredAt } from '../platform/occurred-at.js';
import { Refusal } from '../platform/refusal.js';
import { pointAtBroken } from './broken-rules.js';
import { nameOf } from './end-tip.js';
import type { PeriodRow } from './hopper-period-rows.js';
import { leaveLevelJob } from './level-job.js';
import { moveTip } from './move-tip.js';
import { putTip, refuseOffBeforeOpen, type OffDraft } from './put-tip.js';
import { laterOf } from './record-times.js';
import { takePeriodAt } from './take-period.js';
import type { CorrectTipForm } from './tip.form.js';
import { brokenByTipping, refuseUntippable } from './tipping-rules.js';
import { tipOf, tipToCorrect, type TipRow } from './tips.js';
import { voidTip } from './void-tip.js';

export interface CorrectTipAnswer {
  readonly correctedId: string;
  /** What stands in its place; null: it did not occur. */
  readonly id: string | null;
  readonly bagId: string | null;
  readonly openedAt: Instant | null;
}

/** A tip as it should have been. */
interface Corrected {
  readonly tip: TipRow;
  readonly bag: BagRow | null;
  readonly openedAt: Instant;
  readonly offAt: Instant | null;
  readonly hopper: HopperRow;
  readonly period: PeriodRow;
}

/**
 * A tip did not occur, or it was another bag, or at another time. The old record stays, void; the bag goes back to what
 * it was.
 * Refusals: `already-corrected`, `nothing-to-correct`, `bag-went-on`, `tip-has-no-bag`, `off-before-open`, `bag-already-tipped`,
 * `bag-loaded`, `bag-not-closed`, `before-first-period`, those of the time.
 */
@Injectable()
export class CorrectTip {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, tipId: string, form: CorrectTipForm): Promise<CorrectTipAnswer> {
    return this.changes.run(asked, { tipId, ...form }, async (tx, change) => {
      refuseContradiction(form);
      const { siteId } = asked.actor;
      const found = await tipToCorrect(tx, siteId, tipId);
      const right = await this.takeRight(tx, found, { form, change });
      const { tip } = right;
      const id = form.why === 'did-not-occur' ? null : await this.replace(tx, right, { form, change });
      if (id === null) await voidTip(tx, tip, change);
      for (const periodId of new Set([tip.periodId, right.period.id])) {
        await leaveLevelJob(tx, { id: this.ids.next(), periodId, at: change.recordedAt });
      }
      await leaveReachJob(tx, { id: this.ids.next(), siteId, holdId: null, at: change.recordedAt });
      const bagId = id === null ? null : (right.bag?.id ?? tip.bagId);
      const openedAt = id === null ? null : right.openedAt;
      const bagIds = new Set([tip.bagId, bagId].flatMap((one) => one ?? []));
      return {
        answer: { correctedId: tipId, id, bagId, openedAt },
        entry: {
          action: 'correct-tip',
          subject: { kind: 'tip', id: tipId },
          touches: [
            { kind: 'hopper', id: tip.hopperId },
            ...[...bagIds].map((one) => ({ kind: 'bulk-bag', id: one })),
            ...(id === null ? [] : [{ kind: 'tip', id }]),
          ],
          before: { bagId: tip.bagId, openedAt: tip.openedAt, offAt: tip.offAt, netGrams: tip.netGrams },
          after: { why: form.why, tip: id, bagId, openedAt, offAt: id === null ? null : right.offAt },
          reason: form.reason,
        },
      };
    });
  }

  private async takeRight(
    tx: Tx,
    found: TipRow,
    { form, change }: { readonly form: CorrectTipForm; readonly change: Change },
  ): Promise<Corrected> {
    const settled = (at: Instant): Instant => settleOccurredAt(at, change.recordedAt, form.reason).occurredAt;
    const openedAt = form.openedAt == null ? found.openedAt : settled(form.openedAt);
    const nextId = (): string => this.ids.next();
    const { siteId, hopperId } = found;
    const { hopper, period } = await takePeriodAt(tx, { siteId, hopperId, at: openedAt, nextId });
    const tip = await tipOf(tx, siteId, found.id);
    const oldOffAt = tip.offAt === null ? null : laterOf(tip.offAt, openedAt);
    const offAt = form.offAt == null ? oldOffAt : settled(form.offAt);
    const bag = form.bag == null ? null : await findBag(tx, siteId, form.bag);
    return { tip, bag: bag?.id === tip.bagId ? null : bag, openedAt, offAt, hopper, period };
  }

  /** Another bag: the wrong one goes back, the right one is tipped. Only another time: the bag stays as it is. */
  private async replace(
    tx: Tx,
    right: Corrected,
    { form, change }: { readonly form: CorrectTipForm; readonly change: Change },
  ): Promise<string> {
    const { tip, bag, openedAt, offAt } = right;
    const isOtherTime = openedAt !== tip.openedAt || offAt !== tip.offAt;
    if (bag === null && !isOtherTime) throw new Refusal('nothing-to-correct', { tip: nameOf(tip) });
    refuseOffBeforeOpen(openedAt, offAt);
    if (offAt !== null && tip.offAt === null) throw new Refusal('tip-hangs', { tip: nameOf(tip) });
    const isStated = form.openedAt != null;
    return bag === null
      ? this.moveInTime(tx, right, { change, isStated })
      : this.tipOther(tx, right, { bag, change, isStated });
  }

  private moveInTime(
    tx: Tx,
    { tip, openedAt, offAt, period }: Corrected,
    { change, isStated }: { readonly change: Change; readonly isStated: boolean },
  ): Promise<string> {
    const isLate = tip.isLate || isStated;
    const nextId = (): string => this.ids.next();
    return moveTip(tx, tip, { periodId: period.id, openedAt, offAt, isLate }, { change, nextId });
  }

  private async tipOther(
    tx: Tx,
    { tip, openedAt, offAt, hopper, period }: Corrected,
    other: { readonly bag: BagRow; readonly change: Change; readonly isStated: boolean },
  ): Promise<string> {
    const { bag, change } = other;
    if (tip.bagId === null) throw new Refusal('tip-has-no-bag', { tip: nameOf(tip) });
    await refuseUntippable(tx, bag);
    await voidTip(tx, tip, change);
    const id = this.ids.next();
    const off = offAt === null ? null : await this.sameRest(tx, { tip, bag, offAt });
    const { siteId, identifiedBy, secondPersonId, hasHappened } = tip;
    await putTip(tx, {
      ...{ id, siteId, periodId: period.id, hopperId: hopper.id, bag, openedAt, identifiedBy, secondPersonId, off },
      ...{ hasHappened, isLate: tip.isLate || other.isStated, recordedAt: change.recordedAt },
    });
    const broken = await brokenByTipping(tx, bag, { hopper, at: openedAt });
    const subject = { kind: 'bulk-bag', id: bag.id };
    await pointAtBroken(tx, broken, { nextId: () => this.ids.next(), siteId, subject, at: change.recordedAt });
    return id;
  }

  /** What was weighed back was the right bag all along. */
  private async sameRest(
    tx: Tx,
    { tip, bag, offAt }: { readonly tip: TipRow; readonly bag: BagRow; readonly offAt: Instant },
  ): Promise<OffDraft> {
    const id = this.ids.next();
    const old = tip.weighingId === null ? null : await tx.findOne(BagWeighing, { id: tip.weighingId });
    if (old === null) return { id, offAt, restGrams: 0, weighingId: null, placeId: null };
    const weighingId = this.ids.next();
    const { occasion, grossGrams, tareGrams, isPresetTare, scaleId, weighedAt, personId } = old;
    const read = { occasion, grossGrams, tareGrams, isPresetTare, scaleId, weighedAt, personId };
    const { netGrams } = await addWeighing(tx, { ...read, id: weighingId, bagId: bag.id, hasHappened: true });
    return { id, offAt, restGrams: netGrams, weighingId, placeId: null };
  }
}
