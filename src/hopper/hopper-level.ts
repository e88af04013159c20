import { checkLevel, type LevelCheck } from '../core/hopper-flow/check-level.js';
import type { HopperPeriod, Mass } from '../core/hopper-flow/hopper-event.js';
import type { LevelFinding } from '../core/hopper-flow/level-course.js';
import type { Suspect } from '../core/hopper-flow/suspect.js';
import type { Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { HopperRow } from '../plant/plant-rows.js';
import { hopperOf } from '../plant/plant-facts.js';
import { currentPeriod } from './hopper-period-rows.js';
import { lastInstantOf, readHopperPeriod, type HopperPeriodFacts, type LeftInside } from './hopper-periods.js';
import { emptyId, endId, periodForLevelCheck, removalExitId, wholePiece } from './period-flow.js';

/** What is inside a hopper by the records, and what in them cannot be true. */
export interface HopperLevel {
  readonly hopperId: string;
  /** Null: nothing was ever recorded of it. */
  readonly periodId: string | null;
  /** Up to when the records go. */
  readonly asOfAt: Instant | null;
  readonly lowerGrams: number;
  /** As recorded; below 0 where the records are wrong. */
  readonly grams: number;
  readonly upperGrams: number;
  readonly capacityGrams: number;
  readonly findings: readonly PlacedFinding[];
  /** Single mistakes that would explain the findings, best first. */
  readonly suspects: readonly PlacedSuspect[];
}

/** A finding with the time of the record at which it shows first. */
export interface PlacedFinding extends LevelFinding {
  readonly at: Instant | null;
}

/** A mistake with the times between which it lies. */
export interface PlacedSuspect extends Suspect {
  readonly afterAt: Instant | null;
  readonly byAt: Instant | null;
}

/**
 * What is inside a hopper now, by its records.
 *
 * @throws {NotFound} `hopper`
 */
export async function levelOf(from: ReadFrom, hopperId: string): Promise<HopperLevel> {
  const period = await currentPeriod(from, hopperId);
  if (period === null) return nothingInside(await hopperOf(from, hopperId));
  return levelOfPeriod(await readHopperPeriod(from, period.id));
}

/** The level check of a period that was read already. */
export function levelOfPeriod(facts: HopperPeriodFacts): HopperLevel {
  const ordered = periodForLevelCheck(facts);
  return placedLevel(facts, ordered, checkLevel(ordered));
}

function placedLevel(facts: HopperPeriodFacts, ordered: HopperPeriod, check: LevelCheck): HopperLevel {
  const times = timesOf(facts);
  const last = check.points.at(-1);
  const timeOf = (id: string | null): Instant | null => (id === null ? null : (times.get(id) ?? null));
  const idOf = (index: number): string | null => ordered.events[index]?.id ?? null;
  return {
    hopperId: facts.period.hopperId,
    periodId: facts.period.id,
    asOfAt: lastInstantOf(facts),
    lowerGrams: last?.lowerGrams ?? 0,
    grams: last?.grams ?? 0,
    upperGrams: last?.upperGrams ?? 0,
    capacityGrams: facts.hopper.capacityGrams,
    findings: check.findings.map((finding) => ({ ...finding, at: timeOf(idOf(finding.eventIndex)) })),
    suspects: check.suspects.map((suspect) => ({
      ...suspect,
      afterAt: timeOf(suspect.afterEventId),
      byAt: timeOf(suspect.byEventId),
    })),
  };
}

function nothingInside({ id, capacityGrams }: HopperRow): HopperLevel {
  const masses = { lowerGrams: 0, grams: 0, upperGrams: 0, capacityGrams };
  return { hopperId: id, periodId: null, asOfAt: null, ...masses, findings: [], suspects: [] };
}

/**
 * What is to be taken as inside at the end of a period that goes on. Where the records cannot be true, anything up to
 * the capacity may be.
 */
export function leftInside(facts: HopperPeriodFacts, level: HopperLevel): LeftInside {
  const at = lastInstantOf(facts);
  const capacity = facts.hopper.capacityGrams;
  const grams = Math.max(0, level.grams);
  if (level.findings.length > 0) {
    return { at, mass: { lowerGrams: 0, grams, upperGrams: Math.max(capacity, grams) } };
  }
  const mass: Mass = {
    lowerGrams: Math.min(level.lowerGrams, grams),
    grams,
    upperGrams: Math.max(grams, level.upperGrams),
  };
  return { at, mass };
}

/** What the level check says against one event (a level seen, the proven empty): by how many grams it does not fit. */
export function doubtAbout(facts: HopperPeriodFacts, eventId: string): number {
  const ordered = periodForLevelCheck(facts);
  const index = ordered.events.findIndex((event) => event.kind === 'level-seen' && event.id === eventId);
  const before = ordered.events.findLastIndex((event, at) => at < index && event.kind === 'level-seen');
  const against = checkLevel(ordered).findings.filter(({ eventIndex }) => eventIndex > before && eventIndex <= index);
  return against.reduce((most, { byGrams }) => Math.max(most, byGrams), 0);
}

/** When each record likely happened, by the id that it has in the ordered period. */
function timesOf(facts: HopperPeriodFacts): ReadonlyMap<string, Instant> {
  const times = new Map<string, Instant>();
  for (const { id, likelyAt } of [...facts.additions, ...facts.levels]) times.set(id, likelyAt);
  for (const { removalId, likelyAt } of facts.removals) times.set(removalExitId(removalId), likelyAt);
  for (const pack of facts.packs) times.set(wholePiece(pack).id, pack.likelyAt);
  const { endedAt } = facts.period;
  if (endedAt !== null) for (const id of [endId, emptyId]) times.set(id, endedAt);
  return times;
}
