import { assertHopperPeriod, type HopperPeriod } from './hopper-event.js';
import { levelCourse, type LevelCourse } from './level-course.js';
import { suspectMistakes, type Suspect } from './level-suspects.js';

/** The level through a period, what in it cannot be true, and which single mistakes would explain that, best first. */
export interface LevelCheck extends LevelCourse {
  readonly suspects: readonly Suspect[];
}

/**
 * The level check: below zero, above the capacity or away from a level that was seen by more than the masses' limits
 * explain, the records are wrong. A proven empty is checked too when the period ends with its residue as a level seen.
 * @param period in the order of `orderForLevelCheck`, so that intervals of time explain what they can
 * @throws RangeError when a mass is not whole grams in order or an id stands twice
 * @example
 * checkLevel({ capacityGrams: null, events: [
 *   { kind: 'addition', id: 'bag', mass: exactMass(1000) }, { kind: 'exit', id: 'packs', mass: exactMass(1200) } ] })
 *   .findings // [{ kind: 'below-zero', eventIndex: 1, eventId: 'packs', byGrams: 200 }]
 */
export function checkLevel(period: HopperPeriod): LevelCheck {
  assertHopperPeriod(period);
  const course = levelCourse(period);
  return { ...course, suspects: suspectMistakes(period, course.findings) };
}
