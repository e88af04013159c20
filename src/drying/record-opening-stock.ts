import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { gradeOf } from '../plant/plant-facts.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { settleOccurredAt } from '../platform/occurred-at.js';
import { Refusal } from '../platform/refusal.js';
import type { ClosedBag } from './close-bag.js';
import { latenessReason } from './lateness-reason.js';
import type { RecordOpeningStockForm } from './receipt.form.js';
import { takeInBags } from './take-in-bags.js';

/**
 * The bags that stood in the store on day one, before anything was dried or received under this system.
 * Refusals: `opening-stock-too-late`, and those of a weighing and of a brought SSCC; not found: grade, scale, store-place.
 */
@Injectable()
export class RecordOpeningStock {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: RecordOpeningStockForm): Promise<{ readonly bags: readonly ClosedBag[] }> {
    return this.changes.run(asked, form, async (tx, change) => {
      const reason = latenessReason(form);
      const { occurredAt, statedAt } = settleOccurredAt(form.countedAt ?? null, change.recordedAt, reason);
      const { siteId, personId } = asked.actor;
      await gradeOf(tx, form.gradeId);
      await refuseAfterFirst(tx, siteId, occurredAt);
      const { gradeId, scaleId } = form;
      const nextId = (): string => this.ids.next();
      const hasHappened = form.happened ?? false;
      const source = { nextId, siteId, origin: 'opening-stock', receiptId: null, gradeId, scaleId } as const;
      const bags = await takeInBags(tx, { ...source, at: occurredAt, personId, hasHappened }, form.bags);
      return {
        answer: { bags },
        entry: {
          action: 'record-opening-stock',
          subject: { kind: 'site', id: siteId },
          touches: bags.map(({ id }) => ({ kind: 'bulk-bag', id })),
          after: { gradeId, scaleId, bags: bags.map(({ id, netGrams }) => ({ id, netGrams })) },
          reason,
          occurredAt,
          statedAt,
        },
      };
    });
  }
}

/** Later on every bag has an origin that can be named; "opening stock" would hide it. */
async function refuseAfterFirst(tx: Tx, siteId: string, countedAt: string): Promise<void> {
  const [first] = await tx.sql<{ number: string; beganAt: string }>`
    SELECT "number", "started_at" AS "beganAt" FROM "dryer_run"
    WHERE "site_id" = ${siteId} AND "voided_by" IS NULL AND "started_at" < ${countedAt}
    UNION ALL
    SELECT "number", "received_at" AS "beganAt" FROM "goods_receipt"
    WHERE "site_id" = ${siteId} AND "voided_by" IS NULL AND "received_at" < ${countedAt}
    ORDER BY "beganAt" LIMIT 1`;
  if (first !== undefined) throw new Refusal('opening-stock-too-late', { first: first.number, beganAt: first.beganAt });
}
