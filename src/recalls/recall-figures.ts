import {
  overRecallFactor,
  recallBalance,
  recallRates,
  type RecallAmounts,
  type RecallBalance,
  type RecallRates,
} from '../core/recall-sums/recall-balance.js';
import { meanNetsOf, type RunMeanNet } from '../fill-weight/mean-nets.js';
import { packsIn, type RunRange } from '../packing/run-ranges.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { packedParts } from '../tracing/packed-parts.js';
import type { PackedPart } from '../tracing/thread.js';
import { customersOfRecall, type RecallCustomer } from './recall-customers.js';
import { reachOfScopes, type RecallReach } from './recall-reach.js';
import { removedWithin, type RecalledRemoval } from './recall-removed.js';
import { unitsOfReach, type RecalledUnit, type RecallPlace } from './recall-units.js';
import type { RecallSureness } from './recall-words.js';
import { answersOf, scopesOf, type RecallAnswerRow, type RecallRow, type RecallScopeRow } from './recalls.js';

/** A recall as it stands now: computed when asked for, kept only at its signing. */
export interface RecallFigures {
  readonly packs: RecallBalance;
  /** The same in thousandths of a gram, so that packs times their mean lose nothing. */
  readonly milligrams: RecallBalance;
  /** Whether some packs were never weighed: their nominal quantity stands for them. */
  readonly hasAssumed: boolean;
  readonly packRates: RecallRates;
  readonly milligramRates: RecallRates;
  readonly customers: readonly RecallCustomer[];
  readonly respondedCount: number;
  /** Recalled sugar to that of the bags it is of; null where the scope is not of bags. */
  readonly overRecall: number | null;
  readonly parts: readonly PackedPart[];
  readonly units: readonly RecalledUnit[];
  readonly removals: readonly RecalledRemoval[];
  readonly reach: RecallReach;
}

/** Where everything recalled is, adds up to, and went. */
export async function figuresOfRecall(from: ReadFrom, recall: RecallRow): Promise<RecallFigures> {
  const { id, siteId, sureness } = recall;
  return figuresOfScopes(from, { siteId, sureness, scopes: await scopesOf(from, id) }, await answersOf(from, id));
}

/** What is to be recalled, before or after a recall of it is opened. */
export interface RecallAsked {
  readonly siteId: string;
  readonly scopes: readonly RecallScopeRow[];
  readonly sureness: RecallSureness;
}

/** The same of a scope that nobody has opened a recall of yet. */
export async function figuresOfScopes(
  from: ReadFrom,
  { siteId, scopes, sureness }: RecallAsked,
  answers: readonly RecallAnswerRow[] = [],
): Promise<RecallFigures> {
  const reach = await reachOfScopes(from, siteId, scopes, sureness);
  const units = await unitsOfReach(from, reach);
  const removals = await removedWithin(from, reach.ranges);
  const means = await meanNetsOf(from, [...new Set(reach.ranges.map(({ runId }) => runId))]);
  const weigh = (ranges: readonly RunRange[]): number =>
    ranges.reduce((sum, range) => sum + packsIn([range]) * (means.get(range.runId)?.meanMilligrams ?? 0), 0);
  const milligramsOf = (unit: RecalledUnit): number => weigh(unit.ranges) + unit.bagGrams * 1000;
  const packs = recallBalance(amountsOf({ reach, units, removals }, packsOfAll));
  const milligrams = recallBalance(
    amountsOf(
      { reach, units, removals },
      { ranges: weigh, unit: milligramsOf, removal: (removal) => milligramsRemoved(removal, means) },
    ),
  );
  const customers = await customersOfRecall(from, units, milligramsOf, answers);
  const isOfBags = scopes.every(({ scopeKind }) => scopeKind === 'bulk-bag' || scopeKind === 'dryer-shift');
  const bagGrams = reach.bags.reduce((sum, bag) => sum + (bag.netGrams ?? 0), 0);
  return {
    ...{ packs, milligrams, customers, units, removals, reach },
    hasAssumed: [...means.values()].some(({ basis }) => basis === 'assumed'),
    packRates: ratesOf(packs.dispatched, answers, ({ packCount }) => packCount),
    milligramRates: ratesOf(milligrams.dispatched, answers, (answer) => milligramsAnswered(answer, customers)),
    respondedCount: customers.filter(({ hasAnswered }) => hasAnswered).length,
    overRecall: isOfBags ? overRecallFactor(Math.round(milligrams.produced / 1000), bagGrams) : null,
    parts: await packedParts(from, siteId, reach.ranges),
  };
}

interface Counted {
  readonly reach: RecallReach;
  readonly units: readonly RecalledUnit[];
  readonly removals: readonly RecalledRemoval[];
}

/** How much of one unit of measure something is. */
interface Measure {
  readonly ranges: (ranges: readonly RunRange[]) => number;
  readonly unit: (unit: RecalledUnit) => number;
  readonly removal: (removal: RecalledRemoval) => number;
}

const packsOfAll: Measure = {
  ranges: packsIn,
  unit: ({ ranges }) => packsIn(ranges),
  removal: ({ packCount }) => packCount ?? 0,
};

/** What was removed never came to the counter, and what is still in bags never to a line: both were produced as well. */
function amountsOf({ reach, units, removals }: Counted, measure: Measure): RecallAmounts {
  const at = (place: RecallPlace): number => sum(units.filter((unit) => unit.place === place).map(measure.unit));
  const usedUp = (how: RecalledRemoval['usedUp']): number =>
    sum(removals.filter((removal) => removal.usedUp === how).map(measure.removal));
  const inBags = sum(units.filter(({ kind }) => kind === 'bulk-bag').map(measure.unit));
  return {
    produced: measure.ranges(reach.ranges) + sum(removals.map(measure.removal)) + inBags,
    inStore: at('in-store'),
    onDock: at('on-dock'),
    onVehicle: at('on-vehicle'),
    dispatched: at('dispatched'),
    rejects: usedUp('rejects'),
    samples: usedUp('samples'),
    retained: usedUp('retained'),
    scrapped: usedUp('scrapped'),
  };
}

/** Weighed, else its packs by the mean of their run, else what was said. */
function milligramsRemoved(removal: RecalledRemoval, means: ReadonlyMap<string, RunMeanNet>): number {
  const mean = removal.runId === null ? undefined : means.get(removal.runId);
  const isByCount = removal.scaleId === null && removal.packCount !== null && mean !== undefined;
  return isByCount ? removal.packCount * mean.meanMilligrams : removal.grams * 1000;
}

/** Packs answered for weigh what that customer's packs weigh on average. */
function milligramsAnswered(answer: RecallAnswerRow, customers: readonly RecallCustomer[]): number {
  const customer = customers.find(({ customerId }) => customerId === answer.customerId);
  const perPack = customer === undefined || customer.packCount === 0 ? 0 : customer.milligrams / customer.packCount;
  return Math.round(answer.packCount * perPack) + answer.bagGrams * 1000;
}

function ratesOf(
  dispatched: number,
  answers: readonly RecallAnswerRow[],
  amountOf: (answer: RecallAnswerRow) => number,
): RecallRates {
  const of = (kind: RecallAnswerRow['answer']): number =>
    sum(answers.filter(({ answer }) => answer === kind).map(amountOf));
  return recallRates({
    dispatched,
    returned: of('returned'),
    destroyedAtCustomer: of('destroyed-at-customer'),
    confirmedSold: of('confirmed-sold'),
  });
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, one) => total + one, 0);
}
