import { encodeWeights } from '../../core/weight-blocks/encode-weights.js';
import { emptyColumns, type WeightColumns } from '../../core/weight-blocks/weight-columns.js';
import { sha256 } from '../../platform/canonical-text.js';
import { takingTurns } from '../../platform/taking-turns.js';
import type { OrderedWeights } from './fresh-weights.js';
import { extentOf } from '../kept/instants-of-weights.js';
import type { WeighedRun } from './weighed-runs.js';

/** Few enough that one of them is encoded in a few milliseconds, while others wait. */
const weightsAtOnce = 20_000;

/** Weights of one run, ready to be written. */
export interface EncodedBatch {
  readonly run: WeighedRun;
  readonly columns: WeightColumns;
  readonly firstSequence: number;
  readonly lastSequence: number;
  readonly weightCount: number;
  readonly firstAt: string;
  readonly lastAt: string;
  readonly weights: Buffer;
  readonly digest: string;
}

/** Encodes weights run by run, in parts; between the parts others have their turn. */
export async function encodeBatches({ rows, checked, places }: OrderedWeights): Promise<EncodedBatch[]> {
  const batches: EncodedBatch[] = [];
  const turn = takingTurns();
  for (const [number, run] of checked.runs.entries()) {
    const own = checked.runs.length === 1 ? places : places.filter((row) => checked.runOfRow[row] === number);
    for (let start = 0; start < own.length; start += weightsAtOnce) {
      batches.push(encoded(run, columnsOf({ rows, checked, places: own.subarray(start, start + weightsAtOnce) })));
      await turn();
    }
  }
  return batches;
}

/** Heads and marks have a column where any weight says one; a weight that says none is of no head and has no mark there. */
function columnsOf({ rows, places }: OrderedWeights): WeightColumns {
  const columns = emptyColumns(places.length, {
    hasHeads: places.some((row) => (rows.heads[row] as number) >= 0),
    hasRejects: places.some((row) => (rows.rejected[row] as number) >= 0),
  });
  const { sequences, atCentiseconds, netMilligrams, heads, isRejected } = columns;
  for (let index = 0; index < places.length; index += 1) {
    const row = places[index] as number;
    sequences[index] = rows.sequences[row] as number;
    atCentiseconds[index] = rows.atCentiseconds[row] as number;
    netMilligrams[index] = rows.netMilligrams[row] as number;
    if (heads !== null) heads[index] = rows.heads[row] as number;
    if (isRejected !== null) isRejected[index] = Math.max(0, rows.rejected[row] as number);
  }
  return columns;
}

function encoded(run: WeighedRun, columns: WeightColumns): EncodedBatch {
  const bytes = encodeWeights(columns);
  return {
    run,
    columns,
    ...extentOf(columns),
    weights: Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength),
    digest: sha256(bytes),
  };
}
