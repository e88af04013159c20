import { checkLevel, type LevelCheck } from '../core/hopper-flow/check-level.js';
import type { Addition, HopperPeriod, Mass } from '../core/hopper-flow/hopper-event.js';
import { isOfShortage, type LevelFinding } from '../core/hopper-flow/level-course.js';
import type { Suspect } from '../core/hopper-flow/suspect.js';
import { shifted, type Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { HopperRow } from '../plant/plant-rows.js';
import { hopperOf } from '../plant/plant-facts.js';
import { currentPeriod } from './hopper-period-rows.js';
import { lastInstantOf, readHopperPeriod, type HopperPeriodFacts, type LeftInside } from './hopper-periods.js';
import { emptyId, endId, periodForLevelCheck, removalExitId, wholePiece } from './period-events.js';
import { earlierOf, noEnd, type TimeWindow } from './record-times.js';
import { tipsElsewhere, type Span } from './tips-elsewhere.js';

/** A tip may be entered so much earlier or later than it was: an hour. Our own value, no source. */
const elsewhereMargin = 3_600_000;

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
  /** How many times better the first of them fits than the next; null where none other fits, or none at all. */
  readonly timesBetter: number | null;
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
  return explainedLevel(from, await readHopperPeriod(from, period.id));
}

/**
 * The level check of a period that was read already.
 * @param elsewhere tips entered at other hoppers about the time of a finding; null: nobody looked
 */
export function levelOfPeriod(facts: HopperPeriodFacts, elsewhere: readonly Addition[] | null = null): HopperLevel {
  const ordered = periodForLevelCheck(facts);
  return placedLevel(facts, ordered, checkLevel(ordered, elsewhere));
}

/** The same; where something is missing, the tips of the site's other hoppers about then are looked at too. */
export async function explainedLevel(from: ReadFrom, facts: HopperPeriodFacts): Promise<HopperLevel> {
  const level = levelOfPeriod(facts);
  const span = spanOfShortage(facts, level);
  return span === null ? level : levelOfPeriod(facts, await tipsElsewhere(from, facts.hopper, span));
}

/** Between when a tip would be missing, with what its time may be off; null where nothing is. */
function spanOfShortage({ period }: HopperPeriodFacts, { findings, suspects }: HopperLevel): Span | null {
  const [first] = findings;
  if (first === undefined || !isOfShortage(first)) return null;
  const starts = suspects.flatMap(({ afterAt }) => afterAt ?? []);
  const fromAt = starts.length === 0 ? period.startedAt : starts.reduce((one, other) => earlierOf(one, other));
  return { fromAt: shifted(fromAt, -elsewhereMargin), untilAt: shifted(first.at ?? noEnd, elsewhereMargin) };
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
    timesBetter: check.lead === null || check.lead === Infinity ? null : check.lead,
  };
}

function nothingInside({ id, capacityGrams }: HopperRow): HopperLevel {
  const masses = { lowerGrams: 0, grams: 0, upperGrams: 0, capacityGrams };
  return { hopperId: id, periodId: null, asOfAt: null, ...masses, findings: [], suspects: [], timesBetter: null };
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

/** When each record happened at the earliest, by the id that it has in the ordered period. */
export function earliestTimesOf(facts: HopperPeriodFacts): ReadonlyMap<string, Instant> {
  return timesOf(facts, ({ earliestAt }) => earliestAt);
}

/** When each record (likely) happened, by the id that it has in the ordered period. */
function timesOf(
  facts: HopperPeriodFacts,
  timeOf: (window: TimeWindow) => Instant = ({ likelyAt }) => likelyAt,
): ReadonlyMap<string, Instant> {
  const times = new Map<string, Instant>();
  for (const record of [...facts.additions, ...facts.levels]) times.set(record.id, timeOf(record));
  for (const removal of facts.removals) times.set(removalExitId(removal.removalId), timeOf(removal));
  for (const pack of facts.packs) times.set(wholePiece(pack).id, timeOf(pack));
  const { endedAt } = facts.period;
  if (endedAt !== null) for (const id of [endId, emptyId]) times.set(id, endedAt);
  return times;
}
