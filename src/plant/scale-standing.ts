import { localMomentAt } from '../core/shift-calendar/local-time.js';
import { shifted, type Instant } from '../platform/clock.js';
import { toBoolean } from '../platform/database/columns.js';
import type { ScaleRow, ScaleStanding } from './plant-rows.js';

/** A scale with its last good check, as read. */
export interface CheckedScale extends ScaleRow {
  readonly timeZone: string;
  readonly checkedAt: Instant | null;
  readonly passed: boolean | number | null;
}

const millisecondsOfHour = 3_600_000;

/** What a scale is good for, from its last check: a check counts up to, but not at, the instant at which it is due again. */
export function scaleStanding(row: CheckedScale, at: Instant): ScaleStanding {
  const { timeZone, checkedAt, passed, ...scale } = row;
  const dueAt = checkedAt === null ? null : shifted(checkedAt, scale.checkEveryHours * millisecondsOfHour);
  return {
    scale,
    lastCheckedAt: checkedAt,
    dueAt,
    isOverdue: dueAt === null || dueAt <= at,
    hasFailed: passed !== null && !toBoolean(passed),
    isVerifiedForTrade: scale.verifiedUntilOn !== null && localMomentAt(timeZone, at).on <= scale.verifiedUntilOn,
  };
}
