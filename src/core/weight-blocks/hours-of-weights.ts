import { pickWeights, sliceWeights, type WeightColumns } from './weight-columns.js';

const hourCentiseconds = 360_000;

/** Weights of one hour of UTC. */
export interface HourOfWeights {
  /** Hours since 1970 UTC. */
  readonly hour: number;
  readonly columns: WeightColumns;
}

/**
 * Weights by the hour in which each was weighed, the earliest hour first; within an hour by ascending sequence. Times
 * need not ascend. Hours without weights are left out.
 *
 * @example hoursOfWeights(columns).map(({ hour }) => new Date(hour * 3_600_000))
 */
export function hoursOfWeights(columns: WeightColumns): readonly HourOfWeights[] {
  const starts = stretches(columns.atCentiseconds);
  const byHour = new Map<number, [number, number][]>();
  starts.forEach(([hour, from], index) => {
    const to = starts[index + 1]?.[1] ?? columns.count;
    byHour.set(hour, [...(byHour.get(hour) ?? []), [from, to]]);
  });
  return [...byHour.entries()]
    .sort(([one], [other]) => one - other)
    .map(([hour, parts]) => ({ hour, columns: takeParts(columns, parts) }));
}

/** Where another hour begins than that of the weight before, by place. */
function stretches(at: Float64Array): [hour: number, from: number][] {
  const found: [number, number][] = [];
  let [begin, end, place] = [0, 0, 0];
  for (; place < at.length; place += 1) {
    const time = at[place] ?? 0;
    if (time >= begin && time < end) continue;
    const hour = Math.floor(time / hourCentiseconds);
    begin = hour * hourCentiseconds;
    end = begin + hourCentiseconds;
    found.push([hour, place]);
  }
  return found;
}

function takeParts(columns: WeightColumns, parts: readonly [number, number][]): WeightColumns {
  const [first] = parts;
  if (first !== undefined && parts.length === 1) return sliceWeights(columns, first[0], first[1]);
  const places = parts.flatMap(([from, to]) => Array.from({ length: to - from }, (_, index) => from + index));
  return pickWeights(columns, Uint32Array.from(places));
}
