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

/**
 * Runs whose count ends before the packs that stand on pallets do. A pallet is built from counted packs only; a count
 * that is corrected afterwards does not ask what stands on pallets, so either the correction or the pallet is wrong.
 */
export async function packsBeyondCount(from: ReadFrom, contents: readonly RunRange[]): Promise<readonly BeyondCount[]> {
  const ends = new Map<string, number>();
  for (const { runId, toCount } of contents) ends.set(runId, Math.max(toCount, ends.get(runId) ?? 0));
  if (ends.size === 0) return [];
  const counted = await from.sql<{ runId: string; packCount: number }>`
    SELECT "run_id" AS "runId", "pack_count" AS "packCount" FROM "packing_run_state"
    WHERE "run_id" IN (${() => [...ends.keys()]}) ORDER BY "run_id"`;
  return counted.flatMap(({ runId, packCount }) => {
    const toCount = ends.get(runId) ?? 0;
    return toCount > packCount ? [{ runId, packCount, toCount }] : [];
  });
}
