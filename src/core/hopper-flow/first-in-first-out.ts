import { assertHopperPeriod, type HopperPeriod } from './hopper-event.js';
import { findExit, type ExitComposition, type LikelyFlow, type SourceShare } from './likely-flow.js';

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
  const layers: { additionId: string; grams: number }[] = [];
  const additionIds = new Set<string>();
  const exits: ExitComposition[] = [];
  let oldest = 0;
  const draw = (exitId: string, grams: number): ExitComposition => {
    const sources: SourceShare[] = [];
    let missing = grams;
    for (let layer = layers[oldest]; missing > 0 && layer !== undefined; layer = layers[oldest]) {
      const taken = Math.min(missing, layer.grams);
      if (taken > 0) sources.push({ additionId: layer.additionId, grams: taken });
      layer.grams -= taken;
      missing -= taken;
      if (layer.grams === 0) oldest += 1;
    }
    return { exitId, grams, sources, unexplainedGrams: missing };
  };
  for (const event of period.events) {
    if (event.kind === 'addition') {
      layers.push({ additionId: event.id, grams: event.mass.grams });
      additionIds.add(event.id);
    } else if (event.kind === 'exit') exits.push(draw(event.id, event.mass.grams));
  }
  const inside = layers.slice(oldest).filter(({ grams }) => grams > 0);
  return { additionIds, exitIds: exits.map(({ exitId }) => exitId), compositionOf: findExit(exits), inside };
}
