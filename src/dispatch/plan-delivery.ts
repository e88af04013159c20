import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { BadForm, NotFound, Refusal, type FieldProblem } from '../platform/refusal.js';
import { customerOf, formatOf, gradeOf } from '../plant/plant-facts.js';
import { DeliveryLine } from './delivery-line.entity.js';
import { DeliveryState } from './delivery-state.entity.js';
import { Delivery } from './delivery.entity.js';
import type { OrderLineForm, PlanDeliveryForm } from './delivery.form.js';

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
      refuseOddLines(form.lines);
      for (const line of form.lines) await refuseUnknownGoods(tx, siteId, line);
      const id = this.ids.next();
      const { orderNumber, plannedOn } = form;
      await tx.insert(Delivery, { id, siteId, customerId: customer.id, orderNumber, plannedOn, voidedBy: null });
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
            lines: lines.map(({ formatId, gradeId, orderedCount }) => ({ formatId, gradeId, orderedCount })),
          },
          occurredAt: change.recordedAt,
        },
      };
    });
  }
}

/** Each line is of one kind, and no goods are named twice: what is loaded is counted against one line. */
function refuseOddLines(lines: readonly OrderLineForm[]): void {
  const problems = lines.flatMap(({ formatId = null, gradeId = null }, place): readonly FieldProblem[] =>
    (formatId === null) === (gradeId === null)
      ? [{ field: `lines.${place}.formatId`, code: 'format-or-grade', facts: {} }]
      : [],
  );
  if (problems.length > 0) throw new BadForm(problems);
  const goods = lines.map((line) => line.formatId ?? line.gradeId);
  const twice = goods.findIndex((id, place) => goods.indexOf(id) !== place);
  if (twice >= 0) throw new Refusal('line-named-twice', { line: twice + 1 });
}

async function refuseUnknownGoods(tx: Tx, siteId: string, line: OrderLineForm): Promise<void> {
  const [kind, id] = line.formatId
    ? (['pack-format', line.formatId] as const)
    : (['grade', line.gradeId ?? ''] as const);
  const goods = kind === 'pack-format' ? await formatOf(tx, id) : await gradeOf(tx, id);
  if (goods.siteId !== siteId) throw new NotFound(kind, id);
}
