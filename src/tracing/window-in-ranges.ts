import { instantsOfLocalTime, localMomentAt } from '../core/shift-calendar/local-time.js';
import { addDays } from '../core/shift-calendar/calendar-day.js';
import { shifted } from '../platform/clock.js';
import type { TimeWindow } from '../packing/ranges-in-time.js';

/** How a coder's clock stood: how far ahead of the plant's, and how surely that is known. */
export interface ClockReading {
  readonly offsetSeconds: number;
  readonly uncertaintySeconds: number;
}

const minuteMilliseconds = 60_000;

/**
 * The true times at which a coder may have printed `HH:mm` between two instants: the coder's time less its offset,
 * widened by its uncertainty. In the hour that a clock change repeats there are two, in the one it leaps over none.
 */
export function windowsOfPrintedTime(
  localTime: string,
  span: TimeWindow,
  timeZone: string,
  clock: ClockReading,
): readonly TimeWindow[] {
  const lastOn = addDays(localMomentAt(timeZone, span.untilAt).on, 1);
  const windows: TimeWindow[] = [];
  for (let on = addDays(localMomentAt(timeZone, span.fromAt).on, -1); on <= lastOn; on = addDays(on, 1)) {
    for (const printedAt of instantsOfLocalTime(timeZone, on, localTime)) {
      const trueAt = shifted(printedAt, -clock.offsetSeconds * 1000);
      windows.push({
        fromAt: shifted(trueAt, -clock.uncertaintySeconds * 1000),
        untilAt: shifted(trueAt, minuteMilliseconds + clock.uncertaintySeconds * 1000),
      });
    }
  }
  return windows.filter((window) => window.untilAt > span.fromAt && window.fromAt < span.untilAt);
}
