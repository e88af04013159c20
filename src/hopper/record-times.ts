import { shifted, type Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { ruleSetAt } from '../plant/plant-facts.js';
import type { TimeUncertaintyRules } from '../plant/rule-kinds.js';

/**
 * How far a recorded time may be from what truly happened: rule set `tip-time-uncertainty` of the site. Our own values,
 * no source; a plant with better or worse habits sets its own.
 */
export type TimeUncertainty = TimeUncertaintyRules;

export const timeUncertaintyKind = 'tip-time-uncertainty';

export const usualTimeUncertainty: TimeUncertainty = {
  scannedEarlierMinutes: 5,
  statedEarlierMinutes: 15,
  laterMinutes: 15,
  handCountMinutes: 5,
};

export async function timeUncertaintyAt(from: ReadFrom, siteId: string, at: Instant): Promise<TimeUncertainty> {
  const rules = await ruleSetAt<Partial<TimeUncertainty>>(from, siteId, timeUncertaintyKind, at);
  return { ...usualTimeUncertainty, ...rules };
}

/** Later than anything that is recorded: what has not ended. */
export const noEnd: Instant = '9999-12-31T23:59:59.999Z';

/** From a proven empty to the next, or to no end. Nothing crosses either. */
export interface Stretch {
  readonly fromAt: Instant;
  readonly untilAt: Instant;
}

/** When something truly happened, at the earliest, likely, and at the latest. */
export interface TimeWindow {
  readonly earliestAt: Instant;
  readonly likelyAt: Instant;
  readonly latestAt: Instant;
}

/**
 * When a tip's sugar went in: from the opening, less what a late scan or a memory may be off, until the bag was off. A
 * bag that still hangs may drain on.
 */
export function windowOfTip(
  tip: {
    readonly openedAt: Instant;
    readonly isLate: boolean;
    readonly hasOff: boolean;
    readonly offAt: Instant | null;
  },
  doubt: TimeUncertainty,
  stretch: Stretch,
): TimeWindow {
  const earlier = tip.isLate ? doubt.statedEarlierMinutes : doubt.scannedEarlierMinutes;
  const drained = inMinutes(tip.openedAt, doubt.laterMinutes);
  const latestAt = tip.hasOff ? laterOf(tip.offAt ?? drained, drained) : stretch.untilAt;
  return within(stretch, { earliestAt: inMinutes(tip.openedAt, -earlier), likelyAt: tip.openedAt, latestAt });
}

/** When a level was seen: a little before it was entered; to both sides of a time that was stated afterwards. */
export function windowOfLevel(
  level: { readonly seenAt: Instant; readonly isLate: boolean },
  doubt: TimeUncertainty,
  stretch: Stretch,
): TimeWindow {
  const earlier = level.isLate ? doubt.statedEarlierMinutes : doubt.scannedEarlierMinutes;
  const latestAt = level.isLate ? inMinutes(level.seenAt, doubt.statedEarlierMinutes) : level.seenAt;
  return within(stretch, { earliestAt: inMinutes(level.seenAt, -earlier), likelyAt: level.seenAt, latestAt });
}

/** A window cut to a stretch: never across a proven empty. */
export function within({ fromAt, untilAt }: Stretch, window: TimeWindow): TimeWindow {
  const { earliestAt, likelyAt, latestAt } = window;
  if (earliestAt >= fromAt && latestAt <= untilAt && isInOrder(window)) return window;
  const cut = (at: Instant): Instant => earlierOf(laterOf(at, fromAt), untilAt);
  return { earliestAt: cut(earliestAt), likelyAt: cut(likelyAt), latestAt: cut(latestAt) };
}

const isInOrder = ({ earliestAt, likelyAt, latestAt }: TimeWindow): boolean =>
  earliestAt <= likelyAt && likelyAt <= latestAt;

const inMinutes = (at: Instant, minutes: number): Instant => (minutes === 0 ? at : shifted(at, minutes * 60_000));

export const earlierOf = (one: Instant, other: Instant): Instant => (one < other ? one : other);
export const laterOf = (one: Instant, other: Instant): Instant => (one > other ? one : other);
