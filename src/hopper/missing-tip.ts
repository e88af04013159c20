import { noTipMissingBefore } from '../core/hopper-flow/missing-tip-shown.js';
import type { Instant } from '../platform/clock.js';
import type { HopperPeriodFacts } from './hopper-periods.js';
import { earliestTimesOf, type HopperLevel } from './hopper-level.js';
import { periodForLevelCheck } from './period-events.js';

/** Up to when a tip that nobody entered must have shown by now. */
export interface MissingTipShown {
  /** Of a usual tip of the period: the middle one. */
  readonly grams: number;
  /** None is missing before this; null: nothing can be said, a hopper kept fuller than a bag hides it. */
  readonly beforeAt: Instant | null;
}

/**
 * By when a missing tip of the usual size must have shown. Nothing more can be claimed: between there and now one may
 * still be hidden.
 * @returns null where the records can't be true (then the suspects say what may be missing) or nothing was tipped
 */
export function missingTipShown(facts: HopperPeriodFacts, level: HopperLevel): MissingTipShown | null {
  const nets = facts.additions.map(({ mass }) => mass.grams).sort((a, b) => a - b);
  const grams = nets[nets.length >>> 1] ?? 0;
  if (level.findings.length > 0 || grams === 0) return null;
  const ordered = periodForLevelCheck(facts);
  const index = noTipMissingBefore(ordered, grams);
  const shownBy = ordered.events[index - 1]?.id;
  return { grams, beforeAt: shownBy === undefined ? null : (earliestTimesOf(facts).get(shownBy) ?? null) };
}
