import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { weighedMeanNet, type WeighedMinute } from './weighed-mean-net.js';

const nominalMilligrams = 1_000_000;
const otherwise = { meanMilligrams: 1_000_000, lowerMilligrams: 990_000, upperMilligrams: 1_020_000 };

const minute = (place: number, packCount: number, meanErrorMilligrams: number, weigherErrorMilligrams = 500) => ({
  ...{ minute: place, packCount, weigherErrorMilligrams },
  errorSumMilligrams: packCount * meanErrorMilligrams,
});

const netOf = (minutes: readonly WeighedMinute[], countedPackCount: number) =>
  weighedMeanNet({ nominalMilligrams, minutes, countedPackCount, otherwise });

describe('the mean net of a run whose packs were weighed', () => {
  it('lies between the means of its lightest and its heaviest minute, give or take the error of the weigher', () => {
    expect(netOf([minute(0, 40, 1000), minute(1, 40, 2000)], 80)).toEqual({
      meanMilligrams: 1_001_500,
      lowerMilligrams: 1_000_500,
      upperMilligrams: 1_002_500,
      weighedPackCount: 80,
      unweighedPackCount: 0,
    });
  });

  it('rounds its limits outward to a tenth of a gram', () => {
    expect(netOf([minute(0, 40, 1010), minute(1, 40, 1990)], 80)).toMatchObject({
      lowerMilligrams: 1_000_500,
      upperMilligrams: 1_002_500,
    });
  });

  it('takes a minute with a handful of packs together with the one beside it', () => {
    const packs = [minute(0, 2, -9000), minute(1, 40, 1000), minute(2, 40, 1000), minute(3, 1, 9000)];
    // 38 g ÷ 42 packs less 9 g ÷ 42: (40 000 − 18 000) ÷ 42 = 523.8; (40 000 + 9 000) ÷ 41 = 1195.1.
    expect(netOf(packs, 83)).toMatchObject({ lowerMilligrams: 1_000_000, upperMilligrams: 1_001_700 });
  });

  it('takes the error of each weigher for what it weighed', () => {
    const packs = [minute(0, 40, 1000, 500), minute(1, 40, 1000, 2000)];
    expect(netOf(packs, 80)).toMatchObject({ lowerMilligrams: 999_000, upperMilligrams: 1_003_000 });
  });

  it('lets packs that were not weighed be anything that they may be, at worst all in one minute', () => {
    const packs = [minute(0, 40, 1000), minute(1, 40, 1000)];
    expect(netOf(packs, 84)).toEqual({
      // (80 · 1 001 000 + 4 · 1 000 000) ÷ 84
      meanMilligrams: 1_000_952,
      // A tenth of the way from 1 000.5 g to 990 g, and from 1 001.5 g to 1 020 g.
      lowerMilligrams: 999_400,
      upperMilligrams: 1_003_400,
      weighedPackCount: 80,
      unweighedPackCount: 4,
    });
    expect(netOf(packs, 120)).toMatchObject({ lowerMilligrams: 990_000, upperMilligrams: 1_020_000 });
    expect(netOf(packs, 9000)).toMatchObject({ lowerMilligrams: 990_000, upperMilligrams: 1_020_000 });
  });

  it('is never narrowed by packs that were not weighed', () => {
    const packs = [minute(0, 40, -20_000), minute(1, 40, 40_000)];
    expect(netOf(packs, 500)).toMatchObject({ lowerMilligrams: 979_500, upperMilligrams: 1_040_500 });
  });

  it('does not mind packs that were weighed and not counted', () => {
    expect(netOf([minute(0, 40, 1000)], 30)).toMatchObject({ meanMilligrams: 1_001_000, unweighedPackCount: 0 });
  });

  it('is what it is otherwise where nothing was weighed', () => {
    expect(netOf([], 50)).toEqual({ ...otherwise, weighedPackCount: 0, unweighedPackCount: 50 });
  });

  it('refuses minutes that do not ascend, and one without packs', () => {
    expect(() => netOf([minute(1, 4, 0), minute(1, 4, 0)], 8)).toThrow(RangeError);
    expect(() => netOf([minute(1, 0, 0)], 8)).toThrow(RangeError);
  });

  it('holds the true mean of every stretch of whole minutes, whatever the weigher is off by within its limit', () => {
    const row = fc.record({ packs: fc.integer({ min: 30, max: 50 }), mean: fc.integer({ min: -8000, max: 8000 }) });
    const rows = fc.array(row, { minLength: 1, maxLength: 60 });
    const parts = fc.tuple(rows, fc.integer({ min: -500, max: 500 }), fc.nat(59), fc.nat(59));
    fc.assert(
      fc.property(parts, ([packed, off, one, other]) => {
        const minutes = packed.map(({ packs, mean }, place) => minute(place, packs, mean + off));
        const net = netOf(minutes, 0);
        const stretch = packed.slice(Math.min(one, other), Math.max(one, other) + 1);
        const packs = stretch.reduce((sum, { packs: count }) => sum + count, 0);
        const grams = stretch.reduce((sum, { packs: count, mean }) => sum + count * (nominalMilligrams + mean), 0);
        expect(packs * net.lowerMilligrams).toBeLessThanOrEqual(grams);
        expect(packs * net.upperMilligrams).toBeGreaterThanOrEqual(grams);
      }),
    );
  });
});
