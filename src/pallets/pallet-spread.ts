import { inChunks } from '../platform/database/in-chunks.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { groupBy } from '../platform/group-by.js';
import { packsIn, united, type RunRange } from '../packing/run-ranges.js';
import { contentsOf } from './pallet-list.js';
import type { ContentRow } from './pallet-rows.js';

/** Which packs a pallet may hold, and which it surely holds. Without a split behind it both are its contents. */
export interface PalletSpread {
  readonly possible: readonly RunRange[];
  readonly certain: readonly RunRange[];
  /** What stands on it, by the counts that its packs were laid down with. */
  readonly contents: readonly ContentRow[];
  /** All pallets that it was made from, over any number of steps: what was said of them goes on. */
  readonly ancestorIds: readonly string[];
}

/**
 * A split shares packs out by number. Their codes can be read, so the lot of each is known, but not which packs of that lot went
 * where: any of the parent's packs of the lot may be here. Where a child took all of them, it holds just those.
 */
export async function spreadOf(from: ReadFrom, palletId: string): Promise<PalletSpread> {
  return (
    (await spreadsOf(from, [palletId])).get(palletId) ?? { possible: [], certain: [], contents: [], ancestorIds: [] }
  );
}

/** The same for several pallets at once. */
export async function spreadsOf(
  from: ReadFrom,
  palletIds: readonly string[],
): Promise<ReadonlyMap<string, PalletSpread>> {
  const steps = groupBy(await stepsAbove(from, palletIds), (step) => step.rootId);
  const ancestors = [...steps.values()].flatMap((own) => own.map((step) => step.parentId));
  const contents = groupBy(await contentsOf(from, [...palletIds, ...ancestors]), (row) => row.palletId);
  return new Map(palletIds.map((palletId) => [palletId, spreadFrom(palletId, steps.get(palletId) ?? [], contents)]));
}

function spreadFrom(
  palletId: string,
  steps: readonly Step[],
  contents: ReadonlyMap<string, readonly ContentRow[]>,
): PalletSpread {
  const ancestorIds = [...new Set(steps.map((step) => step.parentId))];
  const own = contents.get(palletId) ?? [];
  const sources = new Set(steps.filter((step) => step.how === 'split').map((step) => step.parentId));
  if (sources.size === 0) {
    const ranges = united(own);
    return { possible: ranges, certain: ranges, contents: own, ancestorIds };
  }
  const earlier = [...sources].flatMap((parentId) => contents.get(parentId) ?? []);
  const lots = [...new Set(own.map(lotKey))];
  const shares = lots.map((key) => {
    const here = own.filter((row) => lotKey(row) === key);
    const possible = united([...here, ...earlier.filter((row) => lotKey(row) === key)]);
    return { possible, certain: packsIn(possible) === packsIn(here) ? possible : [] };
  });
  return {
    possible: united(shares.flatMap((share) => share.possible)),
    certain: united(shares.flatMap((share) => share.certain)),
    contents: own,
    ancestorIds,
  };
}

function lotKey(row: ContentRow): string {
  return `${row.runId} ${row.lotId}`;
}

interface Step {
  /** The pallet that is asked about. */
  readonly rootId: string;
  readonly parentId: string;
  readonly childId: string;
  readonly how: string;
}

function stepsAbove(from: ReadFrom, palletIds: readonly string[]): Promise<readonly Step[]> {
  return inChunks(
    palletIds,
    (chunk) => from.sql<Step>`
      WITH RECURSIVE above("root_id", "parent_id", "child_id", "how") AS (
        SELECT d."child_id", d."parent_id", d."child_id", d."how" FROM "pallet_descent" d
        WHERE d."child_id" IN (${() => chunk}) AND d."voided_by" IS NULL
        UNION
        SELECT a."root_id", d."parent_id", d."child_id", d."how" FROM "pallet_descent" d
        JOIN above a ON d."child_id" = a."parent_id" WHERE d."voided_by" IS NULL
      )
      SELECT "root_id" AS "rootId", "parent_id" AS "parentId", "child_id" AS "childId", "how" FROM above`,
  );
}
