import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { describeWithChecks, readChecks } from '../../../test/support/checks.js';
import { flowFirstInFirstOut } from './first-in-first-out.js';
import { exactMass, type HopperEvent } from './hopper-event.js';
import { likelySourcesOf, likelyTargetsOf, type LikelyFlow } from './likely-flow.js';

const addition = (id: string, grams: number): HopperEvent => ({ kind: 'addition', id, mass: exactMass(grams) });
const exit = (id: string, grams: number): HopperEvent => ({ kind: 'exit', id, mass: exactMass(grams) });
const flowOf = (...events: HopperEvent[]) => flowFirstInFirstOut({ capacityGrams: null, events });
const whole = (...ids: readonly string[]) => new Map(ids.map((id) => [id, 1]));
const everyExit = (flow: LikelyFlow) => flow.exitIds.map(flow.compositionOf);
const sum = (shares: readonly { readonly grams: number }[]) => shares.reduce((total, { grams }) => total + grams, 0);

describe('first in, first out', () => {
  it('lets the heel out first, then the oldest bag, to the gram', () => {
    const flow = flowOf(addition('heel', 500), addition('A', 1000), exit('pallet', 1000), exit('next', 499));
    expect(flow.compositionOf('pallet').sources).toEqual([
      { additionId: 'heel', grams: 500 },
      { additionId: 'A', grams: 500 },
    ]);
    expect(flow.inside).toEqual([{ additionId: 'A', grams: 1 }]);
    expect(likelySourcesOf(flow, ['pallet'])).toEqual({
      sources: flow.compositionOf('pallet').sources,
      unexplainedGrams: 0,
    });
    expect(likelyTargetsOf(flow, whole('A'))).toEqual([
      { exitId: 'pallet', grams: 500 },
      { exitId: 'next', grams: 499 },
    ]);
  });

  it('ends an interval where the next begins: a pack made at the seam has nothing of the bag before', () => {
    const flow = flowOf(addition('A', 1000), addition('B', 1000), exit('of A', 1000), exit('of B', 10));
    expect(everyExit(flow).map(({ sources }) => sources)).toEqual([
      [{ additionId: 'A', grams: 1000 }],
      [{ additionId: 'B', grams: 10 }],
    ]);
  });

  it('names what leaves beyond all that was poured, and does not let a later bag pay for it', () => {
    const flow = flowOf(addition('A', 100), exit('too much', 130), addition('B', 50), exit('after', 50));
    expect(flow.compositionOf('too much')).toEqual({
      exitId: 'too much',
      grams: 130,
      sources: [{ additionId: 'A', grams: 100 }],
      unexplainedGrams: 30,
    });
    expect(flow.compositionOf('after').sources).toEqual([{ additionId: 'B', grams: 50 }]);
  });

  it('adds several packs up, and refuses what is not there', () => {
    const flow = flowOf(addition('A', 15), addition('B', 10), exit('1', 10), exit('2', 10), exit('3', 10));
    expect(likelySourcesOf(flow, ['1', '2', '3'])).toEqual({
      sources: [
        { additionId: 'A', grams: 15 },
        { additionId: 'B', grams: 10 },
      ],
      unexplainedGrams: 5,
    });
    expect(likelyTargetsOf(flow, whole('A', 'B'))).toEqual([
      { exitId: '1', grams: 10 },
      { exitId: '2', grams: 10 },
      { exitId: '3', grams: 5 },
    ]);
    expect(() => likelySourcesOf(flow, ['4'])).toThrow(RangeError);
    expect(() => likelyTargetsOf(flow, whole('C'))).toThrow(RangeError);
  });

  it('lists nothing for tips and packs of nothing', () => {
    const flow = flowOf(addition('empty bag', 0), addition('A', 5), exit('none', 0), exit('all', 5));
    expect(everyExit(flow).map(({ sources }) => sources)).toEqual([[], [{ additionId: 'A', grams: 5 }]]);
    expect(likelyTargetsOf(flow, whole('empty bag'))).toEqual([]);
    expect(flow.inside).toEqual([]);
  });

  it('conserves every gram: each pack is explained in full, each bag is in packs or still inside', () => {
    const anyEvent = fc.record({ isTip: fc.boolean(), grams: fc.nat(60) });
    fc.assert(
      fc.property(fc.array(anyEvent, { maxLength: 40 }), (drawn) => {
        const events = drawn.map(({ isTip, grams }, id) => (isTip ? addition : exit)(String(id), grams));
        const flow = flowOf(...events);
        for (const { grams, sources, unexplainedGrams } of everyExit(flow))
          expect(sum(sources) + unexplainedGrams).toBe(grams);
        for (const event of events) {
          if (event.kind !== 'addition') continue;
          const stillInside = flow.inside.find(({ additionId }) => additionId === event.id)?.grams ?? 0;
          expect(sum(likelyTargetsOf(flow, whole(event.id))) + stillInside).toBe(event.mass.grams);
        }
        const all = likelySourcesOf(flow, flow.exitIds);
        expect(sum(all.sources) + all.unexplainedGrams).toBe(sum(everyExit(flow)));
      }),
      { numRuns: 300 },
    );
  });
});

interface PlugRow {
  readonly pack: readonly [number, number];
  readonly heel: number;
  readonly A: number;
  readonly B: number;
  readonly C: number;
}

describeWithChecks('first in, first out against the plug-flow rows of quality/genealogy_tests.json', () => {
  it('agrees in every row: a heel of 500 kg, then three lots of 1000 kg', () => {
    const rows = readChecks<{ S1_plug_500kg: readonly PlugRow[] }>('quality/genealogy_tests.json').S1_plug_500kg;
    expect(rows.length).toBe(10);
    for (const { pack, ...shares } of rows) {
      const [from, to] = pack.map((kg) => kg * 1000) as [number, number];
      const lots = ['A', 'B', 'C'].map((lot) => addition(lot, 1_000_000));
      const flow = flowOf(addition('heel', 500_000), ...lots, exit('before', from), exit('pack', to - from));
      const found = new Map(flow.compositionOf('pack').sources.map(({ additionId, grams }) => [additionId, grams]));
      for (const lot of ['heel', 'A', 'B', 'C'] as const) expect(found.get(lot) ?? 0).toBe(shares[lot] * (to - from));
    }
  });
});
