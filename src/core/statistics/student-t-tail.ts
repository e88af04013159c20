import { incompleteBeta } from './incomplete-beta.js';

/**
 * The share of Student's t distribution beyond a value, on that one side.
 *
 * @param t 0 or more
 * @param degreesOfFreedom 1 or more; need not be whole
 * @returns ½ at 0, towards 0 far out; relative error as of the incomplete beta function
 * @throws RangeError outside of these ranges
 * @see ½·I(ν/(ν + t²); ν/2, ½): Abramowitz and Stegun 26.7.1
 * @example studentTTail(2.7563859, 29) // 0.005
 */
export function studentTTail(t: number, degreesOfFreedom: number): number {
  if (!(t >= 0) || !(degreesOfFreedom >= 1)) {
    throw new RangeError(`No share beyond ${t} with ${degreesOfFreedom} degrees of freedom`);
  }
  return incompleteBeta(degreesOfFreedom / (degreesOfFreedom + t * t), degreesOfFreedom / 2, 0.5) / 2;
}
