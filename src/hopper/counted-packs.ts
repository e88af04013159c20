import { InstantTexts, isByHand, type CountColumns } from '../packing/run-course.js';
import type { Stretch, TimeUncertainty, TimeWindow } from './record-times.js';

/** The packs between two counts of a run. */
export interface PackExit extends TimeWindow {
  readonly runId: string;
  readonly fromCount: number;
  readonly toCount: number;
  /**
   * False: a proven empty or a change of the link lies between the two counts, so none or all of them may be of this
   * period; `likelyFromCount` and `likelyToCount` are what it likely is, by time.
   */
  readonly isWhole: boolean;
  readonly likelyFromCount: number;
  readonly likelyToCount: number;
}

/** The same with instants in milliseconds, for what is computed with. */
export interface PackSpan extends Omit<PackExit, keyof TimeWindow> {
  readonly earliestAt: number;
  readonly likelyAt: number;
  readonly latestAt: number;
}

/** What left a hopper between the counts of one run, in order; seven thousand of them are in a period of five days. */
export interface CountedPacks {
  readonly runId: string;
  readonly size: number;
  readonly fromCounts: Float64Array;
  readonly toCounts: Float64Array;
  readonly likelyFromCounts: Float64Array;
  readonly likelyToCounts: Float64Array;
  /** 1: whole. */
  readonly areWhole: Uint8Array;
  readonly earliestAt: Float64Array;
  readonly likelyAt: Float64Array;
  readonly latestAt: Float64Array;
}

/** When, within the period, a line was fed by its hopper, in milliseconds. */
interface Milliseconds {
  readonly from: number;
  readonly until: number;
}

const minute = 60_000;

/**
 * What left between the counts of a run while its line was fed by the hopper: since the count before, by this one; a
 * counter that was read by hand widens its side.
 */
export function countPacks(counts: CountColumns, stretches: readonly Stretch[], doubt: TimeUncertainty): CountedPacks {
  const exits = new ExitColumns(counts, Math.trunc(doubt.handCountMinutes * minute), stretches.length);
  const times = stretches.map(({ fromAt, untilAt }) => ({ from: Date.parse(fromAt), until: Date.parse(untilAt) }));
  const { packCounts } = counts;
  let before = 0;
  for (let place = 1; place < packCounts.length; place += 1) {
    const [from, to] = [packCounts[before] ?? 0, packCounts[place] ?? 0];
    if (to < from) continue;
    const last = before;
    before = place;
    if (to === from) continue;
    for (const stretch of times) exits.add(last, place, stretch);
  }
  return exits.whole();
}

/** Columns that are filled one exit after the other. */
class ExitColumns {
  private size = 0;
  private readonly columns: Omit<CountedPacks, 'size' | 'runId'>;

  constructor(
    private readonly counts: CountColumns,
    private readonly byHand: number,
    stretchCount: number,
  ) {
    const most = counts.packCounts.length * stretchCount;
    const column = (): Float64Array => new Float64Array(most);
    this.columns = {
      ...{ fromCounts: column(), toCounts: column(), likelyFromCounts: column(), likelyToCounts: column() },
      ...{ areWhole: new Uint8Array(most), earliestAt: column(), likelyAt: column(), latestAt: column() },
    };
  }

  add(before: number, place: number, stretch: Milliseconds): void {
    const { packCounts, countedAt } = this.counts;
    const [fromAt, untilAt] = [countedAt[before] ?? 0, countedAt[place] ?? 0];
    const share = shareWithin(stretch, fromAt, untilAt);
    if (share === null) return;
    const { columns, size } = this;
    const [from, to] = [packCounts[before] ?? 0, packCounts[place] ?? 0];
    columns.fromCounts[size] = from;
    columns.toCounts[size] = to;
    columns.likelyFromCounts[size] = from + Math.round((to - from) * share.from);
    columns.likelyToCounts[size] = from + Math.round((to - from) * share.until);
    columns.areWhole[size] = Number(share.isWhole);
    const earliestAt = isByHand(this.counts, before) ? fromAt - this.byHand : fromAt;
    const latestAt = isByHand(this.counts, place) ? untilAt + this.byHand : untilAt;
    const isInside = earliestAt >= stretch.from && latestAt <= stretch.until;
    const isPlain = isInside && earliestAt <= untilAt && untilAt <= latestAt;
    const cut = (at: number): number => (isPlain ? at : Math.min(stretch.until, Math.max(stretch.from, at)));
    columns.earliestAt[size] = cut(earliestAt);
    columns.likelyAt[size] = cut(untilAt);
    columns.latestAt[size] = cut(latestAt);
    this.size += 1;
  }

  whole(): CountedPacks {
    return { runId: this.counts.runId, size: this.size, ...this.columns };
  }
}

/** Which part of an interval of time lies in a stretch: wholly, or from which to which share of it. */
export interface ShareWithin {
  readonly isWhole: boolean;
  readonly from: number;
  readonly until: number;
}

const allWithin: ShareWithin = { isWhole: true, from: 0, until: 1 };

/**
 * How an interval of time lies in a stretch; null: not at all. What left at the very instant of a proven empty left
 * before it.
 */
export function shareWithin(stretch: Milliseconds, fromAt: number, untilAt: number): ShareWithin | null {
  if (untilAt <= stretch.from) return null;
  if (fromAt >= stretch.until && untilAt > stretch.until) return null;
  if (fromAt >= stretch.from && untilAt <= stretch.until) return allWithin;
  const length = untilAt - fromAt;
  const shareAt = (at: number): number => Math.min(1, Math.max(0, (at - fromAt) / length));
  return { isWhole: false, from: shareAt(stretch.from), until: shareAt(stretch.until) };
}

/** Exits of a run that follow each other, as one. */
export function spanOf(packs: CountedPacks, first: number, last: number): PackSpan {
  return {
    runId: packs.runId,
    fromCount: packs.fromCounts[first] ?? 0,
    toCount: packs.toCounts[last] ?? 0,
    isWhole: packs.areWhole[first] === 1,
    likelyFromCount: packs.likelyFromCounts[first] ?? 0,
    likelyToCount: packs.likelyToCounts[last] ?? 0,
    earliestAt: packs.earliestAt[first] ?? 0,
    likelyAt: packs.likelyAt[last] ?? 0,
    latestAt: packs.latestAt[last] ?? 0,
  };
}

/** The packs of every count, each on its own. */
export function everySpan(counted: readonly CountedPacks[]): readonly PackSpan[] {
  return counted.flatMap((packs) => Array.from({ length: packs.size }, (_, place) => spanOf(packs, place, place)));
}

/** The same with their instants written out. */
export function everyExit(counted: readonly CountedPacks[]): readonly PackExit[] {
  const texts = new InstantTexts();
  return everySpan(counted).map(({ earliestAt, likelyAt, latestAt, ...span }) => ({
    ...span,
    ...{ earliestAt: texts.of(earliestAt), likelyAt: texts.of(likelyAt), latestAt: texts.of(latestAt) },
  }));
}
