import { exactMass, type HopperPeriod } from './hopper-event.js';
import { isLevelPossible } from './level-course.js';
import { firstIndexWhere } from './level-correction.js';

/**
 * Up to where no tip can be missing: put in any earlier, a tip of these grams would have shown by now, as more than
 * fits or more than was seen. The other way round it is the time by which a missing tip must have shown. Nothing more
 * can be claimed: a hopper that is always kept fuller than a bag hides a missing tip until it runs down, somebody looks
 * in, or it is proven empty; one that runs down shows it one hopper-full later at the latest.
 * @param period without a finding, in the order of `orderForLevelCheck`
 * @param grams of the tip, whole, 0 or more; smaller ones may be missing anywhere
 * @returns the index of the event before which none is missing; the number of events where none is up to the end, 0 where
 * nothing can be said
 * @throws RangeError when the grams are no whole number
 * @example
 * // a bag, all of it packed, and the hopper seen empty: nothing of 10 kg was missing
 * noTipMissingBefore({ capacityGrams: null, events: [bag, packs, empty] }, 10_000) // 3
 */
export function noTipMissingBefore(period: HopperPeriod, grams: number): number {
  const missed = { kind: 'addition', id: 'missed', mass: exactMass(grams) } as const;
  const isHidden = (index: number) => isLevelPossible({ ...period, events: period.events.toSpliced(index, 0, missed) });
  return firstIndexWhere(isHidden, 0, period.events.length);
}
