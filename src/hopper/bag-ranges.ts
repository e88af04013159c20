import type { Bounds } from '../core/hopper-flow/bound-layout.js';
import { boundsOfGroup } from '../core/hopper-flow/bound-group-in-target.js';
import { likelyTargetsOf } from '../core/hopper-flow/likely-flow.js';
import { exitsIn, type Target } from '../core/hopper-flow/target-steps.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { groupOfBag, type PeriodContents } from './bag-contents.js';
import { HopperBook } from './hopper-book.js';
import { periodsAfter, periodsOfBag } from './hopper-period-rows.js';
import { likelyBasis, worded, type LinkAmounts, type LinkWord } from './link-words.js';
import { layOutPeriod, targetMass, type PeriodFlow } from './period-flow.js';
import { tippedBinsOfRuns } from './rework-bins.js';

/** Packs of a run, from one count to another, that may hold some of a bag. */
export interface TargetLink extends LinkAmounts {
  readonly periodId: string;
  readonly runId: string;
  readonly fromCount: number;
  readonly toCount: number;
  readonly word: LinkWord;
}

/**
 * Where a bag's sugar may have gone: of each run that drew from a hopper that may have held some of it, the packs
 * between counts, in up to three stretches (before the likely ones, the likely ones, after them). Packs outside of these
 * are ruled out. Follows residues into the next periods and rework bins into theirs.
 * @returns in the order of periods, runs and counts
 */
export async function rangesOfBag(from: ReadFrom, bagId: string): Promise<TargetLink[]> {
  const book = new HopperBook(from, null, { bagIds: new Set([bagId]), periodIds: null });
  const links: TargetLink[] = [];
  const waiting = await periodsOfBag(from, bagId);
  const seen = new Set(waiting);
  for (let periodId = waiting.shift(); periodId !== undefined; periodId = waiting.shift()) {
    const facts = await book.facts(periodId);
    const contents = await book.contents(periodId);
    const flow = layOutPeriod(facts, []);
    const group = groupOfBag(contents, flow, bagId);
    if (![...group.values()].some((content) => content === 'whole' || content.upperGrams > 0)) continue;
    const boundsIn = boundsOfGroup(flow.prepared, group);
    for (const runId of flow.piecesByRun.keys()) links.push(...linksOfRun({ flow, contents, boundsIn, bagId }, runId));
    const bins = await tippedBinsOfRuns(from, [...facts.runs.keys()]);
    const next = [...(await periodsAfter(from, periodId)).map(({ id }) => id), ...bins.map((bin) => bin.periodId)];
    for (const id of next) {
      if (seen.has(id)) continue;
      seen.add(id);
      waiting.push(id);
    }
  }
  return links;
}

interface BagInPeriod {
  readonly flow: PeriodFlow;
  readonly contents: PeriodContents;
  /** The bag in a target. */
  readonly boundsIn: (target: Target) => Bounds;
  readonly bagId: string;
}

function linksOfRun(bag: BagInPeriod, runId: string): readonly TargetLink[] {
  const { flow } = bag;
  const pieces = flow.piecesByRun.get(runId) ?? [];
  const idsBetween = (start: number, end: number) => pieces.slice(start, end).map(({ id }) => id);
  const boundsIn = (start: number, end: number): Bounds => bag.boundsIn(exitsIn(idsBetween(start, end)));
  const mostIn = (start: number, end: number): number => boundsIn(start, end).mostGrams;
  if (mostIn(0, pieces.length) === 0) return [];
  // What holds nothing at either end is cut off: a part of a target never holds more than the whole of it.
  const end = firstWhere(0, pieces.length, (at) => mostIn(at, pieces.length) === 0);
  const start = firstWhere(0, end, (at) => mostIn(0, at + 1) > 0);
  const likely = likelyByExit(bag, idsBetween(0, pieces.length));
  const likelyPieces = pieces.map(({ id }) => likely.get(id) ?? 0);
  // The likely stretch ends where less than the share of what was packed between two counts is of the bag.
  const massOf = (from: number, to: number): number => targetMass(flow, exitsIn(idsBetween(from, to))).grams;
  const { share } = likelyBasis(flow.facts, [{ runId }], 0);
  const isLikely = (grams: number, at: number): boolean =>
    grams > 0 && at >= start && at < end && grams >= share * massOf(at, at + 1);
  const firstLikely = likelyPieces.findIndex(isLikely);
  const lastLikely = likelyPieces.findLastIndex(isLikely);
  const edges = firstLikely < 0 ? [start, end] : [start, firstLikely, lastLikely + 1, end];
  const stretches = edges.slice(1).map((to, place) => ({ start: edges[place] ?? 0, end: to }));
  const filled = stretches.filter((stretch) => stretch.start < stretch.end);
  return filled.flatMap((stretch): TargetLink[] => {
    const { leastGrams, mostGrams } = boundsIn(stretch.start, stretch.end);
    const likelyGrams = likelyPieces.slice(stretch.start, stretch.end).reduce((sum, grams) => sum + grams, 0);
    const basis = likelyBasis(flow.facts, [{ runId }], massOf(stretch.start, stretch.end));
    const { word, ...amounts } = worded({ leastGrams, likelyGrams, mostGrams }, basis);
    const [first, last] = [pieces[stretch.start], pieces[stretch.end - 1]];
    if (word === 'ruled-out' || first === undefined || last === undefined) return [];
    const { fromCount } = first;
    return [{ periodId: flow.facts.period.id, runId, fromCount, toCount: last.toCount, ...amounts, word }];
  });
}

/** Grams of the bag that the flow model puts into each of these exits. */
function likelyByExit({ flow, contents, bagId }: BagInPeriod, exitIds: readonly string[]): ReadonlyMap<string, number> {
  const shares = new Map<string, number>();
  for (const additionId of flow.likely.additionIds) {
    const share = contents.get(additionId)?.get(bagId)?.likelyShare ?? 0;
    if (share > 0) shares.set(additionId, share);
  }
  return new Map(likelyTargetsOf(flow.likely, shares, exitIds).map(({ exitId, grams }) => [exitId, grams]));
}

/** The first of these places for which a condition holds that, once true, stays true; `end` where it never is. */
function firstWhere(start: number, end: number, holds: (at: number) => boolean): number {
  let [low, high] = [start, end];
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (holds(middle)) high = middle;
    else low = middle + 1;
  }
  return low;
}
