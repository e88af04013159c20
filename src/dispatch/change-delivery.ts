import { Injectable } from '@nestjs/common';
import type { Asked, Change } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { voidFact } from '../journal/void-fact.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { Refusal } from '../platform/refusal.js';
import { DeliveryLine } from './delivery-line.entity.js';
import { DeliveryPlan } from './delivery-plan.entity.js';
import type { DeliveryRow, LineProgress } from './delivery-rows.js';
import type { ChangeDeliveryForm, OrderLineForm } from './delivery.form.js';
import { progressOf } from './line-progress.js';
import { refuseOddLines } from './order-lines.js';
import { takeOpenDelivery } from './take-delivery.js';

/**
 * A planned delivery is to leave at another time, under another order number, or with other goods. For another customer
 * it is cancelled and a new one planned.
 * Refusals: `delivery-is-closed`, `delivery-has-left`, `delivery-is-cancelled`, `line-named-twice`, `less-than-is-on`;
 * not found: pack-format, grade.
 */
@Injectable()
export class ChangeDelivery {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, delivery: string, form: ChangeDeliveryForm): Promise<{ readonly id: string }> {
    return this.changes.run(asked, { delivery, ...form }, async (tx, change) => {
      const taken = await takeOpenDelivery(tx, asked.actor.siteId, delivery);
      await refuseOddLines(tx, asked.actor.siteId, form.lines);
      const lines = await progressOf(tx, taken.id);
      refuseLessThanOn(lines, form.lines);
      await this.putLines(tx, taken, { lines, wanted: form.lines, change });
      const { orderNumber, plannedOn, reason } = form;
      const leavesAt = form.leavesAt ?? null;
      const planned = { deliveryId: taken.id, orderNumber, plannedOn, leavesAt };
      await tx.insert(DeliveryPlan, { id: this.ids.next(), ...planned, voidedBy: null });
      return {
        answer: { id: taken.id },
        entry: {
          action: 'change-delivery',
          subject: { kind: 'delivery', id: taken.id },
          before: {
            orderNumber: taken.orderNumber,
            plannedOn: taken.plannedOn,
            leavesAt: taken.leavesAt,
            lines: bare(lines),
          },
          after: { orderNumber, plannedOn, leavesAt, lines: bare(form.lines) },
          reason,
        },
      };
    });
  }

  /** Lines that stay as they are stay the same facts; the others become void, new ones take their places. */
  private async putLines(
    tx: Tx,
    delivery: DeliveryRow,
    { lines, wanted, change }: { lines: readonly LineProgress[]; wanted: readonly OrderLineForm[]; change: Change },
  ): Promise<void> {
    const isSame = (line: LineProgress, other: OrderLineForm | undefined): boolean =>
      other !== undefined && goodsOf(line) === goodsOf(other) && line.orderedCount === other.orderedCount;
    const kept = lines.filter((line) => isSame(line, wanted[line.lineNumber - 1]));
    for (const line of lines) if (!kept.includes(line)) await voidFact(tx, DeliveryLine, line.id, change);
    for (const [place, line] of wanted.entries()) {
      if (kept.some(({ lineNumber }) => lineNumber === place + 1)) continue;
      const { formatId = null, gradeId = null, orderedCount } = line;
      const added = { deliveryId: delivery.id, lineNumber: place + 1, formatId, gradeId, orderedCount };
      await tx.insert(DeliveryLine, { id: this.ids.next(), ...added, voidedBy: null });
    }
  }
}

type Goods = Pick<OrderLineForm, 'formatId' | 'gradeId'>;

function goodsOf(line: Goods): string {
  return line.formatId ?? line.gradeId ?? '';
}

function bare(
  lines: readonly OrderLineForm[],
): { formatId: string | null; gradeId: string | null; orderedCount: number }[] {
  return lines.map(({ formatId = null, gradeId = null, orderedCount }) => ({ formatId, gradeId, orderedCount }));
}

function refuseLessThanOn(lines: readonly LineProgress[], wanted: readonly OrderLineForm[]): void {
  for (const { loadedCount, name, ...line } of lines) {
    const ordered = wanted.find((other) => goodsOf(other) === goodsOf(line))?.orderedCount ?? 0;
    if (ordered < loadedCount) throw new Refusal('less-than-is-on', { goods: name, ordered, on: loadedCount });
  }
}
