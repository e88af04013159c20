/**
 * The arithmetic mean of measured values.
 *
 * Summed as differences from the first value, with the rounding errors of the sum carried along (Neumaier's form of
 * compensated summation), so that thousands of weights near each other keep all their digits.
 *
 * @param values one or more finite numbers, in any order and unit
 * @returns the mean in the same unit, exact when all values are equal; its error is at most about 2⁻⁵² of the mean and
 * of the greatest distance of a value from the first, whichever is more
 * @throws RangeError when there is no value, or one is not finite
 * @example mean([1002, 998, 1003]) // 1001
 */
export function mean(values: readonly number[]): number {
  const [first] = values;
  if (first === undefined) throw new RangeError('The mean of no values does not exist');
  if (!values.every(Number.isFinite)) throw new RangeError('The mean needs finite values');
  let sum = 0;
  let lost = 0;
  for (const value of values) {
    const difference = value - first;
    const next = sum + difference;
    lost += Math.abs(sum) >= Math.abs(difference) ? sum - next + difference : difference - next + sum;
    sum = next;
  }
  return first + (sum + lost) / values.length;
}
