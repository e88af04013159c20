import { exactMass, type Addition, type HopperEvent, type HopperPeriod } from './hopper-event.js';
import { isLevelPossible, isOfShortage, levelCourse, levelFindings, type LevelFinding } from './level-course.js';

/** Sizes that cure everything when put in (or taken out) before the event at an index: all in one range. */
export interface CuringSizes {
  readonly index: number;
  readonly leastGrams: number;
  readonly mostGrams: number;
}

/** Records that cannot be true, laid out for trying corrections. */
export interface LevelCase {
  readonly period: HopperPeriod;
  readonly first: LevelFinding;
  readonly isShortage: boolean;
  /** Index of the first event after the last level that was seen before the finding. */
  readonly stretchStart: number;
  /** The same, some levels further back: a level known badly may hide a mistake. */
  readonly reachStart: number;
  /** The most that was ever inside by the records: how much a mistake without a size of its own may come to. */
  readonly hopperFullGrams: number;
  /** The nets of what was tipped, but for remainders below half of the middle one; ascending. */
  readonly usualNets: readonly number[];
  /** Where a correction is tried: where it shows, and before the last tips and levels seen before that; latest first. */
  readonly places: readonly number[];
  /** What cures at which of them. */
  readonly curing: readonly CuringSizes[];
  /** The least that a mistake must come to. */
  readonly grams: number;
}

/** A tip and its place in the period. */
export interface PlacedTip {
  readonly tip: Addition;
  readonly index: number;
}

// How many levels seen, and how many tips, before the finding a mistake is looked for behind. Our own values, no source.
const [levelsBehind, tipsBehind] = [2, 3];

/** @example layOutCase({ capacityGrams: null, events: [] }, []) // null */
export function layOutCase(period: HopperPeriod, findings: readonly LevelFinding[]): LevelCase | null {
  const first = findings[0];
  if (first === undefined) return null;
  const isShortage = isOfShortage(first);
  const { points } = levelCourse(period);
  const seen = period.events.flatMap(({ kind }, index) =>
    kind === 'level-seen' && index < first.eventIndex ? [index] : [],
  );
  const known = {
    ...{ period, first, isShortage, usualNets: usualNetsOf(period) },
    stretchStart: (seen.at(-1) ?? -1) + 1,
    reachStart: (seen.at(-1 - levelsBehind) ?? -1) + 1,
    hopperFullGrams: points.reduce((most, { upperGrams }) => Math.max(most, upperGrams), 1),
  };
  const places = placesOf(known);
  const curing = places.flatMap((index) => curingSizesAt(known, index) ?? []);
  const grams = curing.length > 0 ? Math.min(...curing.map(({ leastGrams }) => leastGrams)) : first.byGrams;
  return { ...known, places, curing, grams };
}

/** Where it shows, and before the last tips and levels seen before that; the latest first. */
function placesOf(known: Pick<LevelCase, 'period' | 'first' | 'reachStart'>): readonly number[] {
  const { period, first, reachStart } = known;
  const seen = period.events.flatMap(({ kind }, index) =>
    kind === 'level-seen' && reachStart <= index && index < first.eventIndex ? [index] : [],
  );
  const tips = tipsBefore(known).filter(({ index }) => index < first.eventIndex);
  const before = [...seen, ...tips.slice(-tipsBehind).map(({ index }) => index)].sort((a, b) => b - a);
  return [first.eventIndex, ...before];
}

/**
 * Which sizes cure everything at a place. The more is put in, the less is missing later and the more is too much: so the
 * least is found by the one, the most by the other.
 */
export function curingSizesAt(
  known: Pick<LevelCase, 'period' | 'first' | 'isShortage' | 'hopperFullGrams'>,
  index: number,
): CuringSizes | null {
  const { period, first, isShortage, hopperFullGrams } = known;
  const beyond = hopperFullGrams * 2 + first.byGrams;
  const findingsWith = (size: number) => levelFindings({ ...period, events: corrected(known, index, size) });
  const isEnough = (size: number) => findingsWith(size).every((finding) => isOfShortage(finding) !== isShortage);
  const leastGrams = firstIndexWhere(isEnough, 1, beyond);
  if (findingsWith(leastGrams).length > 0) return null;
  const isTooMuch = (size: number) => findingsWith(size).length > 0;
  return { index, leastGrams, mostGrams: firstIndexWhere(isTooMuch, leastGrams + 1, beyond + 1) - 1 };
}

/** Whether the records can be true once they are these. */
export function isCured({ period }: Pick<LevelCase, 'period'>, events: readonly HopperEvent[]): boolean {
  return isLevelPossible({ ...period, events });
}

/** The period's events with grams put in, or taken out, before the event at an index. */
export function corrected(
  { period, isShortage }: Pick<LevelCase, 'period' | 'isShortage'>,
  index: number,
  grams: number,
): readonly HopperEvent[] {
  const correction: HopperEvent = {
    ...{ kind: isShortage ? 'addition' : 'exit', id: 'correction' },
    mass: exactMass(grams),
  };
  return period.events.toSpliced(index, 0, correction);
}

/** What findings still come to, all together, once the records are these. */
export function remainingGrams({ period }: LevelCase, events: readonly HopperEvent[]): number {
  return levelFindings({ ...period, events }).reduce((sum, { byGrams }) => sum + byGrams, 0);
}

/** The share of sizes from above 0 to a limit that cure everything at one of the places; 0 to 1. */
export function shareOfSizes(curing: readonly CuringSizes[], limitGrams: number): number {
  const shares = curing.map(({ leastGrams, mostGrams }) => {
    return Math.max(0, Math.min(mostGrams, limitGrams) - leastGrams + 1) / limitGrams;
  });
  return Math.max(0, ...shares);
}

/** The share of some nets that cure everything at one of the places; 0 without any. */
export function shareOfNets(curing: readonly CuringSizes[], nets: readonly number[]): number {
  if (nets.length === 0) return 0;
  const cures = (net: number) => curing.some(({ leastGrams, mostGrams }) => leastGrams <= net && net <= mostGrams);
  return nets.filter(cures).length / nets.length;
}

/** The tips within reach before where it shows, this one included; in order. */
export function tipsBefore({
  period,
  first,
  reachStart,
}: Pick<LevelCase, 'period' | 'first' | 'reachStart'>): readonly PlacedTip[] {
  return tipsAmong(period).filter(({ index }) => index >= reachStart && index <= first.eventIndex);
}

/** The tips after the finding, in order. */
export function tipsAfter({ period, first }: LevelCase): readonly PlacedTip[] {
  return tipsAmong(period).filter(({ index }) => index > first.eventIndex);
}

/** The earliest index where a mistake of the least size still cures everything, as far as it is looked for. */
export function earliestPlace(known: LevelCase): number {
  const { period, curing, reachStart } = known;
  const earliest = curing.at(-1);
  if (earliest === undefined) return reachStart;
  const { index, leastGrams } = earliest;
  const start = period.events.findLastIndex(({ kind }, at) => at < index && kind === 'level-seen') + 1;
  return firstIndexWhere((place) => isCured(known, corrected(known, place, leastGrams)), start, index);
}

/**
 * The first index for which something holds, where it holds from there up to the last.
 * @example firstIndexWhere((index) => index > 2, 0, 9) // 3
 */
export function firstIndexWhere(holds: (index: number) => boolean, from: number, last: number): number {
  let [low, high] = [from, last];
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (holds(middle)) high = middle;
    else low = middle + 1;
  }
  return high;
}

function tipsAmong({ events }: HopperPeriod): readonly PlacedTip[] {
  return events.flatMap((event, index) => (event.kind === 'addition' ? [{ tip: event, index }] : []));
}

function usualNetsOf(period: HopperPeriod): readonly number[] {
  const nets = tipsAmong(period)
    .map(({ tip }) => tip.mass.grams)
    .filter((grams) => grams > 0);
  nets.sort((a, b) => a - b);
  const middle = nets[nets.length >>> 1] ?? 0;
  return nets.filter((grams) => grams * 2 >= middle);
}
