import type { Addition, HopperEvent } from './hopper-event.js';
import {
  corrected,
  curingSizesAt,
  earliestPlace,
  isCured,
  remainingGrams,
  shareOfNets,
  shareOfSizes,
  tipsAfter,
  tipsBefore,
  type LevelCase,
  type PlacedTip,
} from './level-correction.js';
import type { Suspect } from './suspect.js';

/** A suspect before it is compared with the others. */
export interface Explanation extends Pick<Suspect, 'kind' | 'id' | 'grams' | 'fit' | 'remainingGrams'> {
  /** The event after which the mistake lies; −1 for the period's start. */
  readonly afterIndex: number;
}

// A wrong tare changes a net by a few kilograms at most; as a share of a usual tip. Our own value, no source.
const wrongTareShare = 0.05;
// How many tips before or after the finding are tried one by one. Our own value, no source.
const tipsTried = 20;

/**
 * What would explain that more left, or more was seen, than went in.
 * @example explainShortage(known, null).map(({ kind }) => kind) // ['tip-late', 'tip-missing', …]
 */
export function explainShortage(known: LevelCase, elsewhere: readonly Addition[] | null): readonly Explanation[] {
  const any = ofAnySize(known);
  // With no tip to be like, a missing one may be of any size.
  const asTipped = (nets: readonly number[]) =>
    known.usualNets.length === 0 ? any.share(known.hopperFullGrams) : shareOfNets(known.curing, nets);
  return [
    ...lateTip(known, tipsAfter(known).slice(0, tipsTried)),
    any.explain('tip-missing', asTipped(known.usualNets)),
    ...fromElsewhere(known, elsewhere, asTipped(known.usualNets)),
    any.explain('wrong-tare', any.share(tareLimit(known))),
    any.explain('exits-too-many', any.share(exitedGrams(known))),
    ...emptyBeforeWasNone(known),
  ];
}

/**
 * What would explain that more is inside by the records than fits or was seen.
 * @example explainSurplus(known).map(({ kind }) => kind) // ['tip-entered-twice', …]
 */
export function explainSurplus(known: LevelCase): readonly Explanation[] {
  const any = ofAnySize(known);
  const tips = tipsBefore(known);
  return [
    ...oneTipLess(
      'tip-entered-twice',
      known,
      tips.filter((placed) => hasTwinBefore(known, placed)),
    ),
    ...lateTip(known, tips.slice(-tipsTried).toReversed()),
    ...oneTipLess('wrong-hopper', known, tips),
    any.explain('wrong-tare', any.share(tareLimit(known))),
    any.explain('exits-missing', any.share(known.hopperFullGrams)),
    ...seenWasNone(known),
  ];
}

/** Mistakes that are grams put in or taken out, by no record that could be named. */
function ofAnySize(known: LevelCase) {
  const { first, grams, curing } = known;
  const place = earliestPlace(known);
  const left = curing.length === 0 ? remainingGrams(known, corrected(known, first.eventIndex, grams)) : 0;
  return {
    share: (limitGrams: number) => shareOfSizes(curing, limitGrams),
    explain: (kind: Suspect['kind'], fit: number): Explanation => {
      const remaining = fit > 0 ? 0 : Math.max(left, unlike(kind, known));
      return { kind, id: null, grams, fit, remainingGrams: remaining, afterIndex: place - 1 };
    },
  };
}

/** What a mistake of this kind leaves because it is too small or too large for that. */
function unlike(kind: Suspect['kind'], known: LevelCase): number {
  const { grams, usualNets, curing } = known;
  if (kind === 'wrong-tare') return Math.max(1, grams - tareLimit(known));
  if (kind === 'exits-too-many') return Math.max(1, grams - exitedGrams(known));
  if (kind !== 'tip-missing' && kind !== 'wrong-hopper') return 1;
  const mostGrams = Math.max(grams, ...curing.map((sizes) => sizes.mostGrams));
  const away = usualNets.map((net) => Math.max(grams - net, net - mostGrams));
  return Math.max(1, Math.min(...away));
}

function tareLimit({ usualNets, grams }: LevelCase): number {
  return Math.round((usualNets[usualNets.length >>> 1] ?? grams) * wrongTareShare);
}

function exitedGrams({ period, first, reachStart }: LevelCase): number {
  const events = period.events.slice(reachStart, first.eventIndex + 1);
  return events.reduce((sum, event) => sum + (event.kind === 'exit' ? event.mass.grams : 0), 0);
}

/**
 * A tip that stands too late, moved to one of the places. The nearest that cures would be the least late: the further it
 * is, the worse it fits. It is named where no other would do.
 */
function lateTip(known: LevelCase, tips: readonly PlacedTip[]): readonly Explanation[] {
  const { period, reachStart, grams, places } = known;
  const curing = tips.filter(({ tip, index }) => {
    const others = period.events.toSpliced(index, 1);
    return places.some((place) => place < index && isCured(known, others.toSpliced(place, 0, tip)));
  });
  const [nearest] = curing;
  if (nearest === undefined) return [];
  const named = curing.length === 1 ? { id: nearest.tip.id, grams: nearest.tip.mass.grams } : { id: null, grams };
  const fit = 1 / (tips.indexOf(nearest) + 1);
  return [{ kind: 'tip-late', ...named, fit, remainingGrams: 0, afterIndex: reachStart - 1 }];
}

/** One of these tips did not go into this hopper. */
function oneTipLess(kind: Suspect['kind'], known: LevelCase, among: readonly PlacedTip[]): readonly Explanation[] {
  const tips = among.slice(-tipsTried);
  if (tips.length === 0) return [];
  const without = ({ index }: PlacedTip): readonly HopperEvent[] => known.period.events.toSpliced(index, 1);
  const curing = tips.filter((placed) => isCured(known, without(placed)));
  const only = curing.length === 1 ? curing[0] : undefined;
  const left = curing.length > 0 ? 0 : Math.min(...tips.map((placed) => remainingGrams(known, without(placed))));
  return [
    {
      ...{ kind, id: only?.tip.id ?? null, grams: only?.tip.mass.grams ?? known.grams },
      ...{ fit: curing.length / tips.length, remainingGrams: left, afterIndex: known.reachStart - 1 },
    },
  ];
}

function hasTwinBefore({ period }: LevelCase, { tip, index }: PlacedTip): boolean {
  return period.events.some(
    (event, at) => at < index && event.kind === 'addition' && event.mass.grams === tip.mass.grams,
  );
}

/** A tip that was entered at another hopper went into this one. */
function fromElsewhere(
  known: LevelCase,
  elsewhere: readonly Addition[] | null,
  fitUnseen: number,
): readonly Explanation[] {
  const any = ofAnySize(known);
  if (elsewhere === null) return [any.explain('wrong-hopper', fitUnseen)];
  if (elsewhere.length === 0) return [];
  const cures = ({ mass }: Addition): boolean => shareOfNets(known.curing, [mass.grams]) > 0;
  const curing = elsewhere.filter(cures);
  const found = any.explain('wrong-hopper', curing.length / elsewhere.length);
  const only = curing.length === 1 ? curing[0] : undefined;
  return [only === undefined ? found : { ...found, id: only.id, grams: only.mass.grams }];
}

/** What was seen where the surplus shows (an empty, above all) was not so: then anything may have been inside. */
function seenWasNone(known: LevelCase): readonly Explanation[] {
  const { period, first, grams, hopperFullGrams } = known;
  if (first.kind !== 'above-seen') return [];
  const left = remainingGrams(known, period.events.toSpliced(first.eventIndex, 1));
  const fit = left > 0 ? 0 : shareOfSizes(known.curing, hopperFullGrams);
  const place = { id: first.eventId, afterIndex: first.eventIndex - 1 };
  return [{ kind: 'empty-was-none', ...place, grams, fit, remainingGrams: left }];
}

/** More was inside before than was seen (or than the period started with, after an empty). */
function emptyBeforeWasNone(known: LevelCase): readonly Explanation[] {
  const { period, grams, stretchStart, hopperFullGrams } = known;
  const curing = curingSizesAt(known, stretchStart);
  const fit = curing === null ? 0 : shareOfSizes([curing], hopperFullGrams);
  const left = curing === null ? remainingGrams(known, corrected(known, stretchStart, grams)) : 0;
  const place = { id: period.events[stretchStart - 1]?.id ?? null, afterIndex: stretchStart - 2 };
  return [{ kind: 'empty-was-none', ...place, grams, fit, remainingGrams: left }];
}
