import type { Page } from '../platform/web/listed.js';
import type { Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';

/** A paper that was given out; a void one stays in the list with the reason. */
export interface ListedPaper {
  readonly id: string;
  readonly kind: string;
  /** Null for labels. */
  readonly number: string | null;
  readonly subjectKind: string;
  readonly subjectId: string;
  readonly issuedAt: Instant;
  /** Hash of the PDF; null until it is made. */
  readonly sha256: string | null;
  readonly isVoid: boolean;
  readonly voidReason: string | null;
}

/** Papers of a site, newest first, by key. */
export async function paperPage(from: ReadFrom, siteId: string, page: Page): Promise<readonly ListedPaper[]> {
  const rows = await from.sql<Omit<ListedPaper, 'isVoid'> & { voidedBy: string | null }>`
    SELECT p."id", p."kind", p."number", p."subject_kind" AS "subjectKind", p."subject_id" AS "subjectId",
      p."issued_at" AS "issuedAt", f."sha256", p."voided_by" AS "voidedBy", e."reason" AS "voidReason"
    FROM "paper" p
    LEFT JOIN "paper_file" f ON f."paper_id" = p."id"
    LEFT JOIN "journal_entry" e ON e."id" = p."voided_by"
    WHERE p."site_id" = ${siteId} AND p."id" < ${page.before ?? '~'}
    ORDER BY p."id" DESC LIMIT ${page.limit}`;
  return rows.map(({ voidedBy, ...row }) => ({ ...row, isVoid: voidedBy !== null }));
}
