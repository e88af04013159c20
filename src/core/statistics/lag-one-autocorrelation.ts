import { mean } from './mean.js';

/**
 * How much each value takes after the one before it: Σ(xᵢ − x̄)(xᵢ₊₁ − x̄) / Σ(xᵢ − x̄)².
 *
 * The limits of a control chart rest on values that do not: well above 0 the moving range is too small and the chart
 * cries wolf, well below 0 it sleeps.
 *
 * @param values two or more finite numbers in the order of time, not all equal
 * @returns from −1 to 1; on the NIST Statistical Reference Datasets as many certified digits as the standard deviation
 * @throws RangeError when there are fewer than two values, one is not finite, or all are equal
 * @see NIST/SEMATECH e-Handbook of Statistical Methods 1.3.5.12 (from memory)
 * @example lagOneAutocorrelation([10000001, 10000003, 10000002]) // −0.5
 */
export function lagOneAutocorrelation(values: readonly number[]): number {
  if (values.length < 2) throw new RangeError('The autocorrelation needs two values or more');
  const centre = mean(values);
  const differences = values.map((value) => value - centre);
  const squares = differences.reduce((sum, one) => sum + one * one, 0);
  if (squares === 0) throw new RangeError('The autocorrelation of equal values does not exist');
  return differences.reduce((sum, one, at) => sum + one * (differences[at + 1] ?? 0), 0) / squares;
}
