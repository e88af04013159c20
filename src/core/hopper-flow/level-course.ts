import type { HopperEvent, HopperPeriod } from './hopper-event.js';

/**
 * What can be inside after one event: at least, as recorded, at most. Recorded and most may fall below 0 where the
 * records are wrong.
 */
export interface LevelPoint {
  readonly eventIndex: number;
  readonly eventId: string;
  readonly lowerGrams: number;
  readonly grams: number;
  readonly upperGrams: number;
}

/**
 * `below-zero`: more left than was poured. `above-capacity`: more inside than fits. `below-seen`: less by the records
 * than was measured. `above-seen`: more by the records than was measured. The first and third are a *shortage* of
 * additions, the others a *surplus*.
 */
export type LevelFindingKind = 'below-zero' | 'above-capacity' | 'below-seen' | 'above-seen';

/** Records that cannot all be true, whatever the masses were within their limits. */
export interface LevelFinding {
  readonly kind: LevelFindingKind;
  /** Where it shows first. */
  readonly eventIndex: number;
  readonly eventId: string;
  /** By how much, at its worst before the next level that was seen; above 0. */
  readonly byGrams: number;
}

export interface LevelCourse {
  /** One point for each event, in the period's order. */
  readonly points: readonly LevelPoint[];
  /** In the order in which they show first; between two levels seen at most one of each kind. */
  readonly findings: readonly LevelFinding[];
}

interface Level {
  lowerGrams: number;
  grams: number;
  upperGrams: number;
}

type Report = (kind: LevelFindingKind, byGrams: number) => void;

/**
 * The level through a hopper period: what was poured less what left, with the limits of all masses added up since the
 * start or the last level seen, where the growth starts again. The least is never below 0, the most never above a
 * ceiling (or the capacity, after an addition); the recorded level is not cut by either, only moved into a level that
 * was seen. An empty period has no points and no findings; a level exactly at 0 or exactly at the capacity is no
 * finding.
 * @throws nothing; call `assertHopperPeriod` first where the period comes from outside
 * @see hopper-bounds.md, step 1 and "Times are intervals, and errors must only widen"
 * @example
 * levelCourse({ capacityGrams: null, events: [
 *   { kind: 'addition', id: 'bag', mass: massWithin(1000, 5) }, { kind: 'exit', id: 'packs', mass: massWithin(300, 1)
 * } ] }) .points[1] // { eventIndex: 1, eventId: 'packs', lowerGrams: 694, grams: 700, upperGrams: 706 }
 */
export function levelCourse(period: HopperPeriod): LevelCourse {
  const points: LevelPoint[] = [];
  const findings = followLevel(period, (eventIndex, eventId, level) => {
    const { lowerGrams, grams, upperGrams } = level;
    points.push({ eventIndex, eventId, lowerGrams, grams, upperGrams });
  });
  return { points, findings };
}

/**
 * The findings of `levelCourse` alone.
 * @example levelFindings({ capacityGrams: null, events: [] }) // []
 */
export function levelFindings(period: HopperPeriod): readonly LevelFinding[] {
  return followLevel(period, () => undefined);
}

/** Whether less is inside by the records than can be: additions are missing, or exits too many. */
export function isOfShortage({ kind }: Pick<LevelFinding, 'kind'>): boolean {
  return kind === 'below-zero' || kind === 'below-seen';
}

/**
 * Whether the records of a period can all be true, whatever the masses were within their limits: `levelCourse` finds
 * nothing.
 * @example isLevelPossible({ capacityGrams: null, events: [] }) // true
 */
export function isLevelPossible(period: HopperPeriod): boolean {
  return levelFindings(period).length === 0;
}

type Visit = (eventIndex: number, eventId: string, level: Readonly<Level>) => void;

/**
 * As `levelFindings`, and shows the level after each event.
 * @param visit is shown the one level that goes on changing
 * @example followLevel({ capacityGrams: null, events: [] }, () => undefined) // []
 */
export function followLevel(period: HopperPeriod, visit: Visit): readonly LevelFinding[] {
  const level: Level = { lowerGrams: 0, grams: 0, upperGrams: 0 };
  const findings: LevelFinding[] = [];
  let stretchStart = 0;
  let [eventIndex, eventId] = [0, ''];
  const report: Report = (kind, byGrams) => {
    const found = findings.findIndex((finding, at) => at >= stretchStart && finding.kind === kind);
    const earlier = findings[found];
    if (earlier === undefined) findings.push({ kind, eventIndex, eventId, byGrams });
    else if (byGrams > earlier.byGrams) findings[found] = { ...earlier, byGrams };
  };
  for (const event of period.events) {
    eventId = event.id;
    applyEvent(level, event, period.capacityGrams, report);
    if (event.kind === 'level-seen') stretchStart = findings.length;
    visit(eventIndex, eventId, level);
    eventIndex += 1;
  }
  return findings;
}

function applyEvent(level: Level, event: HopperEvent, capacityGrams: number | null, report: Report): void {
  switch (event.kind) {
    case 'addition':
      level.lowerGrams += event.mass.lowerGrams;
      level.grams += event.mass.grams;
      level.upperGrams += event.mass.upperGrams;
      if (capacityGrams !== null) applyCeiling(level, capacityGrams, report);
      return;
    case 'exit':
      level.lowerGrams = Math.max(0, level.lowerGrams - event.mass.upperGrams);
      level.grams -= event.mass.grams;
      level.upperGrams -= event.mass.lowerGrams;
      if (level.upperGrams < 0) report('below-zero', -level.upperGrams);
      return;
    case 'ceiling':
      applyCeiling(level, event.upperGrams, report);
      return;
    case 'level-seen':
      applyLevelSeen(level, event, report);
  }
}

function applyCeiling(level: Level, ceilingGrams: number, report: Report): void {
  if (level.lowerGrams > ceilingGrams) report('above-capacity', level.lowerGrams - ceilingGrams);
  level.upperGrams = Math.min(level.upperGrams, ceilingGrams);
}

/**
 * What was measured is believed from here on, also where it contradicts the records: then it is the newer knowledge.
 */
function applyLevelSeen(
  level: Level,
  seen: { readonly lowerGrams: number; readonly upperGrams: number },
  report: Report,
): void {
  const isBelow = level.upperGrams < seen.lowerGrams;
  const isAbove = level.lowerGrams > seen.upperGrams;
  // Below zero was reported where it began; here only what the measured level adds to it.
  if (isBelow && seen.lowerGrams > 0) report('below-seen', seen.lowerGrams - level.upperGrams);
  if (isAbove) report('above-seen', level.lowerGrams - seen.upperGrams);
  const believed = isBelow || isAbove ? { lowerGrams: 0, upperGrams: Infinity } : level;
  level.lowerGrams = Math.max(believed.lowerGrams, seen.lowerGrams);
  level.upperGrams = Math.min(believed.upperGrams, seen.upperGrams);
  level.grams = Math.min(Math.max(level.grams, seen.lowerGrams), seen.upperGrams);
}
