/** The single mistakes that an account can look for. */
export type Mistake =
  | 'bag-not-recorded'
  | 'bag-entered-twice'
  | 'rework-not-recorded'
  | 'rework-entered-twice'
  | 'pallet-not-counted'
  | 'pallet-counted-twice'
  | 'weigh-back-not-recorded';

/** A mistake that may have been made, and how many grams it would shift the account by. */
export interface CandidateMistake {
  readonly mistake: Mistake;
  /** The record to look at first; `null` where the record is what is missing. */
  readonly recordId: string | null;
  /** The size of what would be missing or counted double, above 0. */
  readonly grams: number;
  /** How far that size itself is uncertain: the spread of bag nets for a bag that nobody recorded. */
  readonly standardGrams: number;
}

/** A candidate that explains the difference, and what it leaves unexplained. */
export interface Suspect extends CandidateMistake {
  /** The difference (in less out) that would remain if this mistake were put right. */
  readonly remainingGrams: number;
}

/** Whether a mistake makes in less out too large (1) or too small (−1). */
const effect: Readonly<Record<Mistake, 1 | -1>> = {
  'bag-not-recorded': -1,
  'bag-entered-twice': 1,
  'rework-not-recorded': -1,
  'rework-entered-twice': 1,
  'pallet-not-counted': 1,
  'pallet-counted-twice': -1,
  'weigh-back-not-recorded': 1,
};

const coverageFactor = 2;

/**
 * The difference (in less out) that a mistake would leave in an account that is right otherwise.
 *
 * @example differenceLeftBy({ mistake: 'bag-not-recorded', recordId: null, grams: 1_000_000, standardGrams: 0 }) // -1000000
 */
export function differenceLeftBy({ mistake, grams }: CandidateMistake): number {
  return effect[mistake] * grams;
}

/**
 * Which single mistakes explain a difference, best first.
 *
 * A candidate explains it when what would remain is within twice the combined standard uncertainty of the account and of the
 * candidate's own size. Of those the one comes first that would make the difference seen most probable if errors are
 * normal: near beats far, and of two equally near ones the more definite. Equals keep the order given. It is advice: people look at the
 * records, and nothing is corrected from it.
 *
 * @param differenceGrams in less out
 * @param standardUncertaintyGrams of the difference, 0 or more
 * @returns none when no single mistake is near enough
 * @throws RangeError when the uncertainty is negative, or a candidate's size is not above 0 or its spread negative
 * @example suspectsOf(-998_000, 1_500, [{ mistake: 'bag-not-recorded', recordId: null, grams: 1_000_000, standardGrams: 20_000 }])[0]?.remainingGrams // 2000
 */
export function suspectsOf(
  differenceGrams: number,
  standardUncertaintyGrams: number,
  candidates: readonly CandidateMistake[],
): readonly Suspect[] {
  if (!(standardUncertaintyGrams >= 0)) throw new RangeError('A standard uncertainty must be 0 or more');
  return candidates
    .map((candidate) => {
      assertCandidate(candidate);
      const remainingGrams = differenceGrams - differenceLeftBy(candidate);
      const combinedGrams = Math.hypot(standardUncertaintyGrams, candidate.standardGrams);
      return { suspect: { ...candidate, remainingGrams }, remainingGrams, combinedGrams };
    })
    .filter(({ remainingGrams, combinedGrams }) => Math.abs(remainingGrams) <= coverageFactor * combinedGrams)
    .map((one) => ({ suspect: one.suspect, surprise: surpriseOf(one.remainingGrams, one.combinedGrams) }))
    .sort((a, b) => a.surprise - b.surprise)
    .map(({ suspect }) => suspect);
}

/** Minus twice the logarithm of the normal density, but for a constant: the smaller, the better the explanation. */
function surpriseOf(remainingGrams: number, combinedGrams: number): number {
  // A gram is the least that the account can tell, and keeps the logarithm finite where all weights are exact.
  const spread = Math.max(combinedGrams, 1);
  return (remainingGrams / spread) ** 2 + 2 * Math.log(spread);
}

function assertCandidate({ mistake, grams, standardGrams }: CandidateMistake): void {
  if (!(grams > 0) || !(standardGrams >= 0)) {
    throw new RangeError(`The candidate ${mistake} needs a size above 0 and a spread of 0 or more`);
  }
}
