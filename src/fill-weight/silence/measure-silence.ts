import type { CountAt } from '../../packing/ranges-in-time.js';
import { millisecondsBetween, type Instant } from '../../platform/clock.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { acceptedBetween } from './accepted-between.js';

/** So far apart may the clocks of counter and weigher be. Our own value, no source. */
const clocksApartSeconds = 10;
/** Fewer packs than this are on their way from the one to the other. Our own value, no source. */
const leastOnTheWay = 2;

/** What was counted and what was weighed between two counts of a run. */
export interface Measured {
  readonly countedPackCount: number;
  /** Accepted packs, by all weighers of the line. */
  readonly weighedPackCount: number;
  /** Counted and not weighed. */
  readonly unverifiedPackCount: number;
  /** So few are unverified that the clocks of counter and weigher explain it. */
  readonly isVerified: boolean;
}

/** A time without weights. */
export interface SilentTime {
  readonly sinceAt: Instant;
  /** Null: it lasts. */
  readonly untilAt: Instant | null;
  /** When the silence before it ended: what was counted until then belongs to that one. */
  readonly beforeUntilAt: Instant | null;
}

/**
 * What is unverified of the packs of a silence, taken from the last count before it to the first count after it, else to
 * the last. Counts and weights between two counts grow alike while the weigher sends, so it does not matter how far the
 * counts reach beyond the silence.
 */
export async function measureSilence(
  from: ReadFrom,
  { runId, counts }: { readonly runId: string; readonly counts: readonly CountAt[] },
  { sinceAt, untilAt, beforeUntilAt }: SilentTime,
): Promise<Measured> {
  const firstAfter = (at: Instant | null): CountAt | undefined =>
    at === null ? undefined : counts.find(({ countedAt }) => countedAt >= at);
  const own = counts.filter(({ countedAt }) => countedAt <= sinceAt).at(-1) ?? counts[0];
  const isOfEarlier = own !== undefined && beforeUntilAt !== null && own.countedAt < beforeUntilAt;
  const begin = isOfEarlier ? (firstAfter(beforeUntilAt) ?? counts.at(-1)) : own;
  const end = firstAfter(untilAt) ?? counts.at(-1);
  if (begin === undefined || end === undefined || end.countedAt <= begin.countedAt) return nothing;
  const stretch = { afterAt: begin.countedAt, upToAt: end.countedAt };
  const weighed = await acceptedBetween(from, runId, stretch);
  return measured(begin, end, weighed);
}

const nothing: Measured = { countedPackCount: 0, weighedPackCount: 0, unverifiedPackCount: 0, isVerified: true };

function measured(begin: CountAt, end: CountAt, weighedPackCount: number): Measured {
  const countedPackCount = Math.max(0, end.packCount - begin.packCount);
  const unverifiedPackCount = Math.max(0, countedPackCount - weighedPackCount);
  const seconds = millisecondsBetween(begin.countedAt, end.countedAt) / 1000;
  const onTheWay = Math.max(leastOnTheWay, Math.ceil((countedPackCount * clocksApartSeconds) / seconds));
  return {
    countedPackCount,
    weighedPackCount,
    unverifiedPackCount,
    isVerified: unverifiedPackCount <= onTheWay,
  };
}
