import { cutExits } from '../core/hopper-flow/cut-exits.js';
import { flowByModel } from '../core/hopper-flow/flow-model.js';
import type { Mass } from '../core/hopper-flow/hopper-event.js';
import { likelyGramsOf, type LikelyFlow } from '../core/hopper-flow/likely-flow.js';
import { widenForBounds } from '../core/hopper-flow/order-for-bounds.js';
import { pourInTime } from '../core/hopper-flow/order-likely.js';
import { prepareHopperPeriod, type PreparedHopperPeriod } from '../core/hopper-flow/prepare-period.js';
import type { Membership, Target } from '../core/hopper-flow/target-steps.js';
import { everySpan, type PackSpan } from './counted-packs.js';
import { asFlowModel } from './flow-models.js';
import type { HopperPeriodFacts, LeftInside } from './hopper-periods.js';
import { joinedPacks } from './joined-packs.js';
import { endId, removalExitId, type Piece } from './period-events.js';
import { joinRanges, liesIn, type RunRange } from './run-range.js';
import { cutPacks, orderUncut, uncutOf } from './uncut-period.js';

/** What is asked of one period: the packs of ranges, and what else may belong to it. */
export interface PeriodTarget {
  readonly ranges: readonly RunRange[];
  /** The part that surely belongs to it; null: all of it does. */
  readonly certain?: readonly RunRange[] | null;
  /** Rejects and samples of these runs may belong to it too. */
  readonly removalsOf?: readonly string[];
  /** What was left inside at the end. */
  readonly withEnd?: boolean;
}

/** A hopper period laid out for questions about ranges of packs that were named beforehand. */
export interface PeriodFlow {
  readonly facts: HopperPeriodFacts;
  readonly prepared: PreparedHopperPeriod;
  readonly likely: LikelyFlow;
  /** Each run's packs in pieces, in the order of its count. */
  readonly piecesByRun: ReadonlyMap<string, readonly Piece[]>;
}

/**
 * Lays a period out; *likely* by the model that the hopper went by when it began, least and most by none. The packs between two counts are cut where a target begins or ends: the pieces stand in the order
 * of the count, and each may have left as late as the last of them.
 * @param targets all that will be asked of this layout
 * @param leftInside for a period that goes on: what is inside, where that is asked
 */
export function layOutPeriod(
  facts: HopperPeriodFacts,
  targets: readonly PeriodTarget[],
  leftInside: LeftInside | null = null,
): PeriodFlow {
  // Without a target somebody asks for the packs of every count.
  const packs = targets.length === 0 ? everySpan(facts.counted) : joinedPacks(facts);
  return layOutPacks(facts, packs, { targets, leftInside });
}

/** The same with the packs as they are given: those of every count, or joined ones. */
export function layOutPacks(
  facts: HopperPeriodFacts,
  packs: readonly PackSpan[],
  { targets, leftInside }: { readonly targets: readonly PeriodTarget[]; readonly leftInside: LeftInside | null },
): PeriodFlow {
  const uncut = leftInside === null ? uncutOf(facts, packs) : orderUncut(facts, packs, leftInside);
  const { piecesByRun, cut } = cutPacks(uncut, edgesOf(targets));
  return {
    facts,
    piecesByRun,
    prepared: prepareHopperPeriod(widenForBounds(cutExits(uncut.forBounds, cut))),
    likely: flowByModel(pourInTime(cutExits(uncut.likely, cut)), asFlowModel(facts.chosen)),
  };
}

/** The exits of a target; *maybe* where they belong to the widened part only. */
export function exitsOf(flow: PeriodFlow, target: PeriodTarget): Target {
  const exits = new Map<string, Membership>();
  const wide = joinRanges([...target.ranges, ...(target.certain ?? [])]);
  const certain = target.certain == null ? wide : joinRanges(target.certain);
  for (const [runId, ranges] of wide) {
    const sure = certain.get(runId) ?? [];
    const pieces = flow.piecesByRun.get(runId) ?? [];
    for (const range of ranges) {
      eachPieceIn(pieces, range, ({ id, fromCount, toCount }) => {
        exits.set(id, liesIn(sure, fromCount, toCount) ? 'in' : 'maybe');
      });
    }
  }
  const removalsOf = new Set(target.removalsOf ?? []);
  if (removalsOf.size > 0) {
    for (const { removalId, runId } of flow.facts.removals) {
      if (runId !== null && removalsOf.has(runId)) exits.set(removalExitId(removalId), 'maybe');
    }
  }
  if (target.withEnd === true && flow.prepared.exitIndexById.has(endId)) exits.set(endId, 'in');
  return exits;
}

/** Grams of each addition that the flow model puts into a target. */
export function likelyGramsByAddition(flow: PeriodFlow, exits: Target): ReadonlyMap<string, number> {
  return likelyGramsOf(flow.likely, exits.keys());
}

/** What the packs and removals of a target weigh together. */
export function targetMass(flow: PeriodFlow, exits: Target): Mass {
  const sum = { lowerGrams: 0, grams: 0, upperGrams: 0 };
  for (const id of exits.keys()) {
    const event = flow.prepared.period.events[flow.prepared.exitIndexById.get(id) ?? -1];
    if (event?.kind !== 'exit') continue;
    sum.lowerGrams += event.mass.lowerGrams;
    sum.grams += event.mass.grams;
    sum.upperGrams += event.mass.upperGrams;
  }
  return sum;
}

function edgesOf(targets: readonly PeriodTarget[]): ReadonlyMap<string, readonly number[]> {
  const byRun = new Map<string, Set<number>>();
  for (const { ranges, certain } of targets) {
    for (const { runId, fromCount, toCount } of [...ranges, ...(certain ?? [])]) {
      const edges = byRun.get(runId) ?? new Set();
      byRun.set(runId, edges.add(fromCount).add(toCount));
    }
  }
  return new Map(Array.from(byRun, ([runId, edges]) => [runId, [...edges].sort((a, b) => a - b)]));
}

/** Gives the pieces that lie wholly in a range. */
function eachPieceIn(pieces: readonly Piece[], range: RunRange, give: (piece: Piece) => void): void {
  for (let place = firstFrom(pieces, range.fromCount); place < pieces.length; place += 1) {
    const piece = pieces[place];
    if (piece === undefined || piece.fromCount >= range.toCount) break;
    if (piece.toCount <= range.toCount) give(piece);
  }
}

/** The place of the first piece that begins at a count or after it. */
function firstFrom(pieces: readonly Piece[], count: number): number {
  let [low, high] = [0, pieces.length];
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((pieces[middle]?.fromCount ?? count) < count) low = middle + 1;
    else high = middle;
  }
  return low;
}
