import { onlyRow, type ReadFrom } from '../platform/database/reading.js';
import { NotFound } from '../platform/refusal.js';
import type { Page } from '../platform/web/listed.js';

/** A receipt of bags from a supplier. */
export interface ReceiptRow {
  readonly id: string;
  readonly number: string;
  readonly gradeId: string;
  readonly supplierCode: string;
  readonly supplierLot: string;
  readonly documentNumber: string;
  readonly receivedAt: string;
}

/** @throws {NotFound} `goods-receipt` */
export async function receiptOf(from: ReadFrom, siteId: string, receiptId: string): Promise<ReceiptRow> {
  const rows = await from.sql<ReceiptRow>`
    ${() => receiptSelect} WHERE g."id" = ${receiptId} AND g."site_id" = ${siteId} AND g."voided_by" IS NULL`;
  const receipt = onlyRow(rows);
  if (receipt === null) throw new NotFound('goods-receipt', receiptId);
  return receipt;
}

/** Receipts of a site, latest recorded first, those before the key `before`. */
export function receiptPage(from: ReadFrom, siteId: string, page: Page): Promise<readonly ReceiptRow[]> {
  return from.sql<ReceiptRow>`
    ${() => receiptSelect} WHERE g."site_id" = ${siteId} AND g."voided_by" IS NULL AND g."id" < ${page.before ?? '~'}
    ORDER BY g."id" DESC LIMIT ${Math.min(page.limit, 200)}`;
}

const receiptSelect = `
  SELECT g."id", g."number", g."grade_id" AS "gradeId", g."supplier_code" AS "supplierCode",
    g."supplier_lot" AS "supplierLot", g."document_number" AS "documentNumber", g."received_at" AS "receivedAt"
  FROM "goods_receipt" g`;
