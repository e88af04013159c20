import { millisecondsBetween, type Instant } from './clock.js';
import { Refusal } from './refusal.js';

const minute = 60_000;

/** When something happened, and what was stated where the two differ. */
export interface OccurredAt {
  readonly occurredAt: Instant;
  /** What the person or device gave, kept where it was not taken as it stood; else null. */
  readonly statedAt: Instant | null;
  /** Whole minutes between the happening and its recording. */
  readonly lateMinutes: number;
}

/** How far back a time may be set, and from how late on a reason is asked for. */
export const latenessLimits = { furthestBackHours: 72, reasonFromMinutes: 60, aheadMinutes: 5 } as const;

/**
 * Settles the time of happening: absent is now; up to five minutes ahead is taken as now and both are kept; further
 * ahead, too far back, or late without a reason is refused.
 *
 * @throws {Refusal} `time-ahead`, `time-too-far-back`, `reason-needed`
 */
export function settleOccurredAt(stated: Instant | null, now: Instant, reason: string | null): OccurredAt {
  if (stated === null) return { occurredAt: now, statedAt: null, lateMinutes: 0 };
  const late = millisecondsBetween(stated, now);
  if (late < -latenessLimits.aheadMinutes * minute) throw new Refusal('time-ahead', { stated, now });
  if (late < 0) return { occurredAt: now, statedAt: stated, lateMinutes: 0 };
  const lateMinutes = Math.floor(late / minute);
  if (lateMinutes > latenessLimits.furthestBackHours * 60) {
    throw new Refusal('time-too-far-back', { stated, hours: latenessLimits.furthestBackHours });
  }
  if (lateMinutes > latenessLimits.reasonFromMinutes && reason === null) {
    throw new Refusal('reason-needed', { minutes: lateMinutes });
  }
  return { occurredAt: stated, statedAt: null, lateMinutes };
}
