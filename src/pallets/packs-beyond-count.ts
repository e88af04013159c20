import { inChunks } from '../platform/database/in-chunks.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { RunRange } from '../packing/run-ranges.js';

/** A pallet is said to hold packs of a run that, by its count, never made so many. */
export interface BeyondCount {
  readonly runId: string;
  /** What the run has counted. */
  readonly packCount: number;
  /** Where the pallet's packs of it end. */
  readonly toCount: number;
}

/** What runs have counted so far. */
export async function packCountsOf(
  from: ReadFrom,
  contents: readonly RunRange[],
): Promise<ReadonlyMap<string, number>> {
  const rows = await inChunks(
    contents.map((range) => range.runId),
    (chunk) => from.sql<{ runId: string; packCount: number }>`
      SELECT "run_id" AS "runId", "pack_count" AS "packCount" FROM "packing_run_state"
      WHERE "run_id" IN (${() => chunk}) ORDER BY "run_id"`,
  );
  return new Map(rows.map(({ runId, packCount }) => [runId, packCount]));
}

/**
 * Runs whose count ends before the packs that stand on a pallet do. A pallet is built from counted packs only; a count
 * that is corrected afterwards does not ask what stands on pallets, so either the correction or the pallet is wrong.
 */
export function beyondCounts(
  contents: readonly RunRange[],
  packCounts: ReadonlyMap<string, number>,
): readonly BeyondCount[] {
  const ends = new Map<string, number>();
  for (const { runId, toCount } of contents) ends.set(runId, Math.max(toCount, ends.get(runId) ?? 0));
  return [...ends].flatMap(([runId, toCount]) => {
    const packCount = packCounts.get(runId);
    return packCount !== undefined && toCount > packCount ? [{ runId, packCount, toCount }] : [];
  });
}
