import { Injectable } from '@nestjs/common';
import { isLateForReach, leaveReachJob } from '../open-points/reach-job.js';
import { bagOf } from '../drying/bulk-bags.js';
import { changeBagState } from '../drying/change-bag-state.js';
import { latenessReason } from '../drying/lateness-reason.js';
import { addWeighing, pointAtWeighing } from '../drying/weigh-bag.js';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { settleAsked } from '../journal/settle-asked.js';
import { placeOf } from '../plant/plant-facts.js';
import type { Instant } from '../platform/clock.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { BadForm, NotFound, Refusal } from '../platform/refusal.js';
import { leaveLevelJob } from './level-job.js';
import { offState, putOff, refuseOffBeforeOpen, type OffDraft } from './put-tip.js';
import { takeHopper } from './take-period.js';
import type { EndTipForm } from './tip.form.js';
import { tipOf, type TipRow } from './tips.js';

export interface EndTipAnswer {
  readonly tipId: string;
  readonly offAt: Instant;
  /** 0: the bag is empty. */
  readonly restGrams: number;
  /** What went into the hopper. */
  readonly pouredGrams: number;
  /** Weighed back on a scale that was overdue or had failed its check. */
  readonly isDoubtful: boolean;
}

/**
 * A bag is off: empty, or weighed back with what is left in it.
 * Refusals: `tip-is-off`, `off-before-open`, `rest-of-unknown-bag`, `rest-above-content`, those of a weighing and of the
 * time.
 */
@Injectable()
export class EndTip {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, tipId: string, form: EndTipForm): Promise<EndTipAnswer> {
    return this.changes.run(asked, { tipId, ...form }, async (tx, change) => {
      const { siteId } = asked.actor;
      const stated = { statedAt: form.offAt ?? null, reason: latenessReason(form), happened: form.happened };
      const settled = settleAsked(asked, stated, change.recordedAt);
      const { occurredAt, statedAt, reason, hasHappened } = settled;
      const { hopperId } = await tipOf(tx, siteId, tipId);
      await takeHopper(tx, siteId, hopperId);
      const tip = await tipOf(tx, siteId, tipId);
      if (tip.offAt !== null) throw new Refusal('tip-is-off', { bag: nameOf(tip), at: tip.offAt });
      refuseOffBeforeOpen(tip.openedAt, occurredAt);
      const weighed = await this.weighBack(tx, asked, { tip, form, offAt: occurredAt, hasHappened });
      const { off, isDoubtful } = weighed;
      await putOff(tx, tipId, off);
      await this.changeBag(tx, tip, { off, recordedAt: change.recordedAt });
      await leaveLevelJob(tx, { id: this.ids.next(), periodId: tip.periodId, at: change.recordedAt });
      if (isLateForReach(settled)) {
        await leaveReachJob(tx, { id: this.ids.next(), siteId, holdId: null, at: change.recordedAt });
      }
      const pouredGrams = Math.max(0, tip.netGrams - off.restGrams);
      const scale = form.scaleId == null ? [] : [{ kind: 'scale', id: form.scaleId }];
      return {
        answer: { tipId, offAt: occurredAt, restGrams: off.restGrams, pouredGrams, isDoubtful },
        entry: {
          action: 'end-tip',
          subject: { kind: 'tip', id: tipId },
          touches: [
            { kind: 'hopper', id: hopperId },
            ...(tip.bagId === null ? [] : [{ kind: 'bulk-bag', id: tip.bagId }]),
            ...scale,
          ],
          after: { offAt: occurredAt, restGrams: off.restGrams, weighingId: off.weighingId, pouredGrams, isDoubtful },
          reason,
          occurredAt,
          statedAt,
        },
      };
    });
  }

  private async weighBack(
    tx: Tx,
    { actor }: Asked,
    { tip, form, offAt, hasHappened }: WeighedBack,
  ): Promise<{ readonly off: OffDraft; readonly isDoubtful: boolean }> {
    const id = this.ids.next();
    const rest = restOf(form);
    if (rest === null) return { off: { id, offAt, restGrams: 0, weighingId: null, placeId: null }, isDoubtful: false };
    if (tip.bagId === null) throw new Refusal('rest-of-unknown-bag', { bag: nameOf(tip) });
    const { siteId, personId } = actor;
    const before = await bagOf(tx, tip.bagId);
    const placeId = form.placeId ?? null;
    if (placeId !== null && (await placeOf(tx, placeId)).siteId !== siteId) throw new NotFound('store-place', placeId);
    const weighingId = this.ids.next();
    const weighed = await addWeighing(tx, {
      ...{ id: weighingId, bagId: before.id, occasion: 'weighed-back', weighedAt: offAt, personId },
      ...{ ...rest, hasHappened },
    });
    // Both scales may err, by as much as the limits of the bag say.
    const mostGrams = tip.netGrams + 2 * (before.upperGrams - (before.netGrams ?? before.upperGrams));
    if (weighed.netGrams > mostGrams) {
      throw new Refusal('rest-above-content', {
        ...{ bag: before.number, restGrams: weighed.netGrams, netGrams: tip.netGrams },
      });
    }
    await pointAtWeighing(tx, {
      ...{ ...weighed, nextId: () => this.ids.next(), siteId, bagId: before.id, bagNumber: before.number },
      ...{ personId, at: offAt },
    });
    const { netGrams: restGrams, isDoubtful } = weighed;
    return { off: { id, offAt, restGrams, weighingId, placeId }, isDoubtful };
  }

  private async changeBag(
    tx: Tx,
    tip: TipRow,
    { off, recordedAt }: { readonly off: OffDraft; readonly recordedAt: Instant },
  ): Promise<void> {
    if (tip.bagId === null) return;
    const to = offState({ hopperId: tip.hopperId, recordedAt }, off);
    const isChanged = await changeBagState(tx, tip.bagId, { status: ['hanging'] }, to);
    if (!isChanged) throw new Refusal('bag-changed-meanwhile', { bag: nameOf(tip) });
  }
}

/** A bag that comes off, and what the form says of its rest. */
interface WeighedBack {
  readonly tip: TipRow;
  readonly form: EndTipForm;
  readonly offAt: Instant;
  readonly hasHappened: boolean;
}

/** What was weighed back; null where the bag is empty. */
function restOf(form: EndTipForm) {
  const { grossGrams = null, tareGrams = null, scaleId = null, isPresetTare = null } = form;
  if (grossGrams === null && tareGrams === null && scaleId === null) return null;
  const missing = Object.entries({ grossGrams, tareGrams, scaleId }).filter(([, given]) => given === null);
  if (missing.length > 0) throw new BadForm(missing.map(([field]) => ({ field, code: 'field-missing', facts: {} })));
  return {
    grossGrams: grossGrams ?? 0,
    tareGrams: tareGrams ?? 0,
    scaleId: scaleId ?? '',
    isPresetTare: isPresetTare ?? false,
  };
}

/** What to call what was tipped. */
export function nameOf(tip: Pick<TipRow, 'bagNumber' | 'binNumber'>): string {
  return tip.bagNumber ?? tip.binNumber ?? '?';
}
