import type { ReadFrom } from '../platform/database/reading.js';
import { boundEveryBag, boundTogether } from './bag-contents.js';
import { HopperBook, plus, type AnsweredTarget } from './hopper-book.js';
import { periodsOfRuns } from './hopper-period-rows.js';
import type { HopperPeriodFacts } from './hopper-periods.js';
import {
  none,
  ruledOut,
  strongerWord,
  joinedBasis,
  likelyBasis,
  worded,
  type LikelyBasis,
  type LinkAmounts,
  type LinkWord,
} from './link-words.js';
import { exitsOf, layOutPeriod, targetMass, type PeriodTarget } from './period-flow.js';
import type { RuledOutBag } from './ruled-out.js';
import type { RunRange } from './run-range.js';

export { rangesOfBag } from './bag-ranges.js';
export { strongerWord } from './link-words.js';
export type { LinkAmounts, LinkWord } from './link-words.js';
export type { RuledOutReason } from './ruled-out.js';
export type { RunRange } from './run-range.js';

/** A bag that may be in some packs, by the hopper period that it came through. A bag may have come through two. */
export interface SourceLink extends LinkAmounts {
  readonly bagId: string;
  readonly periodId: string;
  readonly word: LinkWord;
}

/** What is asked of ranges that are known with doubt (a printed time by a clock that is off). */
export interface RangeOptions {
  /** The part of the ranges that surely belongs to the target: least rests on it alone. */
  readonly certain?: readonly RunRange[];
}

/**
 * Which bags may be in some packs, and how much of each. Ranges are widened ones for *most* and *likely*; `certain` is
 * the part that *least* rests on. Packs that were not counted yet belong to no target.
 * @returns by period and bag, the likeliest first; what is ruled out is left out
 */
export async function sourcesOfRanges(
  from: ReadFrom,
  ranges: readonly RunRange[],
  options: RangeOptions = {},
): Promise<SourceLink[]> {
  const [links] = await sourcesOfTargets(from, [{ ranges, certain: options.certain ?? null }]);
  return links ?? [];
}

/** What a period says of a target: which of its bags cannot be there. */
export interface RuledOutInPeriod {
  readonly periodId: string;
  /** Null: the records of the period can't be true, so nothing is. */
  readonly bags: readonly RuledOutBag[] | null;
}

/** As `sourcesOfRanges`, and which bags of the same periods are ruled out. A bag that came through another is not. */
export async function sourcesAndRuledOut(
  from: ReadFrom,
  ranges: readonly RunRange[],
  options: RangeOptions = {},
): Promise<{ readonly links: readonly SourceLink[]; readonly ruledOut: readonly RuledOutInPeriod[] }> {
  const target = { ranges, certain: options.certain ?? null };
  const [answered = { links: [], ruledOut: [] }] = await answersOfTargets(from, [target]);
  const linked = new Set(answered.links.map(({ bagId }) => bagId));
  const ruledOut = answered.ruledOut.map(({ periodId, bags }) => {
    return { periodId, bags: bags()?.filter(({ bagId }) => !linked.has(bagId)) ?? null };
  });
  return { links: answered.links, ruledOut };
}

/** The same for several targets at once (all pallets of a lot): each period is read once for all of them. */
export async function sourcesOfTargets(from: ReadFrom, targets: readonly SourceTarget[]): Promise<SourceLink[][]> {
  return (await answersOfTargets(from, targets)).map(({ links }) => links);
}

type SourceTarget = Pick<PeriodTarget, 'ranges' | 'certain'>;

interface SourceAnswer {
  readonly links: SourceLink[];
  /** By period; asked only where it is shown. */
  readonly ruledOut: { readonly periodId: string; readonly bags: () => RuledOutInPeriod['bags'] }[];
}

async function answersOfTargets(from: ReadFrom, targets: readonly SourceTarget[]): Promise<readonly SourceAnswer[]> {
  const book = new HopperBook(from);
  const found = targets.map((): SourceAnswer => ({ links: [], ruledOut: [] }));
  for (const { periodId, places } of await periodsOfTargets(from, targets)) {
    const facts = await book.facts(periodId);
    const asked = places.flatMap((place) => targets[place] ?? []);
    const answers = await book.answer(periodId, asked);
    answers.forEach((answer, index) => {
      const own = found[places[index] ?? -1];
      const ranges = asked[index]?.ranges ?? [];
      own?.links.push(...linksOf(facts, answer, ranges));
      own?.ruledOut.push({ periodId, bags: () => answer.ruledOut() });
    });
  }
  for (const { links } of found) links.sort((a, b) => b.likelyGrams - a.likelyGrams || b.mostGrams - a.mostGrams);
  return found;
}

/** Grams of one bag in some packs; all 0 and `ruled-out` where it cannot be there. */
export async function boundsOfBag(from: ReadFrom, bagId: string, ranges: readonly RunRange[]): Promise<LinkAmounts> {
  const [bounds] = await boundsOfBags(from, [bagId], [ranges]);
  return bounds?.together ?? ruledOut;
}

/** Several bags in one target: each on its own, and all of them as one group. */
export interface TargetBounds {
  /** Not the sum: each bag's least and most is the extreme of its own worst case. */
  readonly together: LinkAmounts;
  /** Bags that are ruled out are there too. */
  readonly byBag: ReadonlyMap<string, LinkAmounts>;
}

/** Up to so many bags are followed one by one; more of them with all others of the period at once, which costs less. */
const fewBags = 4;

/** Several bags in several targets, e.g. a dryer shift's bags in each pallet: one answer for each target, in order. */
export async function boundsOfBags(
  from: ReadFrom,
  bagIds: readonly string[],
  targets: readonly (readonly RunRange[])[],
): Promise<TargetBounds[]> {
  const book = new HopperBook(from);
  const asked = targets.map((ranges): PeriodTarget => ({ ranges }));
  const sums = targets.map(() => ({
    together: none,
    byBag: new Map(bagIds.map((bagId) => [bagId, none])),
    basis: null as LikelyBasis | null,
  }));
  for (const { periodId, places } of await periodsOfTargets(from, asked)) {
    const facts = await book.facts(periodId);
    const contents = await book.contents(periodId);
    const own = places.flatMap((place) => asked[place] ?? []);
    const flow = layOutPeriod(facts, own);
    own.forEach((target, index) => {
      const sum = sums[places[index] ?? -1];
      const exits = exitsOf(flow, target);
      if (sum === undefined || exits.size === 0) return;
      const { grams } = targetMass(flow, exits);
      sum.basis = joinedBasis(sum.basis, likelyBasis(facts, target.ranges, grams));
      sum.together = plus(sum.together, boundTogether(contents, flow, { bagIds, target: exits }));
      const every = bagIds.length > fewBags ? boundEveryBag(contents, flow, exits) : null;
      for (const bagId of bagIds) {
        const alone = every ?? new Map([[bagId, boundTogether(contents, flow, { bagIds: [bagId], target: exits })]]);
        sum.byBag.set(bagId, plus(sum.byBag.get(bagId), alone.get(bagId) ?? none));
      }
    });
  }
  return sums.map(({ together, byBag, basis }) => ({
    together: worded(together, basis),
    byBag: new Map(Array.from(byBag, ([bagId, amounts]) => [bagId, worded(amounts, basis)])),
  }));
}

/** Links of the same bag through several periods put together: they share no gram. */
export function linksByBag(links: readonly SourceLink[]): ReadonlyMap<string, LinkAmounts> {
  const byBag = new Map<string, LinkAmounts>();
  for (const link of links) {
    const earlier = byBag.get(link.bagId);
    byBag.set(link.bagId, { ...plus(earlier, link), word: strongerWord(earlier?.word ?? 'ruled-out', link.word) });
  }
  return byBag;
}

function linksOf(
  facts: HopperPeriodFacts,
  { bags, mass }: AnsweredTarget,
  ranges: readonly RunRange[],
): readonly SourceLink[] {
  const basis = likelyBasis(facts, ranges, mass.grams);
  return Array.from(bags, ([bagId, amounts]) => {
    return { bagId, periodId: facts.period.id, ...worded(amounts, basis) };
  }).filter((link): link is SourceLink => link.word !== 'ruled-out');
}

/** Each period that targets may have drawn from, with the places of those targets. */
async function periodsOfTargets(
  from: ReadFrom,
  targets: readonly PeriodTarget[],
): Promise<readonly { readonly periodId: string; readonly places: readonly number[] }[]> {
  const runsOf = ({ ranges, certain }: PeriodTarget) => [...ranges, ...(certain ?? [])].map(({ runId }) => runId);
  const rows = await periodsOfRuns(from, [...new Set(targets.flatMap(runsOf))]);
  const byPeriod = new Map<string, Set<string>>();
  for (const { periodId, runId } of rows) byPeriod.set(periodId, (byPeriod.get(periodId) ?? new Set()).add(runId));
  return Array.from(byPeriod, ([periodId, runIds]) => ({
    periodId,
    places: targets.flatMap((target, place) => (runsOf(target).some((runId) => runIds.has(runId)) ? [place] : [])),
  }));
}
