import { soundPeriod, type HopperEvent, type HopperPeriod, type LevelSeen } from './hopper-event.js';
import { runningTotal, type RunningTotal } from './running-total.js';
import {
  assertTimedPeriod,
  compareInstants,
  type Instant,
  type TimedEvent,
  type TimedHopperPeriod,
} from './timed-event.js';

const tieOrder = { addition: 0, exit: 1, 'level-seen': 2 } as const;

/**
 * Puts a period into the order in which bounds can only be too wide, never too narrow: additions at their earliest,
 * exits at their latest, additions first where the two meet. Events never leave the list, so nothing crosses a proven
 * empty.
 *
 * *Levels seen and the capacity* need more than a place. In this order a bag may count as inside before it was, and
 * packs may still count as inside after they left; so what is inside by the order can be more than what was inside in
 * truth, by no more than the sum of such masses. Each level seen is therefore put at the end of its interval, after
 * everything of that instant, and
 * - its upper limit is raised by the additions that may have come only after it (earliest by the end, latest after the
 *   start of its interval) and by the exits that may have gone before it (interval around its end);
 * - its lower limit is lowered by the exits that the order lets go by then but that may have gone after it (latest
 *   within its interval).
 *
 * The capacity holds at every instant, widened likewise by whatever is under way at that instant; it becomes a
 * `ceiling` event, only where it cuts. So the answer has `capacityGrams: null`.
 *
 * Intervals of one instant leave everything as it was recorded. The order of equal instants and kinds is kept.
 * @throws RangeError on masses, ids or intervals that make no sense
 * @see hopper-bounds.md, "Times are intervals, and errors must only widen"
 * @example
 * orderForBounds({ capacityGrams: null, events: [
 *   { event: packs, earliestAt: 0, likelyAt: 10, latestAt: 10 },
 *   { event: tip, earliestAt: 5, likelyAt: 12, latestAt: 12 } ] })
 *   .events // [tip, packs]: the tip may have come before the packs of that count
 */
export function orderForBounds<At extends Instant>(timed: TimedHopperPeriod<At>): HopperPeriod {
  return widenForBounds(sortForBounds(timed));
}

/**
 * The same order for the level check: the widened capacity stands after every instant, because a mistake that is tried
 * out (a tip put in) may reach it where the records as they are do not.
 * @throws RangeError on masses, ids or intervals that make no sense
 * @example
 * orderForLevelCheck({ capacityGrams: 2000, events: [{ event: tip, earliestAt: 5, likelyAt: 5, latestAt: 5 }] })
 *   .events // [tip, { kind: 'ceiling', id: tip.id, upperGrams: 2000 }]
 */
export function orderForLevelCheck<At extends Instant>(timed: TimedHopperPeriod<At>): HopperPeriod {
  return widen(sortForBounds(timed), 'everywhere');
}

/** A checked period with its events in the order of `orderForBounds`, each with its interval still. */
export interface SortedForBounds<At extends Instant> extends TimedHopperPeriod<At> {
  readonly order: 'bounds';
}

/**
 * The first half of `orderForBounds`: the order alone. Exits can be cut in it (`cutExits`) before the second half.
 * @throws RangeError on masses, ids or intervals that make no sense
 * @example sortForBounds({ capacityGrams: null, events: [] }).events // []
 */
export function sortForBounds<At extends Instant>(timed: TimedHopperPeriod<At>): SortedForBounds<At> {
  assertTimedPeriod(timed);
  const events = [...timed.events].sort(
    (a, b) => compareInstants(placeOf(a), placeOf(b)) || tieOrder[a.event.kind] - tieOrder[b.event.kind],
  );
  return { capacityGrams: timed.capacityGrams, events, order: 'bounds' };
}

/**
 * The second half: levels seen and the capacity widened by what may be under way.
 * @example widenForBounds(sortForBounds({ capacityGrams: null, events: [] })).events // []
 */
export function widenForBounds<At extends Instant>(sorted: SortedForBounds<At>): HopperPeriod {
  return widen(sorted, 'where-it-cuts');
}

function widen<At extends Instant>(timed: SortedForBounds<At>, ceilings: 'where-it-cuts' | 'everywhere'): HopperPeriod {
  const underWay = measureUnderWay(timed.events);
  const events: HopperEvent[] = [];
  let levelUpperGrams = 0;
  let lastAdditionId: string | null = null;
  timed.events.forEach((entry, index) => {
    const event = entry.event.kind === 'level-seen' ? underWay.widenLevel(entry.event, entry) : entry.event;
    events.push(event);
    if (event.kind === 'addition') lastAdditionId = event.id;
    levelUpperGrams = nextUpperLevel(levelUpperGrams, event);
    if (timed.capacityGrams === null || lastAdditionId === null) return;
    const at = placeOf(entry);
    const next = timed.events[index + 1];
    const isInstantComplete = next === undefined || placeOf(next) !== at;
    if (!isInstantComplete) return;
    // What is under way only raises a ceiling: below the bare capacity there is nothing to cut.
    if (ceilings === 'where-it-cuts' && levelUpperGrams <= timed.capacityGrams) return;
    const ceilingGrams = timed.capacityGrams + underWay.at(at);
    if (ceilings === 'where-it-cuts' && levelUpperGrams <= ceilingGrams) return;
    events.push({ kind: 'ceiling', id: lastAdditionId, upperGrams: ceilingGrams });
    levelUpperGrams = Math.min(levelUpperGrams, ceilingGrams);
  });
  return soundPeriod({ capacityGrams: null, events });
}

function placeOf<At extends Instant>(entry: TimedEvent<At>): At {
  return entry.event.kind === 'addition' ? entry.earliestAt : entry.latestAt;
}

function nextUpperLevel(levelUpperGrams: number, event: HopperEvent): number {
  if (event.kind === 'addition') return levelUpperGrams + event.mass.upperGrams;
  if (event.kind === 'exit') return levelUpperGrams - event.mass.lowerGrams;
  return Math.min(levelUpperGrams, event.upperGrams);
}

interface UnderWay<At extends Instant> {
  /** Grams that the order counts as inside at this instant though they may not be in yet, or be out already. */
  readonly at: (at: At) => number;
  readonly widenLevel: (seen: LevelSeen, entry: TimedEvent<At>) => LevelSeen;
}

function measureUnderWay<At extends Instant>(entries: readonly TimedEvent<At>[]): UnderWay<At> {
  const tipsBegun = totalOf(entries, { kind: 'addition', edge: 'earliestAt', which: 'all' });
  const tipsDone = totalOf(entries, { kind: 'addition', edge: 'latestAt', which: 'all' });
  // Exits of one instant are never under way: they would be taken off as done without having been counted as begun.
  const exitsBegun = totalOf(entries, { kind: 'exit', edge: 'earliestAt', which: 'with-duration' });
  const exitsDone = totalOf(entries, { kind: 'exit', edge: 'latestAt', which: 'with-duration' });
  const allExitsDone = totalOf(entries, { kind: 'exit', edge: 'latestAt', which: 'all' });
  const exitsUnderWay = (at: At) => exitsBegun.before(at) - exitsDone.through(at);
  return {
    at: (at) => tipsBegun.through(at) - tipsDone.through(at) + exitsUnderWay(at),
    widenLevel: (seen, { earliestAt, latestAt }) => {
      const maybeNotYetIn = tipsBegun.through(latestAt) - tipsDone.through(earliestAt);
      const maybeNotYetOut = allExitsDone.through(latestAt) - allExitsDone.through(earliestAt);
      return {
        ...seen,
        lowerGrams: Math.max(0, seen.lowerGrams - maybeNotYetOut),
        upperGrams: seen.upperGrams + maybeNotYetIn + exitsUnderWay(latestAt),
      };
    },
  };
}

interface Edge {
  readonly kind: 'addition' | 'exit';
  readonly edge: 'earliestAt' | 'latestAt';
  readonly which: 'all' | 'with-duration';
}

/** Up to so many questions are answered by adding up; only for more of them is it worth to put all in order. */
const fewQuestions = 6;

function totalOf<At extends Instant>(entries: readonly TimedEvent<At>[], edge: Edge): RunningTotal<At> {
  let askedCount = 0;
  let ordered: RunningTotal<At> | undefined;
  const ask = (at: At, counts: 'before' | 'through'): number => {
    askedCount += 1;
    if (askedCount <= fewQuestions) return gramsUpTo(entries, edge, { at, isIncluded: counts === 'through' });
    return (ordered ??= runningTotal(gramsAt(entries, edge)))[counts](at);
  };
  return { before: (at) => ask(at, 'before'), through: (at) => ask(at, 'through') };
}

function gramsUpTo<At extends Instant>(
  entries: readonly TimedEvent<At>[],
  edge: Edge,
  until: { readonly at: At; readonly isIncluded: boolean },
): number {
  let grams = 0;
  for (const entry of entries) {
    if (!isMeant(entry, edge)) continue;
    const entryAt = entry[edge.edge];
    if (entryAt < until.at || (until.isIncluded && entryAt === until.at)) grams += massOf(entry);
  }
  return grams;
}

function gramsAt<At extends Instant>(
  entries: readonly TimedEvent<At>[],
  edge: Edge,
): readonly { readonly at: At; readonly grams: number }[] {
  return entries
    .filter((entry) => isMeant(entry, edge))
    .map((entry) => ({ at: entry[edge.edge], grams: massOf(entry) }));
}

function isMeant<At extends Instant>({ event, earliestAt, latestAt }: TimedEvent<At>, { kind, which }: Edge): boolean {
  return event.kind === kind && (which === 'all' || earliestAt !== latestAt);
}

function massOf<At extends Instant>({ event }: TimedEvent<At>): number {
  return event.kind === 'level-seen' ? 0 : event.mass.upperGrams;
}
