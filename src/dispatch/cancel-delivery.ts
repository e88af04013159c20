import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { clearPoints } from '../open-points/raise-point.js';
import { Ids } from '../platform/ids.js';
import { Refusal } from '../platform/refusal.js';
import { DeliveryCancel } from './delivery-cancel.entity.js';
import { DeliveryState } from './delivery-state.entity.js';
import type { CancelDeliveryForm } from './delivery.form.js';
import { takeOpenDelivery } from './take-delivery.js';

/**
 * A delivery will not happen.
 * Refusals: `delivery-is-closed`, `delivery-has-left`, `delivery-is-cancelled`, `units-still-on`.
 */
@Injectable()
export class CancelDelivery {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, delivery: string, form: CancelDeliveryForm): Promise<{ readonly id: string }> {
    return this.changes.run(asked, { delivery, ...form }, async (tx, change) => {
      const { siteId, personId } = asked.actor;
      const taken = await takeOpenDelivery(tx, siteId, delivery);
      const { id: deliveryId, loadedCount, orderNumber } = taken;
      if (loadedCount > 0) throw new Refusal('units-still-on', { order: orderNumber, count: loadedCount });
      const id = this.ids.next();
      const { reason } = form;
      await tx.insert(DeliveryCancel, { id, deliveryId, reason, cancelledAt: change.recordedAt, voidedBy: null });
      await tx.update(DeliveryState, { deliveryId }, { status: 'cancelled' });
      const subject = { kind: 'delivery', id: deliveryId };
      const cause = 'vehicle-failed-check';
      const nextId = (): string => this.ids.next();
      await clearPoints(tx, { nextId, siteId, cause, subject, personId, at: change.recordedAt });
      return { answer: { id }, entry: { action: 'cancel-delivery', subject, after: { orderNumber }, reason } };
    });
  }
}
