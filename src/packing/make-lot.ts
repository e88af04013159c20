import type { Tx } from '../platform/database/unit-of-work.js';

/** A lot as it comes from the packs: a format and a code. */
export interface LotDraft {
  readonly id: string;
  readonly siteId: string;
  readonly formatId: string;
  readonly code: string;
  readonly searchCode: string;
}

/** The lot of a format with this code, made if it is new; answers its id. Two lines may come to the same code at once. */
export async function findOrMakeLot(tx: Tx, draft: LotDraft): Promise<string> {
  const known = await lotIdOf(tx, draft);
  if (known !== null) return known;
  await tx.sql`
    INSERT INTO "lot" ("id", "site_id", "format_id", "code", "search_code")
    VALUES (${draft.id}, ${draft.siteId}, ${draft.formatId}, ${draft.code}, ${draft.searchCode}) ON CONFLICT DO NOTHING`;
  const made = await lotIdOf(tx, draft);
  if (made === null) throw new Error(`lot ${draft.code} was neither found nor made`);
  return made;
}

async function lotIdOf(tx: Tx, { formatId, searchCode }: LotDraft): Promise<string | null> {
  const [row] = await tx.sql<{ id: string }>`
    SELECT "id" FROM "lot" WHERE "search_code" = ${searchCode} AND "format_id" = ${formatId} AND "voided_by" IS NULL
    ORDER BY "id" LIMIT 1`;
  return row?.id ?? null;
}
