import { flowByModel } from '../core/hopper-flow/flow-model.js';
import type { HopperPeriod, Mass } from '../core/hopper-flow/hopper-event.js';
import { likelyGramsOf, type LikelyFlow } from '../core/hopper-flow/likely-flow.js';
import { orderForBounds, orderForLevelCheck } from '../core/hopper-flow/order-for-bounds.js';
import { orderLikely } from '../core/hopper-flow/order-likely.js';
import { prepareHopperPeriod, type PreparedHopperPeriod } from '../core/hopper-flow/prepare-period.js';
import type { Membership, Target } from '../core/hopper-flow/target-steps.js';
import type { TimedEvent, TimedHopperPeriod } from '../core/hopper-flow/timed-event.js';
import type { Instant } from '../platform/clock.js';
import { everySpan, type PackExit, type PackSpan } from './counted-packs.js';
import { packMass } from './exit-facts.js';
import { asFlowModel } from './flow-models.js';
import { timedAdditionsAndLevels, type HopperPeriodFacts, type LeftInside } from './hopper-periods.js';
import { joinedPacks } from './joined-packs.js';
import { joinRanges, liesIn, type RunRange } from './run-range.js';

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

type PackAt<At> = Omit<PackSpan, 'earliestAt' | 'likelyAt' | 'latestAt'> &
  Record<'earliestAt' | 'likelyAt' | 'latestAt', At>;

interface Piece {
  readonly id: string;
  readonly fromCount: number;
  readonly toCount: number;
}

/** A hopper period laid out for questions about ranges of packs that were named beforehand. */
export interface PeriodFlow {
  readonly facts: HopperPeriodFacts;
  readonly prepared: PreparedHopperPeriod;
  readonly likely: LikelyFlow;
  /** Each run's packs in pieces, in the order of its count. */
  readonly piecesByRun: ReadonlyMap<string, readonly Piece[]>;
}

export const endId = 'left-inside';
export const emptyId = 'empty';

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
  const edges = edgesOf(targets);
  const piecesByRun = new Map<string, Piece[]>();
  const exits: TimedEvent<number>[] = [];
  for (const pack of packs) {
    const own = piecesByRun.get(pack.runId) ?? [];
    if (own.length === 0) piecesByRun.set(pack.runId, own);
    cutExit(pack, edges.get(pack.runId) ?? noEdges, (fromCount, toCount) => {
      // Named by its place: what is looked up hundreds of times in a question has a short name.
      const piece = { id: `p${exits.length}`, fromCount, toCount };
      own.push(piece);
      exits.push(pieceEvent(facts, pack, piece));
    });
  }
  for (const own of piecesByRun.values()) putInOrder(own);
  const timed = timedPeriod(facts, exits, othersInMilliseconds(facts, leftInside));
  return {
    facts,
    piecesByRun,
    prepared: prepareHopperPeriod(orderForBounds(timed)),
    likely: flowByModel(orderLikely(timed), asFlowModel(facts.chosen)),
  };
}

/** The period in the order of the level check, with what it ended with as a level that was seen. */
export function periodForLevelCheck(facts: HopperPeriodFacts): HopperPeriod {
  return orderForLevelCheck(timedPeriodOf(facts));
}

/** The period with its intervals, the packs between two counts as one exit each, named by `wholePiece`. */
export function timedPeriodOf(facts: HopperPeriodFacts): TimedHopperPeriod<Instant> {
  const exits = facts.packs.map((pack) => pieceEvent(facts, pack, wholePiece(pack)));
  return timedPeriod(facts, exits, otherEvents(facts, null));
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

/** A run that drew twice between the same two counts has the pieces of both by turns. */
function putInOrder(pieces: Piece[]): void {
  const isInOrder = pieces.every(({ fromCount }, place) => fromCount >= (pieces[place - 1]?.fromCount ?? 0));
  if (!isInOrder) pieces.sort((one, other) => one.fromCount - other.fromCount);
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

const noEdges: readonly number[] = [];

/** Gives the stretches of packs between edges, which are in order. */
function cutExit(
  { fromCount, toCount }: PackSpan,
  edges: readonly number[],
  give: (fromCount: number, toCount: number) => void,
): void {
  let [low, high] = [0, edges.length];
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((edges[middle] ?? 0) <= fromCount) low = middle + 1;
    else high = middle;
  }
  let start = fromCount;
  for (let at = low; at < edges.length; at += 1) {
    const edge = edges[at] ?? toCount;
    if (edge >= toCount) break;
    give(start, edge);
    start = edge;
  }
  give(start, toCount);
}

/** A run may draw from a hopper twice between the same two counts, so the time is part of the name. */
export function wholePiece({ runId, fromCount, toCount, earliestAt }: PackExit): Piece {
  return { id: `${runId}:${fromCount}-${toCount}@${earliestAt}`, fromCount, toCount };
}

function pieceEvent<At extends Instant | number>(
  facts: HopperPeriodFacts,
  pack: PackAt<At>,
  piece: Piece,
): TimedEvent<At> {
  const run = facts.runs.get(pack.runId);
  if (run === undefined) throw new RangeError(`run ${pack.runId} is not in the period`);
  const { earliestAt, likelyAt, latestAt } = pack;
  const whole = packMass(run.meanNet, piece.fromCount, piece.toCount);
  const mass = pack.isWhole
    ? whole
    : { lowerGrams: 0, grams: likelyGrams(pack, piece, whole), upperGrams: whole.upperGrams };
  return { event: { kind: 'exit', id: piece.id, mass }, earliestAt, likelyAt, latestAt };
}

/** Of packs that only likely left in this period. */
function likelyGrams(pack: PackAt<unknown>, piece: Piece, whole: Mass): number {
  const fromCount = Math.max(piece.fromCount, pack.likelyFromCount);
  const likelyCount = Math.max(0, Math.min(piece.toCount, pack.likelyToCount) - fromCount);
  return Math.round((whole.grams * likelyCount) / (piece.toCount - piece.fromCount));
}

export const removalExitId = (removalId: string): string => `removal:${removalId}`;

/** What happened in a period besides packs leaving, and what it ended with. */
interface OtherEvents<At extends Instant | number> {
  readonly pouredAndSeen: readonly TimedEvent<At>[];
  readonly removed: readonly TimedEvent<At>[];
  /** None: it goes on. */
  readonly end: readonly TimedEvent<At>[];
}

function otherEvents(facts: HopperPeriodFacts, leftInside: LeftInside | null): OtherEvents<Instant> {
  const removed = facts.removals.map(({ removalId, mass, earliestAt, likelyAt, latestAt }): TimedEvent<Instant> => {
    return { event: { kind: 'exit', id: removalExitId(removalId), mass }, earliestAt, likelyAt, latestAt };
  });
  const left = leftInside ?? leftAtProvenEmpty(facts);
  return { pouredAndSeen: timedAdditionsAndLevels(facts), removed, end: left === null ? [] : endEvents(left) };
}

/** The same for a layout; those of a period as it ended are made once. */
function othersInMilliseconds(facts: HopperPeriodFacts, leftInside: LeftInside | null): OtherEvents<number> {
  const known = leftInside === null ? othersByFacts.get(facts) : undefined;
  if (known !== undefined) return known;
  const { pouredAndSeen, removed, end } = otherEvents(facts, leftInside);
  const others = {
    pouredAndSeen: pouredAndSeen.map(inMilliseconds),
    removed: removed.map(inMilliseconds),
    end: end.map(inMilliseconds),
  };
  if (leftInside === null) othersByFacts.set(facts, others);
  return others;
}

const othersByFacts = new WeakMap<HopperPeriodFacts, OtherEvents<number>>();

function inMilliseconds({ event, earliestAt, likelyAt, latestAt }: TimedEvent<Instant>): TimedEvent<number> {
  return {
    event,
    earliestAt: Date.parse(earliestAt),
    likelyAt: Date.parse(likelyAt),
    latestAt: Date.parse(latestAt),
  };
}

function timedPeriod<At extends Instant | number>(
  { hopper }: HopperPeriodFacts,
  packs: readonly TimedEvent<At>[],
  { pouredAndSeen, removed, end }: OtherEvents<At>,
): TimedHopperPeriod<At> {
  const events = [...pouredAndSeen, ...packs, ...removed];
  const { capacityGrams } = hopper;
  const endedAt = end[0]?.likelyAt;
  if (endedAt === undefined) return { capacityGrams, events };
  return { capacityGrams, events: [...events.map((event) => endedBy(event, endedAt)), ...end] };
}

function leftAtProvenEmpty({ period }: HopperPeriodFacts): LeftInside | null {
  if (period.endedAt === null) return null;
  const grams = period.endResidueGrams ?? 0;
  return {
    at: period.endedAt,
    mass: { lowerGrams: 0, grams, upperGrams: Math.max(grams, period.endResidueUpperGrams ?? 0) },
  };
}

/** What is left goes as the last exit of all; after it nothing is inside, and that is as good as seen. */
function endEvents({ mass, at }: LeftInside): readonly TimedEvent<Instant>[] {
  const window = { earliestAt: at, likelyAt: at, latestAt: at };
  return [
    { event: { kind: 'exit', id: endId, mass }, ...window },
    { event: { kind: 'level-seen', id: emptyId, lowerGrams: 0, upperGrams: 0 }, ...window },
  ];
}

/** A bag that hangs at the end counts as inside then. */
function endedBy<At extends Instant | number>(entry: TimedEvent<At>, at: At): TimedEvent<At> {
  if (entry.latestAt <= at) return entry;
  const { event, earliestAt, likelyAt } = entry;
  const cut = (one: At): At => (one < at ? one : at);
  return { event, earliestAt: cut(earliestAt), likelyAt: cut(likelyAt), latestAt: at };
}
