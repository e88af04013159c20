import { likelyThresholdGrams, strengthOf } from '../core/hopper-flow/strength.js';
import type { BagAmounts } from './bag-contents.js';
import type { HopperPeriodFacts } from './hopper-periods.js';

/** How surely a bag and a target belong together; what is ruled out is not listed. */
export type LinkWord = 'sure' | 'likely' | 'possible';

/** Grams of a bag in something, with the word for it. Whole grams; least ≤ likely ≤ most. */
export interface LinkAmounts {
  readonly leastGrams: number;
  readonly likelyGrams: number;
  readonly mostGrams: number;
  readonly word: LinkWord | 'ruled-out';
}

export const none: BagAmounts = { leastGrams: 0, likelyGrams: 0, mostGrams: 0 };
export const ruledOut: LinkAmounts = { ...none, word: 'ruled-out' };

const words = ['ruled-out', 'possible', 'likely', 'sure'] as const;

export function strongerWord(one: LinkAmounts['word'], other: LinkAmounts['word']): LinkAmounts['word'] {
  return words.indexOf(one) > words.indexOf(other) ? one : other;
}

/**
 * The word for amounts, and likely in whole grams. The flow model goes by recorded masses and likely times and knows of
 * no levels; where it says less than least or more than most, likely is moved to that limit.
 */
export function worded(amounts: BagAmounts, thresholdGrams: number): LinkAmounts {
  const { leastGrams, mostGrams } = amounts;
  const likelyGrams = Math.min(mostGrams, Math.max(leastGrams, Math.round(amounts.likelyGrams)));
  if (mostGrams === 0 || thresholdGrams === Infinity) return { leastGrams, likelyGrams, mostGrams, word: 'ruled-out' };
  return { leastGrams, likelyGrams, mostGrams, word: strengthOf({ ...amounts, likelyGrams }, thresholdGrams) };
}

/** From how many grams on a bag is likely in packs of these runs: the hopper's share of the smallest unit sold. */
export function thresholdOf(facts: HopperPeriodFacts, ranges: readonly { readonly runId: string }[]): number {
  const units = ranges.flatMap(({ runId }) => facts.runs.get(runId)?.nominalGrams ?? []);
  const smallest = units.length > 0 ? Math.min(...units) : 1000;
  return likelyThresholdGrams(smallest, Math.max(1, facts.hopper.likelyPermille) / 1000);
}
