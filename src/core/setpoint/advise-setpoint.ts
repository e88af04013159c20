import { normalShares, upperNormalQuantile } from '../statistics/standard-normal.js';
import { fillRuleNames, lowestMean, type FillRuleName, type FillRules, type LowestMean } from './lowest-mean.js';

/** What is known of a line's fills, in milligrams, for advice on what to set it to. */
export interface SetpointFacts {
  readonly rules: FillRules;
  /**
   * The standard deviation of the packs of one lot, overall: all its minutes, heads and adjustments, not only what varies
   * from pack to pack. Above 0. Lots' means about each other do not belong in it; they are the drift.
   */
  readonly sigmaMilligrams: number;
  /** How many packs are weighed to see where the mean lies, each time the line is set; null: every pack is weighed. */
  readonly setByPackCount: number | null;
  /** The standard deviation of lots' true means about what was set. 0 or more. */
  readonly driftSigmaMilligrams: number;
  /** By how much packs may on average be lighter than they seem because the tare is heavier than taken. 0 or more. */
  readonly tareLimitMilligrams: number;
  /** By how much the scale may read too high at this load: its maximum permissible error in use. 0 or more. */
  readonly scaleLimitMilligrams: number;
  /** The smallest adjustment of the filler; the advice is a multiple of it. Above 0. */
  readonly stepMilligrams: number;
  /** In what share of lots chance may break a rule. Above 0, at most ½. */
  readonly riskPerLot: number;
}

/** A term of the sum that the advice is. */
export interface SetpointTerm {
  readonly name: 'lowest-mean' | 'sampling-and-drift' | 'tare' | 'scale' | 'rounding-up';
  readonly milligrams: number;
}

/** What to set a line to, and what that rests on. */
export interface SetpointAdvice {
  /** What the mean of the packs, as the line's own scale and tare show it, should be set to. */
  readonly setpointMilligrams: number;
  /** In order; they sum to the setpoint. */
  readonly terms: readonly SetpointTerm[];
  readonly lowest: LowestMean;
  /** How far chance alone may put a lot's true mean below what was set: each part alone, and both in quadrature. */
  readonly chance: {
    /** The factor of the risk: so many standard deviations. */
    readonly factor: number;
    readonly samplingMilligrams: number;
    readonly driftMilligrams: number;
    readonly togetherMilligrams: number;
  };
  /**
   * In what share of lots chance breaks a rule at this setpoint, tare and scale being at their limits; less where they are
   * not. `any` is at most the risk that was asked for.
   */
  readonly risk: Readonly<Record<FillRuleName, number>> & { readonly any: number };
}

/**
 * The lowest setpoint at which chance breaks a rule of the average-quantity system in no more than a stated share of lots.
 *
 * The sum is: the lowest mean by all rules, plus what sampling and drift may take away, plus the tare's and the scale's
 * limits, rounded up to the filler's step. **What is random** is where the mean truly was when it was set (known only to
 * σ/√N after N packs) and how lots drift about it; they are independent, so their allowances add in quadrature, and the
 * factor is the normal point of the risk. **What is not random from lot to lot** is the error of the scale and of the mean
 * tare: it is the same in every lot until somebody finds it, no odds can be stated of it, so its limit is added in full.
 *
 * Not in the risk: that packs do not vary normally (look at the histogram), that σ or the drift are known from few lots,
 * that the process changes. Passing a reference test is no proof of the rules; this is about the true mean and shares.
 *
 * @returns a whole multiple of the step, never below the nominal quantity
 * @throws RangeError outside of the ranges of the facts
 * @see Our own form; the official allowance tables could not be read. Combining: JCGM 100:2008, 5.1.2
 * @example adviseSetpoint({ rules, sigmaMilligrams: 8_000, setByPackCount: 50, driftSigmaMilligrams: 1_500,
 * tareLimitMilligrams: 300, scaleLimitMilligrams: 500, stepMilligrams: 500, riskPerLot: 0.05 }).setpointMilligrams
 * // 1 005 000 for packs of 1 kg: 1 000 679.7 + 3 090.4 + 300 + 500 + 429.9
 */
export function adviseSetpoint(facts: SetpointFacts): SetpointAdvice {
  assertFacts(facts);
  const { rules, sigmaMilligrams, tareLimitMilligrams, scaleLimitMilligrams, stepMilligrams } = facts;
  const lowest = lowestMean(rules, sigmaMilligrams);
  const factor = upperNormalQuantile(facts.riskPerLot);
  const samplingSigma = facts.setByPackCount === null ? 0 : sigmaMilligrams / Math.sqrt(facts.setByPackCount);
  const chanceSigma = Math.hypot(samplingSigma, facts.driftSigmaMilligrams);
  const exact = lowest.milligrams + factor * chanceSigma + tareLimitMilligrams + scaleLimitMilligrams;
  const setpointMilligrams = Math.ceil(exact / stepMilligrams) * stepMilligrams;
  const worstMean = setpointMilligrams - tareLimitMilligrams - scaleLimitMilligrams;
  return {
    setpointMilligrams,
    terms: [
      { name: 'lowest-mean', milligrams: lowest.milligrams },
      { name: 'sampling-and-drift', milligrams: factor * chanceSigma },
      { name: 'tare', milligrams: tareLimitMilligrams },
      { name: 'scale', milligrams: scaleLimitMilligrams },
      { name: 'rounding-up', milligrams: setpointMilligrams - exact },
    ],
    lowest,
    chance: {
      factor,
      samplingMilligrams: factor * samplingSigma,
      driftMilligrams: factor * facts.driftSigmaMilligrams,
      togetherMilligrams: factor * chanceSigma,
    },
    risk: riskOf(lowest, worstMean, chanceSigma),
  };
}

/** A rule is broken where the lot's mean is below what the rule asks for; all three are about the mean, for a known σ. */
function riskOf(
  { byRule, milligrams }: LowestMean,
  meanMilligrams: number,
  chanceSigma: number,
): SetpointAdvice['risk'] {
  const chanceBelow = (least: number) =>
    // Without any chance the mean is what it is: the sum above is not below the least.
    chanceSigma === 0 ? 0 : normalShares((least - meanMilligrams) / chanceSigma).below;
  const [mean = 0, t1 = 0, t2 = 0] = fillRuleNames.map((name) => chanceBelow(byRule[name]));
  return { mean, t1, t2, any: chanceBelow(milligrams) };
}

/** What changes in a month when the mean of the packs is set from one value to another. */
export interface MonthlyChange {
  /** Above 0: saved. Below 0: the advised setting needs more. */
  readonly savedKilograms: number;
  readonly savedMoney: number;
  /** What the current setting gives away net in a month; below 0 where packs are short on average. */
  readonly givenAwayKilograms: number;
  readonly givenAwayMoney: number;
}

/**
 * What a change of setting saves in a month, and what the current one gives away, in kilograms and money.
 *
 * Net: mean less nominal, times packs. What heavy packs hold too much is no loss as far as light ones lack it.
 *
 * @param change the means in milligrams; packs 0 or more; the price of a kilogram in the plant's currency, 0 or more
 * @throws RangeError when a number is not finite, or packs or price are below 0
 * @example monthlyChange({ nominalMilligrams: 1_000_000, currentMilligrams: 1_006_000, advisedMilligrams: 1_004_000,
 * packsPerMonth: 1_000_000, pricePerKilogram: 0.6 }) // saves 2000 kg, 1200 of the currency; gives away 6000 kg
 */
export function monthlyChange(change: {
  readonly nominalMilligrams: number;
  readonly currentMilligrams: number;
  readonly advisedMilligrams: number;
  readonly packsPerMonth: number;
  readonly pricePerKilogram: number;
}): MonthlyChange {
  const { nominalMilligrams, currentMilligrams, advisedMilligrams, packsPerMonth, pricePerKilogram } = change;
  if (!Object.values(change).every(Number.isFinite) || packsPerMonth < 0 || pricePerKilogram < 0) {
    throw new RangeError('A month’s change needs finite figures, packs and a price of 0 or more');
  }
  const kilogramsOf = (milligramsPerPack: number) => (milligramsPerPack * packsPerMonth) / 1e6;
  const savedKilograms = kilogramsOf(currentMilligrams - advisedMilligrams);
  const givenAwayKilograms = kilogramsOf(currentMilligrams - nominalMilligrams);
  return {
    savedKilograms,
    savedMoney: savedKilograms * pricePerKilogram,
    givenAwayKilograms,
    givenAwayMoney: givenAwayKilograms * pricePerKilogram,
  };
}

function assertFacts(facts: SetpointFacts): void {
  const { setByPackCount: count, riskPerLot: risk, stepMilligrams: step } = facts;
  const limits = [facts.driftSigmaMilligrams, facts.tareLimitMilligrams, facts.scaleLimitMilligrams];
  if (!limits.every((limit) => limit >= 0 && Number.isFinite(limit))) {
    throw new RangeError(`Drift, tare and scale must be 0 or more: ${limits.join(', ')}`);
  }
  if (count !== null && !(Number.isInteger(count) && count >= 1)) {
    throw new RangeError(`The packs that set a line must be whole, 1 or more: ${count}`);
  }
  if (!(risk > 0 && risk <= 0.5)) throw new RangeError(`The risk must be above 0 and at most ½: ${risk}`);
  if (!(step > 0) || !Number.isFinite(step)) throw new RangeError(`The filler’s step must be above 0: ${step}`);
}
