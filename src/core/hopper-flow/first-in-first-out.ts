import { assertHopperPeriod, type HopperPeriod } from './hopper-event.js';
import type { ExitComposition, LikelyFlow, SourceShare } from './likely-flow.js';

/**
 * First in, first out, by cumulative grams and never by minutes: gram number n out is gram number n in, intervals half
 * open. A heel or residue is the period's first addition and shifts all that follows. Recorded masses, not their
 * limits; levels seen change nothing. What leaves beyond all that was poured until then is `unexplainedGrams`, and
 * stays so: a later addition does not pay for it.
 * @param period in the likely order (`orderLikely`)
 * @returns whole grams; shares of 0 g are not listed; an exit of 0 g has no sources
 * @throws RangeError when a mass is not whole grams in order or an id stands twice
 * @see quality.md section 4.2 and 4.3 (plug flow), `checks/quality/genealogy_tests.json`
 * @example
 * flowFirstInFirstOut({ capacityGrams: null, events: [
 *   { kind: 'addition', id: 'heel', mass: exactMass(500) }, { kind: 'addition', id: 'A', mass: exactMass(1000) },
 *   { kind: 'exit', id: 'pallet', mass: exactMass(1000) } ] })
 *   .compositionOf('pallet').sources // [{ additionId: 'heel', grams: 500 }, { additionId: 'A', grams: 500 }]
 */
export function flowFirstInFirstOut(period: HopperPeriod): LikelyFlow {
  assertHopperPeriod(period);
  const axis = new PouredAxis();
  // Of each exit where its grams begin among all that was poured, and how many of them were there.
  const [placeOfExit, starts, explained, exitGrams] = [new Map<string, number>(), [0], [0], [0]];
  let drawnGrams = 0;
  for (const event of period.events) {
    if (event.kind === 'addition') axis.pour(event.id, event.mass.grams);
    else if (event.kind === 'exit') {
      const place = placeOfExit.size;
      const { grams } = event.mass;
      placeOfExit.set(event.id, place);
      starts[place] = drawnGrams;
      explained[place] = Math.min(grams, axis.pouredGrams - drawnGrams);
      exitGrams[place] = grams;
      drawnGrams += explained[place];
    }
  }
  const compositionOf = (exitId: string): ExitComposition => {
    const place = placeOfExit.get(exitId);
    if (place === undefined) throw new RangeError(`exit ${exitId} is not in the flow`);
    const [start = 0, taken = 0, grams = 0] = [starts[place], explained[place], exitGrams[place]];
    return { exitId, grams, sources: axis.between(start, start + taken), unexplainedGrams: grams - taken };
  };
  return {
    additionIds: new Set(axis.additionIds),
    exitIds: [...placeOfExit.keys()],
    compositionOf,
    inside: axis.between(drawnGrams, axis.pouredGrams),
  };
}

/** The additions of a period one after the other, by cumulative grams. */
class PouredAxis {
  readonly additionIds: string[] = [];
  pouredGrams = 0;
  private readonly begins: number[] = [];

  pour(additionId: string, grams: number): void {
    this.additionIds.push(additionId);
    this.begins.push(this.pouredGrams);
    this.pouredGrams += grams;
  }

  /** What each addition has between two places of the axis, oldest first. */
  between(from: number, until: number): readonly SourceShare[] {
    const sources: SourceShare[] = [];
    for (let place = this.lastBegunBy(from); place < this.begins.length; place += 1) {
      const begin = this.begins[place] ?? 0;
      if (begin >= until) break;
      const grams = Math.min(until, this.begins[place + 1] ?? this.pouredGrams) - Math.max(from, begin);
      const additionId = this.additionIds[place];
      if (grams > 0 && additionId !== undefined) sources.push({ additionId, grams });
    }
    return sources;
  }

  private lastBegunBy(grams: number): number {
    let [low, high] = [0, this.begins.length];
    while (low < high) {
      const middle = (low + high) >>> 1;
      if ((this.begins[middle] ?? 0) <= grams) low = middle + 1;
      else high = middle;
    }
    return Math.max(0, low - 1);
  }
}
