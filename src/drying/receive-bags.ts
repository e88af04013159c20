import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { gradeOf } from '../plant/plant-facts.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { settleOccurredAt } from '../platform/occurred-at.js';
import { Refusal } from '../platform/refusal.js';
import type { ClosedBag } from './close-bag.js';
import { GoodsReceipt } from './goods-receipt.entity.js';
import { latenessReason } from './lateness-reason.js';
import type { ReceiveBagsForm } from './receipt.form.js';
import { takeDocumentNumber } from './take-document-number.js';
import { takeInBags } from './take-in-bags.js';

/** What came in, under its number. */
export interface ReceivedBags {
  readonly id: string;
  readonly number: string;
  readonly bags: readonly ClosedBag[];
}

/**
 * Bags come from a supplier and go over our scale.
 * Refusals: `receipt-already-recorded`, `sscc-not-valid`, `sscc-is-ours`, `sscc-taken`, and those of a weighing;
 * not found: grade, scale, store-place.
 */
@Injectable()
export class ReceiveBags {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: ReceiveBagsForm): Promise<ReceivedBags> {
    return this.changes.run(asked, form, async (tx, change) => {
      const reason = latenessReason(form);
      const { occurredAt, statedAt } = settleOccurredAt(form.receivedAt ?? null, change.recordedAt, reason);
      const { siteId, personId } = asked.actor;
      await gradeOf(tx, form.gradeId);
      const { gradeId, supplierCode, supplierLot, documentNumber, scaleId } = form;
      // Taken before the look for the same document: of two at once the second waits here, and then sees the first.
      const number = await takeDocumentNumber(tx, siteId, 'goods-receipt', change.recordedAt);
      await refuseSameDocument(tx, siteId, form);
      const receipt = { id: this.ids.next(), gradeId, number, supplierCode, supplierLot, documentNumber };
      await tx.insert(GoodsReceipt, { ...receipt, siteId, receivedAt: occurredAt, voidedBy: null });
      const nextId = (): string => this.ids.next();
      const hasHappened = form.happened ?? false;
      const source = { nextId, siteId, origin: 'receipt', receiptId: receipt.id, gradeId, scaleId } as const;
      const bags = await takeInBags(tx, { ...source, at: occurredAt, personId, hasHappened }, form.bags);
      return {
        answer: { id: receipt.id, number, bags },
        entry: {
          action: 'receive-bags',
          subject: { kind: 'goods-receipt', id: receipt.id },
          touches: bags.map(({ id }) => ({ kind: 'bulk-bag', id })),
          after: { ...receipt, scaleId, bags: bags.map(({ id, netGrams }) => ({ id, netGrams })) },
          reason,
          occurredAt,
          statedAt,
        },
      };
    });
  }
}

async function refuseSameDocument(tx: Tx, siteId: string, form: ReceiveBagsForm): Promise<void> {
  const [same] = await tx.sql<{ number: string }>`
    SELECT "number" FROM "goods_receipt" WHERE "site_id" = ${siteId} AND "voided_by" IS NULL
      AND "supplier_code" = ${form.supplierCode} AND "supplier_lot" = ${form.supplierLot}
      AND "document_number" = ${form.documentNumber} ORDER BY "id" LIMIT 1`;
  if (same === undefined) return;
  throw new Refusal('receipt-already-recorded', { receipt: same.number, document: form.documentNumber });
}
