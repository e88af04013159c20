import { exactMass, type Addition, type HopperEvent, type HopperPeriod } from './hopper-event.js';
import { isLevelPossible, type LevelFinding } from './level-course.js';

/** Which single mistake it would be. From `tip-missing` on, the record itself cannot be named. */
export type SuspectKind =
  'tip-late' | 'tip-entered-twice' | 'wrong-tare' | 'tip-missing' | 'tip-too-many' | 'exits-missing' | 'exits-too-many';

/** One single mistake that would explain the findings. */
export interface Suspect {
  readonly kind: SuspectKind;
  /** The addition's id, where exactly one fits; null where no single record can be named. */
  readonly id: string | null;
  /** What the tip holds where it is named; else the least that the mistake must come to. */
  readonly grams: number;
  /** The mistake lies after this event (null: since the period's start) … */
  readonly afterEventId: string | null;
  /** … and at the latest where it shows. */
  readonly byEventId: string;
  /** Whether putting it right leaves no finding in the whole period. */
  readonly cures: boolean;
}

// A wrong tare changes a net by a few kilograms at most; as a share of a usual tip. Our own value, no source.
const wrongTareShare = 0.05;
// How many tips before or after the finding are tried one by one. Our own value, no source.
const tipsTried = 20;
// More twins than this cannot be told apart, so none is named. Our own value, no source.
const twinsNamed = 3;

interface Case {
  readonly period: HopperPeriod;
  readonly first: LevelFinding;
  readonly isShortage: boolean;
  readonly grams: number;
  /** Index of the first event after the last level that was seen before the finding. */
  readonly stretchStart: number;
}

type Place = Pick<Suspect, 'afterEventId' | 'byEventId' | 'cures'>;

/**
 * Explains findings of the level check by one mistake, best first: a mistake that cures everything before one that
 * does not; then a tip that stands too late, a tip entered twice (another of the same net stands before it), a wrong
 * tare, then what no record names. The order among these is our own, no source. No more is said than can be known: a
 * mistake lies somewhere between two events, because a missing tip shows only when what it replaced has run out; and
 * where several records fit equally none is named.
 * @param findings of `levelCourse(period)`; none gives no suspects
 * @example suspectMistakes(period, []) // []
 */
export function suspectMistakes(period: HopperPeriod, findings: readonly LevelFinding[]): readonly Suspect[] {
  const first = findings[0];
  if (first === undefined) return [];
  const isShortage = isOfShortage(first);
  const stretchStart = lastLevelSeenBefore(period.events, first.eventIndex) + 1;
  const nextSeen = period.events.findIndex((event, at) => at >= first.eventIndex && event.kind === 'level-seen');
  const inStretch = findings.filter(
    (finding) => isOfShortage(finding) === isShortage && (nextSeen < 0 || finding.eventIndex <= nextSeen),
  );
  const grams = Math.max(...inStretch.map(({ byGrams }) => byGrams));
  const mistake: Case = { period, first, isShortage, grams, stretchStart };
  const suspects = isShortage ? explainShortage(mistake) : explainSurplus(mistake);
  return [...suspects.filter(({ cures }) => cures), ...suspects.filter(({ cures }) => !cures)];
}

function explainShortage(mistake: Case): readonly Suspect[] {
  const place = findPlace(mistake);
  const unnamed = (kind: SuspectKind): Suspect => ({ kind, id: null, grams: mistake.grams, ...place });
  return [
    ...findLateTip(mistake),
    ...(isLikeATare(mistake) ? [unnamed('wrong-tare')] : []),
    unnamed('tip-missing'),
    unnamed('exits-too-many'),
  ];
}

function explainSurplus(mistake: Case): readonly Suspect[] {
  const place = findPlace(mistake);
  const unnamed = (kind: SuspectKind): Suspect => ({ kind, id: null, grams: mistake.grams, ...place });
  const curing = tipsBefore(mistake).filter(({ index }) =>
    isCured(mistake.period, without(mistake.period.events, index)),
  );
  const twins = curing.filter(({ tip, index }) => hasTwinBefore(mistake.period.events, tip, index));
  const named = twins.length <= twinsNamed ? twins : [];
  const only = curing.length === 1 ? curing[0] : undefined;
  return [
    ...named.map(({ tip }): Suspect => ({
      ...unnamed('tip-entered-twice'),
      id: tip.id,
      grams: tip.mass.grams,
      cures: true,
    })),
    ...(isLikeATare(mistake) ? [unnamed('wrong-tare')] : []),
    ...(curing.length > 0 ? [{ ...unnamed('tip-too-many'), id: only?.tip.id ?? null, cures: true }] : []),
    unnamed('exits-missing'),
  ];
}

/** The earliest place between two events where the missing grams, put in or taken out, still cure everything. */
function findPlace(mistake: Case): Place {
  const { period, first, stretchStart } = mistake;
  const curesAt = (slot: number) => isCured(period, period.events.toSpliced(slot, 0, correctionOf(mistake)));
  const byEventId = first.eventId;
  let [low, high] = [stretchStart, first.eventIndex];
  const cures = curesAt(high);
  // The earlier it is put, the more ceilings it meets: what no longer cures here does not cure further back either.
  while (cures && low < high) {
    const middle = (low + high) >>> 1;
    if (curesAt(middle)) high = middle;
    else low = middle + 1;
  }
  const slot = cures ? high : stretchStart;
  return { afterEventId: period.events[slot - 1]?.id ?? null, byEventId, cures };
}

function correctionOf({ isShortage, grams }: Case): HopperEvent {
  return { kind: isShortage ? 'addition' : 'exit', id: 'correction', mass: exactMass(grams) };
}

/** The nearest tip after the finding that cures everything when it is moved before it. */
function findLateTip({ period, first, stretchStart }: Case): readonly Suspect[] {
  const later = period.events.flatMap((event, index) =>
    event.kind === 'addition' && index > first.eventIndex ? [{ tip: event, index }] : [],
  );
  for (const { tip, index } of later.slice(0, tipsTried)) {
    if (!isCured(period, without(period.events, index).toSpliced(first.eventIndex, 0, tip))) continue;
    const afterEventId = period.events[stretchStart - 1]?.id ?? null;
    return [
      { kind: 'tip-late', id: tip.id, grams: tip.mass.grams, afterEventId, byEventId: first.eventId, cures: true },
    ];
  }
  return [];
}

function tipsBefore({
  period,
  first,
  stretchStart,
}: Case): readonly { readonly tip: Addition; readonly index: number }[] {
  const tips = period.events.flatMap((event, index) =>
    event.kind === 'addition' && index >= stretchStart && index <= first.eventIndex ? [{ tip: event, index }] : [],
  );
  return tips.slice(-tipsTried);
}

function hasTwinBefore(events: readonly HopperEvent[], tip: Addition, index: number): boolean {
  return events.some((event, at) => at < index && event.kind === 'addition' && event.mass.grams === tip.mass.grams);
}

function isLikeATare({ period, grams }: Case): boolean {
  const nets = period.events.flatMap((event) => (event.kind === 'addition' ? [event.mass.grams] : []));
  const usualGrams = nets.sort((a, b) => a - b)[nets.length >>> 1] ?? 0;
  return grams <= usualGrams * wrongTareShare;
}

function isOfShortage({ kind }: LevelFinding): boolean {
  return kind === 'below-zero' || kind === 'below-seen';
}

function isCured(period: HopperPeriod, events: readonly HopperEvent[]): boolean {
  return isLevelPossible({ ...period, events });
}

function without(events: readonly HopperEvent[], index: number): readonly HopperEvent[] {
  return events.toSpliced(index, 1);
}

function lastLevelSeenBefore(events: readonly HopperEvent[], index: number): number {
  return events.findLastIndex((event, at) => at < index && event.kind === 'level-seen');
}
