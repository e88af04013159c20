import { addDays } from './calendar-day.js';
import { type Instant } from './instant.js';
import { type LocalTime, instantsOfLocalTime, localMomentAt } from './local-time.js';
import { type TimeZone } from './time-zone.js';

/**
 * The last instant, not later than `until`, at which the plant's clock showed this time: what a time means that was
 * written down without its day.
 *
 * A time that the clocks show twice in a night is its second coming, where that is not later than `until`. A time that
 * the clocks jumped over last night is the one of the night before.
 *
 * @throws RangeError when time or zone are not what they should be, or `until` is no instant
 * @example lastShownAt('Europe/Berlin', '22:40', '2026-03-13T06:30:00.000Z') // '2026-03-12T21:40:00.000Z'
 */
export function lastShownAt(timeZone: TimeZone, time: LocalTime, until: Instant): Instant {
  const { on } = localMomentAt(timeZone, until);
  for (let daysBack = 0; ; daysBack += 1) {
    const shown = instantsOfLocalTime(timeZone, addDays(on, -daysBack), time).filter((at) => at <= until);
    const last = shown.at(-1);
    if (last !== undefined) return last;
  }
}
