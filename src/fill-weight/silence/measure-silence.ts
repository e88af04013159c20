import type { CountAt } from '../../packing/ranges-in-time.js';
import { millisecondsBetween, type Instant } from '../../platform/clock.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { toWhole } from '../../platform/database/stored-values.js';
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
 * counts reach beyond the silence. Where one weigher weighed all that was counted in the whole run, or all but a few, no
 * more is unverified here either: its clock and the counter's lie farther apart than we take for granted.
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
  const found = measured(begin, end, await acceptedBetween(from, runId, stretch));
  if (found.isVerified) return found;
  const lacking = await lackingInRun(from, runId, counts.at(-1)?.packCount ?? 0);
  const unverifiedPackCount = Math.min(found.unverifiedPackCount, lacking ?? found.unverifiedPackCount);
  return { ...found, unverifiedPackCount, isVerified: unverifiedPackCount <= found.onTheWay };
}

/** How many of the counted packs of a run its weigher did not weigh; null: more than one weigher weighed, and perhaps the same packs. */
async function lackingInRun(from: ReadFrom, runId: string, countedPackCount: number): Promise<number | null> {
  const rows = await from.sql<{ packCount: number | string }>`
    SELECT "accepted_pack_count" AS "packCount" FROM "weight_run" WHERE "run_id" = ${runId} LIMIT 2`;
  return rows.length > 1 ? null : Math.max(0, countedPackCount - toWhole(rows[0]?.packCount ?? 0));
}

const nothing: Measured = { countedPackCount: 0, weighedPackCount: 0, unverifiedPackCount: 0, isVerified: true };

function measured(begin: CountAt, end: CountAt, weighedPackCount: number): Measured & { readonly onTheWay: number } {
  const countedPackCount = Math.max(0, end.packCount - begin.packCount);
  const unverifiedPackCount = Math.max(0, countedPackCount - weighedPackCount);
  const seconds = millisecondsBetween(begin.countedAt, end.countedAt) / 1000;
  const onTheWay = Math.max(leastOnTheWay, Math.ceil((countedPackCount * clocksApartSeconds) / seconds));
  return {
    countedPackCount,
    weighedPackCount,
    unverifiedPackCount,
    isVerified: unverifiedPackCount <= onTheWay,
    onTheWay,
  };
}
