import { standardUncertaintyWithin, weightOfPacks, type Uncertainty } from '../core/mass-balance/uncertainty.js';
import { removalsOfHopper } from '../packing/packing-runs.js';
import type { RemovalRow } from '../packing/packing-run-rows.js';
import { inChunks } from '../platform/database/in-chunks.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { AccountLine } from './account-view.js';
import { packWeightsOf, type PackWeight } from './pack-weights.js';
import type { HopperTime } from './poured-between.js';
import { uncertaintyOnScale, type Scales } from './scales-of-lines.js';
import { toLine } from './to-line.js';

const kinds = { reject: 'rejects', sample: 'samples', sweepings: 'sweepings' } as const;

/**
 * Rejects, samples and sweepings that were recorded of a hopper and its lines in a time. Weighed ones as weighed,
 * counted ones by their run's mean. Samples are packs or sugar that never came to the counter of accepted packs.
 */
export async function removalsOfAccount(
  from: ReadFrom,
  time: HopperTime,
  scales: Scales,
): Promise<readonly AccountLine[]> {
  const removals = await removalsOfHopper(from, time.hopperId, time.fromAt, time.untilAt);
  const runIds = [...new Set(removals.flatMap(({ runId }) => runId ?? []))];
  const weights = await packWeightsOf(from, runIds, scales);
  const numbers = await numbersOfRuns(from, runIds);
  return removals.map((removal) =>
    toLine({
      side: 'out',
      kind: kinds[removal.kind],
      recordId: removal.id,
      code: removal.runId === null ? null : (numbers.get(removal.runId) ?? null),
      at: removal.removedAt,
      ...weightOf(removal, removal.runId === null ? null : (weights.get(removal.runId) ?? null), scales),
      isDoubtful: false,
      packs: null,
    }),
  );
}

interface RemovedWeight {
  readonly grams: number;
  readonly basis: 'measured' | 'assumed';
  readonly uncertainty: Uncertainty;
}

function weightOf(removal: RemovalRow, weight: PackWeight | null, scales: Scales): RemovedWeight {
  const { grams, packCount, scaleId } = removal;
  const scale = scaleId === null ? undefined : scales.get(scaleId);
  if (scale !== undefined) return { grams, basis: 'measured', uncertainty: uncertaintyOnScale(scale, 2) };
  if (packCount !== null && weight !== null) return { basis: weight.basis, ...weightOfPacks({ packCount, ...weight }) };
  // Neither weighed nor counted: anything from nothing to twice what was said, as the hopper's flow takes it.
  const standardGrams = standardUncertaintyWithin(grams);
  return { grams, basis: 'assumed', uncertainty: { standardGrams, sharedBy: null, sharedStandardGrams: 0 } };
}

async function numbersOfRuns(from: ReadFrom, runIds: readonly string[]): Promise<ReadonlyMap<string, string>> {
  const rows = await inChunks(
    runIds,
    (chunk) => from.sql<{ id: string; number: string }>`
      SELECT "id", "number" FROM "packing_run" WHERE "id" IN (${() => chunk})`,
  );
  return new Map(rows.map(({ id, number }) => [id, number]));
}
