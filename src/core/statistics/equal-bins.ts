/** A stretch of a histogram: from (inclusive) until (exclusive), and how many values lie in it. */
export interface Bin {
  readonly from: number;
  readonly until: number;
  readonly count: number;
}

/** Values of which some are equal. */
export interface CountedValue {
  readonly value: number;
  readonly count: number;
}

/** How a histogram is cut. */
export interface BinPlan {
  /** An edge lies here, whether or not values reach it. */
  readonly anchor: number;
  /** No more stretches than so many, 2 or more. */
  readonly mostBins: number;
  /** What values are whole multiples of, so that no stretch holds more kinds of values than its neighbour. Above 0. */
  readonly resolution: number;
}

const steps = [1, 2, 5];

/**
 * Cuts values into stretches of one width that people can read: 1, 2 or 5 times a power of ten of the resolution, the
 * narrowest of which few enough are needed.
 *
 * @param values counts whole, 0 or more; in any order
 * @returns from the first stretch with a value to the last, empty ones between them too; none where there is no value
 * @throws RangeError when a number is not finite or a count is below 0, or the plan is outside of its ranges
 * @example equalBins([{ value: 7, count: 2 }, { value: 12, count: 1 }], { anchor: 10, mostBins: 3, resolution: 1 })
 * // from 5 until 10 two, from 10 until 15 one: stretches of 2 would be four
 */
export function equalBins(values: readonly CountedValue[], { anchor, mostBins, resolution }: BinPlan): readonly Bin[] {
  if (!(mostBins >= 2) || !(resolution > 0) || !Number.isFinite(anchor)) throw new RangeError('No such histogram');
  const held = values.filter(({ count }) => count !== 0);
  if (!held.every(({ value, count }) => Number.isFinite(value) && count > 0)) throw new RangeError('No such values');
  if (held.length === 0) return [];
  const least = held.reduce((low, { value }) => Math.min(low, value), Infinity);
  const most = held.reduce((high, { value }) => Math.max(high, value), -Infinity);
  const placeOf = (value: number, width: number) => Math.floor((value - anchor) / width);
  let [width, power] = [resolution, 0];
  while (placeOf(most, width) - placeOf(least, width) + 1 > mostBins) {
    power += 1;
    width = resolution * (steps[power % 3] ?? 1) * 10 ** Math.floor(power / 3);
  }
  const first = placeOf(least, width);
  const counts = new Array<number>(placeOf(most, width) - first + 1).fill(0);
  for (const { value, count } of held) {
    const place = placeOf(value, width) - first;
    counts[place] = (counts[place] ?? 0) + count;
  }
  return counts.map((count, at) => {
    const from = anchor + (first + at) * width;
    return { from, until: from + width, count };
  });
}
