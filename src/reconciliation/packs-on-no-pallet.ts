import type { RunRow } from '../packing/packing-run-rows.js';
import type { ReadFrom } from '../platform/database/reading.js';

/** Packs of a run that were counted and stand on no pallet yet. */
export async function packsOnNoPallet(from: ReadFrom, run: Pick<RunRow, 'id' | 'packCount'>): Promise<number> {
  const [row] = await from.sql<{ packCount: number | string | null }>`
    SELECT SUM(c."to_count" - c."from_count") AS "packCount" FROM "pallet_content" c
    JOIN "pallet_state" s ON s."pallet_id" = c."pallet_id"
    WHERE c."run_id" = ${run.id} AND c."voided_by" IS NULL AND s."status" <> 'taken-apart'`;
  return Math.max(0, run.packCount - Number(row?.packCount ?? 0));
}
