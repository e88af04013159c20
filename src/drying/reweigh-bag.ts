import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { settleOccurredAt } from '../platform/occurred-at.js';
import { Refusal } from '../platform/refusal.js';
import { bagOf, findBag, type BagRow } from './bulk-bags.js';
import { changeBagState } from './change-bag-state.js';
import type { ClosedBag } from './close-bag.js';
import { latenessReason } from './lateness-reason.js';
import { addWeighing, pointAtWeighing } from './weigh-bag.js';
import type { ReweighBagForm } from './weighing.form.js';

/**
 * A full bag goes over a scale again: from now on its latest good weighing stands for its net.
 * Refusals: `bag-not-full`, `time-before-fill-end`, `gross-below-tare`, `net-not-above-zero`, `over-safe-load`;
 * not found: bulk-bag, scale.
 */
@Injectable()
export class ReweighBag {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: ReweighBagForm): Promise<ClosedBag> {
    return this.changes.run(asked, form, async (tx, change) => {
      const reason = latenessReason(form);
      const { occurredAt, statedAt } = settleOccurredAt(form.weighedAt ?? null, change.recordedAt, reason);
      const before = await findBag(tx, asked.actor.siteId, form.bag);
      refuseUnlessFull(before, occurredAt);
      const { personId } = asked.actor;
      const after = await this.weigh(tx, before, form, { weighedAt: occurredAt, personId });
      const { id, number, sscc, isDoubtful } = after;
      const { grossGrams, tareGrams, isPresetTare, scaleId } = form;
      return {
        answer: { id, number, sscc, netGrams: after.netGrams ?? 0, isDoubtful },
        entry: {
          action: 'reweigh-bag',
          subject: { kind: 'bulk-bag', id },
          touches: [{ kind: 'scale', id: scaleId }],
          before: { netGrams: before.netGrams },
          after: { grossGrams, tareGrams, isPresetTare, scaleId, netGrams: after.netGrams, isDoubtful },
          reason,
          occurredAt,
          statedAt,
        },
      };
    });
  }

  private async weigh(
    tx: Tx,
    before: BagRow,
    form: ReweighBagForm,
    when: { readonly weighedAt: string; readonly personId: string | null },
  ): Promise<BagRow> {
    const { grossGrams, tareGrams, isPresetTare, scaleId } = form;
    const weighed = await addWeighing(tx, {
      ...{ id: this.ids.next(), bagId: before.id, occasion: 'weighed-again', hasHappened: form.happened ?? false },
      ...{ grossGrams, tareGrams, isPresetTare, scaleId, ...when },
    });
    const after = await bagOf(tx, before.id);
    const to = { status: 'full', remainingGrams: after.netGrams ?? 0, placeId: before.placeId, at: when.weighedAt };
    const expected = { status: ['full'], remainingGrams: before.remainingGrams } as const;
    const isKept = await changeBagState(tx, before.id, expected, { ...to, status: 'full' });
    if (!isKept) throw new Refusal('bag-not-full', { bag: before.number, status: before.status });
    await pointAtWeighing(tx, {
      ...{ ...weighed, isDoubtful: after.isDoubtful, nextId: () => this.ids.next() },
      ...{ siteId: before.siteId, bagId: before.id, bagNumber: before.number },
      ...{ personId: when.personId, at: when.weighedAt },
    });
    return after;
  }
}

/** A part bag is weighed back with its tip, and an empty one has no net. */
function refuseUnlessFull(bag: BagRow, weighedAt: string): void {
  if (bag.status !== 'full') throw new Refusal('bag-not-full', { bag: bag.number, status: bag.status });
  if (bag.filledAt !== null && weighedAt < bag.filledAt) {
    throw new Refusal('time-before-fill-end', { bag: bag.number, filledAt: bag.filledAt, weighedAt });
  }
}
