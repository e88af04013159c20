import type { WeightColumns } from '../../core/weight-blocks/weight-columns.js';
import type { Instant } from '../../platform/clock.js';

const hourMilliseconds = 3_600_000;

/** The instant of hundredths of a second since 1970 UTC. */
export function instantOf(centiseconds: number): Instant {
  return new Date(centiseconds * 10).toISOString();
}

/** When an hour begins that is counted since 1970 UTC. */
export function hourBegin(hour: number): Instant {
  return new Date(hour * hourMilliseconds).toISOString();
}

/** The earliest and the latest time of weights, which need not be those of the first and the last sequence. */
export function spanOf({ atCentiseconds }: WeightColumns): { readonly firstAt: Instant; readonly lastAt: Instant } {
  let [first, last] = [Number.POSITIVE_INFINITY, 0];
  for (let place = 0; place < atCentiseconds.length; place += 1) {
    const at = atCentiseconds[place] ?? 0;
    if (at < first) first = at;
    if (at > last) last = at;
  }
  return { firstAt: instantOf(first), lastAt: instantOf(last) };
}

/** From where to where weights reach, of which there is one or more, and how many they are. */
export function extentOf(columns: WeightColumns) {
  const { sequences, count } = columns;
  return {
    firstSequence: sequences[0] ?? 0,
    lastSequence: sequences[count - 1] ?? 0,
    weightCount: count,
    ...spanOf(columns),
  };
}
