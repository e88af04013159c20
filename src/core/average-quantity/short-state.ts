import { maximumAllowableVariationMilligrams } from './maximum-allowable-variation.js';
import { shortPackLimits, type ToleranceRounding } from './tolerable-negative-error.js';

/**
 * How short a pack is. Never the bare word "inadequate": OIML means by it what is beyond T1, law of British descent what
 * is beyond T2 (Singapore, Weights and Measures (Amendment) Act 2005). `beyondMav` is short by more than the maximum
 * allowable variation.
 */
export type ShortState = 'beyondT1' | 'beyondT2' | 'beyondMav';

/** By which table packs are short. */
export type ShortTable = ToleranceRounding | 'handbook-133';

/** A pack with less net than this, in whole milligrams, is so short; one with exactly this is not. */
export interface ShortLimit {
  readonly state: ShortState;
  readonly belowMilligrams: number;
}

/**
 * The limits of a nominal quantity by one table, the mildest first.
 *
 * @param nominalMilligrams whole milligrams, within the range of the table
 * @throws RangeError outside of it
 * @see Directive 76/211/EEC Annex I 1.2, 1.3; NIST Handbook 133 Table 2-5
 * @example shortLimits(1_000_000, 'directive')
 * // [{ state: 'beyondT1', belowMilligrams: 985000 }, { state: 'beyondT2', belowMilligrams: 970000 }]
 */
export function shortLimits(nominalMilligrams: number, table: ShortTable): readonly ShortLimit[] {
  if (table === 'handbook-133') {
    const variation = maximumAllowableVariationMilligrams(nominalMilligrams);
    return [{ state: 'beyondMav', belowMilligrams: nominalMilligrams - variation }];
  }
  const { t1Milligrams, t2Milligrams } = shortPackLimits(nominalMilligrams, table);
  return [
    { state: 'beyondT1', belowMilligrams: t1Milligrams },
    { state: 'beyondT2', belowMilligrams: t2Milligrams },
  ];
}

/**
 * How short one pack is: the worst of the limits that it lies beyond, or `null` where it lies beyond none.
 *
 * @param netMilligrams what it holds, in milligrams; exactly at a limit is not beyond it
 * @param limits as `shortLimits` gives them, the mildest first
 * @see Directive 76/211/EEC Annex II 2.2; UK SI 2006/659 Schedule 2 paragraph 3.1
 * @example shortStateOf(984_999, shortLimits(1_000_000, 'directive')) // 'beyondT1'; 985_000 gives null
 */
export function shortStateOf(netMilligrams: number, limits: readonly ShortLimit[]): ShortState | null {
  return limits.findLast(({ belowMilligrams }) => netMilligrams < belowMilligrams)?.state ?? null;
}
