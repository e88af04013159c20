import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { Ids } from '../platform/ids.js';
import { NotFound } from '../platform/refusal.js';
import { customerOf } from '../plant/plant-facts.js';
import { DeliveryLine } from './delivery-line.entity.js';
import { DeliveryPlan } from './delivery-plan.entity.js';
import { DeliveryState } from './delivery-state.entity.js';
import { Delivery } from './delivery.entity.js';
import type { PlanDeliveryForm } from './delivery.form.js';
import { refuseOddLines } from './order-lines.js';

export interface PlanAnswer {
  readonly id: string;
}

/**
 * What a customer ordered is to go on one vehicle.
 * Refusals: `line-named-twice`; not found: customer, pack-format, grade.
 */
@Injectable()
export class PlanDelivery {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: PlanDeliveryForm): Promise<PlanAnswer> {
    return this.changes.run(asked, form, async (tx, change) => {
      const { siteId } = asked.actor;
      const customer = await customerOf(tx, form.customerId);
      if (customer.siteId !== siteId) throw new NotFound('customer', form.customerId);
      await refuseOddLines(tx, siteId, form.lines);
      const id = this.ids.next();
      const { orderNumber, plannedOn } = form;
      const leavesAt = form.leavesAt ?? null;
      await tx.insert(Delivery, { id, siteId, customerId: customer.id, orderNumber, plannedOn, voidedBy: null });
      const planned = { deliveryId: id, orderNumber, plannedOn, leavesAt };
      await tx.insert(DeliveryPlan, { id: this.ids.next(), ...planned, voidedBy: null });
      const lines = form.lines.map((line, place) => ({
        id: this.ids.next(),
        deliveryId: id,
        lineNumber: place + 1,
        formatId: line.formatId ?? null,
        gradeId: line.gradeId ?? null,
        orderedCount: line.orderedCount,
        voidedBy: null,
      }));
      await tx.insert(DeliveryLine, lines);
      await tx.insert(DeliveryState, { deliveryId: id, status: 'planned', loadedCount: 0 });
      return {
        answer: { id },
        entry: {
          action: 'plan-delivery',
          subject: { kind: 'delivery', id },
          touches: [{ kind: 'customer', id: customer.id }],
          after: {
            orderNumber,
            plannedOn,
            leavesAt,
            lines: lines.map(({ formatId, gradeId, orderedCount }) => ({ formatId, gradeId, orderedCount })),
          },
          occurredAt: change.recordedAt,
        },
      };
    });
  }
}
