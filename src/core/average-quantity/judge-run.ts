import type { Origin } from './evidence.js';
import { exactSums, meanErrorMicrograms, standardDeviationMilligrams } from './pack-sums.js';
import type { RunSummary } from './pack-sums.js';
import type { Market, RuleSet, RuleSetId, RunRule } from './rule-set.js';
import { type OutsideScope, ruleSetsInScope } from './rule-sets.js';
import { shortLimits, type ShortState } from './short-state.js';

/** `not-judged` is neither: the reason says what is missing. */
export type RuleVerdict = 'kept' | 'broken' | 'not-judged';

/**
 * Why a line says what it says. `at-the-limit`: exactly there, which is still kept. `not-counted`: the counts in the
 * summary do not tell. `table-not-obtained`: the rule set has a table of its own that we could not read.
 */
export type RuleReason =
  'within' | 'at-the-limit' | 'outside' | 'nothing-weighed' | 'not-counted' | 'table-not-obtained';

/** What both kinds of lines have. */
interface Judged extends Origin {
  readonly verdict: RuleVerdict;
  readonly reason: RuleReason;
  readonly packCount: number;
}

/** The rule on the mean: it must reach the nominal quantity. */
export interface MeanLine extends Judged {
  readonly rule: 'mean';
  /** Mean net less nominal, rounded down to whole micrograms; `null` where nothing was weighed. */
  readonly meanErrorMicrograms: number | null;
  /** Of all packs; `null` for fewer than two. */
  readonly standardDeviationMilligrams: number | null;
}

/** A rule on how many packs may be so short. */
export interface CountLine extends Judged {
  readonly rule: ShortState;
  /** A pack with less net than this is so short; `null` where the table was not obtained. */
  readonly belowMilligrams: number | null;
  /** `null` where the summary has no exact count; then it is one of those between the next two. */
  readonly shortCount: number | null;
  /** By the nearest limits that were counted; 0 where nothing is known. */
  readonly leastShortCount: number;
  /** By the nearest limits that were counted; all packs where nothing is known. */
  readonly mostShortCount: number;
  /** So many are allowed of these packs. */
  readonly allowedCount: number;
  /** The share that the allowed count comes from; `null` where the rule names a number. */
  readonly atMostPermille: number | null;
}

export type RunLine = MeanLine | CountLine;

/** A run under one rule set: a line for each of its rules, in its order. */
export interface RuleSetVerdict {
  readonly ruleSet: RuleSetId;
  readonly lines: readonly RunLine[];
}

export interface RunVerdict {
  readonly nominalMilligrams: number;
  readonly market: Market;
  /** One for each rule set in scope. */
  readonly ruleSets: readonly RuleSetVerdict[];
  /** Why none is in scope; `null` where there is one. */
  readonly outside: OutsideScope | null;
}

/** Packs of one format that were weighed one by one. */
export interface WeighedRun {
  /** Whole milligrams. */
  readonly nominalMilligrams: number;
  readonly market: Market;
  readonly summary: RunSummary;
}

/**
 * Judges a run whose packs were weighed one by one, by every rule set that is in scope in a market.
 *
 * Nothing is sampled, so nothing is allowed for chance: the mean of all packs must reach the nominal quantity (exactly
 * at it is kept), packs beyond T1 are so many thousandths at most (exactly so many is kept), and none is beyond T2. Each
 * line is decided in whole numbers. Where a limit itself was not counted, the nearest that were may still decide it. The
 * verdict is about the packs in the summary: packs that passed unweighed are not
 * in it. For another market call it again: the same summary serves if it counts the limits of both.
 *
 * @throws RangeError where the nominal quantity is not whole milligrams above 0, or the summary is impossible
 * @see Directive 76/211/EEC Annex I 1.1 to 1.3; OIML R 87 clause 3; FPackV section 9(3) and 9(4)
 * @example judgeRun({ nominalMilligrams: 1_000_000, market: 'eu', summary }).ruleSets[0].lines
 * // mean, beyondT1 and beyondT2, each kept, broken or not judged
 */
export function judgeRun({ nominalMilligrams, market, summary }: WeighedRun): RunVerdict {
  const { ruleSets, outside } = ruleSetsInScope(nominalMilligrams, market);
  refuseImpossibleCounts(summary);
  return {
    nominalMilligrams,
    market,
    outside,
    ruleSets: ruleSets.map((ruleSet) => ({
      ruleSet: ruleSet.id,
      lines: ruleSet.runRules.map((rule) =>
        rule.kind === 'mean'
          ? meanLine(rule, summary)
          : countLine(rule, limitOf(ruleSet, rule, nominalMilligrams), summary),
      ),
    })),
  };
}

/**
 * The limits below which packs must be counted so that a run can be judged in some markets: each once, lowest first.
 *
 * @param nominalMilligrams whole milligrams above 0
 * @example limitsToCount(35_000, ['de']) // [28600, 28700, 31800]: T2 twice, by the directive and by the FPackV
 */
export function limitsToCount(nominalMilligrams: number, markets: readonly Market[]): readonly number[] {
  const limits = markets
    .flatMap((market) => ruleSetsInScope(nominalMilligrams, market).ruleSets)
    .flatMap(({ shortBy: { table } }) => (table === 'not-obtained' ? [] : shortLimits(nominalMilligrams, table)))
    .map(({ belowMilligrams }) => belowMilligrams);
  return [...new Set(limits)].sort((one, other) => one - other);
}

function limitOf({ shortBy: { table } }: RuleSet, rule: CountRule, nominalMilligrams: number): number | null {
  if (table === 'not-obtained') return null;
  return shortLimits(nominalMilligrams, table).find(({ state }) => state === rule.of)?.belowMilligrams ?? null;
}

function meanLine({ clause, evidence }: Origin, summary: RunSummary): MeanLine {
  const sums = exactSums(summary);
  const judged = {
    rule: 'mean' as const,
    packCount: summary.packCount,
    meanErrorMicrograms: meanErrorMicrograms(sums),
    standardDeviationMilligrams: standardDeviationMilligrams(sums),
    clause,
    evidence,
  };
  if (summary.packCount === 0) return { ...judged, verdict: 'not-judged', reason: 'nothing-weighed' };
  if (sums.sum < 0n) return { ...judged, verdict: 'broken', reason: 'outside' };
  return { ...judged, verdict: 'kept', reason: sums.sum === 0n ? 'at-the-limit' : 'within' };
}

type CountRule = Exclude<RunRule, { kind: 'mean' }>;

function countLine(rule: CountRule, belowMilligrams: number | null, summary: RunSummary): CountLine {
  const { packCount } = summary;
  const [least, most] = shortBetween(summary, belowMilligrams);
  const atMostPermille = rule.kind === 'share' ? rule.atMostPermille : null;
  const judged = {
    rule: rule.of,
    ...{ packCount, belowMilligrams, atMostPermille, leastShortCount: least, mostShortCount: most },
    shortCount: least === most && belowMilligrams !== null ? least : null,
    allowedCount: rule.kind === 'share' ? Math.floor((packCount * rule.atMostPermille) / 1000) : rule.atMost,
    ...{ clause: rule.clause, evidence: rule.evidence },
  };
  if (packCount === 0) return { ...judged, verdict: 'not-judged', reason: 'nothing-weighed' };
  if (belowMilligrams === null) return { ...judged, verdict: 'not-judged', reason: 'table-not-obtained' };
  const best = comparedWithRule(rule, least, packCount);
  const worst = comparedWithRule(rule, most, packCount);
  if (best.verdict !== worst.verdict) return { ...judged, verdict: 'not-judged', reason: 'not-counted' };
  return { ...judged, ...worst };
}

/** What the counts of other limits leave for this one: no fewer than below a lower limit, no more than below a higher. */
function shortBetween({ packCount, shortCounts }: RunSummary, belowMilligrams: number | null): [number, number] {
  let [least, most] = [0, packCount];
  if (belowMilligrams === null) return [least, most];
  for (const counted of shortCounts) {
    if (counted.belowMilligrams <= belowMilligrams) least = Math.max(least, counted.packCount);
    if (counted.belowMilligrams >= belowMilligrams) most = Math.min(most, counted.packCount);
  }
  return [least, most];
}

/** A share is compared by multiplying out, so that exactly 2.5 % of any number of packs is exactly that. */
function comparedWithRule(rule: CountRule, shortCount: number, packCount: number): Pick<Judged, 'verdict' | 'reason'> {
  const over = rule.kind === 'share' ? shortCount * 1000 - packCount * rule.atMostPermille : shortCount - rule.atMost;
  if (over > 0) return { verdict: 'broken', reason: 'outside' };
  return { verdict: 'kept', reason: over === 0 && shortCount > 0 ? 'at-the-limit' : 'within' };
}

/** Fewer packs lie below a lower limit, and never more than there are. */
function refuseImpossibleCounts({ packCount, shortCounts }: RunSummary): void {
  let atLeast = 0;
  for (const { belowMilligrams, packCount: count } of shortCounts.toSorted(
    (one, other) => one.belowMilligrams - other.belowMilligrams,
  )) {
    if (!Number.isSafeInteger(count) || count < atLeast || count > packCount) {
      throw new RangeError(`${count} of ${packCount} packs cannot lie below ${belowMilligrams} mg`);
    }
    atLeast = count;
  }
}
