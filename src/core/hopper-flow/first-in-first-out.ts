import { assertHopperPeriod, type HopperPeriod } from './hopper-event.js';

export interface SourceShare {
  readonly additionId: string;
  readonly grams: number;
}

export interface TargetShare {
  readonly exitId: string;
  readonly grams: number;
}

/** What one exit is made of: the sources, oldest first, and what nothing poured so far explains, sum to its grams. */
export interface ExitComposition {
  readonly exitId: string;
  readonly grams: number;
  readonly sources: readonly SourceShare[];
  readonly unexplainedGrams: number;
}

/** A period by first in, first out: every gram poured is in one exit or still inside. */
export interface FifoFlow {
  readonly exits: readonly ExitComposition[];
  /** What is left at the end, oldest first. */
  readonly inside: readonly SourceShare[];
  readonly exitById: ReadonlyMap<string, ExitComposition>;
  /** Where each addition went, in the order of the exits; an addition of which nothing left has an empty list. */
  readonly targetsByAdditionId: ReadonlyMap<string, readonly TargetShare[]>;
}

/**
 * First in, first out, by cumulative grams and never by minutes: gram number n out is gram number n in, intervals half
 * open. A heel or residue is the period's first addition and shifts all that follows. Recorded masses, not their
 * limits; levels seen change nothing. What leaves beyond all that was poured until then is `unexplainedGrams`, and
 * stays so: a later addition does not pay for it.
 * @param period in the likely order (`orderLikely`)
 * @returns shares of 0 g are not listed; an exit of 0 g has no sources
 * @throws RangeError when a mass is not whole grams in order or an id stands twice
 * @see quality.md section 4.2 and 4.3 (plug flow), `checks/quality/genealogy_tests.json`
 * @example
 * flowFirstInFirstOut({ capacityGrams: null, events: [
 *   { kind: 'addition', id: 'heel', mass: exactMass(500) }, { kind: 'addition', id: 'A', mass: exactMass(1000) },
 *   { kind: 'exit', id: 'pallet', mass: exactMass(1000) } ] })
 *   .exits[0].sources // [{ additionId: 'heel', grams: 500 }, { additionId: 'A', grams: 500 }]
 */
export function flowFirstInFirstOut(period: HopperPeriod): FifoFlow {
  assertHopperPeriod(period);
  const layers: { additionId: string; grams: number }[] = [];
  const exits: ExitComposition[] = [];
  const targetsByAdditionId = new Map<string, TargetShare[]>();
  let oldest = 0;
  const draw = (exitId: string, grams: number): ExitComposition => {
    const sources: SourceShare[] = [];
    let missing = grams;
    for (let layer = layers[oldest]; missing > 0 && layer !== undefined; layer = layers[oldest]) {
      const taken = Math.min(missing, layer.grams);
      if (taken > 0) {
        sources.push({ additionId: layer.additionId, grams: taken });
        targetsByAdditionId.get(layer.additionId)?.push({ exitId, grams: taken });
      }
      layer.grams -= taken;
      missing -= taken;
      if (layer.grams === 0) oldest += 1;
    }
    return { exitId, grams, sources, unexplainedGrams: missing };
  };
  for (const event of period.events) {
    if (event.kind === 'addition') {
      layers.push({ additionId: event.id, grams: event.mass.grams });
      targetsByAdditionId.set(event.id, []);
    } else if (event.kind === 'exit') exits.push(draw(event.id, event.mass.grams));
  }
  const inside = layers.slice(oldest).filter(({ grams }) => grams > 0);
  return { exits, inside, exitById: new Map(exits.map((exit) => [exit.exitId, exit])), targetsByAdditionId };
}

/**
 * What a set of exits is made of, together.
 * @param exitIds each at most once; none at all gives no sources
 * @returns the sources in the order in which they left first, and what nothing explains; together they sum to the
 * exits' grams
 * @throws RangeError when an exit is not in the flow
 * @example
 * likelySourcesOf(flow, ['pallet']) // { sources: [{ additionId: 'heel', grams: 500 }, …], unexplainedGrams: 0 }
 */
export function likelySourcesOf(
  flow: FifoFlow,
  exitIds: Iterable<string>,
): { readonly sources: readonly SourceShare[]; readonly unexplainedGrams: number } {
  const gramsByAdditionId = new Map<string, number>();
  let unexplainedGrams = 0;
  for (const exitId of exitIds) {
    const exit = flow.exitById.get(exitId);
    if (exit === undefined) throw new RangeError(`exit ${exitId} is not in the flow`);
    unexplainedGrams += exit.unexplainedGrams;
    for (const { additionId, grams } of exit.sources) addTo(gramsByAdditionId, additionId, grams);
  }
  return { sources: Array.from(gramsByAdditionId, ([additionId, grams]) => ({ additionId, grams })), unexplainedGrams };
}

/**
 * Where a set of additions went, together; what is not listed is still inside.
 * @param additionIds each at most once; none at all gives no targets
 * @returns the exits in the order in which they were met, addition by addition
 * @throws RangeError when an addition is not in the flow
 * @example likelyTargetsOf(flow, ['A']) // [{ exitId: 'pallet', grams: 500 }]
 */
export function likelyTargetsOf(flow: FifoFlow, additionIds: Iterable<string>): readonly TargetShare[] {
  const gramsByExitId = new Map<string, number>();
  for (const additionId of additionIds) {
    const targets = flow.targetsByAdditionId.get(additionId);
    if (targets === undefined) throw new RangeError(`addition ${additionId} is not in the flow`);
    for (const { exitId, grams } of targets) addTo(gramsByExitId, exitId, grams);
  }
  return Array.from(gramsByExitId, ([exitId, grams]) => ({ exitId, grams }));
}

function addTo(gramsById: Map<string, number>, id: string, grams: number): void {
  gramsById.set(id, (gramsById.get(id) ?? 0) + grams);
}
