import { type CalendarDay, dayNumberOf } from './calendar-day.js';
import { type Instant, instantOfMilliseconds, millisecondsOfInstant } from './instant.js';
import { type TimeZone, offsetMillisecondsAt } from './time-zone.js';

/** A time on the wall clock, `HH:mm`, `HH:mm:ss` or `HH:mm:ss.sss`, 00:00 to 23:59:59.999. */
export type LocalTime = string;

/** What the plant's clock and calendar show at an instant, and how far they are ahead of UTC. */
export interface LocalMoment {
  readonly on: CalendarDay;
  /** `HH:mm:ss.sss` */
  readonly time: LocalTime;
  readonly offsetSeconds: number;
}

const timeShape = /^([01]\d|2[0-3]):[0-5]\d(:[0-5]\d(\.\d{3})?)?$/;
const millisecondsOfDay = 86_400_000;

/**
 * What the clock of a zone shows at an instant.
 *
 * @throws RangeError when the zone is unknown or `at` is no instant
 * @example localMomentAt('Europe/Berlin', '2026-10-25T00:30:00.000Z') // { on: '2026-10-25', time: '02:30:00.000', offsetSeconds: 7200 }
 */
export function localMomentAt(timeZone: TimeZone, at: Instant): LocalMoment {
  const milliseconds = millisecondsOfInstant(at);
  const offset = offsetMillisecondsAt(timeZone, milliseconds);
  const wall = instantOfMilliseconds(milliseconds + offset);
  return { on: wall.slice(0, 10), time: wall.slice(11, 23), offsetSeconds: offset / 1000 };
}

/**
 * The same as ISO 8601 text to the second, with the offset, so that the hour that comes twice can be told apart.
 *
 * A fraction of a second is cut off, and so are the odd seconds of offsets from before 1972.
 *
 * @throws RangeError when the zone is unknown or `at` is no instant
 * @example localText('Europe/Berlin', '2026-10-25T01:30:00.000Z') // '2026-10-25T02:30:00+01:00'
 */
export function localText(timeZone: TimeZone, at: Instant): string {
  const { on, time, offsetSeconds } = localMomentAt(timeZone, at);
  const offsetMinutes = Math.floor(Math.abs(offsetSeconds) / 60);
  const hours = String(Math.floor(offsetMinutes / 60)).padStart(2, '0');
  const minutes = String(offsetMinutes % 60).padStart(2, '0');
  return `${on}T${time.slice(0, 8)}${offsetSeconds < 0 ? '-' : '+'}${hours}:${minutes}`;
}

/**
 * All instants at which the clock of a zone shows a given day and time, in the order of time.
 *
 * One on most days; none for a time that the clocks jump over; two for one that they show twice.
 *
 * @throws RangeError when day, time or zone are not what they should be
 * @example instantsOfLocalTime('Europe/Berlin', '2026-10-25', '02:30') // ['2026-10-25T00:30:00.000Z', '2026-10-25T01:30:00.000Z']
 */
export function instantsOfLocalTime(timeZone: TimeZone, on: CalendarDay, time: LocalTime): readonly Instant[] {
  const wall = wallMilliseconds(on, time);
  return [...new Set(offsetsAround(timeZone, wall))]
    .map((offset) => wall - offset)
    .filter((milliseconds) => milliseconds + offsetMillisecondsAt(timeZone, milliseconds) === wall)
    .sort((a, b) => a - b)
    .map(instantOfMilliseconds);
}

/**
 * The one instant that a day and time on the plant's clock are taken for.
 *
 * The rule, our own choice: a time that comes twice is its first coming, unless `'second'` is asked for; a time that
 * the clocks jump over is the moment of the jump. So without `'second'` the answer is always the first instant at which
 * the clock shows that time or a later one, which never decreases as day and time go on: shifts that begin by the clock
 * keep their order.
 *
 * @throws RangeError when day, time or zone are not what they should be
 * @example instantOfLocalTime('Europe/Berlin', '2026-03-29', '02:30') // '2026-03-29T01:00:00.000Z', when 02:00 became 03:00
 */
export function instantOfLocalTime(
  timeZone: TimeZone,
  on: CalendarDay,
  time: LocalTime,
  whenTwice: 'first' | 'second' = 'first',
): Instant {
  const instants = instantsOfLocalTime(timeZone, on, time);
  const chosen = whenTwice === 'first' ? instants[0] : instants.at(-1);
  return chosen ?? instantOfMilliseconds(jumpOver(timeZone, wallMilliseconds(on, time)));
}

/** Day and time as if the clock were UTC. */
function wallMilliseconds(on: CalendarDay, time: LocalTime): number {
  if (!timeShape.test(time)) throw new RangeError(`Not a time of the form HH:mm, HH:mm:ss or HH:mm:ss.sss: ${time}`);
  return dayNumberOf(on) * millisecondsOfDay + Date.parse(`1970-01-01T${time}Z`);
}

/**
 * The offsets before and after any change near a wall time: zones lie within 14 hours of UTC, so a day either side is
 * enough.
 */
function offsetsAround(timeZone: TimeZone, wall: number): readonly [number, number] {
  return [
    offsetMillisecondsAt(timeZone, wall - millisecondsOfDay),
    offsetMillisecondsAt(timeZone, wall + millisecondsOfDay),
  ];
}

/** The instant at which the clocks jump over a wall time: halving the interval in which the offset changes. */
function jumpOver(timeZone: TimeZone, wall: number): number {
  const [offsetBefore, offsetAfter] = offsetsAround(timeZone, wall);
  let before = wall - offsetAfter;
  let after = wall - offsetBefore;
  while (after - before > 1) {
    const middle = Math.floor((before + after) / 2);
    if (middle + offsetMillisecondsAt(timeZone, middle) < wall) before = middle;
    else after = middle;
  }
  return after;
}
