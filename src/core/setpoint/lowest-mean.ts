import { normalDensity, normalShares, upperNormalQuantile } from '../statistics/standard-normal.js';

/** What the average-quantity system asks of the packs of a lot, in figures. */
export interface FillRules {
  readonly nominalMilligrams: number;
  /** Below the nominal quantity by the tolerable negative error, and by twice that. */
  readonly t1Milligrams: number;
  readonly t2Milligrams: number;
  /** The share of packs that may lie beyond T1; above 0 and below ½. 2.5 % by custom, 2 % in Germany at production. */
  readonly shareBeyondT1: number;
  /** The share beyond T2 that counts as none. The law says none; a bell never ends. 1 in 10 000 by custom. */
  readonly shareBeyondT2: number;
}

/** The rules by name, in the order in which one of two equal ones is named. */
export const fillRuleNames = ['mean', 't1', 't2'] as const;
export type FillRuleName = (typeof fillRuleNames)[number];

/** The least that the mean may be by each rule, and by all. */
export interface LowestMean {
  readonly byRule: Readonly<Record<FillRuleName, number>>;
  readonly milligrams: number;
  /** The rule that asks for most. */
  readonly binds: FillRuleName;
}

/**
 * The lowest true mean of a lot that obeys all three rules: not below the nominal quantity, no more than a share of packs
 * beyond T1, and no more than another beyond T2.
 *
 * For packs that vary normally with a known standard deviation. While σ is at most 0.5102 of the tolerable negative error
 * the mean alone binds; up to 0.5685 it is T1, above it T2 (with 2.5 % and 1 in 10 000).
 *
 * @param sigmaMilligrams of the packs of a lot, overall: every minute and head of it. Above 0
 * @returns never below the nominal quantity
 * @throws RangeError when σ is not above 0, the limits are not in order, or a share is not above 0 and below ½
 * @see Directive 76/211/EEC Annex I 1; the shares are packers' custom (from memory), not the Directive's
 * @example lowestMean({ nominalMilligrams: 200_000, t1Milligrams: 191_000, t2Milligrams: 182_000, shareBeyondT1: 0.025,
 * shareBeyondT2: 0.0001 }, 5_000) // 200 799.8 mg, bound by T1
 */
export function lowestMean(rules: FillRules, sigmaMilligrams: number): LowestMean {
  assertRules(rules);
  if (!(sigmaMilligrams > 0) || !Number.isFinite(sigmaMilligrams)) {
    throw new RangeError(`The standard deviation must be above 0, not ${sigmaMilligrams}`);
  }
  const byRule = {
    mean: rules.nominalMilligrams,
    t1: rules.t1Milligrams + upperNormalQuantile(rules.shareBeyondT1) * sigmaMilligrams,
    t2: rules.t2Milligrams + upperNormalQuantile(rules.shareBeyondT2) * sigmaMilligrams,
  };
  const milligrams = Math.max(...fillRuleNames.map((name) => byRule[name]));
  return { byRule, milligrams, binds: fillRuleNames.find((name) => byRule[name] === milligrams) ?? 'mean' };
}

/** What a mean and a standard deviation give away, and whom they leave short. */
export interface FillFigures {
  /** Mean less nominal: what a pack gives away on average. Below 0 where packs are short on average. */
  readonly netGiveawayMilligrams: number;
  /** On average over all packs, what those above the nominal quantity hold beyond it. Not the giveaway: others are short. */
  readonly overfillMilligrams: number;
  /** On average over all packs, what those below the nominal quantity lack. Overfill less shortage is the net giveaway. */
  readonly shortageMilligrams: number;
  readonly shareBelowNominal: number;
  readonly shareBeyondT1: number;
  readonly shareBeyondT2: number;
}

/**
 * What packs of a mean and a standard deviation come to, if they vary normally.
 *
 * Overfill is E[(X − Qn)⁺] = (μ − Qn)·Φ(d) + σ·φ(d), d = (μ − Qn)/σ. At μ = Qn it is 0.3989 σ, although nothing is given
 * away: what the heavy half holds too much, the light half lacks.
 *
 * @param fill the mean, and σ above 0
 * @returns masses with an absolute error below 10⁻¹² of σ; shares as exact as the normal shares
 * @throws RangeError as `lowestMean`, or when the mean is not finite
 * @example fillFigures(rules, { meanMilligrams: 200_000, sigmaMilligrams: 4_000 }).overfillMilligrams // 1595.8
 */
export function fillFigures(
  rules: FillRules,
  { meanMilligrams, sigmaMilligrams }: { readonly meanMilligrams: number; readonly sigmaMilligrams: number },
): FillFigures {
  assertRules(rules);
  if (!(sigmaMilligrams > 0) || !Number.isFinite(meanMilligrams / sigmaMilligrams)) {
    throw new RangeError(`No packs of ${meanMilligrams} mg with ${sigmaMilligrams} mg`);
  }
  const net = meanMilligrams - rules.nominalMilligrams;
  const distance = net / sigmaMilligrams;
  const { below, above } = normalShares(distance);
  const density = normalDensity(distance);
  const shareBeyond = (limit: number) => normalShares((limit - meanMilligrams) / sigmaMilligrams).below;
  return {
    netGiveawayMilligrams: net,
    overfillMilligrams: Math.max(0, net * below + sigmaMilligrams * density),
    shortageMilligrams: Math.max(0, sigmaMilligrams * density - net * above),
    shareBelowNominal: above,
    shareBeyondT1: shareBeyond(rules.t1Milligrams),
    shareBeyondT2: shareBeyond(rules.t2Milligrams),
  };
}

function assertRules({ nominalMilligrams, t1Milligrams, t2Milligrams, shareBeyondT1, shareBeyondT2 }: FillRules): void {
  if (!(t2Milligrams < t1Milligrams && t1Milligrams < nominalMilligrams && Number.isFinite(nominalMilligrams))) {
    throw new RangeError(`${t2Milligrams}, ${t1Milligrams} and ${nominalMilligrams} are not limits in order`);
  }
  for (const share of [shareBeyondT1, shareBeyondT2]) {
    if (!(share > 0 && share < 0.5))
      throw new RangeError(`A share beyond a limit must be above 0 and below ½: ${share}`);
  }
}
