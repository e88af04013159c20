import type { ReadFrom } from '../platform/database/reading.js';
import { packsIn, united, type RunRange } from '../packing/run-ranges.js';
import { contentsOf } from './pallet-list.js';
import type { ContentRow } from './pallet-rows.js';

/** Which packs a pallet may hold, and which it surely holds. Without a split behind it both are its contents. */
export interface PalletSpread {
  readonly possible: readonly RunRange[];
  readonly certain: readonly RunRange[];
  /** All pallets that it was made from, over any number of steps: what was said of them goes on. */
  readonly ancestorIds: readonly string[];
}

/**
 * A split shares packs out by number. Their codes can be read, so the lot of each is known, but not which packs of that lot went
 * where: any of the parent's packs of the lot may be here. Where a child took all of them, it holds just those.
 */
export async function spreadOf(from: ReadFrom, palletId: string): Promise<PalletSpread> {
  const steps = await stepsAbove(from, palletId);
  const ancestorIds = [...new Set(steps.map((step) => step.parentId))];
  const contents = await contentsOf(from, [palletId, ...ancestorIds]);
  const own = contents.filter((row) => row.palletId === palletId);
  const sources = new Set(steps.filter((step) => step.how === 'split').map((step) => step.parentId));
  if (sources.size === 0) return { possible: united(own), certain: united(own), ancestorIds };
  const earlier = contents.filter((row) => sources.has(row.palletId));
  const lots = [...new Set(own.map(lotKey))];
  const shares = lots.map((key) => {
    const here = own.filter((row) => lotKey(row) === key);
    const possible = united([...here, ...earlier.filter((row) => lotKey(row) === key)]);
    return { possible, certain: packsIn(possible) === packsIn(here) ? possible : [] };
  });
  return {
    possible: united(shares.flatMap((share) => share.possible)),
    certain: united(shares.flatMap((share) => share.certain)),
    ancestorIds,
  };
}

function lotKey(row: ContentRow): string {
  return `${row.runId} ${row.lotId}`;
}

interface Step {
  readonly parentId: string;
  readonly childId: string;
  readonly how: string;
}

async function stepsAbove(from: ReadFrom, palletId: string): Promise<readonly Step[]> {
  return from.sql<Step>`
    WITH RECURSIVE above("parent_id", "child_id", "how") AS (
      SELECT d."parent_id", d."child_id", d."how" FROM "pallet_descent" d
      WHERE d."child_id" = ${palletId} AND d."voided_by" IS NULL
      UNION
      SELECT d."parent_id", d."child_id", d."how" FROM "pallet_descent" d
      JOIN above a ON d."child_id" = a."parent_id" WHERE d."voided_by" IS NULL
    )
    SELECT "parent_id" AS "parentId", "child_id" AS "childId", "how" FROM above`;
}
