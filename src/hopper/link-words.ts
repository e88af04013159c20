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
export function worded(amounts: BagAmounts, basis: LikelyBasis | null): LinkAmounts {
  const { leastGrams, mostGrams } = amounts;
  const likelyGrams = Math.min(mostGrams, Math.max(leastGrams, Math.round(amounts.likelyGrams)));
  if (mostGrams === 0 || basis === null) return { leastGrams, likelyGrams, mostGrams, word: 'ruled-out' };
  const word = strengthOf({ ...amounts, likelyGrams }, likelyThresholdGrams(basis, basis.share));
  return { leastGrams, likelyGrams, mostGrams, word };
}

/** What *likely* rests on besides the amount: what the target weighs, and the smallest unit sold from it. */
export interface LikelyBasis {
  readonly targetGrams: number;
  readonly smallestUnitGrams: number;
  /** From 0 to 1, above 0: the hopper's own. */
  readonly share: number;
}

/** That of packs of these runs that came through one period, which weigh so much there. */
export function likelyBasis(
  facts: HopperPeriodFacts,
  ranges: readonly { readonly runId: string }[],
  targetGrams: number,
): LikelyBasis {
  const units = ranges.flatMap(({ runId }) => facts.runs.get(runId)?.nominalGrams ?? []);
  const smallestUnitGrams = units.length > 0 ? Math.min(...units) : 1000;
  return { targetGrams, smallestUnitGrams, share: Math.max(1, facts.hopper.likelyPermille) / 1000 };
}

/** The same of what came through several periods; null: nothing came through any. */
export function joinedBasis(one: LikelyBasis | null, other: LikelyBasis): LikelyBasis {
  if (one === null) return other;
  return {
    targetGrams: one.targetGrams + other.targetGrams,
    smallestUnitGrams: Math.min(one.smallestUnitGrams, other.smallestUnitGrams),
    share: Math.min(one.share, other.share),
  };
}
