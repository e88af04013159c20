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
import type { JudgedMarket } from '../run-weights/run-weights.js';
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
  /** A price was entered; else no money is said. */
  readonly isPriced: boolean;
}

/** What a format's lots say, and what to set the line to for it: exactly one of `advised` and `missing` is there. */
export interface AdviceOnFormat {
  readonly fill: FormatFill;
  readonly market: JudgedMarket;
  /** Null where no lot can be used. */
  readonly present: PresentFill | null;
  /** Null where fewer lots than needed can be used. */
  readonly variation: SeenVariation | null;
  readonly known: KnownOffset;
  readonly advised: AdvisedFill | null;
  readonly missing: NoAdvice | null;
}

/** Advice on each format that a line packed lately, for one market. */
export function adviseFill({ period, formats }: LineFill, query: LineFillQuery): readonly AdviceOnFormat[] {
  return formats.map((fill) => adviceOn(fill, period?.days ?? 1, query));
}

function adviceOn(fill: FormatFill, days: number, query: LineFillQuery): AdviceOnFormat {
  const market = query.market ?? 'eu';
  const lots = usedLots(fill.lots);
  const present = presentOf(fill, lots, days);
  const variation = seenVariation(lots);
  const known = knownOffset(lots);
  const none = (missing: NoAdvice): AdviceOnFormat => ({
    ...{ fill, market, present, variation, known, advised: null, missing },
  });
  if (present === null && fill.lots.every(({ leftOut }) => leftOut === 'not-weighed')) {
    return none({ why: 'nothing-weighed' });
  }
  if (variation === null || present === null) {
    return none({ why: 'few-lots', usedCount: lots.length, missingCount: leastLots - lots.length });
  }
  const { ruleSets, outside } = ruleSetsInScope(fill.nominalMilligrams, market);
  if (outside !== null) return none({ why: 'outside', outside });
  if (variation.sigmaMilligrams === 0) return none({ why: 'no-spread' });
  const other = ruleSets.find((rules) => fillRulesOf(rules, fill.nominalMilligrams) === null);
  if (other !== undefined) return none({ why: 'other-rules', ruleSet: other.id });
  const advised = strictest(ruleSets.flatMap((rules) => askedBy(rules, { fill, variation, query })));
  return {
    ...{ fill, market, present, variation, known },
    advised: { ...advised, ...fillerFigure(advised, known), ...changeOf(advised, present, query) },
    missing: null,
  };
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

function changeOf({ asked, advice }: Reckoned, present: PresentFill, query: LineFillQuery) {
  const change = monthlyChange({
    nominalMilligrams: asked.rules.nominalMilligrams,
    currentMilligrams: present.meanMilligrams,
    advisedMilligrams: advice.setpointMilligrams,
    packsPerMonth: present.packsPerMonth,
    pricePerKilogram: Number(query.pricePerKilogram ?? 0),
  });
  return { change, isPriced: query.pricePerKilogram != null };
}
