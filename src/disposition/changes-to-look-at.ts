import { millisecondsBetween, type Instant } from '../platform/clock.js';
import { toWhole } from '../platform/database/stored-values.js';
import { inChunks } from '../platform/database/in-chunks.js';
import type { ReadFrom } from '../platform/database/reading.js';

/** An entry of the journal that came late, or that corrected another. */
export interface ChangeLine {
  readonly sequence: number;
  readonly entryId: string;
  readonly recordedAt: Instant;
  readonly occurredAt: Instant;
  /** Whole minutes between the happening and its recording. */
  readonly lateMinutes: number;
  readonly isCorrection: boolean;
  readonly personId: string | null;
  readonly deviceId: string | null;
  readonly action: string;
  readonly subjectKind: string;
  readonly subjectId: string;
  /** Canonical text, or null. */
  readonly before: string | null;
  readonly after: string | null;
  readonly reason: string | null;
  /** Who looked at it, when, and what was found; null: nobody yet. */
  readonly review: { readonly personId: string | null; readonly at: Instant; readonly note: string | null } | null;
}

/** Which of them. */
export interface ChangeChoice {
  readonly fromAt: Instant;
  readonly isReviewed: boolean;
}

/** Later than this an entry is worth a look. Our own value, no source; up to five minutes nobody calls late. */
export const lateFromMinutes = 15;

const minute = 60_000;

/** Late entries and corrections of a site that were recorded since an instant, the latest first. */
export async function changesToLookAt(
  from: ReadFrom,
  siteId: string,
  choice: ChangeChoice,
): Promise<readonly ChangeLine[]> {
  // Times of more than fifteen minutes apart differ in their first 15 characters (tens of minutes): that much the
  // database can tell, and the rest is told here.
  const rows = await from.sql<StoredChange>`
    SELECT ${changeColumns} FROM "journal_entry" e
    LEFT JOIN "change_review" v ON v."site_id" = e."site_id" AND v."sequence" = e."sequence"
    WHERE e."site_id" = ${siteId} AND e."sequence" > ${await lastBefore(from, siteId, choice.fromAt)}
      AND (SUBSTR(e."occurred_at", 1, 15) < SUBSTR(e."recorded_at", 1, 15) OR ${isCorrectionText})
    ORDER BY e."sequence" DESC`;
  return rows
    .map(changeLine)
    .filter((line) => line.isCorrection || line.lateMinutes > lateFromMinutes)
    .filter((line) => (line.review !== null) === choice.isReviewed);
}

/** Late entries and corrections that speak of one of these things, the latest first; looked at or not. `most` null: all. */
export async function changesAbout(
  from: ReadFrom,
  siteId: string,
  subjectIds: readonly string[],
  most: number | null = 200,
): Promise<readonly ChangeLine[]> {
  if (subjectIds.length === 0) return [];
  const rows = await from.sql<StoredChange>`
    SELECT ${changeColumns} FROM "journal_entry" e
    LEFT JOIN "change_review" v ON v."site_id" = e."site_id" AND v."sequence" = e."sequence"
    WHERE e."site_id" = ${siteId}
      AND e."sequence" IN (SELECT s."sequence" FROM "journal_subject" s
        WHERE s."site_id" = ${siteId} AND s."id" IN (${() => [...subjectIds]}))
      AND (SUBSTR(e."occurred_at", 1, 15) < SUBSTR(e."recorded_at", 1, 15) OR ${isCorrectionText})
    ORDER BY e."sequence" DESC LIMIT ${most ?? Number.MAX_SAFE_INTEGER}`;
  return rows.map(changeLine).filter((line) => line.isCorrection || line.lateMinutes > lateFromMinutes);
}

/** How many late entries and corrections speak of each of these things; those with none are left out. */
export async function changeCounts(
  from: ReadFrom,
  siteId: string,
  ids: readonly string[],
): Promise<ReadonlyMap<string, number>> {
  const rows = await inChunks(
    ids,
    (chunk) => from.sql<{ id: string; occurredAt: Instant; recordedAt: Instant; action: string }>`
      SELECT s."id", e."occurred_at" AS "occurredAt", e."recorded_at" AS "recordedAt", e."action"
      FROM "journal_subject" s JOIN "journal_entry" e ON e."site_id" = s."site_id" AND e."sequence" = s."sequence"
      WHERE s."site_id" = ${siteId} AND s."id" IN (${() => chunk})
        AND (SUBSTR(e."occurred_at", 1, 15) < SUBSTR(e."recorded_at", 1, 15) OR ${isCorrectionText})`,
  );
  const counts = new Map<string, number>();
  for (const { id, occurredAt, recordedAt, action } of rows) {
    const isLate = millisecondsBetween(occurredAt, recordedAt) > lateFromMinutes * minute;
    if (isLate || /^(correct|void|undo)-/.test(action)) counts.set(id, (counts.get(id) ?? 0) + 1);
  }
  return counts;
}

/** The journal is in the order of recording, so that its end is found from behind. */
async function lastBefore(from: ReadFrom, siteId: string, at: Instant): Promise<number> {
  const [row] = await from.sql<{ sequence: number | string }>`
    SELECT "sequence" FROM "journal_entry" WHERE "site_id" = ${siteId} AND "recorded_at" < ${at}
    ORDER BY "sequence" DESC LIMIT 1`;
  return toWhole(row?.sequence ?? 0);
}

const isCorrectionText = (): string =>
  `(e."action" LIKE 'correct-%' OR e."action" LIKE 'void-%' OR e."action" LIKE 'undo-%')`;

const changeColumns = (): string => `
  e."sequence", e."id" AS "entryId", e."recorded_at" AS "recordedAt", e."occurred_at" AS "occurredAt",
  e."person_id" AS "personId", e."device_id" AS "deviceId", e."action", e."subject_kind" AS "subjectKind",
  e."subject_id" AS "subjectId", e."before", e."after", e."reason",
  v."id" AS "reviewId", v."person_id" AS "reviewedBy", v."reviewed_at" AS "reviewedAt", v."note" AS "reviewNote"`;

interface StoredChange extends Omit<ChangeLine, 'sequence' | 'lateMinutes' | 'isCorrection' | 'review'> {
  readonly sequence: number | string;
  readonly reviewId: string | null;
  readonly reviewedBy: string | null;
  readonly reviewedAt: Instant | null;
  readonly reviewNote: string | null;
}

function changeLine({ reviewId, reviewedBy, reviewedAt, reviewNote, ...row }: StoredChange): ChangeLine {
  return {
    ...row,
    sequence: toWhole(row.sequence),
    lateMinutes: Math.max(0, Math.floor(millisecondsBetween(row.occurredAt, row.recordedAt) / minute)),
    isCorrection: /^(correct|void|undo)-/.test(row.action),
    review: reviewId === null ? null : { personId: reviewedBy, at: reviewedAt ?? row.recordedAt, note: reviewNote },
  };
}
