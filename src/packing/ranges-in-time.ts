import type { Instant } from '../platform/clock.js';
import type { RunRange } from './run-ranges.js';

/** A good count of a run, in the order of time. */
export interface CountAt {
  readonly packCount: number;
  readonly countedAt: Instant;
}

/** From an instant (included) until another (not included). */
export interface TimeWindow {
  readonly fromAt: Instant;
  readonly untilAt: Instant;
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
