import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { addHistogram, writeHistogram } from './histogram-bytes.js';
import { hoursOfWeights } from './hours-of-weights.js';
import { shiftNets } from './shift-nets.js';
import { joinWeights, pickWeights, sliceWeights, type WeightColumns } from './weight-columns.js';
import {
  addSummaries,
  addSums,
  binMilligramsFor,
  noWeights,
  summariseWeights,
  type Yardstick,
} from './weight-summary.js';
import { someWeights, weightsOf } from './weights.examples.js';

/** 1 kg by Directive 76/211/EEC: T1 985 g, T2 970 g. */
const yardstick: Yardstick = {
  nominalMilligrams: 1_000_000,
  t1Milligrams: 985_000,
  t2Milligrams: 970_000,
  binMilligrams: 1000,
};
const nets = (...netMilligrams: number[]): WeightColumns =>
  weightsOf(netMilligrams.map((net, place) => ({ sequence: place, at: 0, net })));

const anyNets = fc
  .array(
    fc.record({
      net: fc.oneof(fc.integer({ min: -(2 ** 31), max: 2 ** 31 - 1 }), fc.integer({ min: 960_000, max: 1_030_000 })),
      at: fc.integer({ min: 0, max: 1_000_000 }),
      isRejected: fc.boolean(),
    }),
    { minLength: 1, maxLength: 50 },
  )
  .map((rows) => weightsOf(rows.map((row, sequence) => ({ ...row, sequence }))));

describe('the summary of some weights', () => {
  it('of four packs of 1 kg is what one works out by hand', () => {
    const { accepted, rejected } = summariseWeights(nets(1_003_000, 985_000, 984_999, 969_999), yardstick);
    expect(accepted).toMatchObject({
      packCount: 4,
      errorSumMilligrams: 3000 - 15_000 - 15_001 - 30_001,
      errorSquareSum: 3000n ** 2n + 15_000n ** 2n + 15_001n ** 2n + 30_001n ** 2n,
      smallestMilligrams: 969_999,
      largestMilligrams: 1_003_000,
      beyondT1Count: 2,
      beyondT2Count: 1,
    });
    // −30.001 g, −15.001 g, −15 g and 3 g in bins of 1 g.
    expect([469, 484, 485, 503].map((bin) => accepted.histogram[bin])).toEqual([1, 1, 1, 1]);
    expect(rejected.packCount).toBe(0);
  });

  it('counts packs that were pushed out apart, and both together as all that was weighed', () => {
    const columns = { ...nets(1_000_000, 900_000, 1_002_000), isRejected: Uint8Array.of(0, 1, 0) };
    const { accepted, rejected } = summariseWeights(columns, yardstick);
    expect(accepted).toMatchObject({ packCount: 2, errorSumMilligrams: 2000, beyondT2Count: 0 });
    expect(rejected).toMatchObject({ packCount: 1, errorSumMilligrams: -100_000, beyondT1Count: 1, beyondT2Count: 1 });
    expect(addSums(accepted, rejected)).toEqual(summariseWeights({ ...columns, isRejected: null }, yardstick).accepted);
  });

  it('is exact where squares leave the whole numbers of the machine, and counts far bins at the ends', () => {
    const far = [2 ** 31 - 1, -(2 ** 31), 2 ** 25 + 1_000_001];
    const { accepted } = summariseWeights(nets(...far), yardstick);
    expect(accepted.errorSquareSum).toBe(far.reduce((sum, net) => sum + BigInt(net - 1_000_000) ** 2n, 0n));
    expect([accepted.histogram[0], accepted.histogram[999]]).toEqual([1, 2]);
    const many = summariseWeights(nets(...Array.from({ length: 20 }, () => 2 ** 25)), yardstick).accepted;
    expect(many.errorSquareSum).toBe(20n * BigInt(2 ** 25 - 1_000_000) ** 2n);
  });

  it('counts no pack as short where no rule says how short it may be', () => {
    const without = { ...yardstick, t1Milligrams: null, t2Milligrams: null };
    expect(summariseWeights(nets(-(2 ** 31)), without).accepted).toMatchObject({ beyondT1Count: 0, beyondT2Count: 0 });
  });

  it('is the same however the weights are cut into parts, and in whatever order they are taken', () => {
    fc.assert(
      fc.property(anyNets, fc.infiniteStream(fc.nat()), (columns, numbers) => {
        const next = (below: number): number => (numbers.next().value as number) % below;
        const order = Array.from({ length: columns.count }, (_, place) => place).sort(() => next(3) - 1);
        let summary = noWeights();
        for (let place = 0; place < order.length;) {
          const part = order.slice(place, place + 1 + next(7));
          const taken = summariseWeights(pickWeights(columns, Uint32Array.from(part)), yardstick);
          summary = next(2) === 0 ? addSummaries(summary, taken) : addSummaries(taken, summary);
          place += part.length;
        }
        expect(summary).toEqual(summariseWeights(columns, yardstick));
      }),
    );
  });

  it('has a bin of a thousandth of the nominal quantity, rounded down, of 1 g at most', () => {
    const widths = [1_000, 5_000, 10_000, 250_000, 454_000, 500_000, 1_000_000, 25_000_000].map(binMilligramsFor);
    expect(widths).toEqual([1, 5, 10, 200, 200, 500, 1000, 1000]);
    expect(binMilligramsFor(1)).toBe(1);
  });
});

describe('the bytes of a histogram', () => {
  it('add up to what was written', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.nat(999), fc.nat(2 ** 40)), { maxLength: 30 }), (counts) => {
        const histogram = new Float64Array(1000);
        for (const [bin, packCount] of counts) histogram[bin] = packCount;
        const into = new Float64Array(1000).fill(1);
        addHistogram(into, writeHistogram(histogram));
        expect(into).toEqual(histogram.map((packCount) => packCount + 1));
      }),
    );
  });

  it('are refused where they end within a number or speak of too many bins', () => {
    expect(() => {
      addHistogram(new Float64Array(1000), Uint8Array.of(3, 200));
    }).toThrow(RangeError);
    expect(() => {
      addHistogram(new Float64Array(1000), Uint8Array.of(128 + 104, 7, 1));
    }).toThrow(/bin 1000 of 1000/);
  });
});

describe('the hours of weights', () => {
  it('hold each weight once, in the hour in which it was weighed', () => {
    fc.assert(
      fc.property(anyNets, (columns) => {
        const hours = hoursOfWeights(columns);
        for (const { hour, columns: own } of hours) {
          expect(own.atCentiseconds.every((at) => Math.floor(at / 360_000) === hour)).toBe(true);
        }
        expect(hours.map(({ hour }) => hour)).toEqual(
          [...new Set(hours.map(({ hour }) => hour))].sort((a, b) => a - b),
        );
        expect(joinWeights(hours.map(({ columns: own }) => own))).toEqual(columns);
      }),
    );
  });

  it('are cut at the full hour', () => {
    const columns = weightsOf([
      { sequence: 1, at: 359_999, net: 1 },
      { sequence: 2, at: 360_000, net: 2 },
    ]);
    expect(hoursOfWeights(columns).map(({ hour, columns: own }) => [hour, own.count])).toEqual([
      [0, 1],
      [1, 1],
    ]);
  });
});

describe('a tare that was found wrong', () => {
  it('shifts the packs of its range, both ends included, and no other', () => {
    const columns = someWeights({ count: 10, seed: 1, firstSequence: 100 });
    const shifts = [{ fromSequence: 102, toSequence: 104, addedMilligrams: -500 }];
    const shifted = shiftNets(columns, shifts);
    expect(Array.from(shifted.netMilligrams, (net, place) => net - (columns.netMilligrams[place] ?? 0))).toEqual([
      0, 0, -500, -500, -500, 0, 0, 0, 0, 0,
    ]);
    expect(shiftNets(sliceWeights(columns, 0, 2), shifts).netMilligrams).toEqual(columns.netMilligrams.slice(0, 2));
    expect(shiftNets(columns, [...shifts, ...shifts]).netMilligrams[3]).toBe((columns.netMilligrams[3] ?? 0) - 1000);
  });

  it('is refused where it would leave the range of a net', () => {
    const shift = { fromSequence: 0, toSequence: 9, addedMilligrams: 2 ** 31 - 1 };
    expect(() => shiftNets(nets(1_000_000), [shift])).toThrow(RangeError);
  });
});
