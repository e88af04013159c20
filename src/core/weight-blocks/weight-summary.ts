import type { WeightColumns } from './weight-columns.js';

/** So many bins, half of them below the nominal quantity; what lies beyond is counted in the outermost. */
export const binCount = 1000;

const widestBinMilligrams = 1000;
/** A square below this and a sum below it are together exact. */
const exactBelow = 2 ** 52;
const squareExactBelow = 2 ** 25;

/** What weights are measured by: summaries can be added only where all of it is the same. */
export interface Yardstick {
  readonly nominalMilligrams: number;
  /** A pack with less net than this is beyond T1; null: no rule says how short a pack of this quantity may be. */
  readonly t1Milligrams: number | null;
  /** A pack with less net than this is beyond T2; never above `t1Milligrams`; null as there. */
  readonly t2Milligrams: number | null;
  /** The width of a bin of the histogram. */
  readonly binMilligrams: number;
}

/** Sums of some weights; exact, so that neither their order nor how they are cut into parts can be told from them. */
export interface WeightSums {
  readonly packCount: number;
  /** Of the errors: net less nominal quantity. */
  readonly errorSumMilligrams: number;
  /** Of the squares of the errors, in square milligrams. */
  readonly errorSquareSum: bigint;
  /** Null of no packs. */
  readonly smallestMilligrams: number | null;
  /** Null of no packs. */
  readonly largestMilligrams: number | null;
  /** Packs beyond T1, those beyond T2 among them. */
  readonly beyondT1Count: number;
  readonly beyondT2Count: number;
  /**
   * Packs by bins of errors, `binCount` of them: the bin at place b holds errors from (b − 500) bins, included, to
   * (b − 499) bins, not included; the first also all below, the last also all above.
   */
  readonly histogram: Float64Array;
}

/** Packs that went on apart from those that the weigher pushed out: an inspector judges what was accepted. */
export interface WeightSummary {
  readonly accepted: WeightSums;
  readonly rejected: WeightSums;
}

/**
 * The width of a histogram's bin for a nominal quantity: a thousandth of it or the next smaller 1, 2 or 5 times a power
 * of ten, 1 mg to 1 g. Our own choice, no source.
 *
 * @param nominalMilligrams above 0
 * @example binMilligramsFor(454_000) // 200: 0.2 g
 */
export function binMilligramsFor(nominalMilligrams: number): number {
  const widest = Math.min(widestBinMilligrams, nominalMilligrams / 1000);
  const widths = [1, 10, 100].flatMap((decade) => [decade, 2 * decade, 5 * decade]);
  return [...widths, widestBinMilligrams].findLast((width) => width <= widest) ?? 1;
}

/** The sums of no weights. */
export function noSums(): WeightSums {
  return {
    packCount: 0,
    errorSumMilligrams: 0,
    errorSquareSum: 0n,
    smallestMilligrams: null,
    largestMilligrams: null,
    beyondT1Count: 0,
    beyondT2Count: 0,
    histogram: new Float64Array(binCount),
  };
}

/**
 * Sums up weights, accepted packs apart from rejected ones. Where the columns do not say what was rejected, all count as
 * accepted.
 *
 * @example summariseWeights(columns, yardstick).accepted.packCount
 */
export function summariseWeights(columns: WeightColumns, yardstick: Yardstick): WeightSummary {
  const { netMilligrams, isRejected } = columns;
  if (isRejected === null) return { accepted: sumNets(netMilligrams, yardstick), rejected: noSums() };
  return {
    accepted: sumNets(netsWhere(netMilligrams, isRejected, 0), yardstick),
    rejected: sumNets(netsWhere(netMilligrams, isRejected, 1), yardstick),
  };
}

function netsWhere(nets: Int32Array, flags: Uint8Array, flag: 0 | 1): Int32Array {
  const chosen = new Int32Array(nets.length);
  let count = 0;
  for (let place = 0; place < nets.length; place += 1) {
    if (flags[place] !== flag) continue;
    chosen[count] = nets[place] ?? 0;
    count += 1;
  }
  return chosen.subarray(0, count);
}

function sumNets(nets: Int32Array, yardstick: Yardstick): WeightSums {
  if (nets.length === 0) return noSums();
  const { nominalMilligrams, binMilligrams } = yardstick;
  const [t1, t2] = [
    yardstick.t1Milligrams ?? Number.NEGATIVE_INFINITY,
    yardstick.t2Milligrams ?? Number.NEGATIVE_INFINITY,
  ];
  const histogram = new Float64Array(binCount);
  let [sum, squares, manySquares] = [0, 0, 0n];
  let [smallest, largest] = [nets[0] ?? 0, nets[0] ?? 0];
  let [beyondT1Count, beyondT2Count] = [0, 0];
  for (let place = 0; place < nets.length; place += 1) {
    const net = nets[place] ?? 0;
    const error = net - nominalMilligrams;
    sum += error;
    if (error > -squareExactBelow && error < squareExactBelow) squares += error * error;
    else manySquares += BigInt(error) ** 2n;
    if (squares >= exactBelow) {
      manySquares += BigInt(squares);
      squares = 0;
    }
    if (net < smallest) smallest = net;
    if (net > largest) largest = net;
    if (net < t1) beyondT1Count += 1;
    if (net < t2) beyondT2Count += 1;
    const bin = Math.max(0, Math.min(binCount - 1, Math.floor(error / binMilligrams) + binCount / 2));
    histogram[bin] = (histogram[bin] ?? 0) + 1;
  }
  return {
    packCount: nets.length,
    errorSumMilligrams: sum,
    errorSquareSum: manySquares + BigInt(squares),
    smallestMilligrams: smallest,
    largestMilligrams: largest,
    beyondT1Count,
    beyondT2Count,
    histogram,
  };
}

/**
 * The summary of both parts together, whatever their order. Both were measured by the same yardstick: the caller sees to
 * it.
 *
 * @example addSummaries(noWeights(), summary) // equals the summary
 */
export function addSummaries(one: WeightSummary, other: WeightSummary): WeightSummary {
  return { accepted: addSums(one.accepted, other.accepted), rejected: addSums(one.rejected, other.rejected) };
}

/** The sums of both parts together; of `accepted` and `rejected` they are those of all that was weighed. */
export function addSums(one: WeightSums, other: WeightSums): WeightSums {
  return {
    packCount: one.packCount + other.packCount,
    errorSumMilligrams: one.errorSumMilligrams + other.errorSumMilligrams,
    errorSquareSum: one.errorSquareSum + other.errorSquareSum,
    smallestMilligrams: outermost(one.smallestMilligrams, other.smallestMilligrams, Math.min),
    largestMilligrams: outermost(one.largestMilligrams, other.largestMilligrams, Math.max),
    beyondT1Count: one.beyondT1Count + other.beyondT1Count,
    beyondT2Count: one.beyondT2Count + other.beyondT2Count,
    histogram: one.histogram.map((packCount, bin) => packCount + (other.histogram[bin] ?? 0)),
  };
}

/** Nothing weighed. */
export function noWeights(): WeightSummary {
  return { accepted: noSums(), rejected: noSums() };
}

function outermost(
  one: number | null,
  other: number | null,
  pick: (one: number, other: number) => number,
): number | null {
  if (one === null || other === null) return one ?? other;
  return pick(one, other);
}
