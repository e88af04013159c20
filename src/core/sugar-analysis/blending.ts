import type { Property } from './specification.js';

/**
 * Why the mean of two lots is not the property of their mixture: `spreads-add` the spread of the means comes on top;
 * `not-proportional` it does not follow the mass; `counted-apart` few single things, not spread through the mass;
 * `not-known` nobody has said that it blends, so it is not averaged.
 */
export type NoBlend = 'spreads-add' | 'not-proportional' | 'counted-apart' | 'not-known';

/** Follow the mass (quality.md 2.8): what is dissolved or lost on drying adds up; colour nearly, by Beer's law. */
const blends: ReadonlySet<Property> = new Set([
  'moisture-percent',
  'ash-percent',
  'invert-percent',
  'sulphur-dioxide-mg-per-kg',
  'colour-iu',
]);

/** What does not (quality.md 2.8), by the words its name may hold. */
const reasons: readonly (readonly [RegExp, NoBlend])[] = [
  [/mean-aperture|grain|coefficient-of-variation|fines/, 'spreads-add'],
  [/colour-type|relative-humidity|water-activity|turbidity|floc/, 'not-proportional'],
  [/specks|insoluble|count|cfu|sediment/, 'counted-apart'],
];

/**
 * Whether a property of a mixture is the mean of its parts by mass, and if not, why not.
 * @param property as in a specification, named with its unit; one that is not known is not averaged
 * @returns null where it blends
 * @see quality.md section 2.8
 * @example whyNoBlend('grain-coefficient-of-variation-percent') // 'spreads-add'
 */
export function whyNoBlend(property: Property): NoBlend | null {
  if (blends.has(property)) return null;
  return reasons.find(([words]) => words.test(property))?.[1] ?? 'not-known';
}
