import { boundGroupInTargets } from '../core/hopper-flow/bound-group-in-target.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { groupOfBags, likelyOfShares, likelyShares, type BagAmounts } from './bag-contents.js';
import { modelUsed, type ModelUsed } from './model-used.js';
import { allOf, HopperBook, plus } from './hopper-book.js';
import { periodsAfter, periodsOfBags } from './hopper-period-rows.js';
import { joinedBasis, likelyBasis, none, worded, type LikelyBasis, type LinkAmounts } from './link-words.js';
import { exitsOf, layOutPeriod, likelyGramsByAddition, targetMass, type PeriodTarget } from './period-flow.js';
import { tippedBinsOfRuns } from './rework-bins.js';

/** How far the sugar of a group of bags reaches: the periods it may be in, and the runs that drew from them. */
export interface GroupReach {
  readonly runIds: readonly string[];
  readonly periodIds: readonly string[];
  /** What *likely* was reckoned by in each of these periods. */
  readonly models: readonly ModelUsed[];
  /** The group as one, in each target: one pass a period for all of them. What is ruled out is there too. */
  boundIn(targets: readonly ReachTarget[]): Promise<LinkAmounts[]>;
}

/** Packs that are asked about; least rests on the certain ones alone. */
export type ReachTarget = Pick<PeriodTarget, 'ranges' | 'certain'>;

/** Follows bags from the periods they went into, through residues and rework bins, into the periods after. */
export async function reachOfBags(
  from: ReadFrom,
  bagIds: readonly string[],
  periodIds: readonly string[],
): Promise<GroupReach> {
  return reachIn(from, new HopperBook(from), { bagIds, periodIds, isFromTheirTips: false });
}

/** The same from all periods that they went into: so that nothing has to be worked out of any other. */
export async function reachOfTips(from: ReadFrom, bagIds: readonly string[]): Promise<GroupReach> {
  const periodIds = await periodsOfBags(from, bagIds);
  return reachIn(from, new HopperBook(from), { bagIds, periodIds, isFromTheirTips: true });
}

/** The same for all that was in a hopper period: its tips, its rework, and what it began with. */
export async function reachOfPeriod(
  from: ReadFrom,
  periodId: string,
): Promise<GroupReach & { readonly bagIds: readonly string[] }> {
  const book = new HopperBook(from, periodId);
  const contents = await book.contents(periodId);
  const bagIds = new Set([...contents.values()].flatMap((content) => [...content.keys()]));
  bagIds.delete(allOf(periodId));
  const reach = await reachIn(from, book, { bagIds: [allOf(periodId)], periodIds: [periodId], isFromTheirTips: true });
  return { ...reach, bagIds: [...bagIds] };
}

interface Group {
  readonly bagIds: readonly string[];
  readonly periodIds: readonly string[];
}

async function reachIn(
  from: ReadFrom,
  book: HopperBook,
  { bagIds, periodIds, isFromTheirTips }: Group & { readonly isFromTheirTips: boolean },
): Promise<GroupReach> {
  const reached = new Set(periodIds);
  const runIds = new Set<string>();
  const models: ModelUsed[] = [];
  for (const periodId of reached) {
    const facts = await book.facts(periodId);
    models.push(modelUsed(facts));
    for (const runId of facts.runs.keys()) runIds.add(runId);
    for (const { id } of await periodsAfter(from, periodId)) reached.add(id);
    for (const bin of await tippedBinsOfRuns(from, [...facts.runs.keys()])) reached.add(bin.periodId);
  }
  return {
    runIds: [...runIds],
    periodIds: [...reached],
    models,
    boundIn: (targets) => {
      const own = book.about({ bagIds: new Set(bagIds), periodIds: isFromTheirTips ? reached : null });
      return boundIn(own, { bagIds, periodIds: [...reached] }, targets);
    },
  };
}

async function boundIn(book: HopperBook, group: Group, targets: readonly ReachTarget[]): Promise<LinkAmounts[]> {
  const sums: { amounts: BagAmounts; basis: LikelyBasis | null }[] = targets.map(() => ({
    amounts: none,
    basis: null,
  }));
  for (const periodId of group.periodIds) {
    const facts = await book.facts(periodId);
    const own = Array.from(targets.entries()).filter(([, { ranges }]) =>
      ranges.some(({ runId }) => facts.runs.has(runId)),
    );
    if (own.length === 0) continue;
    const contents = await book.contents(periodId);
    const asked = own.map(([, target]) => target);
    const flow = layOutPeriod(facts, asked);
    const exits = asked.map((target) => exitsOf(flow, target));
    const shares = likelyShares(contents, group.bagIds);
    const bounds = boundGroupInTargets(flow.prepared, groupOfBags(contents, flow, group.bagIds), exits);
    own.forEach(([place, { ranges }], index) => {
      const sum = sums[place];
      const target = exits[index];
      if (sum === undefined || target === undefined || target.size === 0) return;
      const likelyGrams = likelyOfShares(shares, likelyGramsByAddition(flow, target));
      const { leastGrams = 0, mostGrams = 0 } = bounds[index] ?? {};
      sum.amounts = plus(sum.amounts, { leastGrams, mostGrams, likelyGrams });
      sum.basis = joinedBasis(sum.basis, likelyBasis(facts, ranges, targetMass(flow, target).grams));
    });
  }
  return sums.map(({ amounts, basis }) => worded(amounts, basis));
}
