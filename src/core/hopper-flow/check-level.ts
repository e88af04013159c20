import { assertHopperPeriod, type Addition, type HopperPeriod } from './hopper-event.js';
import { levelCourse, type LevelCourse } from './level-course.js';
import { leadOf, suspectMistakes } from './level-suspects.js';
import type { Suspect } from './suspect.js';

/** The level through a period, what in it cannot be true, and which single mistakes would explain that, best first. */
export interface LevelCheck extends LevelCourse {
  readonly suspects: readonly Suspect[];
  /** How many times better the first suspect fits than the second; null where no single mistake explains all. */
  readonly lead: number | null;
}

/**
 * The level check: below zero, above the capacity or away from a level that was seen by more than the masses' limits
 * explain, the records are wrong. A proven empty is checked too when the period ends with its residue as a level seen.
 * @param period in the order of `orderForLevelCheck`, so that intervals of time explain what they can
 * @param elsewhere tips recorded at other hoppers about then; null where nobody looked
 * @throws RangeError when a mass is not whole grams in order or an id stands twice
 * @example
 * checkLevel({ capacityGrams: null, events: [
 *   { kind: 'addition', id: 'bag', mass: exactMass(1000) }, { kind: 'exit', id: 'packs', mass: exactMass(1200) } ] })
 *   .findings // [{ kind: 'below-zero', eventIndex: 1, eventId: 'packs', byGrams: 200 }]
 */
export function checkLevel(period: HopperPeriod, elsewhere: readonly Addition[] | null = null): LevelCheck {
  assertHopperPeriod(period);
  const course = levelCourse(period);
  const suspects = suspectMistakes(period, course.findings, elsewhere);
  return { ...course, suspects, lead: leadOf(suspects) };
}
