import { encodeWeights } from '../../src/core/weight-blocks/encode-weights.js';
import type { WeightColumns } from '../../src/core/weight-blocks/weight-columns.js';
import { addToSummaries } from '../../src/fill-weight/kept/add-to-summaries.js';
import { extentOf } from '../../src/fill-weight/kept/instants-of-weights.js';
import { WeightBatch } from '../../src/fill-weight/weight-batch.entity.js';
import { UnitOfWork } from '../../src/platform/database/unit-of-work.js';
import { SystemIds } from '../../src/platform/ids.js';
import type { TestHouse } from './house.js';
import { normalDraws } from './normal-draws.js';

const ids = new SystemIds();

/** How packs of a run were filled; all masses in milligrams. */
export interface FilledPacks {
  readonly packCount: number;
  readonly firstAt: string;
  readonly everyMilliseconds: number;
  readonly heads: number;
  /** What the pack at a place and of a head is to hold on average. */
  readonly meanOf: (place: number, head: number) => number;
  readonly deviationMilligrams: number;
  readonly seed?: number;
}

/** Packs as a weigher tells them: to a fifth of a gram, each head in its turn. */
export function filledPacks(filled: FilledPacks): WeightColumns {
  const { packCount, firstAt, everyMilliseconds, heads, meanOf, deviationMilligrams, seed = 5 } = filled;
  const draw = normalDraws(seed, 'filled packs');
  const begin = Date.parse(firstAt) / 10;
  const places = Array.from({ length: packCount }, (_, place) => place);
  const headOf = (place: number): number => 1 + (place % heads);
  return {
    count: packCount,
    sequences: Float64Array.from(places, (place) => place + 1),
    atCentiseconds: Float64Array.from(places, (place) => begin + (place * everyMilliseconds) / 10),
    netMilligrams: Int32Array.from(
      places,
      (place) => Math.round(draw(meanOf(place, headOf(place)), deviationMilligrams) / 200) * 200,
    ),
    heads: heads === 1 ? null : Int16Array.from(places, headOf),
    isRejected: null,
  };
}

/** Keeps weights of a run as the way in does with a batch that it accepts. */
export async function keepPacks(
  house: TestHouse,
  of: {
    readonly runId: string;
    readonly weigherId: string;
    readonly nominalMilligrams: number;
    readonly series?: string;
  },
  columns: WeightColumns,
): Promise<void> {
  const { runId, weigherId, nominalMilligrams, series = '1' } = of;
  await house.get(UnitOfWork).run(async (tx) => {
    await tx.insert(WeightBatch, {
      ...{ id: ids.next(), weigherId, runId, series },
      ...extentOf(columns),
      weights: Buffer.from(encodeWeights(columns)),
      ...{ digest: '', entryId: ids.next(), receivedAt: house.clock.now() },
    });
    await addToSummaries(tx, [{ runId, weigherId, series, nominalMilligrams, columns }]);
  });
}
