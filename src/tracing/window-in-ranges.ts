import { instantsOfLocalTime, localMomentAt } from '../core/shift-calendar/local-time.js';
import { addDays } from '../core/shift-calendar/calendar-day.js';
import type { TimeWindow } from '../packing/ranges-in-time.js';
import type { RunRange } from '../packing/run-ranges.js';
import { shifted, type Instant } from '../platform/clock.js';

/** How a coder's clock stood: how far ahead of the plant's, and how surely that is known. */
export interface ClockReading {
  readonly offsetSeconds: number;
  readonly uncertaintySeconds: number;
}

/** A time in truth, and what the plant's clock showed when the coder printed it (were their clocks together). */
export interface PrintedWindow extends TimeWindow {
  readonly printedAt: Instant;
}

/** When a coder may have printed a time of day onto some packs, and which packs those are. */
export interface PrintedTime {
  /** What the plant's clock showed, as an instant: two of them in the hour that a clock change repeats. */
  readonly printedAt: Instant;
  /** The true time, by the coder's offset and widened by its uncertainty. */
  readonly window: TimeWindow;
  readonly runId: string;
  readonly lineCode: string;
  /** Null: the line has no coder, so its clock is taken to be the plant's. */
  readonly coderCode: string | null;
  readonly clock: ClockReading;
  readonly possible: RunRange;
  /** Null: no pack is sure. */
  readonly certain: RunRange | null;
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
): readonly PrintedWindow[] {
  const lastOn = addDays(localMomentAt(timeZone, span.untilAt).on, 1);
  const windows: PrintedWindow[] = [];
  for (let on = addDays(localMomentAt(timeZone, span.fromAt).on, -1); on <= lastOn; on = addDays(on, 1)) {
    for (const printedAt of instantsOfLocalTime(timeZone, on, localTime)) {
      const trueAt = shifted(printedAt, -clock.offsetSeconds * 1000);
      windows.push({
        printedAt,
        fromAt: shifted(trueAt, -clock.uncertaintySeconds * 1000),
        untilAt: shifted(trueAt, minuteMilliseconds + clock.uncertaintySeconds * 1000),
      });
    }
  }
  return windows.filter((window) => window.untilAt > span.fromAt && window.fromAt < span.untilAt);
}
