import { mostWeightsInBlock, type WeightColumns } from '../../src/core/weight-blocks/weight-columns.js';

const batchSize = 4096;

/** A year of one line, invented: 38 packs a minute of 1 kg, s = 5 g to 0.1 g, jitter of 100 ms to 10 ms, one head. */
export interface MadeYear {
  readonly weightCount: number;
  /** A run is a shift of so many weights. */
  readonly weightsInRun: number;
  readonly firstAtCentiseconds: number;
  readonly batches: () => Generator<MadeBatch>;
}

export interface MadeBatch {
  readonly run: number;
  readonly columns: WeightColumns;
}

export const spreadMilligrams = 5000;
export const stepMilligrams = 100;
export const jitterCentiseconds = 10;
const meanMilligrams = 1_004_000;
const intervalCentiseconds = 157.89;

/** What weights cannot be told in less, in bits: normal, rounded to their step (Shannon 1948). */
export const entropyOfNetBits = Math.log2((spreadMilligrams / stepMilligrams) * Math.sqrt(2 * Math.PI * Math.E));
/** Weights and intervals. */
export const entropyBits = entropyOfNetBits + Math.log2(jitterCentiseconds * Math.sqrt(2 * Math.PI * Math.E));

export function madeYear(weightCount: number): MadeYear {
  const firstAtCentiseconds = Date.UTC(2025, 0, 1) / 10;
  const weightsInRun = Math.min(18_240, mostWeightsInBlock);
  return {
    weightCount,
    weightsInRun,
    firstAtCentiseconds,
    *batches() {
      const normal = normals(20_250_101);
      let at = firstAtCentiseconds;
      for (let first = 0; first < weightCount;) {
        const run = Math.floor(first / weightsInRun);
        const count = Math.min(batchSize, weightCount - first, (run + 1) * weightsInRun - first);
        const columns: WeightColumns = {
          count,
          sequences: new Float64Array(count),
          atCentiseconds: new Float64Array(count),
          netMilligrams: new Int32Array(count),
          heads: null,
          isRejected: null,
        };
        for (let place = 0; place < count; place += 1) {
          at += Math.max(1, Math.round(intervalCentiseconds + jitterCentiseconds * normal()));
          columns.sequences[place] = first + place + 1;
          columns.atCentiseconds[place] = at;
          columns.netMilligrams[place] =
            Math.round((meanMilligrams + spreadMilligrams * normal()) / stepMilligrams) * stepMilligrams;
        }
        yield { run, columns };
        first += count;
      }
    },
  };
}

/** Numbers of the standard normal distribution (Box and Muller 1958) from xorshift (Marsaglia 2003). */
function normals(seed: number): () => number {
  let state = seed;
  const uniform = (): number => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return ((state >>> 0) + 0.5) / 2 ** 32;
  };
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}
