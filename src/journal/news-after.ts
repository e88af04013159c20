import { toWhole } from '../platform/database/stored-values.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { Subject } from './entry-draft.js';

/** What open pages are told of an entry: what was done to what. Ids only, no names. */
export interface News {
  readonly sequence: number;
  readonly action: string;
  readonly subject: Subject;
  readonly touches: readonly Subject[];
}

interface NewsRow {
  readonly sequence: number | string;
  readonly action: string;
  readonly kind: string;
  readonly id: string;
  readonly touches: string;
}

/** The entries of a site after a sequence, oldest first. */
export async function newsAfter(
  from: ReadFrom,
  siteId: string,
  { sequence, limit }: { readonly sequence: number; readonly limit: number },
): Promise<readonly News[]> {
  const rows = await from.sql<NewsRow>`
    SELECT "sequence", "action", "subject_kind" AS "kind", "subject_id" AS "id", "touches" FROM "journal_entry"
    WHERE "site_id" = ${siteId} AND "sequence" > ${sequence} ORDER BY "sequence" LIMIT ${limit}`;
  return rows.map((row) => ({
    sequence: toWhole(row.sequence),
    action: row.action,
    subject: { kind: row.kind, id: row.id },
    touches: JSON.parse(row.touches) as Subject[],
  }));
}

/** The sequence of a site's last entry; 0 before the first. */
export async function lastSequence(from: ReadFrom, siteId: string): Promise<number> {
  const [row] = await from.sql<{ sequence: number | string }>`
    SELECT "sequence" FROM "journal_head" WHERE "site_id" = ${siteId}`;
  return toWhole(row?.sequence ?? 0);
}
