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
