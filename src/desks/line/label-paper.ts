import type { ReadFrom } from '../../platform/database/reading.js';

/** The last label that was issued for a pallet; null: none. */
export async function labelPaperOf(from: ReadFrom, palletId: string): Promise<string | null> {
  const [row] = await from.sql<{ id: string }>`
    SELECT "id" FROM "paper" WHERE "subject_kind" = 'pallet' AND "subject_id" = ${palletId} AND "voided_by" IS NULL
    ORDER BY "id" DESC LIMIT 1`;
  return row?.id ?? null;
}
