import type { RuleSet, RuleSetId } from '../../core/average-quantity/rule-set.js';
import { ruleSetsInScope, type OutsideScope } from '../../core/average-quantity/rule-sets.js';
import {
  adviseSetpoint,
  monthlyChange,
  type MonthlyChange,
  type SetpointAdvice,
  type SetpointFacts,
} from '../../core/setpoint/advise-setpoint.js';
import { fillRulesOf } from '../../core/setpoint/fill-rules-of.js';
import { currencyCode } from '../format-sales/currency-field.js';
import { shownMarkets, type JudgedMarket } from '../run-weights/judged-markets.js';
import { leastLots, usedLots, type UsedLot } from './fill-lot.js';
import { fillerSetpoint, knownOffset, seenVariation, type KnownOffset, type SeenVariation } from './fill-offset.js';
import type { FormatFill, LineFill } from './line-fill.js';
import type { LineFillQuery } from './line-fill.query.js';

/** What packs of a day are multiplied by. */
export const monthDays = 30;
const usualRiskPercent = 5;

/** How a format is filled now, by the lots that can be used. */
export interface PresentFill {
  /** Over all packs of these lots. */
  readonly meanMilligrams: number;
  readonly packsPerDay: number;
  readonly packsPerMonth: number;
  /** Net less nominal, short packs taken off; below 0 the packs are short. */
  readonly givenAwayKilogramsPerMonth: number;
}

/** Why no setpoint is advised. */
export type NoAdvice =
  | { readonly why: 'nothing-weighed' }
  | { readonly why: 'few-lots'; readonly usedCount: number; readonly missingCount: number }
  | { readonly why: 'outside'; readonly outside: OutsideScope }
  | { readonly why: 'other-rules'; readonly ruleSet: RuleSetId }
  | { readonly why: 'no-spread' };

/** A setpoint with what it was reckoned from. */
export interface AdvisedFill {
  /** The rule set of the market that asks for most. */
  readonly ruleSet: RuleSetId;
  readonly asked: SetpointFacts;
  readonly advice: SetpointAdvice;
  /** The mean as a figure of the filler; null where it is not known how far the two lie apart. */
  readonly fillerSetpointMilligrams: number | null;
  readonly change: MonthlyChange;
  /** A price was entered or is set up; else no money is said. */
  readonly isPriced: boolean;
  /** Of the price, by ISO 4217; null: nobody said. */
  readonly currency: string | null;
  /** Markets in which the format is sold and whose rules no setpoint can be reckoned from. */
  readonly leftOutMarkets: readonly JudgedMarket[];
}

/** What a format's lots say, and what to set the line to for it: exactly one of `advised` and `missing` is there. */
export interface AdviceOnFormat {
  readonly fill: FormatFill;
  /** In which it is sold, or the one that was asked for. */
  readonly markets: readonly JudgedMarket[];
  /** Null where no lot can be used. */
  readonly present: PresentFill | null;
  /** Null where fewer lots than needed can be used. */
  readonly variation: SeenVariation | null;
  readonly known: KnownOffset;
  readonly advised: AdvisedFill | null;
  readonly missing: NoAdvice | null;
}

/** Advice on each format that a line packed lately, for the markets in which it is sold or for the one that is asked for. */
export function adviseFill({ period, formats }: LineFill, query: LineFillQuery): readonly AdviceOnFormat[] {
  return formats.map((fill) => adviceOn(fill, period?.days ?? 1, query));
}

function adviceOn(fill: FormatFill, days: number, query: LineFillQuery): AdviceOnFormat {
  const markets = shownMarkets(query.market, fill.sale);
  const lots = usedLots(fill.lots);
  const present = presentOf(fill, lots, days);
  const variation = seenVariation(lots);
  const known = knownOffset(lots);
  const none = (missing: NoAdvice): AdviceOnFormat => ({
    ...{ fill, markets, present, variation, known, advised: null, missing },
  });
  if (present === null && fill.lots.every(({ leftOut }) => leftOut === 'not-weighed')) {
    return none({ why: 'nothing-weighed' });
  }
  if (variation === null || present === null) {
    return none({ why: 'few-lots', usedCount: lots.length, missingCount: leastLots - lots.length });
  }
  const rules = rulesOf(fill.nominalMilligrams, markets);
  if ('why' in rules) return none(rules);
  if (variation.sigmaMilligrams === 0) return none({ why: 'no-spread' });
  const { ruleSets, leftOutMarkets } = rules;
  const advised = strictest(ruleSets.flatMap((of) => askedBy(of, { fill, variation, query })));
  const figures = { ...fillerFigure(advised, known), ...changeOf(advised, present, priceOf(fill, query)) };
  return {
    ...{ fill, markets, present, variation, known },
    advised: { ...advised, leftOutMarkets, ...figures },
    missing: null,
  };
}

interface RulesOfMarkets {
  /** One at least. */
  readonly ruleSets: readonly RuleSet[];
  readonly leftOutMarkets: readonly JudgedMarket[];
}

/** The rule sets of all markets that a setpoint can be reckoned from, each once; or why there is none. */
function rulesOf(nominalMilligrams: number, markets: readonly JudgedMarket[]): RulesOfMarkets | NoAdvice {
  const isOther = (rules: RuleSet): boolean => fillRulesOf(rules, nominalMilligrams) === null;
  const scoped = markets.map((market) => ({ market, ...ruleSetsInScope(nominalMilligrams, market) }));
  const within = scoped.filter(({ outside }) => outside === null);
  const counted = within.filter(({ ruleSets }) => !ruleSets.some(isOther));
  const leftOutMarkets = markets.filter((market) => !counted.some((one) => one.market === market));
  const ruleSets = [...new Set(counted.flatMap((one) => one.ruleSets))];
  if (ruleSets.length > 0) return { ruleSets, leftOutMarkets };
  const other = within.flatMap((one) => one.ruleSets).find(isOther);
  if (other !== undefined) return { why: 'other-rules', ruleSet: other.id };
  const outside = scoped.find((one) => one.outside !== null)?.outside ?? null;
  if (outside === null) throw new RangeError(`no rule set for ${markets.join()}`);
  return { why: 'outside', outside };
}

function presentOf(fill: FormatFill, lots: readonly UsedLot[], days: number): PresentFill | null {
  const packCount = lots.reduce((sum, lot) => sum + lot.packCount, 0);
  if (packCount === 0) return null;
  const { nominalMilligrams } = fill;
  const error =
    lots.reduce((sum, lot) => sum + lot.packCount * (lot.meanMilligrams - nominalMilligrams), 0) / packCount;
  const packsPerDay = fill.packCount / days;
  const packsPerMonth = packsPerDay * monthDays;
  return {
    ...{ meanMilligrams: nominalMilligrams + error, packsPerDay, packsPerMonth },
    givenAwayKilogramsPerMonth: (error * packsPerMonth) / 1e6,
  };
}

interface Known {
  readonly fill: FormatFill;
  readonly variation: SeenVariation;
  readonly query: LineFillQuery;
}

type Reckoned = Pick<AdvisedFill, 'ruleSet' | 'asked' | 'advice'>;

/** One, or none where the rule set counts otherwise. */
function askedBy(ruleSet: RuleSet, { fill, variation, query }: Known): readonly Reckoned[] {
  const rules = fillRulesOf(ruleSet, fill.nominalMilligrams);
  if (rules === null) return [];
  const { sigmaMilligrams, driftSigmaMilligrams } = variation;
  const milligrams = (grams: string | null | undefined) => Math.round(Number(grams ?? 0) * 1000);
  const most = (of: readonly number[]) => Math.max(0, ...of);
  const displayStep = most(fill.weighers.map(({ stepMilligrams }) => stepMilligrams));
  const asked: SetpointFacts = {
    ...{ rules, sigmaMilligrams, driftSigmaMilligrams },
    setByPackCount: query.setByPackCount ?? null,
    tareLimitMilligrams: milligrams(query.tareLimitGrams),
    scaleLimitMilligrams: most(fill.weighers.map((weigher) => weigher.maximumPermissibleErrorMilligrams)),
    stepMilligrams: Math.max(1, query.fillerStepGrams == null ? displayStep : milligrams(query.fillerStepGrams)),
    riskPerLot: Number(query.riskPercent ?? usualRiskPercent) / 100,
  };
  return [{ ruleSet: ruleSet.id, asked, advice: adviseSetpoint(asked) }];
}

/** A market may have several laws, its own the last; the packs must keep all of them. */
function strictest(reckoned: readonly Reckoned[]): Reckoned {
  return reckoned.reduce((one, other) =>
    other.advice.lowest.milligrams >= one.advice.lowest.milligrams ? other : one,
  );
}

function fillerFigure({ asked, advice }: Reckoned, { offset }: KnownOffset) {
  const figure = offset === null ? null : fillerSetpoint(advice.setpointMilligrams, offset, asked.stepMilligrams);
  return { fillerSetpointMilligrams: figure };
}

interface Price {
  /** Null: no money is said. */
  readonly perKilogram: string | null;
  readonly currency: string | null;
}

/** As entered, else as set up for the format: a price that was entered is in the currency that was entered with it. */
function priceOf({ sale }: FormatFill, { pricePerKilogram, currency }: LineFillQuery): Price {
  if (pricePerKilogram != null) return { perKilogram: pricePerKilogram, currency: currencyCode(currency) };
  return { perKilogram: sale?.pricePerKilogram ?? null, currency: sale?.currency ?? null };
}

function changeOf({ asked, advice }: Reckoned, present: PresentFill, { perKilogram, currency }: Price) {
  const change = monthlyChange({
    nominalMilligrams: asked.rules.nominalMilligrams,
    currentMilligrams: present.meanMilligrams,
    advisedMilligrams: advice.setpointMilligrams,
    packsPerMonth: present.packsPerMonth,
    pricePerKilogram: Number(perKilogram ?? 0),
  });
  return { change, isPriced: perKilogram !== null, currency };
}
