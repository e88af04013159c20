/** Sums over packs of their error: net less nominal quantity, in whole milligrams. Exact, however many packs. */
export interface ErrorSums {
  readonly packCount: number;
  /** Milligrams; below zero where the packs are short on average. */
  readonly errorSumMilligrams: number | bigint;
  /** Square milligrams. */
  readonly errorSquareSum: number | bigint;
}

/** How many of the packs have less net than a limit. */
export interface ShortCount {
  readonly belowMilligrams: number;
  readonly packCount: number;
}

/** Packs of a run that were weighed one by one, as sums and counts, so that the weights need not be read again. */
export interface RunSummary extends ErrorSums {
  /** One for each limit that was counted, in any order. */
  readonly shortCounts: readonly ShortCount[];
}

/** Weights summed up with a histogram, as blocks of weights keep them. */
export interface ErrorHistogram extends ErrorSums {
  /** Of the lightest pack; `null` of none. */
  readonly smallestMilligrams: number | null;
  /** Packs beyond the two limits of the yardstick, the second among the first. */
  readonly beyondT1Count: number;
  readonly beyondT2Count: number;
  /** Half of the bins are below the nominal quantity; the outermost hold all that lies beyond them too. */
  readonly histogram: ArrayLike<number>;
}

/** What the histogram was counted by. */
export interface HistogramYardstick {
  readonly nominalMilligrams: number;
  readonly binMilligrams: number;
  /** `null` where no rule says how short a pack of this quantity may be. */
  readonly t1Milligrams: number | null;
  readonly t2Milligrams: number | null;
}

/**
 * A histogram as the summary that a run is judged by: a count for T1 and T2, and one for every edge between bins.
 *
 * Limits of other rule sets mostly lie within a bin; the edges on both sides of it then say how many packs are below at
 * least and at most, which is often enough. That no pack is below the lightest is counted too.
 *
 * @example runSummaryOf(weighed, { nominalMilligrams: 1_000_000, binMilligrams: 1_000, t1Milligrams: 985_000, t2Milligrams: 970_000 })
 */
export function runSummaryOf(weighed: ErrorHistogram, yardstick: HistogramYardstick): RunSummary {
  const { packCount, errorSumMilligrams, errorSquareSum, histogram, smallestMilligrams } = weighed;
  const { nominalMilligrams, binMilligrams, t1Milligrams, t2Milligrams } = yardstick;
  const shortCounts: ShortCount[] = [];
  const count = (belowMilligrams: number | null, below: number): void => {
    if (belowMilligrams !== null) shortCounts.push({ belowMilligrams, packCount: below });
  };
  count(t1Milligrams, weighed.beyondT1Count);
  count(t2Milligrams, weighed.beyondT2Count);
  count(smallestMilligrams, 0);
  let below = 0;
  for (let bin = 1; bin < histogram.length; bin += 1) {
    below += histogram[bin - 1] ?? 0;
    count(nominalMilligrams + (bin - histogram.length / 2) * binMilligrams, below);
  }
  return { packCount, errorSumMilligrams, errorSquareSum, shortCounts };
}

/** The same sums with all their digits, found to be possible. */
export interface ExactSums {
  readonly packCount: bigint;
  readonly sum: bigint;
  readonly squares: bigint;
}

/**
 * The sums of packs that are at hand one by one.
 *
 * @param netsMilligrams whole milligrams, 0 or more, in any order; none gives zeros
 * @throws RangeError when one is not whole or negative
 * @example errorSums([1_000_500, 999_500], 1_000_000) // { packCount: 2, errorSumMilligrams: 0n, errorSquareSum: 500000n }
 */
export function errorSums(netsMilligrams: readonly number[], nominalMilligrams: number): ErrorSums {
  let [sum, squares] = [0n, 0n];
  for (const net of netsMilligrams) {
    if (!Number.isSafeInteger(net) || net < 0) throw new RangeError(`A net must be whole milligrams, not ${net}`);
    const error = BigInt(net - nominalMilligrams);
    sum += error;
    squares += error * error;
  }
  return { packCount: netsMilligrams.length, errorSumMilligrams: sum, errorSquareSum: squares };
}

/**
 * Takes sums as they were stored, and refuses what no packs can have: whole numbers only, and the square of the sum is
 * never more than the packs times the sum of squares.
 *
 * @throws RangeError where the sums are impossible, or a number beyond 2⁵³ is not given as a bigint
 */
export function exactSums({ packCount, errorSumMilligrams, errorSquareSum }: ErrorSums): ExactSums {
  if (!Number.isSafeInteger(packCount) || packCount < 0) {
    throw new RangeError(`A count of packs must be whole and 0 or more, not ${packCount}`);
  }
  const sums = { packCount: BigInt(packCount), sum: exact(errorSumMilligrams), squares: exact(errorSquareSum) };
  const isEmptyWithSum = packCount === 0 && (sums.sum !== 0n || sums.squares !== 0n);
  if (isEmptyWithSum || sums.squares < 0n || sums.sum ** 2n > sums.packCount * sums.squares) {
    throw new RangeError(`No ${packCount} packs have the sums ${sums.sum} and ${sums.squares}`);
  }
  return sums;
}

function exact(value: number | bigint): bigint {
  if (typeof value === 'number' && !Number.isSafeInteger(value)) {
    throw new RangeError(`A sum must be whole and exact, not ${value}`);
  }
  return BigInt(value);
}

/**
 * The mean error in whole micrograms, rounded down: a mean that is short by ever so little never reads as none.
 *
 * @returns `null` where nothing was weighed
 */
export function meanErrorMicrograms({ packCount, sum }: ExactSums): number | null {
  if (packCount === 0n) return null;
  const micrograms = sum * 1000n;
  const cutOff = micrograms / packCount;
  return Number(micrograms < cutOff * packCount ? cutOff - 1n : cutOff);
}

/**
 * The standard deviation with n − 1, in milligrams, from exact sums.
 *
 * Squares about the nominal quantity are taken apart exactly before anything is rounded, so nothing cancels out.
 *
 * @returns `null` for fewer than two packs
 * @see Directive 76/211/EEC Annex II 2.3.2
 */
export function standardDeviationMilligrams({ packCount, sum, squares }: ExactSums): number | null {
  if (packCount < 2n) return null;
  return Math.sqrt(Number(packCount * squares - sum ** 2n) / Number(packCount * (packCount - 1n)));
}
