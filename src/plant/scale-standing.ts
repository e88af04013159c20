import { localMomentAt } from '../core/shift-calendar/local-time.js';
import type { Instant } from '../platform/clock.js';
import { toBoolean } from '../platform/database/stored-values.js';
import type { ScaleRow, ScaleStanding } from './plant-rows.js';
import { nextCheckDueAt } from './next-check-due.js';

/** A scale with its last good check, as read. */
export interface CheckedScale extends ScaleRow {
  readonly timeZone: string;
  readonly checkedAt: Instant | null;
  readonly passed: boolean | number | null;
}

/** Days of the plant's calendar on which goods may be sold by the scale's weight, both included. */
export interface VerifiedSpan {
  readonly verifiedOn: string;
  readonly verifiedUntilOn: string;
}

/**
 * What a scale is good for. A check counts up to, but not at, the instant at which it is due again; of several
 * verifications the latest that has begun counts, so that a shorter one takes over.
 */
export function scaleStanding(row: CheckedScale, verifications: readonly VerifiedSpan[], at: Instant): ScaleStanding {
  const { timeZone, checkedAt, passed, ...scale } = row;
  const on = localMomentAt(timeZone, at).on;
  const verified = verifications.filter((span) => span.verifiedOn <= on).at(-1);
  const dueAt = checkedAt === null ? null : nextCheckDueAt(checkedAt, scale.checkEveryHours);
  return {
    scale,
    lastCheckedAt: checkedAt,
    dueAt,
    isOverdue: dueAt === null || dueAt <= at,
    hasFailed: passed !== null && !toBoolean(passed),
    verifiedUntilOn: verified?.verifiedUntilOn ?? null,
    isVerifiedForTrade: verified !== undefined && on <= verified.verifiedUntilOn,
  };
}
