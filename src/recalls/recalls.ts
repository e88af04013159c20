import { makeDocumentNumber, readDocumentNumber } from '../core/identifiers/document-number.js';
import type { Instant } from '../platform/clock.js';
import { onlyRow, type ReadFrom } from '../platform/database/reading.js';
import { isId } from '../platform/is-id.js';
import { NotFound } from '../platform/refusal.js';
import type { Page } from '../platform/web/listed.js';
import type { RecallAnswerKind, RecallKind, RecallMark, RecallScopeKind, RecallSureness } from './recall-words.js';

/** What its report is called among papers. */
export const recallReportKind = 'recall-report';

/** The letters that numbers begin with: an exercise is one at first sight. */
export const recallPrefixes = { recall: 'RC', exercise: 'EX' } as const;

/** A recall as it is listed. */
export interface RecallRow {
  readonly id: string;
  readonly siteId: string;
  readonly number: string;
  readonly kind: RecallKind;
  readonly hazard: 'safety' | 'quality';
  readonly reason: string;
  readonly sureness: RecallSureness;
  readonly surenessReason: string | null;
  readonly originKind: 'hold' | 'complaint' | null;
  readonly originId: string | null;
  readonly openedBy: string | null;
  readonly startedAt: Instant;
  readonly customersListedAt: Instant | null;
  readonly stockBlockedAt: Instant | null;
  readonly stoppedAt: Instant | null;
  readonly signedAt: Instant | null;
}

export interface RecallScopeRow {
  readonly scopeKind: RecallScopeKind;
  readonly scopeId: string;
  readonly fromAt: Instant | null;
  readonly untilAt: Instant | null;
}

export interface RecallAnswerRow {
  readonly id: string;
  readonly recallId: string;
  readonly customerId: string;
  readonly answer: RecallAnswerKind;
  readonly packCount: number;
  readonly bagGrams: number;
  readonly remarks: string | null;
  readonly answeredAt: Instant;
}

/** As it was signed. */
export interface RecallSigningRow {
  readonly figures: string;
  readonly explanation: string | null;
  readonly journalHead: string;
  readonly signedBy: string | null;
  readonly signedAt: Instant;
}

/**
 * A recall or exercise of the site by its number (as typed) or id.
 *
 * @throws {NotFound} `recall`
 */
export async function findRecall(from: ReadFrom, siteId: string, text: string): Promise<RecallRow> {
  const read = Object.values(recallPrefixes).flatMap((prefix) => readDocumentNumber(text, prefix) ?? [])[0];
  const number = read === undefined ? text.trim() : makeDocumentNumber(read);
  const id = isId(text.trim()) ? text.trim().toLowerCase() : '';
  const row = onlyRow(
    await from.sql<RecallRow>`
      ${() => recallSelect} AND r."site_id" = ${siteId} AND (r."id" = ${id} OR r."number" = ${number})`,
  );
  if (row === null) throw new NotFound('recall', text);
  return row;
}

/** Recalls and exercises of a site, latest opened first, by key. */
export function recallPage(from: ReadFrom, siteId: string, page: Page): Promise<readonly RecallRow[]> {
  return from.sql<RecallRow>`
    ${() => recallSelect} AND r."site_id" = ${siteId} AND r."id" < ${page.before ?? '~'}
    ORDER BY r."id" DESC LIMIT ${Math.min(page.limit, 200)}`;
}

/** Recalls and exercises of a site that nobody has signed yet: recalls first, the latest of each on top. */
export function openRecalls(from: ReadFrom, siteId: string): Promise<readonly RecallRow[]> {
  return from.sql<RecallRow>`
    ${() => recallSelect} AND r."site_id" = ${siteId} AND s."id" IS NULL
    ORDER BY CASE WHEN r."kind" = 'recall' THEN 0 ELSE 1 END, r."id" DESC LIMIT 200`;
}

/** The recalls that began with a hold or a complaint, latest first. */
export function recallsFrom(
  from: ReadFrom,
  siteId: string,
  origin: { readonly kind: 'hold' | 'complaint'; readonly id: string },
): Promise<readonly RecallRow[]> {
  return from.sql<RecallRow>`
    ${() => recallSelect} AND r."site_id" = ${siteId} AND r."origin_kind" = ${origin.kind}
      AND r."origin_id" = ${origin.id} ORDER BY r."id" DESC LIMIT 200`;
}

export function scopesOf(from: ReadFrom, recallId: string): Promise<readonly RecallScopeRow[]> {
  return from.sql<RecallScopeRow>`
    SELECT "scope_kind" AS "scopeKind", "scope_id" AS "scopeId", "from_at" AS "fromAt", "until_at" AS "untilAt"
    FROM "recall_scope" WHERE "recall_id" = ${recallId} AND "voided_by" IS NULL ORDER BY "id"`;
}

/** The good answers of customers, in the order of coming. */
export function answersOf(from: ReadFrom, recallId: string): Promise<readonly RecallAnswerRow[]> {
  return from.sql<RecallAnswerRow>`
    SELECT ${answerColumns} WHERE "recall_id" = ${recallId} AND "voided_by" IS NULL ORDER BY "answered_at", "id"`;
}

/** @throws {NotFound} `recall-answer` */
export async function answerOf(from: ReadFrom, answerId: string): Promise<RecallAnswerRow> {
  const row = onlyRow(await from.sql<RecallAnswerRow>`SELECT ${answerColumns} WHERE "id" = ${answerId}`);
  if (row === null) throw new NotFound('recall-answer', answerId);
  return row;
}

/** The report of a signed recall; null while it is open. */
export async function reportOfRecall(from: ReadFrom, recallId: string): Promise<string | null> {
  const row = onlyRow(
    await from.sql<{ id: string }>`
      SELECT "id" FROM "paper" WHERE "kind" = ${recallReportKind} AND "subject_kind" = 'recall'
        AND "subject_id" = ${recallId} AND "voided_by" IS NULL`,
  );
  return row?.id ?? null;
}

/** The figures as signed; null while it is open. */
export async function signingOf(from: ReadFrom, recallId: string): Promise<RecallSigningRow | null> {
  return onlyRow(
    await from.sql<RecallSigningRow>`
      SELECT "figures", "explanation", "journal_head" AS "journalHead", "signed_by" AS "signedBy",
        "signed_at" AS "signedAt"
      FROM "recall_signing" WHERE "recall_id" = ${recallId} AND "voided_by" IS NULL`,
  );
}

const answerColumns = (): string => `
  "id", "recall_id" AS "recallId", "customer_id" AS "customerId", "answer", "pack_count" AS "packCount",
  "bag_grams" AS "bagGrams", "remarks", "answered_at" AS "answeredAt" FROM "recall_answer"`;

const markedAt = (mark: RecallMark): string => `
  (SELECT m."marked_at" FROM "recall_mark" m WHERE m."recall_id" = r."id" AND m."mark" = '${mark}'
    AND m."voided_by" IS NULL)`;

const recallSelect = `
  SELECT r."id", r."site_id" AS "siteId", r."number", r."kind", r."hazard", r."reason", r."sureness",
    r."sureness_reason" AS "surenessReason", r."origin_kind" AS "originKind", r."origin_id" AS "originId",
    r."opened_by" AS "openedBy", r."started_at" AS "startedAt", ${markedAt('customers-listed')} AS "customersListedAt",
    ${markedAt('stock-blocked')} AS "stockBlockedAt", ${markedAt('clock-stopped')} AS "stoppedAt",
    s."signed_at" AS "signedAt"
  FROM "recall" r
  LEFT JOIN "recall_signing" s ON s."recall_id" = r."id" AND s."voided_by" IS NULL
  WHERE r."voided_by" IS NULL`;
