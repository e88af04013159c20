/**
 * How strongly a group is tied to a target. Only `ruled-out` excludes it, and it is as strong a statement as `sure`.
 */
export type Strength = 'sure' | 'likely' | 'possible' | 'ruled-out';

/** Share of a target from which a link is called likely: 0.1 %. Our own value, no source. */
export const defaultLikelyShare = 0.001;

/** What is asked about, and what of it is sold as one. */
export interface LikelyTarget {
  /** Grams of the target, 0 or more. */
  readonly targetGrams: number;
  /** Net grams of the smallest unit that is sold from it, above 0. */
  readonly smallestUnitGrams: number;
}

/**
 * The grams from which the flow model's amount makes a link *likely*: a share of the target, so that a trace that
 * mixing leaves everywhere is not enough. One smallest sold unit of a bag's sugar is enough in a target of any size;
 * less than the share of one such unit never is (decision 0032).
 * @param target its grams and its smallest unit
 * @param share above 0 and at most 1
 * @returns grams, with fractions, from `share` of the smallest unit to one of it
 * @throws RangeError on values outside of these limits
 * @example likelyThresholdGrams({ targetGrams: 1_000_000, smallestUnitGrams: 2000 }) // 1000
 */
export function likelyThresholdGrams(target: LikelyTarget, share: number = defaultLikelyShare): number {
  const { targetGrams, smallestUnitGrams } = target;
  if (!(smallestUnitGrams > 0)) throw new RangeError(`a unit of ${smallestUnitGrams} g cannot be sold`);
  if (!(targetGrams >= 0)) throw new RangeError(`a target cannot weigh ${targetGrams} g`);
  if (!(share > 0 && share <= 1)) throw new RangeError(`${share} is no share`);
  return Math.max(smallestUnitGrams * share, Math.min(targetGrams * share, smallestUnitGrams));
}

/**
 * The word for a link: *sure* where least is above 0, *likely* where the flow model puts at least the threshold there,
 * *possible* where most is above 0, otherwise *ruled out*. Likely never brings back what most rules out.
 * @param thresholdGrams from `likelyThresholdGrams`; a likely amount exactly at it is likely
 * @throws RangeError when least is above most or a number is negative
 * @example strengthOf({ leastGrams: 0, likelyGrams: 300, mostGrams: 996_000 }, 2) // 'likely'
 */
export function strengthOf(
  amounts: { readonly leastGrams: number; readonly likelyGrams: number; readonly mostGrams: number },
  thresholdGrams: number,
): Strength {
  const { leastGrams, likelyGrams, mostGrams } = amounts;
  if (!(leastGrams >= 0 && likelyGrams >= 0 && leastGrams <= mostGrams)) {
    throw new RangeError(`least ${leastGrams}, likely ${likelyGrams}, most ${mostGrams} g are out of order`);
  }
  if (!(thresholdGrams > 0)) throw new RangeError(`${thresholdGrams} g is no threshold`);
  if (leastGrams > 0) return 'sure';
  if (mostGrams === 0) return 'ruled-out';
  return likelyGrams >= thresholdGrams ? 'likely' : 'possible';
}
