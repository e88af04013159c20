import type { SampleSummary } from '../control-chart/means-chart.js';
import { summarizeSample } from '../control-chart/means-chart.js';
import type { WeightColumns } from './weight-columns.js';

/** Packs that were weighed one after the other, at the begin of an interval. Masses in milligrams. */
export interface Subgroup extends SampleSummary {
  /** When the first of them was weighed, in hundredths of a second since 1970 UTC. */
  readonly atCentiseconds: number;
}

/** How subgroups are taken. */
export interface SubgroupPlan {
  readonly everyMinutes: number;
  /** How many packs each has; 2 or more. */
  readonly size: number;
}

const minuteCentiseconds = 6_000;
const intervals = [5, 10, 15, 20, 30, 60, 120, 240, 480, 1440];
/** No more points than people can tell apart. */
const mostSubgroups = 48;
/** Of one filling head: four or five in a row are customary (Montgomery, ch. 6, from memory). */
const customarySize = 5;
/** Ranges and their constants end here, and beyond it a mean of a subgroup is a mean of minutes. */
const largestSize = 25;

/**
 * How often subgroups are taken from a run, and of how many packs.
 *
 * Of one head, five packs in a row. Of several, as many as make each head's turn come round, so that a head that fills
 * otherwise is in every subgroup alike and does not make the means dance. The interval is the shortest customary one that
 * gives 48 subgroups at most.
 *
 * @param spanCentiseconds from the first pack to the last; 0 or more
 * @param headCount of the filler; `null`: one, or it does not say
 * @example planSubgroups(8 * 360_000, null) // { everyMinutes: 15, size: 5 }
 */
export function planSubgroups(spanCentiseconds: number, headCount: number | null): SubgroupPlan {
  const everyMinutes =
    intervals.find((minutes) => spanCentiseconds / (minutes * minuteCentiseconds) < mostSubgroups) ?? 1440;
  const heads = headCount ?? 1;
  const round = Math.ceil(customarySize / heads) * heads;
  return { everyMinutes, size: heads < 2 || round > largestSize ? customarySize : round };
}

/**
 * Subgroups of accepted packs: the first ones in a row of each interval of the clock. An interval with fewer packs has none,
 * and what the weigher rejected is passed over.
 *
 * @param columns of one counter of one weigher; by ascending sequence, as columns are; times need not ascend
 * @returns in the order of time
 * @throws RangeError when the size is below 2
 * @example subgroupsOfWeights(columns, { everyMinutes: 15, size: 5 })[0]?.count // 5
 */
export function subgroupsOfWeights(columns: WeightColumns, { everyMinutes, size }: SubgroupPlan): readonly Subgroup[] {
  if (!(size >= 2)) throw new RangeError(`A subgroup needs two packs or more, not ${size}`);
  const { atCentiseconds, netMilligrams, isRejected } = columns;
  const width = everyMinutes * minuteCentiseconds;
  const found = new Map<number, { readonly at: number; readonly nets: number[] }>();
  let [begin, end, current] = [0, 0, { at: 0, nets: [] as number[] }];
  for (let place = 0; place < columns.count; place += 1) {
    const at = atCentiseconds[place] ?? 0;
    if (at < begin || at >= end) {
      begin = Math.floor(at / width) * width;
      end = begin + width;
      current = found.get(begin) ?? { at, nets: [] };
      found.set(begin, current);
    }
    if (current.nets.length < size && isRejected?.[place] !== 1) current.nets.push(netMilligrams[place] ?? 0);
  }
  return [...found.entries()]
    .filter(([, { nets }]) => nets.length === size)
    .sort(([one], [other]) => one - other)
    .map(([, { at, nets }]) => ({ ...summarizeSample(nets), atCentiseconds: at }));
}
