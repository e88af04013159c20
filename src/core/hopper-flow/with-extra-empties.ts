import type { Exit, Mass } from './hopper-event.js';
import {
  assertTimedPeriod,
  compareInstants,
  type Instant,
  type TimedAs,
  type TimedEvent,
  type TimedHopperPeriod,
} from './timed-event.js';

/** A hopper period cut by empties that there were not. */
export interface PeriodWithEmpties<At extends Instant> {
  /** From one empty to the next, in order; at least one. */
  readonly parts: readonly TimedHopperPeriod<At>[];
  /** How many empties were put in. */
  readonly emptyCount: number;
}

/**
 * What a period would have been had the hopper been run empty and proven so, with no residue, at certain times: the same bags
 * and the same packs, in the same order. Tipping waits at each of them until what is inside has left; so the packs
 * that follow, as many as what was inside fills, belong to the part before, and an exit is divided where the hopper runs empty. By
 * recorded grams and likely times; levels seen and the capacity are left out, since they would have been others.
 * Leaving them out can only make what is possible more.
 *
 * At a time before which nothing went in, or after which too little left to run the hopper empty, there is no empty.
 * @param atTimes in any order
 * @returns the period as it is where no empty is put in
 * @throws RangeError on masses, ids or intervals that make no sense
 * @example
 * withExtraEmpties({ capacityGrams: null, events: [tip at 0 of 1000 g, exit at 5 of 600 g, tip at 6 of 1000 g,
 *   exit at 9 of 900 g] }, [6]).parts // [tip 1000, exit 600, exit 400] and [tip 1000, exit 500]
 */
export function withExtraEmpties<At extends Instant>(
  timed: TimedHopperPeriod<At>,
  atTimes: readonly At[],
): PeriodWithEmpties<At> {
  assertTimedPeriod(timed);
  let rest = timed.events
    .filter(({ event }) => event.kind !== 'level-seen')
    .toSorted((a, b) => compareInstants(a.likelyAt, b.likelyAt));
  const parts: TimedHopperPeriod<At>[] = [];
  for (const at of atTimes.toSorted(compareInstants)) {
    const cut = cutAt(rest, at);
    if (cut === null) continue;
    parts.push({ capacityGrams: null, events: cut.before });
    rest = cut.after;
  }
  if (parts.length === 0) return { parts: [timed], emptyCount: 0 };
  return { parts: [...parts, { capacityGrams: null, events: rest }], emptyCount: parts.length };
}

interface Cut<At extends Instant> {
  readonly before: TimedEvent<At>[];
  readonly after: TimedEvent<At>[];
}

/** Null where the hopper would not have run empty, or had nothing in it yet. */
function cutAt<At extends Instant>(events: readonly TimedEvent<At>[], at: At): Cut<At> | null {
  const before = events.filter(({ likelyAt }) => likelyAt < at);
  const later = events.filter(({ likelyAt }) => likelyAt >= at);
  if (!before.some(({ event }) => event.kind === 'addition')) return null;
  let insideGrams = Math.max(0, gramsOf(before, 'addition') - gramsOf(before, 'exit'));
  if (gramsOf(later, 'exit') <= insideGrams) return null;
  const after: TimedEvent<At>[] = [];
  for (const entry of later) {
    if (!isExit(entry)) after.push(entry);
    else if (insideGrams === 0) after.push(entry);
    else if (entry.event.mass.grams <= insideGrams) {
      before.push(entry);
      insideGrams -= entry.event.mass.grams;
    } else {
      const [first, second] = divided(entry, insideGrams);
      before.push(first);
      after.push(second);
      insideGrams = 0;
    }
  }
  return { before, after };
}

function isExit<At extends Instant>(entry: TimedEvent<At>): entry is TimedAs<At, Exit> {
  return entry.event.kind === 'exit';
}

function gramsOf<At extends Instant>(events: readonly TimedEvent<At>[], kind: 'addition' | 'exit'): number {
  return events.reduce((sum, { event }) => (event.kind === kind && 'mass' in event ? sum + event.mass.grams : sum), 0);
}

/** Divides an exit so that its first part is so many grams; limits are shared in the same proportion, outwards. */
function divided<At extends Instant>(
  entry: TimedAs<At, Exit>,
  grams: number,
): readonly [TimedAs<At, Exit>, TimedAs<At, Exit>] {
  const { mass } = entry.event;
  const share = grams / mass.grams;
  const part = (own: number, of: number): Mass => ({
    lowerGrams: Math.min(own, Math.floor(mass.lowerGrams * of)),
    grams: own,
    upperGrams: Math.max(own, Math.ceil(mass.upperGrams * of)),
  });
  const withMass = (own: Mass): TimedAs<At, Exit> => ({ ...entry, event: { ...entry.event, mass: own } });
  return [withMass(part(grams, share)), withMass(part(mass.grams - grams, 1 - share))];
}
