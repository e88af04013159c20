import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { placeOf } from '../plant/plant-facts.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { settleOccurredAt } from '../platform/occurred-at.js';
import { Refusal } from '../platform/refusal.js';
import { BagMove } from './bag-move.entity.js';
import type { MoveBagForm } from './bag.form.js';
import { findBag, type BagRow } from './bulk-bags.js';
import { changeBagState } from './change-bag-state.js';

/**
 * A bag is put at another place of the store.
 * Refusals: `bag-not-in-store`, `bag-already-there`, `time-before-fill-end`; not found: bulk-bag, store-place.
 */
@Injectable()
export class MoveBag {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: MoveBagForm): Promise<{ id: string; number: string; placeId: string }> {
    return this.changes.run(asked, form, async (tx, change) => {
      const reason = form.reason ?? null;
      const { occurredAt, statedAt } = settleOccurredAt(form.movedAt ?? null, change.recordedAt, reason);
      const bag = await findBag(tx, asked.actor.siteId, form.bag);
      const place = await placeOf(tx, form.placeId);
      await move(tx, bag, place, occurredAt);
      const { personId } = asked.actor;
      const moved = { bagId: bag.id, placeId: place.id, movedAt: occurredAt, personId };
      await tx.insert(BagMove, { id: this.ids.next(), ...moved, voidedBy: null });
      return {
        answer: { id: bag.id, number: bag.number, placeId: place.id },
        entry: {
          action: 'move-bag',
          subject: { kind: 'bulk-bag', id: bag.id },
          touches: [{ kind: 'store-place', id: place.id }],
          before: { placeId: bag.placeId },
          after: { placeId: place.id },
          reason,
          occurredAt,
          statedAt,
        },
      };
    });
  }
}

async function move(tx: Tx, bag: BagRow, place: { id: string; code: string }, at: string): Promise<void> {
  if (bag.filledAt !== null && at < bag.filledAt) {
    throw new Refusal('time-before-fill-end', { bag: bag.number, filledAt: bag.filledAt, weighedAt: at });
  }
  if (bag.placeId === place.id) throw new Refusal('bag-already-there', { bag: bag.number, place: place.code });
  const to = { status: bag.status, remainingGrams: bag.remainingGrams, placeId: place.id, at };
  const isInStore = bag.status === 'full' || bag.status === 'opened';
  const expected = { status: [bag.status], remainingGrams: bag.remainingGrams };
  const isMoved = isInStore && (await changeBagState(tx, bag.id, expected, to));
  if (!isMoved) throw new Refusal('bag-not-in-store', { bag: bag.number, status: bag.status });
}
