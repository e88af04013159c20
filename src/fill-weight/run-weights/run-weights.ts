import { judgeRun, type RuleVerdict, type RunVerdict } from '../../core/average-quantity/judge-run.js';
import {
  exactSums,
  meanErrorMicrograms,
  type RunSummary,
  runSummaryOf,
  standardDeviationMilligrams,
} from '../../core/average-quantity/pack-sums.js';
import { type Bin, equalBins } from '../../core/statistics/equal-bins.js';
import {
  addSummaries,
  noWeights,
  type WeightSummary,
  type WeightSums,
  type Yardstick,
} from '../../core/weight-blocks/weight-summary.js';
import { removalsOfRun } from '../../packing/packing-runs.js';
import type { RunRow } from '../../packing/packing-run-rows.js';
import type { Instant } from '../../platform/clock.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { hoursOfRun, summariesOfRun, type RunOfWeigher } from '../kept/weight-questions.js';
import { yardstickFor } from '../kept/yardsticks.js';
import { meanNetOf, type RunMeanNet } from '../mean-nets.js';
import { judgedMarkets } from './judged-markets.js';
import { silencesOfRun, type Silence } from '../silence/silences.js';

/** No more bars than people can tell apart. */
const mostBins = 40;

/** Accepted packs of an hour of UTC. */
export interface HourWeighed {
  readonly hourAt: Instant;
  readonly packCount: number;
  /** Mean net less nominal, rounded down to whole micrograms. */
  readonly meanErrorMicrograms: number;
  readonly beyondT1Count: number;
  readonly beyondT2Count: number;
}

/** What a run's accepted packs weigh one by one, all weighers together. */
export interface Weighed {
  readonly meanErrorMicrograms: number;
  /** Null of one pack. */
  readonly standardDeviationMilligrams: number | null;
  readonly smallestMilligrams: number;
  readonly largestMilligrams: number;
  /** Net less nominal of all packs, short ones taken off: below zero the run is short. */
  readonly giveawayMilligrams: number;
  readonly bins: readonly Bin[];
  /** Packs lie outside of what the bins of the sums reach: the outermost bin holds them too. */
  readonly isBeyondBins: boolean;
}

/** A verdict under a market's rules, with the one word that it comes to. */
export interface MarketVerdict extends RunVerdict {
  /** `broken`: one rule at least; `kept`: every rule; else `not-judged`, also where no rule is in scope. */
  readonly overall: RuleVerdict;
}

/** The fill weights of a run, as its page and its JSON say them. */
export interface RunWeights {
  readonly run: RunRow;
  readonly yardstick: Yardstick;
  readonly weighers: readonly RunOfWeigher[];
  /** Accepted packs that were weighed. The verdicts are about these and no others. */
  readonly weighedPackCount: number;
  readonly rejectedPackCount: number;
  /** Counted as accepted and weighed. */
  readonly verifiedPackCount: number;
  /** Counted as accepted and not weighed: nobody knows what they hold. */
  readonly unweighedPackCount: number;
  /** Weighed and not counted. */
  readonly uncountedPackCount: number;
  /** Taken out by hand as rejects or samples: they may have been weighed, and are not counted. */
  readonly takenOutPackCount: number;
  /** When no weights came while packs were counted. */
  readonly silences: readonly Silence[];
  /** Null where nothing was weighed. */
  readonly weighed: Weighed | null;
  /** One for each of `judgedMarkets`, in that order. */
  readonly verdicts: readonly MarketVerdict[];
  readonly hours: readonly HourWeighed[];
  /** From hand samples, or assumed. */
  readonly meanNet: RunMeanNet;
}

/** Reads what the sums of a run's weights say of it. */
export async function readRunWeights(from: ReadFrom, run: RunRow): Promise<RunWeights> {
  const nominalMilligrams = run.nominalGrams * 1000;
  const weighers = await summariesOfRun(from, run.id);
  const yardstick = weighers[0]?.yardstick ?? yardstickFor(nominalMilligrams);
  const { accepted, rejected } = weighers.reduce((sum, { summary }) => addSummaries(sum, summary), noWeights());
  const weighedPackCount = accepted.packCount;
  return {
    ...{ run, yardstick, weighers, weighedPackCount },
    rejectedPackCount: rejected.packCount,
    verifiedPackCount: Math.min(run.packCount, weighedPackCount),
    unweighedPackCount: Math.max(0, run.packCount - weighedPackCount),
    uncountedPackCount: Math.max(0, weighedPackCount - run.packCount),
    takenOutPackCount: await takenOutOf(from, run.id),
    silences: await silencesOfRun(from, run.id),
    weighed: weighedOf(accepted, yardstick),
    verdicts: verdictsOf(nominalMilligrams, runSummaryOf(accepted, yardstick)),
    hours: await hoursWeighed(from, run.id),
    meanNet: await meanNetOf(from, run.id),
  };
}

/** Packs that people took out: whole ones, as far as they were counted. */
async function takenOutOf(from: ReadFrom, runId: string): Promise<number> {
  const removals = await removalsOfRun(from, runId);
  return removals.reduce((sum, { packCount }) => sum + (packCount ?? 0), 0);
}

function verdictsOf(nominalMilligrams: number, summary: RunSummary): readonly MarketVerdict[] {
  return judgedMarkets.map((market) => {
    const verdict = judgeRun({ nominalMilligrams, market, summary });
    return { ...verdict, overall: overallOf(verdict) };
  });
}

function overallOf({ outside, ruleSets }: RunVerdict): RuleVerdict {
  const verdicts = ruleSets.flatMap(({ lines }) => lines.map(({ verdict }) => verdict));
  if (verdicts.includes('broken')) return 'broken';
  return outside !== null || verdicts.includes('not-judged') ? 'not-judged' : 'kept';
}

function weighedOf(accepted: WeightSums, yardstick: Yardstick): Weighed | null {
  const { smallestMilligrams, largestMilligrams, histogram } = accepted;
  const sums = exactSums(accepted);
  const mean = meanErrorMicrograms(sums);
  if (mean === null || smallestMilligrams === null || largestMilligrams === null) return null;
  const { nominalMilligrams, binMilligrams } = yardstick;
  const reach = (histogram.length / 2) * binMilligrams;
  return {
    meanErrorMicrograms: mean,
    standardDeviationMilligrams: standardDeviationMilligrams(sums),
    ...{ smallestMilligrams, largestMilligrams, giveawayMilligrams: accepted.errorSumMilligrams },
    bins: binsOf(histogram, yardstick),
    isBeyondBins: smallestMilligrams < nominalMilligrams - reach || largestMilligrams >= nominalMilligrams + reach,
  };
}

function binsOf(histogram: Float64Array, { nominalMilligrams, binMilligrams }: Yardstick): readonly Bin[] {
  const values = [...histogram].map((count, bin) => ({
    value: nominalMilligrams + (bin - histogram.length / 2) * binMilligrams,
    count,
  }));
  return equalBins(values, { anchor: nominalMilligrams, mostBins, resolution: binMilligrams });
}

/** Hours in which no pack was accepted are left out; where two weighers weighed in an hour, their packs together. */
async function hoursWeighed(from: ReadFrom, runId: string): Promise<readonly HourWeighed[]> {
  const byHour = new Map<Instant, WeightSummary>();
  for (const { hourAt, summary } of await hoursOfRun(from, runId)) {
    byHour.set(hourAt, addSummaries(byHour.get(hourAt) ?? noWeights(), summary));
  }
  return [...byHour].flatMap(([hourAt, { accepted }]) => {
    const mean = meanErrorMicrograms(exactSums(accepted));
    const { packCount, beyondT1Count, beyondT2Count } = accepted;
    return mean === null ? [] : [{ hourAt, packCount, meanErrorMicrograms: mean, beyondT1Count, beyondT2Count }];
  });
}
