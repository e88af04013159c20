import { gammaTerm, wholeIncompleteGammas, type IncompleteGamma } from '../statistics/incomplete-gamma.js';
import { mixBlends, smallestShare, type Blend, type BlendPart } from './blend.js';
import { lingeringGrams, outflowOfLayer, type Stretch } from './residence-time.js';

/** A layer that waits above the full zones, on the axis of grams drawn in this stage. */
export interface FeedLayer extends Stretch {
  readonly blend: Blend;
}

/**
 * A hopper between two changes of its number of full zones: full zones of equal size above the outlet, and above them
 * layers that follow in order as fast as packs leave. Layers may be put on top; everything else starts a new stage.
 */
export interface StirredStage {
  readonly zoneGrams: number;
  /** What the zones held at the start; the one at the outlet first. */
  readonly zones: readonly Blend[];
  readonly feed: FeedLayer[];
}

/**
 * What leaves a stage in a stretch, exactly.
 *
 * What stood in the k-th zone above the outlet has k steps to go: h·(P(k, q/h) − P(k, p/h)) of it leaves in [p, q). A
 * layer of the feed passes all zones (`gramsOfLayer`). Together it is q − p, because h·ΣP(k, x/h) + G(x) = x.
 *
 * @param left within the feed
 * @returns parts in no particular order, without what is below any rounding
 */
export function outflowOfStage(stage: StirredStage, left: Stretch): readonly BlendPart[] {
  const { zoneGrams, zones, feed } = stage;
  const negligibleGrams = (left.toGrams - left.fromGrams) * smallestShare;
  const parts: BlendPart[] = [];
  const before = wholeIncompleteGammas(zones.length, left.fromGrams / zoneGrams);
  const after = wholeIncompleteGammas(zones.length, left.toGrams / zoneGrams);
  zones.forEach((blend, below) => {
    parts.push({ blend, grams: zoneGrams * rise(before[below], after[below]) });
  });
  const residence = { zoneCount: zones.length, holdUpGrams: zones.length * zoneGrams, plugGrams: 0 };
  for (const layer of feed.toReversed()) {
    if (layer.fromGrams >= left.toGrams) continue;
    parts.push({ blend: layer.blend, grams: outflowOfLayer(residence, layer, left) });
    const older = { fromGrams: 0, toGrams: layer.fromGrams };
    if (layer.fromGrams > left.fromGrams) continue;
    if (zones.length === 0 || lingeringGrams(residence, older, left.fromGrams) <= negligibleGrams) break;
  }
  return parts.filter(({ grams }) => grams > negligibleGrams);
}

/**
 * What the zones hold once so many grams have been drawn from the stage, the one at the outlet first.
 *
 * What stood j zones higher has made exactly j steps with the chance e^−λ λʲ/j!, λ = drawn/h; of the feed a layer [a, b)
 * is h·(P(m, (x − a)/h) − P(m, (x − b)/h)) in the zone that is the m-th from above.
 *
 * @param drawnGrams within the feed
 */
export function zonesAfter(stage: StirredStage, drawnGrams: number): readonly Blend[] {
  const { zoneGrams, zones, feed } = stage;
  if (drawnGrams === 0) return zones;
  const stepShares = zones.map((_, steps) => gammaTerm(steps, drawnGrams / zoneGrams));
  const passed = (edge: number) => wholeIncompleteGammas(zones.length, (drawnGrams - edge) / zoneGrams);
  const entered = feed
    .filter(({ fromGrams }) => fromGrams < drawnGrams)
    .map(({ blend, fromGrams, toGrams }) => {
      return { blend, first: passed(fromGrams), last: passed(Math.min(toGrams, drawnGrams)) };
    });
  return zones.map((_, below) => {
    const fromAbove = zones
      .slice(below)
      .map((blend, steps) => ({ blend, grams: zoneGrams * (stepShares[steps] ?? 0) }));
    const fromTop = zones.length - 1 - below;
    const fromFeed = entered.map(({ blend, first, last }) => {
      return { blend, grams: zoneGrams * rise(last[fromTop], first[fromTop]) };
    });
    return mixBlends([...fromAbove, ...fromFeed]);
  });
}

/** From one share to a later one, of the two forms by the one whose numbers are small, and so its difference true. */
function rise(before: IncompleteGamma | undefined, after: IncompleteGamma | undefined): number {
  if (before === undefined || after === undefined) return 0;
  return Math.max(0, before.lower < 0.5 ? after.lower - before.lower : before.upper - after.upper);
}

/** What waits above the zones once so many grams have been drawn. */
export function waitingAfter(stage: StirredStage, drawnGrams: number): readonly BlendPart[] {
  return stage.feed.flatMap(({ blend, fromGrams, toGrams }) => {
    const grams = toGrams - Math.max(fromGrams, drawnGrams);
    return grams > 0 ? [{ blend, grams }] : [];
  });
}
