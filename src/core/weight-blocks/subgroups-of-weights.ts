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
/** All customary intervals are so many of these. */
const shortestCentiseconds = 5 * minuteCentiseconds;

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

/** What one part of a counter's weights says of an interval of the clock: enough for the subgroups of any plan. */
export interface FirstPacks {
  /** When the interval begins, in hundredths of a second since 1970 UTC. */
  readonly beginCentiseconds: number;
  /** Of the first pack of the interval, rejected or not. */
  readonly firstSequence: number;
  readonly firstAtCentiseconds: number;
  /** Of the first accepted ones, by ascending sequence: 25 at most. */
  readonly sequences: readonly number[];
  readonly netMilligrams: readonly number[];
}

interface OpenInterval extends FirstPacks {
  readonly sequences: number[];
  readonly netMilligrams: number[];
}

/**
 * The first accepted packs of each of the shortest intervals, of one part of a counter's weights. Few enough to be kept, so
 * that a part needs to be read once, however often the chart is drawn.
 *
 * @param columns by ascending sequence, as columns are; times need not ascend
 * @example firstPacksOf(columns)[0]?.netMilligrams.length // 25
 */
export function firstPacksOf(columns: WeightColumns): readonly FirstPacks[] {
  const { sequences, atCentiseconds, netMilligrams, isRejected } = columns;
  const found = new Map<number, OpenInterval>();
  let [begin, end, current]: [number, number, OpenInterval | undefined] = [0, 0, undefined];
  for (let place = 0; place < columns.count; place += 1) {
    const at = atCentiseconds[place] ?? 0;
    if (at < begin || at >= end) {
      begin = Math.floor(at / shortestCentiseconds) * shortestCentiseconds;
      end = begin + shortestCentiseconds;
      current = found.get(begin) ?? openedBy(begin, sequences[place] ?? 0, at);
      found.set(begin, current);
    }
    if (current === undefined || current.sequences.length >= largestSize || isRejected?.[place] === 1) continue;
    current.sequences.push(sequences[place] ?? 0);
    current.netMilligrams.push(netMilligrams[place] ?? 0);
  }
  return [...found.values()];
}

function openedBy(beginCentiseconds: number, firstSequence: number, firstAtCentiseconds: number): OpenInterval {
  return { beginCentiseconds, firstSequence, firstAtCentiseconds, sequences: [], netMilligrams: [] };
}

/**
 * Subgroups of accepted packs: the first ones in a row of each interval of the clock. An interval with fewer packs has none,
 * and what the weigher rejected is passed over.
 *
 * @param parts of all weights of one counter of one weigher, in any order: how they were cut cannot be told from the subgroups
 * @returns in the order of time
 * @throws RangeError when the size is below 2 or above 25
 * @example subgroupsOf(firstPacksOf(columns), { everyMinutes: 15, size: 5 })[0]?.count // 5
 */
export function subgroupsOf(parts: readonly FirstPacks[], { everyMinutes, size }: SubgroupPlan): readonly Subgroup[] {
  if (!(size >= 2 && size <= largestSize))
    throw new RangeError(`A subgroup has 2 to ${largestSize} packs, not ${size}`);
  const width = everyMinutes * minuteCentiseconds;
  const byInterval = new Map<number, FirstPacks[]>();
  for (const part of parts) {
    const begin = Math.floor(part.beginCentiseconds / width) * width;
    const own = byInterval.get(begin);
    if (own === undefined) byInterval.set(begin, [part]);
    else own.push(part);
  }
  return [...byInterval.entries()]
    .sort(([one], [other]) => one - other)
    .flatMap(([, own]) => {
      const nets = firstNets(own, size);
      const [first] = own.toSorted((one, other) => one.firstSequence - other.firstSequence);
      if (first === undefined || nets.length < size) return [];
      return [{ ...summarizeSample(nets), atCentiseconds: first.firstAtCentiseconds }];
    });
}

/** The nets of the first packs of several parts, by ascending sequence. */
function firstNets(parts: readonly FirstPacks[], size: number): readonly number[] {
  return parts
    .flatMap(({ sequences, netMilligrams }) =>
      sequences.slice(0, size).map((sequence, place) => ({ sequence, net: netMilligrams[place] ?? 0 })),
    )
    .sort((one, other) => one.sequence - other.sequence)
    .slice(0, size)
    .map(({ net }) => net);
}
