import { toWhole } from '../platform/database/stored-values.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { Subject } from './entry-draft.js';

/** A journal entry as pages and lists show it. */
export interface EntryLine {
  readonly sequence: number;
  readonly id: string;
  readonly recordedAt: string;
  readonly occurredAt: string;
  readonly statedAt: string | null;
  readonly personId: string | null;
  readonly deviceId: string | null;
  readonly deviceOffsetMilliseconds: number | null;
  readonly action: string;
  readonly subjectKind: string;
  readonly subjectId: string;
  readonly before: string | null;
  readonly after: string | null;
  readonly reason: string | null;
  readonly hash: string;
}

type StoredLine = Omit<EntryLine, 'sequence' | 'deviceOffsetMilliseconds'> & {
  readonly sequence: number | string;
  readonly deviceOffsetMilliseconds: number | string | null;
};

const everything = Number.MAX_SAFE_INTEGER;

/** A site's entries, newest first, those before a sequence; at most 200. */
export async function journalPage(
  from: ReadFrom,
  siteId: string,
  page: { readonly before: number | null; readonly limit: number },
): Promise<readonly EntryLine[]> {
  const rows = await from.sql<StoredLine>`
    SELECT ${columns} FROM "journal_entry" e
    WHERE e."site_id" = ${siteId} AND e."sequence" < ${page.before ?? everything}
    ORDER BY e."sequence" DESC LIMIT ${Math.min(page.limit, 200)}`;
  return rows.map(lineOf);
}

/** The entries that speak of one thing, newest first; at most 200. */
export async function entriesAbout(from: ReadFrom, siteId: string, subject: Subject): Promise<readonly EntryLine[]> {
  const rows = await from.sql<StoredLine>`
    SELECT ${columns} FROM "journal_subject" s
    JOIN "journal_entry" e ON e."site_id" = s."site_id" AND e."sequence" = s."sequence"
    WHERE s."kind" = ${subject.kind} AND s."id" = ${subject.id} AND s."site_id" = ${siteId}
    ORDER BY e."sequence" DESC LIMIT 200`;
  return rows.map(lineOf);
}

/** The entries that speak of one thing and came after a sequence, oldest first; at most 50. */
export async function entriesSince(
  from: ReadFrom,
  siteId: string,
  subject: Subject,
  sequence: number,
): Promise<readonly EntryLine[]> {
  const rows = await from.sql<StoredLine>`
    SELECT ${columns} FROM "journal_subject" s
    JOIN "journal_entry" e ON e."site_id" = s."site_id" AND e."sequence" = s."sequence"
    WHERE s."kind" = ${subject.kind} AND s."id" = ${subject.id} AND s."site_id" = ${siteId}
      AND s."sequence" > ${sequence}
    ORDER BY e."sequence" LIMIT 50`;
  return rows.map(lineOf);
}

/** The sequence of the last entry of a site's chain; 0 before the first. */
export async function journalSequenceOf(from: ReadFrom, siteId: string): Promise<number> {
  const [row] = await from.sql<{ sequence: number | string }>`
    SELECT "sequence" FROM "journal_head" WHERE "site_id" = ${siteId}`;
  return toWhole(row?.sequence ?? 0);
}

/** The hash of the last entry of a site's chain: printed on accounts and backups. Null before the first entry. */
export async function journalHeadOf(from: ReadFrom, siteId: string): Promise<string | null> {
  const [row] = await from.sql<{ hash: string }>`SELECT "hash" FROM "journal_head" WHERE "site_id" = ${siteId}`;
  return row?.hash ?? null;
}

const columns = (): string =>
  `e."sequence", e."id", e."recorded_at" AS "recordedAt", e."occurred_at" AS "occurredAt", e."stated_at" AS "statedAt",
   e."person_id" AS "personId", e."device_id" AS "deviceId", e."device_offset_milliseconds" AS "deviceOffsetMilliseconds",
   e."action", e."subject_kind" AS "subjectKind", e."subject_id" AS "subjectId", e."before", e."after", e."reason", e."hash"`;

function lineOf(row: StoredLine): EntryLine {
  return {
    ...row,
    sequence: toWhole(row.sequence),
    deviceOffsetMilliseconds: row.deviceOffsetMilliseconds === null ? null : toWhole(row.deviceOffsetMilliseconds),
  };
}
