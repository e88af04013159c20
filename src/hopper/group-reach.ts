import { boundGroupInTargets } from '../core/hopper-flow/bound-group-in-target.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { groupOfBags, likelyOfBag, type BagAmounts } from './bag-contents.js';
import { HopperBook, plus } from './hopper-book.js';
import { periodsAfter } from './hopper-period-rows.js';
import { none, thresholdOf, worded, type LinkAmounts } from './link-words.js';
import { exitsOf, layOutPeriod, likelyGramsByAddition } from './period-flow.js';
import { tippedBinsOfRuns } from './rework-bins.js';
import type { RunRange } from './run-range.js';

/** How far the sugar of a group of bags reaches: the periods it may be in, and the runs that drew from them. */
export interface GroupReach {
  readonly runIds: readonly string[];
  /** The group as one, in each target: one pass a period for all of them. What is ruled out is there too. */
  boundIn(targets: readonly (readonly RunRange[])[]): Promise<LinkAmounts[]>;
}

/** Follows bags from the periods they went into, through residues and rework bins, into the periods after. */
export async function reachOfBags(
  from: ReadFrom,
  bagIds: readonly string[],
  periodIds: readonly string[],
): Promise<GroupReach> {
  const book = new HopperBook(from);
  const reached = new Set(periodIds);
  const runIds = new Set<string>();
  for (const periodId of reached) {
    const facts = await book.facts(periodId);
    for (const runId of facts.runs.keys()) runIds.add(runId);
    for (const { id } of await periodsAfter(from, periodId)) reached.add(id);
    for (const bin of await tippedBinsOfRuns(from, [...facts.runs.keys()])) reached.add(bin.periodId);
  }
  return {
    runIds: [...runIds],
    boundIn: (targets) => boundIn(book, { bagIds, periodIds: [...reached] }, targets),
  };
}

async function boundIn(
  book: HopperBook,
  group: { readonly bagIds: readonly string[]; readonly periodIds: readonly string[] },
  targets: readonly (readonly RunRange[])[],
): Promise<LinkAmounts[]> {
  const sums: { amounts: BagAmounts; unit: number }[] = targets.map(() => ({ amounts: none, unit: Infinity }));
  for (const periodId of group.periodIds) {
    const facts = await book.facts(periodId);
    const contents = await book.contents(periodId);
    const own = targets.flatMap((ranges, place) => (ranges.some(({ runId }) => facts.runs.has(runId)) ? [place] : []));
    const flow = layOutPeriod(
      facts,
      own.map((place) => ({ ranges: targets[place] ?? [] })),
    );
    const exits = own.map((place) => exitsOf(flow, { ranges: targets[place] ?? [] }));
    const bounds = boundGroupInTargets(flow.prepared, groupOfBags(contents, flow, group.bagIds), exits);
    own.forEach((place, index) => {
      const sum = sums[place];
      const target = exits[index];
      if (sum === undefined || target === undefined || target.size === 0) return;
      const byAddition = likelyGramsByAddition(flow, target);
      const likelyGrams = group.bagIds.reduce((grams, bagId) => grams + likelyOfBag(contents, byAddition, bagId), 0);
      const { leastGrams = 0, mostGrams = 0 } = bounds[index] ?? {};
      sum.amounts = plus(sum.amounts, { leastGrams, mostGrams, likelyGrams });
      sum.unit = Math.min(sum.unit, thresholdOf(facts, targets[place] ?? []));
    });
  }
  return sums.map(({ amounts, unit }) => worded(amounts, unit));
}
