import { seededRandom, type Random } from '../../src/demo/plant-physics/random.js';
import type { Addition } from '../../src/core/hopper-flow/hopper-event.js';
import type { SuspectKind } from '../../src/core/hopper-flow/suspect.js';
import type { TimedEvent } from '../../src/core/hopper-flow/timed-event.js';
import { endId, startId, type RecordedPeriod } from './recorded-period.js';
import { minuteSeconds, type TruePlant } from './true-plant.js';

/** Records of a period in which one thing is wrong, and what that is. */
export interface Mistaken {
  readonly period: RecordedPeriod;
  readonly kind: SuspectKind;
  /** The record that is wrong; null where it is the record that is missing. */
  readonly id: string | null;
  readonly grams: number;
  /** When it was made, in truth. */
  readonly at: number;
  /** Tips entered at another hopper about then. */
  readonly elsewhere: readonly Addition[] | null;
}

type Entry = TimedEvent<number>;
type TipEntry = Entry & { readonly event: Addition };
type Make = (period: RecordedPeriod, tip: TipEntry, random: Random) => Mistaken | null;

export type MistakeName =
  | 'missing tip'
  | 'double tip'
  | 'late tip'
  | 'wrong tare'
  | 'tip of another hopper'
  | 'tip entered at another hopper'
  | 'lost packs'
  | 'an empty that was none';

export const mistakeNames: readonly MistakeName[] = [
  ...(['missing tip', 'double tip', 'late tip', 'wrong tare', 'tip of another hopper'] as const),
  ...(['tip entered at another hopper', 'lost packs', 'an empty that was none'] as const),
];

/** Makes one mistake in the records of a plant's first or second period; null where it has no room for that. */
export function makeMistake(plant: TruePlant, recorded: readonly RecordedPeriod[], name: MistakeName): Mistaken | null {
  const random = seededRandom(plant.seed, name);
  const period = random.pick(recorded);
  const tips = period.events.filter(isTip).filter(({ event }) => event.id !== startId);
  return makers[name](period, random.pick(tips), random);
}

const makers: Readonly<Record<MistakeName, Make>> = {
  'missing tip': (period, tip) => {
    const mistake = { kind: 'tip-missing', id: null, grams: tip.event.mass.grams, at: tip.earliestAt } as const;
    return { ...mistake, elsewhere: null, period: changed(period, tip, []) };
  },
  'double tip': (period, tip, random) => {
    const again = renamed(later(tip, random.whole(0, 20), period), `${tip.event.id} again`);
    const mistake = { kind: 'tip-entered-twice', id: again.event.id, grams: tip.event.mass.grams } as const;
    return { ...mistake, at: again.likelyAt, elsewhere: null, period: changed(period, tip, [tip, again]) };
  },
  'late tip': (period, tip, random) => {
    const late = later(tip, random.whole(45, 120), period);
    if (late.earliestAt <= tip.latestAt) return null;
    const mistake = { kind: 'tip-late', id: tip.event.id, grams: tip.event.mass.grams, at: tip.earliestAt } as const;
    return { ...mistake, elsewhere: null, period: changed(period, tip, [late]) };
  },
  'wrong tare': (period, tip, random) => {
    const offGrams = random.whole(10_000, 45_000);
    const heavier = random.happens(0.5) ? offGrams : -offGrams;
    const mistake = { kind: 'wrong-tare', id: null, grams: offGrams, at: tip.earliestAt } as const;
    return { ...mistake, elsewhere: null, period: changed(period, tip, [heavierBy(tip, heavier)]) };
  },
  'tip of another hopper': (period, tip, random) => {
    const entered = heavierBy(later(tip, random.whole(0, 20), period), random.whole(-9, 9) * 500 + 250);
    const foreign = renamed(entered, 'of another hopper');
    const mistake = { kind: 'wrong-hopper', id: foreign.event.id, grams: foreign.event.mass.grams } as const;
    return { ...mistake, at: foreign.likelyAt, elsewhere: null, period: changed(period, tip, [tip, foreign]) };
  },
  'tip entered at another hopper': (period, tip, random) => {
    const others = Array.from({ length: 4 }, (_, place): Addition => {
      return renamed(heavierBy(tip, random.whole(-40, 40) * 500), `there ${place}`).event;
    });
    const mistake = { kind: 'wrong-hopper', id: tip.event.id, grams: tip.event.mass.grams } as const;
    return { ...mistake, at: tip.earliestAt, elsewhere: [...others, tip.event], period: changed(period, tip, []) };
  },
  'lost packs': (period, _, random) => {
    const wanted = random.whole(100_000, 900_000);
    return withoutPacks(period, random.whole(0, period.pieces.length - 1), wanted, 'exits-missing');
  },
  'an empty that was none': (period, _, random) => {
    const wanted = random.whole(150_000, 900_000);
    const mistaken = withoutPacks(period, firstOfLast(period, wanted), wanted, 'empty-was-none');
    return mistaken && { ...mistaken, id: 'proven empty' };
  },
};

function isTip(entry: Entry): entry is TipEntry {
  return entry.event.kind === 'addition';
}

function changed(period: RecordedPeriod, old: Entry, now: readonly Entry[]): RecordedPeriod {
  return { ...period, events: period.events.flatMap((entry) => (entry === old ? now : [entry])) };
}

/** Never past the end of the period. */
function later(tip: TipEntry, minutes: number, period: RecordedPeriod): TipEntry {
  const endsAt = period.events.find(({ event }) => event.id === endId)?.latestAt ?? Infinity;
  const moved = (at: number): number => Math.min(endsAt, at + minutes * minuteSeconds);
  return {
    event: tip.event,
    earliestAt: moved(tip.earliestAt),
    likelyAt: moved(tip.likelyAt),
    latestAt: moved(tip.latestAt),
  };
}

function renamed(tip: TipEntry, id: string): TipEntry {
  return { ...tip, event: { ...tip.event, id } };
}

function heavierBy(tip: TipEntry, grams: number): TipEntry {
  const { mass } = tip.event;
  const heavier = {
    lowerGrams: mass.lowerGrams + grams,
    grams: mass.grams + grams,
    upperGrams: mass.upperGrams + grams,
  };
  return { ...tip, event: { ...tip.event, mass: heavier } };
}

/** The packs of one line are not counted for a while (or the hopper was not run empty: they never were). */
function withoutPacks(
  { pieces, ...period }: RecordedPeriod,
  from: number,
  wanted: number,
  kind: SuspectKind,
): Mistaken | null {
  const massById = new Map(
    period.events.flatMap(({ event }) => (event.kind === 'exit' ? [[event.id, event.mass.grams] as const] : [])),
  );
  const lost = new Set<string>();
  let grams = 0;
  for (const { id } of pieces.slice(from)) {
    if (grams >= wanted) break;
    lost.add(id);
    grams += massById.get(id) ?? 0;
  }
  const at = pieces[from]?.latestAt;
  if (at === undefined || grams < wanted) return null;
  const events = period.events.filter(({ event }) => event.kind !== 'exit' || !lost.has(event.id));
  return { period: { ...period, pieces, events }, kind, id: null, grams, at, elsewhere: null };
}

/** Where the last packs of the last line begin that come to so much. */
function firstOfLast({ pieces, events }: RecordedPeriod, wanted: number): number {
  let grams = 0;
  for (let from = pieces.length - 1; from > 0; from -= 1) {
    const event = events.find((entry) => entry.event.id === pieces[from]?.id)?.event;
    grams += event?.kind === 'exit' ? event.mass.grams : 0;
    if (grams >= wanted) return from;
  }
  return 0;
}
