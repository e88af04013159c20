import type { Exit, HopperPeriod, Mass } from '../core/hopper-flow/hopper-event.js';
import { orderForLevelCheck } from '../core/hopper-flow/order-for-bounds.js';
import type { TimedEvent, TimedHopperPeriod } from '../core/hopper-flow/timed-event.js';
import type { Instant } from '../platform/clock.js';
import type { PackExit, PackSpan } from './counted-packs.js';
import { packMass, type RunFact } from './exit-facts.js';
import { timedAdditionsAndLevels, type HopperPeriodFacts, type LeftInside } from './hopper-periods.js';

type PackCounts = Pick<PackSpan, 'isWhole' | 'likelyFromCount' | 'likelyToCount'>;

export interface Piece {
  readonly id: string;
  readonly fromCount: number;
  readonly toCount: number;
}

export const endId = 'left-inside';
export const emptyId = 'empty';
export const removalExitId = (removalId: string): string => `removal:${removalId}`;

/** The period in the order of the level check, with what it ended with as a level that was seen. */
export function periodForLevelCheck(facts: HopperPeriodFacts): HopperPeriod {
  return orderForLevelCheck(timedPeriodOf(facts));
}

/** The period with its intervals, the packs between two counts as one exit each, named by `wholePiece`. */
export function timedPeriodOf(facts: HopperPeriodFacts): TimedHopperPeriod<Instant> {
  const exits = facts.packs.map((pack): TimedEvent<Instant> => {
    const { earliestAt, likelyAt, latestAt } = pack;
    return { event: exitOf(runOf(facts, pack.runId), pack, wholePiece(pack)), earliestAt, likelyAt, latestAt };
  });
  return timedPeriod(facts, exits, otherEvents(facts, null));
}

export function runOf(facts: HopperPeriodFacts, runId: string): RunFact {
  const run = facts.runs.get(runId);
  if (run === undefined) throw new RangeError(`run ${runId} is not in the period`);
  return run;
}

/** A run may draw from a hopper twice between the same two counts, so the time is part of the name. */
export function wholePiece({ runId, fromCount, toCount, earliestAt }: PackExit): Piece {
  return { id: `${runId}:${fromCount}-${toCount}@${earliestAt}`, fromCount, toCount };
}

export function exitOf(run: RunFact, pack: PackCounts, { id, fromCount, toCount }: Piece): Exit {
  const whole = packMass(run.meanNet, fromCount, toCount);
  if (pack.isWhole) return { kind: 'exit', id, mass: whole };
  const grams = likelyGrams(pack, { fromCount, toCount }, whole);
  return { kind: 'exit', id, mass: { lowerGrams: 0, grams, upperGrams: whole.upperGrams } };
}

/** Of packs that only likely left in this period. */
function likelyGrams(pack: PackCounts, piece: Omit<Piece, 'id'>, whole: Mass): number {
  const fromCount = Math.max(piece.fromCount, pack.likelyFromCount);
  const likelyCount = Math.max(0, Math.min(piece.toCount, pack.likelyToCount) - fromCount);
  return Math.round((whole.grams * likelyCount) / (piece.toCount - piece.fromCount));
}

/** What happened in a period besides packs leaving, and what it ended with. */
export interface OtherEvents<At extends Instant | number> {
  readonly pouredAndSeen: readonly TimedEvent<At>[];
  readonly removed: readonly TimedEvent<At>[];
  /** None: it goes on. */
  readonly end: readonly TimedEvent<At>[];
}

export function otherEvents(facts: HopperPeriodFacts, leftInside: LeftInside | null): OtherEvents<Instant> {
  const removed = facts.removals.map(({ removalId, mass, earliestAt, likelyAt, latestAt }): TimedEvent<Instant> => {
    return { event: { kind: 'exit', id: removalExitId(removalId), mass }, earliestAt, likelyAt, latestAt };
  });
  const left = leftInside ?? leftAtProvenEmpty(facts);
  return { pouredAndSeen: timedAdditionsAndLevels(facts), removed, end: left === null ? [] : endEvents(left) };
}

export function timedPeriod<At extends Instant | number>(
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
