import { studentTTail } from './student-t-tail.js';

/** What many values of one kind say. */
export interface MeanOfMany {
  /** 2 or more. */
  readonly count: number;
  readonly mean: number;
  /** With n − 1; 0 or more. */
  readonly standardDeviation: number;
}

/** How far one mean lies above another, and how far chance alone puts them apart. In the unit of the means. */
export interface MeansCompared {
  readonly difference: number;
  readonly standardError: number;
  /** By Welch and Satterthwaite; seldom a whole number. */
  readonly degreesOfFreedom: number;
  /** In what share of comparisons chance alone puts means so far apart or farther, both sides together. */
  readonly chanceShare: number;
  /** That share is below the risk that was asked for. */
  readonly isSignificant: boolean;
}

/** Beyond this the shares differ by less than a thousandth of themselves at any risk that is asked for. */
const mostDegrees = 10_000;

/**
 * Whether two means differ by more than chance, by Welch's t test: the values of both may vary unlike.
 *
 * The values are taken as independent. Packs that drift together, all heads alike, make the test find less, not more.
 *
 * @param risk in what share of comparisons chance alone is called a difference, both sides together: above 0, below 1
 * @returns where nothing varies in both, any difference at all is significant
 * @throws RangeError when a count is below 2, a standard deviation below 0, or the risk out of its range
 * @see Welch (1947), Biometrika 34, 28; NIST/SEMATECH e-Handbook of Statistical Methods 1.3.5.3
 * @example compareMeans({ count: 249, mean: 20.14458, standardDeviation: 6.4147 }, { count: 79, mean: 30.48101,
 * standardDeviation: 6.10771 }, 0.05).degreesOfFreedom // 136.87…
 */
export function compareMeans(one: MeanOfMany, other: MeanOfMany, risk: number): MeansCompared {
  if (!(risk > 0 && risk < 1)) throw new RangeError(`The risk must be above 0 and below 1, not ${risk}`);
  const [a, b] = [squaredError(one), squaredError(other)];
  const difference = one.mean - other.mean;
  if (a + b === 0) {
    const chanceShare = difference === 0 ? 1 : 0;
    const degreesOfFreedom = one.count + other.count - 2;
    return { difference, standardError: 0, degreesOfFreedom, chanceShare, isSignificant: difference !== 0 };
  }
  const standardError = Math.sqrt(a + b);
  const degreesOfFreedom = (a + b) ** 2 / ((a * a) / (one.count - 1) + (b * b) / (other.count - 1));
  const degrees = Math.min(mostDegrees, Math.max(1, degreesOfFreedom));
  const chanceShare = 2 * studentTTail(Math.abs(difference) / standardError, degrees);
  return { difference, standardError, degreesOfFreedom, chanceShare, isSignificant: chanceShare < risk };
}

function squaredError({ count, mean, standardDeviation }: MeanOfMany): number {
  if (!(count >= 2) || !Number.isFinite(mean) || !(standardDeviation >= 0)) {
    throw new RangeError(`No mean of ${count} values with ${standardDeviation}`);
  }
  return (standardDeviation * standardDeviation) / count;
}
