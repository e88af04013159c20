import { instantsOfLocalTime, localMomentAt } from '../core/shift-calendar/local-time.js';
import { addDays } from '../core/shift-calendar/calendar-day.js';
import { shifted, type Instant } from '../platform/clock.js';
import type { RunRange } from '../packing/run-ranges.js';

/** A good count of a run, in the order of time. */
export interface CountAt {
  readonly packCount: number;
  readonly countedAt: Instant;
}

/** How a coder's clock stood: how far ahead of the plant's, and how surely that is known. */
export interface ClockReading {
  readonly offsetSeconds: number;
  readonly uncertaintySeconds: number;
}

/** From an instant (included) until another (not included). */
export interface TimeWindow {
  readonly fromAt: Instant;
  readonly untilAt: Instant;
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

/**
 * The packs of a range that may have been packed within a window: from the last count before it to the first count
 * after it. Positions come from counts only; between two counts the order is unknown. Null when there are none.
 */
export function possibleRange(range: RunRange, counts: readonly CountAt[], window: TimeWindow): RunRange | null {
  const before = counts.filter((count) => count.countedAt <= window.fromAt).at(-1);
  const after = counts.find((count) => count.countedAt >= window.untilAt);
  const fromCount = Math.max(range.fromCount, before?.packCount ?? 0);
  const toCount = Math.min(range.toCount, after?.packCount ?? range.toCount);
  return fromCount < toCount ? { runId: range.runId, fromCount, toCount } : null;
}

/** The packs of a range that were surely packed within a window: between the counts inside it. Null when none is sure. */
export function certainRange(range: RunRange, counts: readonly CountAt[], window: TimeWindow): RunRange | null {
  const inside = counts.filter((count) => count.countedAt >= window.fromAt && count.countedAt <= window.untilAt);
  const fromCount = Math.max(range.fromCount, inside[0]?.packCount ?? Number.MAX_SAFE_INTEGER);
  const toCount = Math.min(range.toCount, inside.at(-1)?.packCount ?? 0);
  return fromCount < toCount ? { runId: range.runId, fromCount, toCount } : null;
}

/**
 * When the packs of a range were packed, as far as counts tell: from the last count at or below its beginning to the
 * first at or above its end. Null when nothing was counted.
 */
export function timesOfRange(range: RunRange, counts: readonly CountAt[]): TimeWindow | null {
  const begin = counts.filter((count) => count.packCount <= range.fromCount).at(-1) ?? counts[0];
  const end = counts.find((count) => count.packCount >= range.toCount) ?? counts.at(-1);
  return begin === undefined || end === undefined ? null : { fromAt: begin.countedAt, untilAt: end.countedAt };
}
