import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { Ids } from '../platform/ids.js';
import { Refusal } from '../platform/refusal.js';
import { BlindCount } from './blind-count.entity.js';
import { blindCountsOf, changeCountOf, type BlindCounts } from './blind-counts.js';
import type { CountBlindForm } from './loading.form.js';
import { takeOpenDelivery } from './take-delivery.js';

/** What the counter is told: not what was scanned, unless two counts differed. */
export type CountAnswer = Pick<BlindCounts, 'agrees' | 'difference' | 'countsSince'>;

/**
 * The units on a vehicle are counted by walking round, without the list. A count that differs is recorded as well as one
 * that agrees.
 * Refusals: `delivery-is-closed`, `delivery-has-left`, `delivery-is-cancelled`, `nothing-loaded`.
 */
@Injectable()
export class CountBlind {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, delivery: string, form: CountBlindForm): Promise<CountAnswer> {
    return this.changes.run(asked, { delivery, ...form }, async (tx, change) => {
      const { unitCount } = form;
      const { id: deliveryId, loadedCount, orderNumber } = await takeOpenDelivery(tx, asked.actor.siteId, delivery);
      if (loadedCount === 0) throw new Refusal('nothing-loaded', { order: orderNumber });
      const id = this.ids.next();
      const changeCount = await changeCountOf(tx, deliveryId);
      const countedAt = change.recordedAt;
      await tx.insert(BlindCount, { id, deliveryId, unitCount, changeCount, countedAt, voidedBy: null });
      const { agrees, difference, countsSince } = await blindCountsOf(tx, deliveryId, loadedCount);
      return {
        answer: { agrees, difference, countsSince },
        entry: {
          action: 'count-blind',
          subject: { kind: 'delivery', id: deliveryId },
          after: { unitCount, agrees },
        },
      };
    });
  }
}
