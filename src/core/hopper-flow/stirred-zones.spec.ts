import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { describeWithChecks, readChecks } from '../../../test/support/checks.js';
import { flowFirstInFirstOut } from './first-in-first-out.js';
import { exactMass, type HopperEvent } from './hopper-event.js';
import { likelySourcesOf, type LikelyFlow } from './likely-flow.js';
import { flowPourAndDrain } from './pour-and-drain.js';
import { gramsOfLayer } from './residence-time.js';
import { flowThroughStirredZones, type StirredZones } from './stirred-zones.js';

const addition = (id: string, grams: number): HopperEvent => ({ kind: 'addition', id, mass: exactMass(grams) });
const exit = (id: string, grams: number): HopperEvent => ({ kind: 'exit', id, mass: exactMass(grams) });
const period = (...events: readonly HopperEvent[]) => ({ capacityGrams: null, events });
const sum = (shares: readonly { readonly grams: number }[]) => shares.reduce((total, { grams }) => total + grams, 0);
const gramsIn = (flow: LikelyFlow, exitId: string, additionId: string) =>
  flow.compositionOf(exitId).sources.find((source) => source.additionId === additionId)?.grams ?? 0;

/** Tips and packs in any order: hoppers that are full, run down, run out, and packs that come out of nothing. */
const anyPeriod = fc
  .array(fc.record({ isTip: fc.boolean(), grams: fc.nat(3000) }), { maxLength: 40 })
  .map((drawn) => drawn.map(({ isTip, grams }, id) => (isTip ? addition : exit)(String(id), grams)));
const anyZones = fc.record({
  zoneCount: fc.integer({ min: 1, max: 12 }),
  holdUpGrams: fc.double({ min: 1, max: 6000, noNaN: true }),
});

function expectClosures(flow: LikelyFlow, events: readonly HopperEvent[]): void {
  const poured = events.filter((event) => event.kind === 'addition');
  const rounding = 1e-12 * poured.reduce((total, { mass }) => total + mass.grams, 1);
  const found = new Map(flow.inside.map(({ additionId, grams }) => [additionId, grams]));
  for (const { grams, sources, unexplainedGrams } of flow.exitIds.map(flow.compositionOf)) {
    expect(Math.abs(sum(sources) + unexplainedGrams - grams)).toBeLessThan(rounding);
    expect(sources.every((source) => source.grams > 0)).toBe(true);
    for (const source of sources) found.set(source.additionId, (found.get(source.additionId) ?? 0) + source.grams);
  }
  for (const { id, mass } of poured) expect(Math.abs((found.get(id) ?? 0) - mass.grams)).toBeLessThan(rounding);
}

/** Ten lines that know no closed form: each hundredth of a gram that leaves moves as much through every full zone. */
function stepThrough(events: readonly HopperEvent[], { zoneCount, holdUpGrams }: StirredZones, step = 0.01) {
  const zoneGrams = holdUpGrams / zoneCount;
  const stack: Map<string, number>[] = [];
  const packed = new Map<string, Map<string, number>>();
  const size = (part: ReadonlyMap<string, number>) => [...part.values()].reduce((total, grams) => total + grams, 0);
  const move = (from: Map<string, number>, to: Map<string, number>, share: number) => {
    for (const [id, grams] of from) {
      from.set(id, grams * (1 - share));
      to.set(id, (to.get(id) ?? 0) + grams * share);
    }
  };
  const pour = (id: string, grams: number) => {
    for (let left = grams; left > 1e-9;) {
      const top = stack.at(-1);
      const isOpen = top !== undefined && stack.length <= zoneCount && size(top) < zoneGrams - 1e-9;
      const part = isOpen ? top : new Map<string, number>();
      if (!isOpen) stack.push(part);
      const taken = stack.length > zoneCount ? left : Math.min(left, zoneGrams - size(part));
      part.set(id, (part.get(id) ?? 0) + taken);
      left -= taken;
    }
  };
  const draw = (into: Map<string, number>) => {
    for (let zone = 0; zone < Math.min(zoneCount, stack.length); zone += 1) {
      const [part, below] = [stack[zone]!, stack[zone - 1] ?? into];
      move(part, below, Math.min(1, step / size(part)));
    }
    const next = stack[zoneCount];
    if (next !== undefined) move(next, stack[zoneCount - 1]!, Math.min(1, step / size(next)));
    const emptied = stack.findIndex((part) => size(part) < step / 2);
    if (emptied >= 0) stack.splice(emptied, 1);
  };
  for (const event of events) {
    if (event.kind === 'addition') pour(event.id, event.mass.grams);
    if (event.kind !== 'exit') continue;
    const into = new Map<string, number>();
    packed.set(event.id, into);
    const steps = Math.round(
      Math.min(
        event.mass.grams,
        stack.reduce((total, part) => total + size(part), 0),
      ) / step,
    );
    for (let done = 0; done < steps; done += 1) draw(into);
  }
  return packed;
}

describe('stirred zones in series', () => {
  it('mix a bag into the heel as it follows, and keep the rest in order above', () => {
    const flow = flowThroughStirredZones(period(addition('heel', 500), addition('A', 1000), exit('pallet', 1000)), {
      zoneCount: 1,
      holdUpGrams: 500,
    });
    expect(gramsIn(flow, 'pallet', 'heel')).toBeCloseTo(500 * (1 - Math.exp(-2)), 9);
    expect(gramsIn(flow, 'pallet', 'A')).toBeCloseTo(1000 - 500 * (1 - Math.exp(-2)), 9);
    expect(flow.inside.map(({ additionId }) => additionId)).toEqual(['heel', 'A']);
    expect(sum(flow.inside)).toBeCloseTo(500, 9);
  });

  it('let nothing out before it was poured', () => {
    const events = [addition('A', 1000), exit('before', 900), addition('B', 1000), exit('after', 100)];
    const flow = flowThroughStirredZones(period(...events), { zoneCount: 3, holdUpGrams: 900 });
    expect(flow.compositionOf('before').sources.map(({ additionId }) => additionId)).toEqual(['A']);
    expect(gramsIn(flow, 'after', 'B')).toBeGreaterThan(0);
  });

  it('name what comes out of nothing, and do not let a later bag pay for it', () => {
    const events = [addition('A', 100), exit('too much', 130), addition('B', 50), exit('after', 50)];
    const flow = flowThroughStirredZones(period(...events), { zoneCount: 2, holdUpGrams: 60 });
    expect(flow.compositionOf('too much').unexplainedGrams).toBe(30);
    expect(flow.compositionOf('after').sources.map(({ additionId }) => additionId)).toEqual(['B']);
    expect(gramsIn(flow, 'after', 'B')).toBeCloseTo(50, 9);
    expect(flow.inside).toEqual([]);
  });

  it('close both ways for thousands of hopper periods: each pack is explained in full, each bag found again', () => {
    fc.assert(
      fc.property(anyPeriod, anyZones, (events, zones) => {
        expectClosures(flowThroughStirredZones(period(...events), zones), events);
      }),
      { numRuns: 3000, seed: 20261103 },
    );
  });

  it('close for a long period of many zones too', () => {
    const events = Array.from({ length: 60 }, (_, bag) => [
      addition(`bag ${bag}`, 1_000_000),
      ...Array.from({ length: 10 }, (__, pack) => exit(`${bag}/${pack}`, 99_000 + ((bag * 7 + pack * 13) % 2000))),
    ]).flat();
    expectClosures(flowThroughStirredZones(period(...events), { zoneCount: 50, holdUpGrams: 400_000 }), events);
  });

  it('are the residence-time theory with a constant hold-up as long as the zones are full', () => {
    const bags = fc.array(fc.integer({ min: 1, max: 3000 }), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(bags, fc.integer({ min: 1, max: 20 }), fc.integer({ min: 1, max: 400 }), (sizes, zoneCount, pack) => {
        const holdUpGrams = 500;
        const total = sizes.reduce((inAll, grams) => inAll + grams, 0);
        const packs = Array.from({ length: Math.floor(total / pack) }, (_, place) => exit(String(place), pack));
        const tips = sizes.map((grams, place) => addition(`bag ${place}`, grams));
        const flow = flowThroughStirredZones(period(addition('heel', 500), ...tips, ...packs), {
          zoneCount,
          holdUpGrams,
        });
        const residence = { zoneCount, holdUpGrams, plugGrams: 0 };
        let fromGrams = 0;
        sizes.forEach((grams, bag) => {
          const entered = { fromGrams, toGrams: fromGrams + grams };
          fromGrams += grams;
          const last = packs.length - 1;
          for (const place of last < 0 ? [] : [0, last >> 1, last]) {
            const left = { fromGrams: place * pack, toGrams: (place + 1) * pack };
            const found = gramsIn(flow, String(place), `bag ${bag}`);
            expect(Math.abs(found - gramsOfLayer(residence, entered, left))).toBeLessThan(1e-9);
          }
        });
      }),
      { numRuns: 300, seed: 20261104 },
    );
  });

  it('agree with a hopper that moves in steps of a hundredth of a gram and knows no formula', () => {
    const small = fc
      .array(fc.record({ isTip: fc.boolean(), grams: fc.integer({ min: 1, max: 60 }) }), {
        minLength: 2,
        maxLength: 12,
      })
      .map((drawn) => drawn.map(({ isTip, grams }, id) => (isTip ? addition : exit)(String(id), grams)));
    const zones = fc.record({
      zoneCount: fc.integer({ min: 1, max: 5 }),
      holdUpGrams: fc.integer({ min: 20, max: 150 }),
    });
    fc.assert(
      fc.property(small, zones, (events, stirred) => {
        const flow = flowThroughStirredZones(period(addition('heel', 40), ...events), stirred);
        for (const [exitId, packed] of stepThrough([addition('heel', 40), ...events], stirred)) {
          for (const [additionId, grams] of packed) {
            expect(Math.abs(gramsIn(flow, exitId, additionId) - grams)).toBeLessThan(0.05);
          }
        }
      }),
      { numRuns: 150, seed: 20261105 },
    );
  });

  it('become first in, first out where the hold-up is next to nothing', () => {
    fc.assert(
      fc.property(anyPeriod, (events) => {
        const [fifo, zones] = [
          flowFirstInFirstOut(period(...events)),
          flowThroughStirredZones(period(...events), { zoneCount: 3, holdUpGrams: 0.001 }),
        ];
        for (const exitId of fifo.exitIds) {
          for (const { additionId, grams } of fifo.compositionOf(exitId).sources) {
            expect(Math.abs(gramsIn(zones, exitId, additionId) - grams)).toBeLessThan(0.01);
          }
        }
      }),
      { numRuns: 200, seed: 20261106 },
    );
  });

  it('refuse zones that make no sense', () => {
    for (const zoneCount of [0, 1.5, 201, NaN]) {
      expect(() => flowThroughStirredZones(period(), { zoneCount, holdUpGrams: 1 })).toThrow(RangeError);
    }
    for (const holdUpGrams of [0, -1, NaN]) {
      expect(() => flowThroughStirredZones(period(), { zoneCount: 1, holdUpGrams })).toThrow(RangeError);
    }
    const flow = flowThroughStirredZones(period(), { zoneCount: 1, holdUpGrams: 1 });
    expect(() => flow.compositionOf('pallet')).toThrow(RangeError);
  });
});

describe('pour and drain', () => {
  it('changes what leaves only at a pour', () => {
    const events = [addition('heel', 300), addition('A', 1000), exit('1', 10), exit('2', 900), addition('B', 1000)];
    const flow = flowPourAndDrain(period(...events, exit('3', 10)));
    const shareOfA = (exitId: string) => gramsIn(flow, exitId, 'A') / flow.compositionOf(exitId).grams;
    expect(shareOfA('1')).toBeCloseTo(1000 / 1300, 14);
    expect(shareOfA('2')).toBeCloseTo(1000 / 1300, 14);
    expect(shareOfA('3')).toBeCloseTo(((1000 / 1300) * 390) / 1390, 14);
  });

  it('closes both ways for thousands of hopper periods', () => {
    fc.assert(
      fc.property(anyPeriod, (events) => {
        expectClosures(flowPourAndDrain(period(...events)), events);
      }),
      { numRuns: 3000, seed: 20261107 },
    );
  });

  it('is what the plain rule says: an exit takes the same share of everything inside', () => {
    fc.assert(
      fc.property(anyPeriod, (events) => {
        const flow = flowPourAndDrain(period(...events));
        const inside = new Map<string, number>();
        for (const event of events) {
          if (event.kind === 'addition') inside.set(event.id, event.mass.grams);
          if (event.kind !== 'exit') continue;
          const level = [...inside.values()].reduce((total, grams) => total + grams, 0);
          const share = level === 0 ? 0 : Math.min(1, event.mass.grams / level);
          for (const [id, grams] of inside) {
            expect(Math.abs(gramsIn(flow, event.id, id) - grams * share)).toBeLessThan(1e-8);
            inside.set(id, grams * (1 - share));
          }
        }
      }),
      { numRuns: 500, seed: 20261108 },
    );
  });
});

interface Shares {
  readonly pack: readonly [number, number];
  readonly heel: number;
  readonly A: number;
  readonly B: number;
  readonly C: number;
}
interface GenealogyTests {
  readonly S1_const_holdup_500kg: readonly (Shares & { readonly N: number; readonly M: number })[];
  readonly S1_plug300_plus_CSTR200: readonly Shares[];
  readonly closure_lotA: readonly Readonly<
    Record<'N' | 'out_kg' | 'lotA_in_packs' | 'lotA_in_hopper' | 'sum', number>
  >[];
  readonly dump_drain_mixed_H300_B1000: {
    readonly r: number;
    readonly share_of_bag_in_campaign_k: readonly number[];
    readonly sum_first8: number;
    readonly kg_of_bag: readonly number[];
  };
  readonly dump_drain_k_for_eps: Readonly<Record<string, number>>;
  readonly foreign_body_prob_lotA_pack: readonly {
    readonly N: number;
    readonly pack: readonly [number, number];
    readonly P: number;
  }[];
  readonly pallets_touched_by_lotB: readonly {
    readonly N: number;
    readonly eps: number;
    readonly pallets: readonly number[];
    readonly shares: readonly number[];
  }[];
}

describeWithChecks('the pass against quality/genealogy_tests.json, to the last digit printed', () => {
  const checks = () => readChecks<GenealogyTests>('quality/genealogy_tests.json');
  /** 500 kg of heel, lots of 1000 kg, and the packs; all is in the hopper or hangs above it when the packs begin. */
  const scenario = (zones: StirredZones, packs: readonly number[], lots = ['A', 'B', 'C', 'later']) =>
    flowThroughStirredZones(
      period(
        addition('heel', 500_000),
        ...lots.map((lot) => addition(lot, 1_000_000)),
        ...packs.slice(1).map((to, place) => exit(String(place), (to - (packs[place] ?? 0)) * 1000)),
      ),
      zones,
    );

  function expectShares(zones: StirredZones, { pack: [from, to], ...shares }: Shares): void {
    const flow = scenario(zones, [0, from, to]);
    for (const lot of ['heel', 'A', 'B', 'C'] as const) {
      expect(gramsIn(flow, '1', lot) / ((to - from) * 1000)).toBeCloseTo(shares[lot], 6);
    }
  }

  it('shares of the heel and three lots in packs', () => {
    const { S1_const_holdup_500kg: mixed, S1_plug300_plus_CSTR200: both } = checks();
    expect([mixed.length, both.length]).toEqual([50, 12]);
    for (const row of mixed) expectShares({ zoneCount: row.N, holdUpGrams: row.M * 1000 }, row);
    // The plug part is what waits above: 300 kg of the 500 kg of heel.
    for (const row of both) expectShares({ zoneCount: 1, holdUpGrams: 200_000 }, row);
  });

  it('lot A, packed and still inside, and both together the lot', () => {
    const lots = ['A', ...Array.from({ length: 12 }, (_, place) => `later ${place}`)];
    for (const { N, out_kg: out, lotA_in_packs: packed, lotA_in_hopper: inside, sum: both } of checks().closure_lotA) {
      const flow = scenario({ zoneCount: N, holdUpGrams: 500_000 }, [0, out], lots);
      const stillInside = flow.inside.find(({ additionId }) => additionId === 'A')?.grams ?? 0;
      expect(gramsIn(flow, '0', 'A') / 1000).toBeCloseTo(packed, 6);
      expect(stillInside / 1000).toBeCloseTo(inside, 6);
      expect((gramsIn(flow, '0', 'A') + stillInside) / 1000).toBeCloseTo(both, 9);
    }
  });

  it('pour and drain: a bag of 1000 kg on a heel of 300 kg, in its own packs and in those after later bags', () => {
    const {
      share_of_bag_in_campaign_k: shares,
      sum_first8: ofEight,
      kg_of_bag: kilograms,
      r,
    } = checks().dump_drain_mixed_H300_B1000;
    const bags = Array.from({ length: 8 }, (_, k) => [
      addition(`bag ${k}`, 1_000_000),
      exit(String(k), 1_000_000),
    ]).flat();
    const flow = flowPourAndDrain(period(addition('heel', 300_000), ...bags));
    const found = shares.map((_, k) => gramsIn(flow, String(k), 'bag 0') / 1e6);
    found.forEach((share, k) => {
      expect(share).toBeCloseTo(shares[k] ?? NaN, 6);
    });
    kilograms.forEach((kg, k) => {
      expect((found[k] ?? 0) * 1000).toBeCloseTo(kg, 4);
    });
    expect(found.reduce((total, share) => total + share, 0)).toBeCloseTo(ofEight, 8);
    expect(gramsIn(flow, '0', 'heel') / 1e6).toBeCloseTo(r, 6);
    for (const [eps, k] of Object.entries(checks().dump_drain_k_for_eps)) {
      expect(found.findIndex((share) => share < Number(eps))).toBe(k);
    }
  });

  it('the chance that a single foreign body of lot A is in a pack: the share of the lot that is in it', () => {
    for (const { N, pack, P } of checks().foreign_body_prob_lotA_pack) {
      const flow = scenario({ zoneCount: N, holdUpGrams: 500_000 }, [0, ...pack]);
      expect(gramsIn(flow, '1', 'A') / 1_000_000).toBeCloseTo(P, 8);
    }
  });

  it('the pallets that hold more of lot B than a threshold', () => {
    const rows = checks().pallets_touched_by_lotB;
    expect(rows).toHaveLength(12);
    const lots = ['A', 'B', ...Array.from({ length: 12 }, (_, place) => `later ${place}`)];
    const edges = Array.from({ length: 12 }, (_, pallet) => pallet * 1000);
    for (const { N, eps, pallets, shares } of rows) {
      const flow = scenario({ zoneCount: N, holdUpGrams: 500_000 }, edges, lots);
      const found = edges.slice(1).map((_, pallet) => gramsIn(flow, String(pallet), 'B') / 1_000_000);
      shares.forEach((share, pallet) => {
        expect(found[pallet]).toBeCloseTo(share, 6);
      });
      // The list goes by shares as printed, with six digits.
      const touched = found.flatMap((share, pallet) => (Number(share.toFixed(6)) > eps ? [pallet * 1000] : []));
      expect(touched).toEqual(pallets);
    }
  });

  it('the same over several packs together', () => {
    const zones = { zoneCount: 3, holdUpGrams: 500_000 };
    const [whole, parts] = [scenario(zones, [0, 2000]), scenario(zones, [0, 700, 1000, 1990, 2000])];
    const together = likelySourcesOf(parts, parts.exitIds).sources;
    for (const { additionId, grams } of together) expect(gramsIn(whole, '0', additionId)).toBeCloseTo(grams, 6);
    expect(sum(together)).toBeCloseTo(2_000_000, 6);
  });
});
