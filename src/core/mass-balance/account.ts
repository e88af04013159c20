import { type CandidateMistake, type Suspect, suspectsOf } from './suspects.js';
import { type Uncertainty } from './uncertainty.js';

/** What goes into an account besides the opening of the hopper. */
export type InputKind = 'bag-tipped' | 'rework';

/** What comes out besides the closing of the hopper. */
export type OutputKind = 'accepted-packs' | 'rejects' | 'samples' | 'sweepings' | 'weighed-back' | 'loose-packs';

/** One weight of the account, with the record that it was read from. */
export interface AccountWeight {
  readonly recordId: string;
  /** Whole grams, 0 or more. */
  readonly grams: number;
  readonly uncertainty: Uncertainty;
  /** `assumed` where nothing was measured and a nominal quantity stands in. */
  readonly basis: 'measured' | 'assumed';
}

export interface InputLine extends AccountWeight {
  readonly kind: InputKind;
}

export interface OutputLine extends AccountWeight {
  readonly kind: OutputKind;
}

/** Everything an account of a hopper and the lines that it feeds is made of. */
export interface AccountRecords {
  /** What was in the hopper at the start; `null` where nobody observed it. */
  readonly opening: AccountWeight | null;
  readonly inputs: readonly InputLine[];
  readonly outputs: readonly OutputLine[];
  /** What was in the hopper at the end; `null` where nobody observed it. */
  readonly closing: AccountWeight | null;
  /** Mistakes that could have been made, for the account to compare with a difference that is too large. */
  readonly candidates: readonly CandidateMistake[];
}

/**
 * `closes`: the difference is within twice its standard uncertainty. `does-not-close`: it is not. `not-observed`:
 * opening or closing is unknown, so nothing can be said. `exactly-zero`: no scale is that good; somebody may have
 * filled a field from it.
 */
export type Verdict = 'closes' | 'does-not-close' | 'not-observed' | 'exactly-zero';

export interface Account {
  /** Opening and inputs, as far as they are known. */
  readonly inGrams: number;
  /** Outputs and closing, as far as they are known. */
  readonly outGrams: number;
  /** In less out: above zero sugar is missing, below zero there is more than came in; `null` when not observed. */
  readonly differenceGrams: number | null;
  /**
   * Of the sugar that went through (in less closing), to four decimals; `null` when not observed or nothing went
   * through.
   */
  readonly differencePercent: number | null;
  /** `null` when not observed. */
  readonly standardUncertaintyGrams: number | null;
  readonly verdict: Verdict;
  /** Whether a weight in it was not measured. */
  readonly hasAssumed: boolean;
  /** Which single mistake would explain the difference, best first; empty unless it does not close. */
  readonly suspects: readonly Suspect[];
}

/**
 * Within twice the standard uncertainty a difference is what scales do: about 95 % (JCGM 100:2008, 6.3.3, from memory).
 */
const coverageFactor = 2;

/**
 * The account of a hopper and the lines that it feeds over a span of time: in, out, and whether the difference is real.
 *
 * In: opening + net of the bags opened + rework. Out: accepted packs + rejects + samples + sweepings + weighed-back
 * bags + packs loose at handover + closing. The difference is in less out and nothing is ever filled from it: an
 * opening or closing that nobody observed gives no difference and no verdict.
 *
 * The standard uncertainty of the difference takes the random parts in quadrature and adds up the parts that readings
 * of one scale share, in against out, before they too go into the quadrature: a scale that is wrong in the same way on
 * both sides cancels out. Exactly twice the uncertainty still closes. A difference of exactly 0 g is a red flag, except
 * where nothing moved at all.
 *
 * @throws RangeError when grams are not whole or negative, an uncertainty is negative or not finite, or a shared part
 * has no scale
 * @see JCGM 100:2008 (GUM) 5.1.2 for independent parts; 5.2.2, note 1, for parts that are wholly correlated (from
 * memory)
 * @example accountOf({ opening, inputs: [bag], outputs: [packs], closing, candidates: [] }).verdict // 'closes'
 */
export function accountOf(records: AccountRecords): Account {
  const { opening, inputs, outputs, closing, candidates } = records;
  const ins = opening === null ? inputs : [opening, ...inputs];
  const outs = closing === null ? outputs : [...outputs, closing];
  [...ins, ...outs].forEach(assertWeight);
  const inGrams = sumOfGrams(ins);
  const outGrams = sumOfGrams(outs);
  const totals = { inGrams, outGrams, hasAssumed: [...ins, ...outs].some(({ basis }) => basis === 'assumed') };
  if (opening === null || closing === null) return { ...totals, ...notObserved };

  const differenceGrams = inGrams - outGrams;
  const standardUncertaintyGrams = uncertaintyOfDifference(ins, outs);
  const verdict = verdictOn(differenceGrams, standardUncertaintyGrams, inGrams);
  return {
    ...totals,
    differenceGrams,
    differencePercent: percentOf(differenceGrams, inGrams - closing.grams),
    standardUncertaintyGrams,
    verdict,
    suspects: verdict === 'does-not-close' ? suspectsOf(differenceGrams, standardUncertaintyGrams, candidates) : [],
  };
}

const notObserved = {
  differenceGrams: null,
  differencePercent: null,
  standardUncertaintyGrams: null,
  verdict: 'not-observed',
  suspects: [],
} as const;

function verdictOn(differenceGrams: number, standardUncertaintyGrams: number, inGrams: number): Verdict {
  if (differenceGrams === 0) return inGrams === 0 ? 'closes' : 'exactly-zero';
  return Math.abs(differenceGrams) <= coverageFactor * standardUncertaintyGrams ? 'closes' : 'does-not-close';
}

/** JCGM 100:2008, equation (10) over the random parts and over the sum per scale of the shared ones. */
function uncertaintyOfDifference(ins: readonly AccountWeight[], outs: readonly AccountWeight[]): number {
  const sharedByScale = new Map<string, number>();
  const share = (sign: 1 | -1) => (weight: AccountWeight) => {
    const { sharedBy, sharedStandardGrams } = weight.uncertainty;
    if (sharedBy !== null) {
      sharedByScale.set(sharedBy, (sharedByScale.get(sharedBy) ?? 0) + sign * sharedStandardGrams);
    }
  };
  ins.forEach(share(1));
  outs.forEach(share(-1));
  const random = [...ins, ...outs].map(({ uncertainty }) => uncertainty.standardGrams);
  return Math.sqrt([...random, ...sharedByScale.values()].reduce((sum, part) => sum + part ** 2, 0));
}

function percentOf(differenceGrams: number, throughGrams: number): number | null {
  // Adding zero turns a rounded −0 into 0.
  return throughGrams > 0 ? Math.round((differenceGrams / throughGrams) * 1_000_000) / 10_000 + 0 : null;
}

function sumOfGrams(weights: readonly AccountWeight[]): number {
  return weights.reduce((sum, { grams }) => sum + grams, 0);
}

function assertWeight({ recordId, grams, uncertainty }: AccountWeight): void {
  const { standardGrams, sharedBy, sharedStandardGrams } = uncertainty;
  if (!Number.isSafeInteger(grams) || grams < 0) {
    throw new RangeError(`The weight of ${recordId} must be whole grams, 0 or more, not ${grams}`);
  }
  const areGood = [standardGrams, sharedStandardGrams].every((part) => part >= 0 && Number.isFinite(part));
  if (!areGood || (sharedBy === null && sharedStandardGrams !== 0)) {
    throw new RangeError(`The uncertainty of ${recordId} must be 0 or more, and a shared part must name its scale`);
  }
}
