import { makeDocumentNumber, readDocumentNumber } from '../core/identifiers/document-number.js';
import type { Instant } from '../platform/clock.js';
import { onlyRow, type ReadFrom } from '../platform/database/reading.js';
import { isId } from '../platform/is-id.js';
import { NotFound } from '../platform/refusal.js';
import type { Page } from '../platform/web/listed.js';
import { subjectById } from '../tracing/subject-by-id.js';
import type { ThreadKind, ThreadSubject } from '../tracing/thread.js';
import type { AnswerWay, ComplaintCategory, ComplaintSeverity, ComplaintStatus, StepKind } from './complaint-words.js';

/** The letters that numbers of complaints begin with. */
export const complaintPrefix = 'C';

/** A complaint as it is listed. */
export interface ComplaintRow {
  readonly id: string;
  readonly siteId: string;
  readonly number: string;
  readonly status: ComplaintStatus;
  readonly changeCount: number;
  readonly category: ComplaintCategory;
  readonly severity: ComplaintSeverity;
  readonly codeAsRead: string | null;
  readonly boughtWhere: string | null;
  readonly boughtOn: string | null;
  readonly packCount: number | null;
  readonly words: string;
  readonly receivedAt: Instant;
  readonly customerId: string | null;
  readonly customerCode: string | null;
  readonly subjectKind: ThreadKind | null;
  readonly subjectId: string | null;
  readonly localTime: string | null;
  readonly printedAt: Instant | null;
  readonly codedFromAt: Instant | null;
  readonly codedUntilAt: Instant | null;
}

/** A good step. */
export interface StepRow {
  readonly id: string;
  readonly kind: StepKind;
  readonly words: string | null;
  readonly way: AnswerWay | null;
  readonly personId: string | null;
  readonly doneAt: Instant;
}

/** Who complained; null once it was removed, or where nobody asked. */
export interface ContactRow {
  readonly name: string;
  readonly reach: string | null;
}

/**
 * A complaint of the site by its number (as typed) or id; withdrawn ones stay readable.
 *
 * @throws {NotFound} `complaint`
 */
export async function findComplaint(from: ReadFrom, siteId: string, text: string): Promise<ComplaintRow> {
  const read = readDocumentNumber(text, complaintPrefix);
  const number = read === null ? text.trim() : makeDocumentNumber(read);
  const id = isId(text.trim()) ? text.trim().toLowerCase() : '';
  const row = onlyRow(
    await from.sql<ComplaintRow>`
      ${() => complaintSelect} WHERE c."site_id" = ${siteId} AND (c."id" = ${id} OR c."number" = ${number})`,
  );
  if (row === null) throw new NotFound('complaint', text);
  return row;
}

/** Complaints of a site, latest recorded first, by key; of one status where it is asked for. */
export function complaintPage(
  from: ReadFrom,
  siteId: string,
  page: Page & { readonly status?: ComplaintStatus | null },
): Promise<ComplaintRow[]> {
  return from.sql<ComplaintRow>`
    ${() => complaintSelect} WHERE c."site_id" = ${siteId} AND c."id" < ${page.before ?? '~'}
      AND s."status" = COALESCE(${page.status ?? null}, s."status")
    ORDER BY c."id" DESC LIMIT ${Math.min(page.limit, 200)}`;
}

/** Complaints that are not closed, the gravest first, among them the oldest. */
export function complaintsToDecide(from: ReadFrom, siteId: string): Promise<ComplaintRow[]> {
  return from.sql<ComplaintRow>`
    ${() => complaintSelect} WHERE c."site_id" = ${siteId} AND s."status" NOT IN ('closed', 'withdrawn')
    ORDER BY CASE k."severity" WHEN 'food-safety' THEN 0 WHEN 'not-as-sold' THEN 1 ELSE 2 END,
      CASE s."status" WHEN 'reopened' THEN 0 WHEN 'open' THEN 0 WHEN 'looking-into' THEN 1 ELSE 2 END,
      c."received_at", c."id" LIMIT 200`;
}

/** Linked complaints of a site that were not withdrawn and came in since an instant, latest first. */
export function linkedComplaints(
  from: ReadFrom,
  siteId: string,
  asked: { readonly since: Instant; readonly limit: number },
): Promise<ComplaintRow[]> {
  return from.sql<ComplaintRow>`
    ${() => complaintSelect} WHERE c."site_id" = ${siteId} AND c."voided_by" IS NULL AND l."id" IS NOT NULL
      AND c."received_at" >= ${asked.since}
    ORDER BY c."id" DESC LIMIT ${asked.limit}`;
}

/** What a complaint is about, as its thread is asked for; null: not known. */
export async function subjectOfComplaint(from: ReadFrom, complaint: ComplaintRow): Promise<ThreadSubject | null> {
  const { subjectKind, subjectId, localTime, printedAt, codedFromAt, codedUntilAt } = complaint;
  if (subjectKind === null || subjectId === null) return null;
  const codedBetween =
    codedFromAt === null || codedUntilAt === null ? null : { fromAt: codedFromAt, untilAt: codedUntilAt };
  return { ...(await subjectById(from, subjectKind, subjectId)), localTime, printedAt, codedBetween };
}

/** The good steps of a complaint, in the order of recording. */
export function stepsOf(from: ReadFrom, complaintId: string): Promise<StepRow[]> {
  return from.sql<StepRow>`
    SELECT "id", "kind", "words", "way", "person_id" AS "personId", "done_at" AS "doneAt" FROM "complaint_step"
    WHERE "complaint_id" = ${complaintId} AND "voided_by" IS NULL ORDER BY "id"`;
}

export async function contactOf(from: ReadFrom, complaintId: string): Promise<ContactRow | null> {
  return onlyRow(
    await from.sql<ContactRow>`
      SELECT "name", "reach" FROM "complaint_contact" WHERE "complaint_id" = ${complaintId}`,
  );
}

const complaintSelect = `
  SELECT c."id", c."site_id" AS "siteId", c."number", s."status", s."change_count" AS "changeCount", k."category",
    k."severity", c."code_as_read" AS "codeAsRead", c."bought_where" AS "boughtWhere", c."bought_on" AS "boughtOn",
    c."pack_count" AS "packCount", c."words", c."received_at" AS "receivedAt", c."customer_id" AS "customerId",
    u."code" AS "customerCode", l."subject_kind" AS "subjectKind", l."subject_id" AS "subjectId",
    l."local_time" AS "localTime", l."printed_at" AS "printedAt", l."coded_from_at" AS "codedFromAt",
    l."coded_until_at" AS "codedUntilAt"
  FROM "complaint" c
  JOIN "complaint_state" s ON s."complaint_id" = c."id"
  JOIN "complaint_class" k ON k."id" = (SELECT MAX(x."id") FROM "complaint_class" x
    WHERE x."complaint_id" = c."id" AND x."voided_by" IS NULL)
  LEFT JOIN "complaint_link" l ON l."id" = (SELECT MAX(y."id") FROM "complaint_link" y
    WHERE y."complaint_id" = c."id" AND y."voided_by" IS NULL)
  LEFT JOIN "customer" u ON u."id" = c."customer_id"`;
