import type { Exit } from '../core/hopper-flow/hopper-event.js';
import { sortForBounds, type SortedForBounds } from '../core/hopper-flow/order-for-bounds.js';
import { sortLikely, type SortedLikely } from '../core/hopper-flow/order-likely.js';
import type { TimedEvent } from '../core/hopper-flow/timed-event.js';
import type { Instant } from '../platform/clock.js';
import type { PackSpan } from './counted-packs.js';
import type { RunFact } from './exit-facts.js';
import type { HopperPeriodFacts, LeftInside } from './hopper-periods.js';
import { exitOf, otherEvents, runOf, timedPeriod, type OtherEvents, type Piece } from './period-events.js';

/** Packs with the piece that they are as long as no target begins or ends within them. */
interface UncutPack {
  readonly pack: PackSpan;
  readonly run: RunFact;
  readonly piece: Piece;
}

/** A period in both orders before anything is asked of it: what every layout of it has in common. */
export interface UncutPeriod {
  readonly packs: readonly UncutPack[];
  readonly forBounds: SortedForBounds<number>;
  readonly likely: SortedLikely<number>;
}

/** Made once for facts and packs that are asked about many times. */
export function uncutOf(facts: HopperPeriodFacts, packs: readonly PackSpan[]): UncutPeriod {
  const known = uncutByPacks.get(packs) ?? orderUncut(facts, packs, null);
  uncutByPacks.set(packs, known);
  return known;
}

const uncutByPacks = new WeakMap<readonly PackSpan[], UncutPeriod>();

export function orderUncut(
  facts: HopperPeriodFacts,
  spans: readonly PackSpan[],
  leftInside: LeftInside | null,
): UncutPeriod {
  const packs = spans.map((pack, place): UncutPack => {
    // Named by its place: what is looked up hundreds of times in a question has a short name.
    const { fromCount, toCount } = pack;
    return { pack, run: runOf(facts, pack.runId), piece: { id: `p${place}`, fromCount, toCount } };
  });
  const exits = packs.map(({ pack, run, piece }): TimedEvent<number> => {
    const { earliestAt, likelyAt, latestAt } = pack;
    return { event: exitOf(run, pack, piece), earliestAt, likelyAt, latestAt };
  });
  const timed = timedPeriod(facts, exits, inMilliseconds(otherEvents(facts, leftInside)));
  return { packs, forBounds: sortForBounds(timed), likely: sortLikely(timed) };
}

/** The same with instants that are computed with. */
function inMilliseconds({ pouredAndSeen, removed, end }: OtherEvents<Instant>): OtherEvents<number> {
  return {
    pouredAndSeen: pouredAndSeen.map(eventInMilliseconds),
    removed: removed.map(eventInMilliseconds),
    end: end.map(eventInMilliseconds),
  };
}

function eventInMilliseconds({ event, earliestAt, likelyAt, latestAt }: TimedEvent<Instant>): TimedEvent<number> {
  return {
    event,
    earliestAt: Date.parse(earliestAt),
    likelyAt: Date.parse(likelyAt),
    latestAt: Date.parse(latestAt),
  };
}

interface CutPacks {
  readonly piecesByRun: ReadonlyMap<string, readonly Piece[]>;
  /** The pieces of what is cut, by the id of the uncut piece. */
  readonly cut: ReadonlyMap<string, readonly Exit[]>;
}

export function cutPacks({ packs }: UncutPeriod, edgesByRun: ReadonlyMap<string, readonly number[]>): CutPacks {
  const piecesByRun = new Map<string, Piece[]>();
  const cut = new Map<string, readonly Exit[]>();
  for (const { pack, run, piece } of packs) {
    const own = piecesByRun.get(pack.runId) ?? [];
    if (own.length === 0) piecesByRun.set(pack.runId, own);
    const edges = edgesByRun.get(pack.runId) ?? noEdges;
    const place = firstAbove(edges, piece.fromCount);
    if ((edges[place] ?? piece.toCount) >= piece.toCount) own.push(piece);
    else {
      const pieces = piecesBetween(piece, edges, place);
      own.push(...pieces);
      cut.set(
        piece.id,
        pieces.map((part) => exitOf(run, pack, part)),
      );
    }
  }
  for (const own of piecesByRun.values()) putInOrder(own);
  return { piecesByRun, cut };
}

const noEdges: readonly number[] = [];

/** The place of the first edge above a count; edges are in order. */
function firstAbove(edges: readonly number[], count: number): number {
  let [low, high] = [0, edges.length];
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((edges[middle] ?? 0) <= count) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** What a piece is cut into by the edges from a place on. */
function piecesBetween({ id, fromCount, toCount }: Piece, edges: readonly number[], place: number): readonly Piece[] {
  const pieces: Piece[] = [];
  let start = fromCount;
  for (let at = place; at < edges.length; at += 1) {
    const edge = edges[at] ?? toCount;
    if (edge >= toCount) break;
    pieces.push({ id: `${id}.${pieces.length}`, fromCount: start, toCount: edge });
    start = edge;
  }
  pieces.push({ id: `${id}.${pieces.length}`, fromCount: start, toCount });
  return pieces;
}

/** A run that drew twice between the same two counts has the pieces of both by turns. */
function putInOrder(pieces: Piece[]): void {
  const isInOrder = pieces.every(({ fromCount }, place) => fromCount >= (pieces[place - 1]?.fromCount ?? 0));
  if (!isInOrder) pieces.sort((one, other) => one.fromCount - other.fromCount);
}
