import type { Origin } from './evidence.js';
import { type MeanStanding, meanStanding, restsOnShortestPack } from './mean-test.js';
import { errorSums, exactSums, meanErrorMicrograms, standardDeviationMilligrams } from './pack-sums.js';
import type { RuleSet } from './rule-set.js';
import type { PlanMeanTest, PlanRow, SamplePlan } from './sample-plan.js';
import { type ShortLimit, shortLimits, type ShortState } from './short-state.js';

/** `second-sample-needed`: the first sample of a double plan decides nothing. */
export type SampleLineVerdict = 'kept' | 'broken' | 'second-sample-needed' | 'not-judged';

/** `between`: more short packs than accept the batch, fewer than reject it. `sample-size`: not as many as the plan has. */
export type SampleReason = MeanStanding | 'between' | 'sample-size';

interface SampleLineBase extends Origin {
  readonly verdict: SampleLineVerdict;
  readonly reason: SampleReason;
  /** As many were weighed for this line. */
  readonly packCount: number;
  /** As many as the plan asks for. */
  readonly askedCount: number;
}

/** Short packs in the sample against the numbers of the plan. */
export interface SampleCountLine extends SampleLineBase {
  readonly test: 'count';
  readonly counts: ShortState;
  readonly belowMilligrams: number;
  readonly shortCount: number;
  /** So many accept the batch. */
  readonly accept: number;
  /** So many reject it. */
  readonly reject: number;
  /** How many more packs the second sample has; `null` unless one is needed. */
  readonly nextPackCount: number | null;
}

/** The mean of the mean test's own sample. */
export interface SampleMeanLine extends SampleLineBase {
  readonly test: 'mean';
  /** Rounded down to whole micrograms; `null` where the sample has not the plan's size. */
  readonly meanErrorMicrograms: number | null;
  readonly standardDeviationMilligrams: number | null;
  readonly factorThousandths: number | null;
  /** The test is passed, but with its shortest pack as heavy as the next it would not be: it proves little. */
  readonly restsOnShortestPack: boolean;
}

export type SampleLine = SampleCountLine | SampleMeanLine;

export interface SampleVerdict {
  readonly verdict: 'accepted' | 'rejected' | 'second-sample-needed' | 'not-judged';
  readonly lines: readonly SampleLine[];
}

/** A sample drawn from a batch at random, and the plan that it is judged by. */
export interface WeighedSample {
  readonly nominalMilligrams: number;
  readonly ruleSet: RuleSet;
  readonly plan: SamplePlan;
  /** The row of the plan for this batch, as `planRowFor` gives it. */
  readonly row: PlanRow;
  readonly batchPackCount: number;
  /** Nets of the first sample in whole milligrams. */
  readonly firstMilligrams: readonly number[];
  /** Which of the first sample stand in the mean test, from 0, drawn before anything was weighed (`drawPositions`). */
  readonly meanPositions: readonly number[];
  /** Nets of the second sample by itself; empty while there is none. */
  readonly secondMilligrams: readonly number[];
}

/**
 * Judges a batch by a sample: short packs by the numbers of the plan, and the mean by a test of its own.
 *
 * The two samples are kept apart: 80 or 125 packs may be counted while only 50 of them, drawn beforehand, enter the mean
 * test. A pack exactly at a limit is not beyond it, and a mean exactly at its limit passes. A batch is accepted where all lines are
 * kept and rejected where one is broken. Passing is no proof that packs hold their quantity on average: with a true mean
 * of three tenths of a standard deviation too little, 50 packs still pass in seven cases of ten.
 *
 * @throws RangeError where a net is not whole milligrams, a position is not of the first sample or named twice, the row
 * is for another size of batch, or the rule set has no table
 * @see Directive 76/211/EEC Annex II 2.2, 2.3; UK SI 2006/659 Schedule 2; OIML R 87:2004 Table 1
 * @example judgeSample({ ...sample, firstMilligrams: thirtyWithTwoShort }).verdict // 'second-sample-needed', double plan
 */
export function judgeSample(sample: WeighedSample): SampleVerdict {
  refuseOtherRow(sample);
  const limits = limitsOf(sample);
  const lines = [countLine(sample, limits), ...noneLine(sample, limits), ...meanLine(sample)];
  return { verdict: verdictOf(lines.map(({ verdict }) => verdict)), lines };
}

function verdictOf(verdicts: readonly SampleLineVerdict[]): SampleVerdict['verdict'] {
  if (verdicts.includes('broken')) return 'rejected';
  if (verdicts.includes('not-judged')) return 'not-judged';
  return verdicts.includes('second-sample-needed') ? 'second-sample-needed' : 'accepted';
}

function refuseOtherRow({ row: { batchFrom, batchTo }, batchPackCount }: WeighedSample): void {
  if (batchPackCount >= batchFrom && (batchTo === null || batchPackCount <= batchTo)) return;
  throw new RangeError(
    `The row is for ${batchFrom} to ${batchTo ?? 'any'} packs, not for a batch of ${batchPackCount}`,
  );
}

function limitsOf({ ruleSet, nominalMilligrams }: WeighedSample): readonly ShortLimit[] {
  if (ruleSet.shortBy.table === 'not-obtained') throw new RangeError(`No table of ${ruleSet.id} to count packs by`);
  return shortLimits(nominalMilligrams, ruleSet.shortBy.table);
}

function shortOf(nets: readonly number[], state: ShortState, limits: readonly ShortLimit[]) {
  const belowMilligrams = limits.find((limit) => limit.state === state)?.belowMilligrams;
  if (belowMilligrams === undefined) throw new RangeError(`The rule set has no limit ${state}`);
  return { counts: state, belowMilligrams, shortCount: nets.filter((net) => net < belowMilligrams).length };
}

/** What decides: the nets looked at, the plan's numbers for them, and how many packs another sample would have. */
interface Deciding {
  readonly nets: readonly number[];
  readonly askedCount: number;
  readonly accept: number;
  readonly reject: number;
  readonly nextPackCount: number | null;
}

/** A second sample counts only where the first decided nothing; drawn without need it changes nothing. */
function decidingOf(sample: WeighedSample, limits: readonly ShortLimit[]): Deciding {
  const { row, batchPackCount, firstMilligrams, secondMilligrams } = sample;
  if (row.counting.by === 'share') {
    const accept = Math.floor((batchPackCount * row.counting.atMostPermille) / 1000);
    const numbers = { askedCount: batchPackCount, accept, reject: accept + 1, nextPackCount: null };
    return { nets: firstMilligrams, ...numbers };
  }
  const [{ packCount, accept, reject }, second] = row.counting.steps;
  const { shortCount } = shortOf(firstMilligrams, sample.plan.counts, limits);
  const isOpen = firstMilligrams.length === packCount && shortCount > accept && shortCount < reject;
  if (second === undefined || !isOpen || secondMilligrams.length === 0) {
    const nextPackCount = isOpen ? (second?.packCount ?? null) : null;
    return { nets: firstMilligrams, askedCount: packCount, accept, reject, nextPackCount };
  }
  return {
    nets: [...firstMilligrams, ...secondMilligrams],
    askedCount: packCount + second.packCount,
    ...{ accept: second.accept, reject: second.reject, nextPackCount: null },
  };
}

function countLine(sample: WeighedSample, limits: readonly ShortLimit[]): SampleCountLine {
  const { nets, ...numbers } = decidingOf(sample, limits);
  const short = shortOf(nets, sample.plan.counts, limits);
  const { clause, evidence } = sample.row;
  const line = { test: 'count' as const, packCount: nets.length, ...numbers, ...short, clause, evidence };
  if (nets.length !== numbers.askedCount) return { ...line, verdict: 'not-judged', reason: 'sample-size' };
  if (numbers.nextPackCount !== null) return { ...line, verdict: 'second-sample-needed', reason: 'between' };
  if (short.shortCount >= numbers.reject) return { ...line, verdict: 'broken', reason: 'outside' };
  const isAtLimit = short.shortCount > 0 && short.shortCount === numbers.accept;
  return { ...line, verdict: 'kept', reason: isAtLimit ? 'at-the-limit' : 'within' };
}

/** No pack of the sample may be so short, where the plan says so. */
function noneLine(sample: WeighedSample, limits: readonly ShortLimit[]): SampleCountLine[] {
  if (sample.plan.noneMayBe === null) return [];
  const counted = countLine(sample, limits);
  const short = shortOf(decidingOf(sample, limits).nets, sample.plan.noneMayBe, limits);
  const line = { ...counted, ...short, accept: 0, reject: 1, nextPackCount: null };
  if (counted.reason === 'sample-size') return [line];
  if (short.shortCount > 0) return [{ ...line, verdict: 'broken', reason: 'outside' }];
  return [{ ...line, verdict: 'kept', reason: 'within' }];
}

function meanLine(sample: WeighedSample): SampleMeanLine[] {
  const { row, firstMilligrams, meanPositions, nominalMilligrams } = sample;
  if (row.mean === null) return [];
  const { factorThousandths, clause, evidence } = row.mean;
  const nets = row.mean.packCount === null ? firstMilligrams : netsAt(firstMilligrams, meanPositions);
  const askedCount = meanSampleCount(row, row.mean, sample.batchPackCount);
  const line = {
    test: 'mean' as const,
    ...{ packCount: nets.length, askedCount, factorThousandths, clause, evidence },
  };
  if (nets.length !== askedCount) {
    const nothing = { meanErrorMicrograms: null, standardDeviationMilligrams: null, restsOnShortestPack: false };
    return [{ ...line, ...nothing, verdict: 'not-judged', reason: 'sample-size' }];
  }
  const sums = errorSums(nets, nominalMilligrams);
  const reason = meanStanding(sums, factorThousandths);
  return [
    {
      ...line,
      verdict: reason === 'outside' ? 'broken' : 'kept',
      reason,
      meanErrorMicrograms: meanErrorMicrograms(exactSums(sums)),
      standardDeviationMilligrams: standardDeviationMilligrams(exactSums(sums)),
      restsOnShortestPack: restsOnShortestPack(nets, nominalMilligrams, factorThousandths),
    },
  ];
}

function meanSampleCount({ counting }: PlanRow, mean: PlanMeanTest, batchPackCount: number): number {
  if (mean.packCount !== null) return mean.packCount;
  return counting.by === 'share' ? batchPackCount : counting.steps[0].packCount;
}

function netsAt(nets: readonly number[], positions: readonly number[]): number[] {
  if (new Set(positions).size !== positions.length) throw new RangeError('A pack stands twice in the mean test');
  return positions.map((position) => {
    const net = nets[position];
    if (net === undefined) throw new RangeError(`The first sample has no pack ${position}`);
    return net;
  });
}
