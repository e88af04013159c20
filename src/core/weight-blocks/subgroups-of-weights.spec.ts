import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { addHeads, headsOfWeights } from './heads-of-weights.js';
import { firstPacksOf, planSubgroups, subgroupsOf, type Subgroup, type SubgroupPlan } from './subgroups-of-weights.js';
import { noHead, pickWeights, sliceWeights, zeroOrNoHead, type WeightColumns } from './weight-columns.js';
import { someWeights, weightsOf } from './weights.examples.js';

const minute = 6_000;

const subgroupsOfWhole = (columns: WeightColumns, plan: SubgroupPlan): readonly Subgroup[] =>
  subgroupsOf(firstPacksOf(columns), plan);

describe('subgroups of weights', () => {
  it('are the first packs in a row of each interval, rejected ones passed over', () => {
    const rows = Array.from({ length: 60 }, (_, place) => ({
      sequence: place,
      at: place * minute,
      net: 1000 + place,
      isRejected: place === 1,
    }));
    const found = subgroupsOfWhole(weightsOf(rows), { everyMinutes: 15, size: 5 });
    expect(found.map(({ atCentiseconds }) => atCentiseconds / minute)).toEqual([0, 15, 30, 45]);
    // 0, 2, 3, 4, 5; 15 to 19.
    expect(found.map(({ mean }) => mean)).toEqual([1002.8, 1017, 1032, 1047]);
    expect(found.map(({ range, count }) => [range, count])).toEqual([
      [5, 5],
      [4, 5],
      [4, 5],
      [4, 5],
    ]);
  });

  it('leave out an interval that has fewer packs', () => {
    const rows = [0, 1, 2, 15, 30, 31, 32].map((at, sequence) => ({ sequence, at: at * minute, net: 1000 }));
    const found = subgroupsOfWhole(weightsOf(rows), { everyMinutes: 15, size: 3 });
    expect(found.map(({ atCentiseconds }) => atCentiseconds / minute)).toEqual([0, 30]);
  });

  it('stand in the order of time where the clock ran back', () => {
    const rows = [30, 31, 0, 1, 32].map((at, sequence) => ({ sequence, at: at * minute, net: 1000 + at }));
    const found = subgroupsOfWhole(weightsOf(rows), { everyMinutes: 15, size: 2 });
    expect(found.map(({ mean }) => mean)).toEqual([1000.5, 1030.5]);
  });

  it('are as many as people can tell apart, and hold each head alike', () => {
    expect(planSubgroups(8 * 60 * minute, null)).toEqual({ everyMinutes: 15, size: 5 });
    expect(planSubgroups(0, null)).toEqual({ everyMinutes: 5, size: 5 });
    expect(planSubgroups(24 * 60 * minute, 14)).toEqual({ everyMinutes: 60, size: 14 });
    expect(planSubgroups(60 * minute, 2).size).toBe(6);
    expect(planSubgroups(60 * minute, 40).size).toBe(5);
    expect(planSubgroups(1e12, 3)).toEqual({ everyMinutes: 1440, size: 6 });
    const columns = someWeights({ count: 20_000, seed: 3, heads: 'by-turns' });
    const plan = planSubgroups((columns.atCentiseconds.at(-1) ?? 0) - (columns.atCentiseconds[0] ?? 0), 12);
    const found = subgroupsOfWhole(columns, plan);
    expect(found.length).toBeGreaterThan(20);
    expect(found.length).toBeLessThanOrEqual(49);
    expect(() => subgroupsOfWhole(columns, { everyMinutes: 5, size: 1 })).toThrow(RangeError);
  });

  it('are the same however the weights are cut into parts, and in whatever order these come', () => {
    const row = fc.record({ at: fc.nat(200), net: fc.nat(50), isRejected: fc.boolean(), part: fc.nat(3) });
    const plan = fc.record({ everyMinutes: fc.constantFrom(5, 10, 15, 20, 60), size: fc.integer({ min: 2, max: 25 }) });
    fc.assert(
      fc.property(fc.array(row, { maxLength: 200 }), plan, (rows, asked) => {
        const columns = weightsOf(rows.map((one, sequence) => ({ ...one, at: one.at * minute, sequence })));
        const parts = [2, 0, 3, 1].map((part) =>
          Uint32Array.from(rows.flatMap((one, place) => (one.part === part ? [place] : []))),
        );
        const cut = parts.flatMap((places) => firstPacksOf(pickWeights(columns, places)));
        expect(subgroupsOf(cut, asked)).toEqual(subgroupsOfWhole(columns, asked));
        // Written out: the first accepted ones of each interval, by sequence.
        const begins = [...new Set(rows.map(({ at }) => Math.floor(at / asked.everyMinutes)))].sort((a, b) => a - b);
        const means = begins.flatMap((begin) => {
          const own = rows.filter(({ at, isRejected }) => Math.floor(at / asked.everyMinutes) === begin && !isRejected);
          const nets = own.slice(0, asked.size).map(({ net }) => net);
          return nets.length < asked.size ? [] : [nets.reduce((sum, net) => sum + net, 0) / asked.size];
        });
        const found = subgroupsOf(cut, asked).map(({ mean }) => mean);
        expect(found).toHaveLength(means.length);
        found.forEach((mean, place) => {
          expect(mean).toBeCloseTo(means[place] ?? Number.NaN, 9);
        });
      }),
    );
  });
});

describe('heads of weights', () => {
  const limits = { nominalMilligrams: 1_000_000, t1Milligrams: 995_000 };

  it('are summed up as if counted one by one, however the parts are cut', () => {
    const columns = someWeights({ count: 3000, seed: 8, heads: 'any', rejectedShare: 0.1 });
    const { heads: whole } = headsOfWeights([columns], limits);
    const parts = [sliceWeights(columns, 1000, 3000), sliceWeights(columns, 0, 1000)];
    expect(headsOfWeights(parts, limits).heads).toEqual(whole);
    expect(addHeads(parts.map((part) => headsOfWeights([part], limits)))).toEqual(headsOfWeights([columns], limits));
    const head = whole[3]?.head;
    const nets = [...columns.netMilligrams].filter(
      (_, place) => columns.heads?.[place] === head && columns.isRejected?.[place] === 0,
    );
    const errors = nets.map((net) => net - limits.nominalMilligrams);
    expect(whole[3]).toEqual({
      head,
      packCount: nets.length,
      errorSumMilligrams: errors.reduce((sum, error) => sum + error, 0),
      errorSquareSum: errors.reduce((sum, error) => sum + error * error, 0),
      beyondT1Count: nets.filter((net) => net < limits.t1Milligrams).length,
    });
    expect(whole.some(({ beyondT1Count }) => beyondT1Count > 0)).toBe(true);
  });

  it('are none where no head is said', () => {
    expect(headsOfWeights([someWeights({ count: 10, seed: 1 })], limits)).toEqual({
      ...{ heads: [], noHeadPackCount: 10, zeroOrNoHeadPackCount: 0 },
    });
    const named = someWeights({ count: 10, seed: 1, heads: 'by-turns' });
    expect(headsOfWeights([named], { ...limits, t1Milligrams: null }).heads[0]?.beyondT1Count).toBe(0);
  });

  it('count the packs of which none is told apart from head 0, accepted ones only', () => {
    const columns = {
      ...someWeights({ count: 8, seed: 2 }),
      heads: Int16Array.of(0, 0, noHead, 1, noHead, zeroOrNoHead, noHead, zeroOrNoHead),
      isRejected: Uint8Array.of(0, 0, 0, 0, 0, 0, 1, 1),
    };
    const found = headsOfWeights([columns], limits);
    expect(found.heads.map(({ head, packCount }) => [head, packCount])).toEqual([
      [0, 2],
      [1, 1],
    ]);
    expect(found).toMatchObject({ noHeadPackCount: 2, zeroOrNoHeadPackCount: 1 });
  });
});
