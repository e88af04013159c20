import type { ReadFrom } from '../platform/database/reading.js';
import { inChunks } from '../platform/database/in-chunks.js';
import { groupBy } from '../platform/group-by.js';
import { rangesOfLot } from '../packing/packing-runs.js';
import { clipped, type RunRange } from '../packing/run-ranges.js';
import type { RunCounts } from '../packing/packing-run-rows.js';
import type { PalletOfRange } from './pallet-rows.js';

interface PlacedRange extends RunRange {
  readonly palletId: string;
  readonly isStanding: boolean;
}

/**
 * The standing pallets (in store, on a vehicle or gone) that packs of these ranges are on, or may be. A pallet that was
 * split handed its packs on by number, and nobody saw which: all that came of it may hold them.
 */
export async function palletsOfRanges(from: ReadFrom, ranges: readonly RunCounts[]): Promise<readonly PalletOfRange[]> {
  const touched = await placedIn(from, ranges);
  const standing = touched.filter((row) => row.isStanding);
  const mixed = await splitDescendants(
    from,
    touched.filter((row) => !row.isStanding).map((row) => row.palletId),
  );
  const runIds = new Set(ranges.map((range) => range.runId));
  const possible = mixed.filter((row) => row.isStanding && runIds.has(row.runId));
  const mixedIds = new Set(mixed.map((row) => row.palletId));
  const certain = standing.filter((row) => !mixedIds.has(row.palletId));
  return [...certain.map((row) => answer(row, true)), ...possible.map((row) => answer(row, false))];
}

/** The pallets that packs of a lot are on, or may be. */
export async function palletsOfLot(from: ReadFrom, lotId: string): Promise<readonly PalletOfRange[]> {
  return palletsOfRanges(from, await rangesOfLot(from, lotId));
}

function answer({ palletId, runId, fromCount, toCount }: PlacedRange, isCertain: boolean): PalletOfRange {
  return { palletId, runId, fromCount, toCount, isCertain };
}

/** Contents of all pallets, taken-apart ones too, that overlap; each cut to what is asked for. */
async function placedIn(from: ReadFrom, ranges: readonly RunCounts[]): Promise<readonly PlacedRange[]> {
  const runIds = ranges.map((range) => range.runId);
  const rows = await inChunks(
    runIds,
    (chunk) => from.sql<Omit<PlacedRange, 'isStanding'> & { status: string }>`
      SELECT c."pallet_id" AS "palletId", c."run_id" AS "runId", c."from_count" AS "fromCount",
        c."to_count" AS "toCount", s."status"
      FROM "pallet_content" c JOIN "pallet_state" s ON s."pallet_id" = c."pallet_id"
      WHERE c."voided_by" IS NULL AND c."run_id" IN (${() => chunk}) ORDER BY c."run_id", c."from_count", c."id"`,
  );
  const rangesByRun = groupBy(ranges, ({ runId }) => runId);
  const placed: PlacedRange[] = [];
  for (const row of rows) {
    for (const range of rangesByRun.get(row.runId) ?? []) {
      const shared = clipped(row, range);
      if (shared === null) continue;
      const { palletId, runId, status } = row;
      const { fromCount, toCount } = shared;
      placed.push({ palletId, runId, fromCount, toCount, isStanding: status !== 'taken-apart' });
    }
  }
  return placed;
}

/** Everything that came, over any number of steps, of pallets that were split; with all that it holds. */
async function splitDescendants(from: ReadFrom, parentIds: readonly string[]): Promise<readonly PlacedRange[]> {
  const mixed = new Set<string>();
  let level: readonly { readonly id: string; readonly isMixed: boolean }[] = parentIds.map((id) => ({
    id,
    isMixed: false,
  }));
  while (level.length > 0) {
    const steps = await inChunks(
      level.map(({ id }) => id),
      (chunk) => from.sql<{ parentId: string; childId: string; how: string }>`
        SELECT "parent_id" AS "parentId", "child_id" AS "childId", "how" FROM "pallet_descent"
        WHERE "voided_by" IS NULL AND "parent_id" IN (${() => chunk})`,
    );
    const mixedParents = new Set(level.filter(({ isMixed }) => isMixed).map(({ id }) => id));
    level = steps
      .map(({ parentId, childId, how }) => ({ id: childId, isMixed: how === 'split' || mixedParents.has(parentId) }))
      .filter(({ id }) => !mixed.has(id));
    for (const { id, isMixed } of level) if (isMixed) mixed.add(id);
  }
  if (mixed.size === 0) return [];
  const rows = await inChunks(
    [...mixed],
    (chunk) => from.sql<Omit<PlacedRange, 'isStanding'> & { status: string }>`
      SELECT c."pallet_id" AS "palletId", c."run_id" AS "runId", c."from_count" AS "fromCount",
        c."to_count" AS "toCount", s."status"
      FROM "pallet_content" c JOIN "pallet_state" s ON s."pallet_id" = c."pallet_id"
      WHERE c."voided_by" IS NULL AND c."pallet_id" IN (${() => chunk}) ORDER BY c."pallet_id", c."from_count"`,
  );
  return rows.map(({ status, ...row }) => ({ ...row, isStanding: status !== 'taken-apart' }));
}
