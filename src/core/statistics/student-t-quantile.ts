import { studentTTail } from './student-t-tail.js';

/** Halving stops when the bracket is this narrow beside its value. */
const relativeWidth = 1e-14;

/**
 * The quantile of Student's t distribution: the value that a t of so many degrees of freedom stays below with a
 * probability.
 *
 * For a two-sided interval that holds a share of 99.9 %, ask for 0.9995. Found by halving a bracket on the exact tail
 * area ½·I(ν/(ν + t²); ν/2, ½), so it needs no start value and cannot run away.
 *
 * @param probability above 0 and below 1; 0.5 gives 0, and p gives the negative of 1 − p
 * @param degreesOfFreedom 1 or more, up to 10 000; for a mean of n values it is n − 1
 * @returns the quantile, without a unit; relative error below 10⁻¹⁰ for probabilities from 10⁻⁶ to 1 − 10⁻⁶ that are at
 * least 0.001 away from 0.5, absolute error below 10⁻¹¹ nearer to it (compared with the closed forms for 1, 2 and 4
 * degrees of freedom)
 * @throws RangeError outside of these ranges
 * @example studentTQuantile(0.995, 29) // 2.7563859…, so 0.503 of the standard deviation for the mean of 30 packs
 */
export function studentTQuantile(probability: number, degreesOfFreedom: number): number {
  if (!(probability > 0 && probability < 1)) throw new RangeError(`Not a probability between 0 and 1: ${probability}`);
  if (!(degreesOfFreedom >= 1 && degreesOfFreedom <= 10_000)) {
    throw new RangeError(`Degrees of freedom must lie from 1 to 10 000, not ${degreesOfFreedom}`);
  }
  if (probability === 0.5) return 0;
  const tail = Math.min(probability, 1 - probability);
  const size = sizeWithTail(tail, degreesOfFreedom);
  return probability > 0.5 ? size : -size;
}

function sizeWithTail(tail: number, degreesOfFreedom: number): number {
  let low = 0;
  let high = 1;
  while (studentTTail(high, degreesOfFreedom) > tail) high *= 2;
  while (high - low > relativeWidth * high) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) break;
    if (studentTTail(middle, degreesOfFreedom) > tail) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
