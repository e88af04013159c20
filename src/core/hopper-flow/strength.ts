/**
 * How strongly a group is tied to a target. Only `ruled-out` excludes it, and it is as strong a statement as `sure`.
 */
export type Strength = 'sure' | 'likely' | 'possible' | 'ruled-out';

/** Share of the smallest sold unit from which a link is called likely: 0.1 %. Our own value, no source. */
export const defaultLikelyShare = 0.001;

/**
 * The grams from which the flow model's amount makes a link *likely*, by the smallest unit that is sold from the
 * target (a mean over a pallet hides its first pack).
 * @param smallestUnitGrams net grams of that unit, above 0
 * @param share of that unit, above 0 and at most 1
 * @returns grams, with fractions
 * @throws RangeError on values outside of these limits
 * @example likelyThresholdGrams(2000) // 2
 */
export function likelyThresholdGrams(smallestUnitGrams: number, share: number = defaultLikelyShare): number {
  if (!(smallestUnitGrams > 0)) throw new RangeError(`a unit of ${smallestUnitGrams} g cannot be sold`);
  if (!(share > 0 && share <= 1)) throw new RangeError(`${share} is no share of a unit`);
  return smallestUnitGrams * share;
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
