import { explainShortage, explainSurplus, type Explanation } from './explain-level.js';
import type { Addition, HopperPeriod } from './hopper-event.js';
import { layOutCase, type LevelCase } from './level-correction.js';
import type { LevelFinding } from './level-course.js';
import type { Suspect } from './suspect.js';

/** Below this many times better, two mistakes count as fitting equally. Our own value, no source. */
const timesBetterToTell = 2;

/**
 * Explains findings of the level check by one mistake, best first. Those that leave no finding; where there is none,
 * all kinds of mistake, that first which leaves least.
 * @param findings of `levelCourse(period)`; none gives no suspects
 * @param elsewhere as `rankMistakes`
 * @example suspectMistakes(period, []) // []
 */
export function suspectMistakes(
  period: HopperPeriod,
  findings: readonly LevelFinding[],
  elsewhere: readonly Addition[] | null = null,
): readonly Suspect[] {
  const ranked = rankMistakes(period, findings, elsewhere);
  const curing = ranked.filter(({ cures }) => cures);
  return curing.length > 0 ? curing : ranked;
}

/**
 * Every kind of mistake that may be behind findings of their kind (a shortage, a surplus), with its fit, best first.
 *
 * Each kind of mistake has sizes of its own: a missing tip is like the tips recorded, a tare is off by a twentieth of a
 * tip at most, packs that nobody counted may come to anything up to a hopper-full. `fit` is the share of these that
 * leaves no finding, all kinds counting as equally common (our own choice, no source). So a surplus at a proven empty of
 * just one bag is laid to a bag rather than to packs, and a shortage that anything would explain to nothing in particular: kinds
 * that fit less than twice as badly as the best are said to be tied with it. What cures nothing comes last, that first
 * which leaves least.
 *
 * No more is said than can be known: a mistake lies somewhere between two events, and where several records fit none is
 * named.
 * @param findings of `levelCourse(period)`; none gives no suspects
 * @param elsewhere tips recorded at other hoppers about then, any of which may have gone into this one; null where
 * nobody looked: then a tip of this hopper that nobody entered and one entered elsewhere cannot be told apart
 * @example rankMistakes(period, []) // []
 */
export function rankMistakes(
  period: HopperPeriod,
  findings: readonly LevelFinding[],
  elsewhere: readonly Addition[] | null = null,
): readonly Suspect[] {
  const known = layOutCase(period, findings);
  if (known === null) return [];
  const explanations = known.isShortage ? explainShortage(known, elsewhere) : explainSurplus(known);
  const ranked = [...explanations].sort((a, b) => b.fit - a.fit || a.remainingGrams - b.remainingGrams);
  const best = ranked[0]?.fit ?? 0;
  const isNearBest = ({ fit }: Explanation) => fit > 0 && fit * timesBetterToTell > best;
  const nearCount = ranked.filter(isNearBest).length;
  return ranked.map((one) => asSuspect(known, one, nearCount > 1 && isNearBest(one)));
}

/**
 * How many times better the first suspect fits than the second: 1 is a tie, Infinity where only the first cures.
 * @returns null where no single mistake cures
 * @example leadOf([]) // null
 */
export function leadOf(suspects: readonly Suspect[]): number | null {
  const [best, next] = suspects;
  if (best === undefined || best.fit === 0) return null;
  return best.fit / (next?.fit ?? 0);
}

function asSuspect({ period, first }: LevelCase, explanation: Explanation, isTied: boolean): Suspect {
  const { afterIndex, ...rest } = explanation;
  const afterEventId = afterIndex < 0 ? null : (period.events[afterIndex]?.id ?? null);
  return { ...rest, afterEventId, byEventId: first.eventId, cures: rest.fit > 0, isTied };
}
