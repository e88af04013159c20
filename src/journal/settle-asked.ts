import { millisecondsBetween, type Instant } from '../platform/clock.js';
import { settleOccurredAt, type OccurredAt } from '../platform/occurred-at.js';
import type { Asked, Happening } from './entry-draft.js';

/** When it happened, why it comes late, and whether it is a fact that no rule of the house can refuse any more. */
export interface SettledAsk extends OccurredAt {
  readonly reason: string | null;
  /** The time was stated afterwards, from memory; the clock of a device that kept the entry is no memory. */
  readonly isLate: boolean;
  readonly hasHappened: boolean;
}

/** What a form says of its own time. */
interface StatedTime {
  readonly statedAt: Instant | null;
  readonly reason: string | null;
  /** The form itself says that it has happened. */
  readonly happened?: boolean | null | undefined;
}

/**
 * Settles the time of happening. What was kept on a device or written on paper is taken as it stands, however long
 * ago, and nobody is asked why it is late; for the rest the limits of `settleOccurredAt` hold.
 *
 * @throws {Refusal} `time-ahead`, `time-too-far-back`, `reason-needed`
 */
export function settleAsked(asked: Asked, stated: StatedTime, now: Instant): SettledAsk {
  const { statedAt, reason } = stated;
  const happening = asked.happening ?? null;
  if (happening === null) {
    const settled = settleOccurredAt(statedAt, now, reason);
    return { ...settled, reason, isLate: settled.lateMinutes > 0, hasHappened: stated.happened ?? false };
  }
  const at = statedAt ?? happening.at;
  const isAhead = at > now;
  return {
    occurredAt: isAhead ? now : at,
    statedAt: isAhead ? at : null,
    lateMinutes: isAhead ? 0 : Math.floor(millisecondsBetween(at, now) / 60_000),
    reason: reason ?? reasonOf(happening),
    isLate: !isAhead && at < now && (happening.how === 'paper' || statedAt !== null),
    hasHappened: true,
  };
}

/** How it came, as the journal keeps it. */
function reasonOf({ how, sheet, row }: Happening): string {
  return how === 'queued' ? 'kept on the device' : `written on paper: ${sheet ?? '–'}, row ${row ?? '–'}`;
}
