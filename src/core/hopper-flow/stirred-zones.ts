import { gramsByAddition, mixBlends, type Blend, type BlendPart } from './blend.js';
import { assertHopperPeriod, type HopperPeriod } from './hopper-event.js';
import { findExit, type ExitComposition, type LikelyFlow, type SourceShare } from './likely-flow.js';
import type { Stretch } from './residence-time.js';
import { outflowOfStage, waitingAfter, zonesAfter, type FeedLayer, type StirredStage } from './stirred-stage.js';

/** Equal stirred zones one below the other at the outlet. */
export interface StirredZones {
  /** Whole, 1 to 200: 200 zones spread a bag over a fourteenth of the hold-up, and more are first in first out. */
  readonly zoneCount: number;
  /** What all zones hold together when they are full; above 0. What lies above them waits in order. */
  readonly holdUpGrams: number;
}

/** More zones are not told from first in, first out by any trial; own choice, no source. */
export const mostZones = 200;

interface Drawn extends Stretch {
  readonly stage: StirredStage;
}

/**
 * Stirred zones in series at the outlet, below what waits in order.
 *
 * The zones stand at their places and each holds hold-up/N grams. The product fills them from the outlet up; what is
 * above the topmost waits and follows in order as fast as packs leave (the plug part). While all are full this is the
 * residence-time theory with a constant hold-up, exactly. When what waits has gone, the topmost full zone stops being
 * stirred, drains as it is and feeds those below; a bag poured then mixes with what is left in that zone, fills it up and
 * goes on to the next. So nothing leaves before it was poured, one zone that is never full is pour and drain, and very
 * many zones are first in, first out.
 *
 * Recorded masses, not their limits; levels seen change nothing. What leaves beyond all that is inside is
 * `unexplainedGrams`, and stays so.
 * @param period in the likely order (`orderLikely`)
 * @returns exact means over each exit, up to rounding: an exit's sources sum to it, and an addition's grams over all
 * exits and inside to the addition, within 10⁻¹² of the period's grams
 * @throws RangeError when a mass is not whole grams in order, an id stands twice, or the zones make no sense
 * @see quality.md section 4.3; docs/decisions, how a hopper mixes
 * @example
 * flowThroughStirredZones({ capacityGrams: null, events: [
 *   { kind: 'addition', id: 'heel', mass: exactMass(500) }, { kind: 'addition', id: 'A', mass: exactMass(1000) },
 *   { kind: 'exit', id: 'pallet', mass: exactMass(1000) } ] }, { zoneCount: 1, holdUpGrams: 500 })
 *   .compositionOf('pallet').sources // [{ additionId: 'heel', grams: 432.33… }, { additionId: 'A', grams: 567.66… }]
 */
export function flowThroughStirredZones(period: HopperPeriod, zones: StirredZones): LikelyFlow {
  if (!Number.isInteger(zones.zoneCount) || zones.zoneCount < 1 || zones.zoneCount > mostZones) {
    throw new RangeError(`The number of zones must be whole, 1 to ${mostZones}, not ${zones.zoneCount}`);
  }
  if (!(zones.holdUpGrams > 0)) throw new RangeError(`A hold-up of ${zones.holdUpGrams} g makes no sense`);
  assertHopperPeriod(period);
  const hopper = new StirredHopper(zones);
  const additionIds: string[] = [];
  const exits: { exitId: string; grams: number; drawn: readonly Drawn[]; unexplainedGrams: number }[] = [];
  for (const event of period.events) {
    if (event.kind === 'addition') {
      hopper.pour(new Map([[additionIds.length, 1]]), event.mass.grams);
      additionIds.push(event.id);
    } else if (event.kind === 'exit') {
      const { grams } = event.mass;
      exits.push({ exitId: event.id, grams, ...hopper.draw(grams) });
    }
  }
  const named = (parts: readonly BlendPart[]) => nameSources(additionIds, parts);
  const find = findExit(exits);
  const compositionOf = (exitId: string): ExitComposition => {
    const { grams, drawn, unexplainedGrams } = find(exitId);
    const sources = named(drawn.flatMap((stretch) => outflowOfStage(stretch.stage, stretch)));
    return { exitId, grams, sources, unexplainedGrams };
  };
  return {
    additionIds: new Set(additionIds),
    exitIds: exits.map(({ exitId }) => exitId),
    compositionOf,
    inside: named(hopper.inside()),
  };
}

function nameSources(additionIds: readonly string[], parts: readonly BlendPart[]): readonly SourceShare[] {
  return Array.from(gramsByAddition(parts), ([place, grams]) => ({ additionId: additionIds[place] ?? '', grams }));
}

/** The hopper while its period is gone through. */
class StirredHopper {
  readonly #zoneCount: number;
  readonly #zoneGrams: number;
  #stage: StirredStage;
  /** From the stage, since its start. */
  #drawnGrams = 0;
  /** Whole grams: the truth about how much is inside, free of rounding. */
  #levelGrams = 0;

  constructor({ zoneCount, holdUpGrams }: StirredZones) {
    this.#zoneCount = zoneCount;
    this.#zoneGrams = holdUpGrams / zoneCount;
    this.#stage = { zoneGrams: this.#zoneGrams, zones: [], feed: [] };
  }

  pour(blend: Blend, grams: number): void {
    if (grams === 0) return;
    this.#levelGrams += grams;
    if (this.#stage.zones.length === this.#zoneCount) {
      const fromGrams = this.#stage.feed.at(-1)?.toGrams ?? 0;
      this.#stage.feed.push({ fromGrams, toGrams: fromGrams + grams, blend });
      return;
    }
    this.#fillZones(blend, grams);
  }

  /** Mixes into what is left of the zone that drains, and fills it and those above. */
  #fillZones(blend: Blend, grams: number): void {
    const rest = waitingAfter(this.#stage, this.#drawnGrams);
    const restGrams = rest.reduce((sum, part) => sum + part.grams, 0);
    const zones = [...zonesAfter(this.#stage, this.#drawnGrams)];
    let topmost = rest;
    let roomGrams = Math.max(0, this.#zoneGrams - restGrams);
    let left = grams;
    while (zones.length < this.#zoneCount && left >= roomGrams) {
      zones.push(mixBlends([...topmost, { blend, grams: roomGrams }]));
      left -= roomGrams;
      topmost = [];
      roomGrams = this.#zoneGrams;
    }
    const waiting = [...topmost, { blend, grams: left }];
    this.#startStage(zones, mixBlends(waiting), left + topmost.reduce((sum, part) => sum + part.grams, 0));
  }

  draw(grams: number): { readonly drawn: readonly Drawn[]; readonly unexplainedGrams: number } {
    const explained = Math.min(grams, this.#levelGrams);
    const drawn: Drawn[] = [];
    let left = explained;
    while (left > 0) {
      const waitingGrams = (this.#stage.feed.at(-1)?.toGrams ?? 0) - this.#drawnGrams;
      const taken = Math.min(left, waitingGrams);
      if (taken > 0) {
        drawn.push({ stage: this.#stage, fromGrams: this.#drawnGrams, toGrams: this.#drawnGrams + taken });
        this.#drawnGrams += taken;
        left -= taken;
      } else if (!this.#drainTopmost()) break;
    }
    this.#levelGrams -= explained;
    if (this.#levelGrams === 0) this.#startStage([], new Map(), 0);
    return { drawn, unexplainedGrams: grams - explained };
  }

  /** The topmost full zone drains as it is and feeds those below it; false where there is none. */
  #drainTopmost(): boolean {
    const zones = zonesAfter(this.#stage, this.#drawnGrams);
    const topmost = zones.at(-1);
    if (topmost === undefined) return false;
    this.#startStage(zones.slice(0, -1), topmost, this.#zoneGrams);
    return true;
  }

  inside(): readonly BlendPart[] {
    const inZones = zonesAfter(this.#stage, this.#drawnGrams).map((blend) => ({ blend, grams: this.#zoneGrams }));
    return [...inZones, ...waitingAfter(this.#stage, this.#drawnGrams)];
  }

  #startStage(zones: readonly Blend[], blend: Blend, feedGrams: number): void {
    const feed: FeedLayer[] = feedGrams > 0 ? [{ fromGrams: 0, toGrams: feedGrams, blend }] : [];
    this.#stage = { zoneGrams: this.#zoneGrams, zones, feed };
    this.#drawnGrams = 0;
  }
}
