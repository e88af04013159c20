import { assertHopperPeriod, type Addition, type Exit, type LevelSeen } from './hopper-event.js';

/** An instant that compares as it stands: UTC text of fixed width, or a number. One kind throughout a period. */
export type Instant = string | number;

/**
 * An event with the interval in which it truly happened. Additions: no gram enters before `earliestAt` nor after
 * `latestAt` (spout opened, bag off, and what a late scan adds). Exits: each gram leaves after `earliestAt` and by
 * `latestAt` (the two counts around it). A level: seen at one instant between the two, both included.
 */
export interface TimedEvent<At extends Instant> {
  readonly event: Addition | Exit | LevelSeen;
  readonly earliestAt: At;
  readonly likelyAt: At;
  readonly latestAt: At;
}

/**
 * A hopper period as the plant knows it: everything between two proven empties, in any order, each event with its
 * interval.
 */
export interface TimedHopperPeriod<At extends Instant> {
  readonly capacityGrams: number | null;
  readonly events: readonly TimedEvent<At>[];
}

/** Any event with the kind it has. */
export interface TimedAs<At extends Instant, E> extends TimedEvent<At> {
  readonly event: E & TimedEvent<At>['event'];
}

/**
 * Refuses a timed period whose masses, ids or intervals make no sense.
 * @throws RangeError naming the event
 * @example assertTimedPeriod({ capacityGrams: null, events: [] }) // passes
 */
export function assertTimedPeriod<At extends Instant>(timed: TimedHopperPeriod<At>): void {
  if (sound.has(timed)) return;
  assertHopperPeriod({ capacityGrams: timed.capacityGrams, events: timed.events.map(({ event }) => event) });
  for (const { event, earliestAt, likelyAt, latestAt } of timed.events) {
    if (earliestAt > likelyAt || likelyAt > latestAt)
      throw new RangeError(`${event.id}: earliest, likely and latest are out of order`);
  }
  sound.add(timed);
}

/** Timed periods that were checked: each is put into two orders, one for bounds and one for the model. */
const sound = new WeakSet<TimedHopperPeriod<Instant>>();

/**
 * Less than 0 where a comes first, more where b does, 0 at the same instant.
 * @example compareInstants('2026-11-24T06:00:00.000Z', '2026-11-24T07:00:00.000Z') // -1
 */
export function compareInstants<At extends Instant>(a: At, b: At): number {
  if (a < b) return -1;
  return a > b ? 1 : 0;
}
