import type { WeightColumns } from './weight-columns.js';

/** Weights written out one by one. */
export function weightsOf(
  rows: readonly { sequence: number; at: number; net: number; isRejected?: boolean }[],
): WeightColumns {
  return {
    count: rows.length,
    sequences: Float64Array.from(rows, ({ sequence }) => sequence),
    atCentiseconds: Float64Array.from(rows, ({ at }) => at),
    netMilligrams: Int32Array.from(rows, ({ net }) => net),
    heads: null,
    isRejected: rows.some(({ isRejected }) => isRejected === true)
      ? Uint8Array.from(rows, ({ isRejected }) => Number(isRejected === true))
      : null,
  };
}

export interface MadeWeights {
  readonly count: number;
  readonly seed: number;
  readonly firstSequence?: number;
  readonly firstAtCentiseconds?: number;
  /** How much two packs differ in time from the usual interval, standard deviation; 100 ms where it is not given. */
  readonly jitterCentiseconds?: number;
  readonly meanMilligrams?: number;
  readonly heads?: 'by-turns' | 'any';
  readonly rejectedShare?: number;
}

/** Invented weights, the same for the same seed: 38 packs a minute of 1 kg with s = 5 g to 0.1 g, times to 10 ms. */
export function someWeights(made: MadeWeights): WeightColumns {
  const { count, seed, jitterCentiseconds = 10, meanMilligrams = 1_003_000, heads, rejectedShare = 0 } = made;
  const random = randomNumbers(seed);
  let clock = made.firstAtCentiseconds ?? 178_000_000_000;
  const columns: WeightColumns = {
    count,
    sequences: new Float64Array(count),
    atCentiseconds: new Float64Array(count),
    netMilligrams: new Int32Array(count),
    heads: heads === undefined ? null : new Int16Array(count),
    isRejected: rejectedShare === 0 ? null : new Uint8Array(count),
  };
  for (let place = 0; place < count; place += 1) {
    columns.sequences[place] = (made.firstSequence ?? 5000) + place + (place > count / 2 ? 1 : 0);
    columns.atCentiseconds[place] = Math.round(clock);
    clock += jitterCentiseconds === 0 ? 157.89 : Math.max(1, Math.round(157.89 + jitterCentiseconds * normal(random)));
    columns.netMilligrams[place] = Math.round(meanMilligrams / 100 + 50 * normal(random)) * 100;
    if (columns.heads !== null) columns.heads[place] = heads === 'any' ? Math.floor(random() * 14) : 1 + (place % 12);
    if (columns.isRejected !== null) columns.isRejected[place] = Number(random() < rejectedShare);
  }
  return columns;
}

/** Numbers from 0 to 1 (xorshift of Marsaglia 2003, 32 bits). */
function randomNumbers(seed: number): () => number {
  let state = seed * 0x9e3779b9 || 1;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return ((state >>> 0) + 0.5) / 2 ** 32;
  };
}

/** A number of the standard normal distribution (Box and Muller 1958). */
function normal(random: () => number): number {
  return Math.sqrt(-2 * Math.log(random())) * Math.cos(2 * Math.PI * random());
}
