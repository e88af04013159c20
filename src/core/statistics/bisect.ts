/**
 * Where a condition that holds on the left and no longer on the right changes, by halving until no number lies between.
 *
 * @param low where it holds; finite
 * @param high where it does not; finite, above low
 * @param holds true up to some place, false from there on
 * @returns the place to the last digit
 * @throws RangeError when low is not below high
 * @example bisect(0, 2, (x) => x * x < 2) // 1.414213562373095
 */
export function bisect(low: number, high: number, holds: (at: number) => boolean): number {
  if (!(low < high) || !Number.isFinite(high - low)) throw new RangeError(`${low} is not below ${high}`);
  let [left, right] = [low, high];
  for (let middle = (left + right) / 2; left < middle && middle < right; middle = (left + right) / 2) {
    if (holds(middle)) left = middle;
    else right = middle;
  }
  return left;
}
