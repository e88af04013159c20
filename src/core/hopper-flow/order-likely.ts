import { soundPeriod, type Addition, type HopperEvent, type HopperPeriod } from './hopper-event.js';
import {
  assertTimedPeriod,
  compareInstants,
  type Instant,
  type TimedAs,
  type TimedHopperPeriod,
} from './timed-event.js';

const tieOrder = { addition: 0, exit: 1, 'level-seen': 2 } as const;

/**
 * Puts a period into the order in which it most likely happened, for first in, first out: by the likely instants,
 * additions first where two meet. Where packs would leave a hopper that by then is empty, the next additions are
 * brought forward, as far as their own intervals let them (no later than the packs' latest): a late scan is likelier
 * than packs made of nothing. What the intervals cannot explain stays.
 * @throws RangeError on masses, ids or intervals that make no sense
 * @example
 * orderLikely({ capacityGrams: null, events: [
 *   { event: exit, earliestAt: 0, likelyAt: 10, latestAt: 10 }, { event: tip, earliestAt: 5, likelyAt: 12, latestAt:
 * 12 } ] }) .events // [tip, exit]: nothing else was inside
 */
export function orderLikely<At extends Instant>(timed: TimedHopperPeriod<At>): HopperPeriod {
  return pourInTime(sortLikely(timed));
}

/** A checked period with its events by their likely instants, each with its interval still. */
export interface SortedLikely<At extends Instant> extends TimedHopperPeriod<At> {
  readonly order: 'likely';
}

/**
 * The first half of `orderLikely`: the likely instants alone. Exits can be cut in it (`cutExits`) before the second half.
 * @throws RangeError on masses, ids or intervals that make no sense
 * @example sortLikely({ capacityGrams: null, events: [] }).events // []
 */
export function sortLikely<At extends Instant>(timed: TimedHopperPeriod<At>): SortedLikely<At> {
  assertTimedPeriod(timed);
  const events = [...timed.events].sort(
    (a, b) => compareInstants(a.likelyAt, b.likelyAt) || tieOrder[a.event.kind] - tieOrder[b.event.kind],
  );
  return { capacityGrams: timed.capacityGrams, events, order: 'likely' };
}

/**
 * The second half: additions brought forward where packs would be made of nothing.
 * @example pourInTime(sortLikely({ capacityGrams: null, events: [] })).events // []
 */
export function pourInTime<At extends Instant>(timed: SortedLikely<At>): HopperPeriod {
  const sorted = timed.events;
  const additions = sorted.filter((entry): entry is TimedAs<At, Addition> => entry.event.kind === 'addition');
  const events: HopperEvent[] = [];
  let nextAddition = 0;
  let levelGrams = 0;
  const pour = (): void => {
    const addition = additions[nextAddition];
    if (addition === undefined) return;
    events.push(addition.event);
    levelGrams += addition.event.mass.grams;
    nextAddition += 1;
  };
  const mayPourBy = (latestAt: At): boolean => {
    const addition = additions[nextAddition];
    return addition !== undefined && addition.earliestAt <= latestAt;
  };
  let additionsPassed = 0;
  for (const { event, latestAt } of sorted) {
    if (event.kind === 'addition') {
      additionsPassed += 1;
      if (nextAddition < additionsPassed) pour();
      continue;
    }
    if (event.kind === 'exit') {
      while (levelGrams < event.mass.grams && mayPourBy(latestAt)) pour();
      levelGrams = Math.max(0, levelGrams - event.mass.grams);
    }
    events.push(event);
  }
  return soundPeriod({ capacityGrams: timed.capacityGrams, events });
}
