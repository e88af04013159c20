import { compareInstants, type Instant } from './timed-event.js';

/** Grams that have come together by an instant: `through` counts what stands at that instant, `before` does not. */
export interface RunningTotal<At extends Instant> {
  readonly before: (at: At) => number;
  readonly through: (at: At) => number;
}

/**
 * Adds grams up along time, so that the total at any instant is found without going through them again.
 * @param entries in any order; none at all gives totals of 0
 * @example runningTotal([{ at: 2, grams: 10 }, { at: 1, grams: 5 }]).before(2) // 5
 */
export function runningTotal<At extends Instant>(
  entries: readonly { readonly at: At; readonly grams: number }[],
): RunningTotal<At> {
  const sorted = [...entries].sort((a, b) => compareInstants(a.at, b.at));
  const totals = [0];
  for (const { grams } of sorted) totals.push((totals.at(-1) ?? 0) + grams);
  const countWhere = (isPassed: (at: At) => boolean): number => {
    let low = 0;
    let high = sorted.length;
    while (low < high) {
      const middle = (low + high) >>> 1;
      const entry = sorted[middle];
      if (entry !== undefined && isPassed(entry.at)) low = middle + 1;
      else high = middle;
    }
    return low;
  };
  return {
    before: (at) => totals[countWhere((entryAt) => entryAt < at)] ?? 0,
    through: (at) => totals[countWhere((entryAt) => entryAt <= at)] ?? 0,
  };
}
