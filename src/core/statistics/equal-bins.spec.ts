import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { equalBins } from './equal-bins.js';

describe('a histogram', () => {
  it('is cut into the narrowest stretches of which few enough are needed', () => {
    const values = [
      { value: 7, count: 2 },
      { value: 12, count: 1 },
      { value: 10, count: 3 },
    ];
    expect(equalBins(values, { anchor: 10, mostBins: 3, resolution: 1 })).toEqual([
      { from: 5, until: 10, count: 2 },
      { from: 10, until: 15, count: 4 },
    ]);
    expect(equalBins(values, { anchor: 10, mostBins: 4, resolution: 1 }).map(({ from }) => from)).toEqual([
      6, 8, 10, 12,
    ]);
  });

  it('of nothing has no stretch', () => {
    expect(equalBins([], { anchor: 0, mostBins: 10, resolution: 1 })).toEqual([]);
    expect(equalBins([{ value: 3, count: 0 }], { anchor: 0, mostBins: 10, resolution: 1 })).toEqual([]);
  });

  it('holds each value once, and has an edge at its anchor', () => {
    const value = fc.record({
      value: fc.integer({ min: 900_000, max: 1_100_000 }),
      count: fc.integer({ min: 1, max: 9 }),
    });
    fc.assert(
      fc.property(fc.array(value, { minLength: 1 }), fc.integer({ min: 2, max: 60 }), (values, mostBins) => {
        const bins = equalBins(values, { anchor: 1_000_000, mostBins, resolution: 100 });
        expect(bins.length).toBeLessThanOrEqual(mostBins);
        for (const { from, until, count } of bins) {
          const held = values.filter((one) => one.value >= from && one.value < until);
          expect(held.reduce((sum, one) => sum + one.count, 0)).toBe(count);
          expect(Number.isInteger((from - 1_000_000) / (until - from))).toBe(true);
        }
        expect(bins[0]!.count * bins.at(-1)!.count).toBeGreaterThan(0);
        expect(bins.reduce((sum, { count }) => sum + count, 0)).toBe(values.reduce((sum, one) => sum + one.count, 0));
      }),
    );
  });

  it.each([
    { anchor: NaN, mostBins: 5, resolution: 1 },
    { anchor: 0, mostBins: 1, resolution: 1 },
    { anchor: 0, mostBins: 5, resolution: 0 },
  ])('is refused for $anchor, $mostBins, $resolution', (plan) => {
    expect(() => equalBins([{ value: 1, count: 1 }], plan)).toThrow(RangeError);
  });

  it('is refused for what is no count of a value', () => {
    const plan = { anchor: 0, mostBins: 5, resolution: 1 };
    expect(() => equalBins([{ value: NaN, count: 1 }], plan)).toThrow(RangeError);
    expect(() => equalBins([{ value: 1, count: -1 }], plan)).toThrow(RangeError);
  });
});
