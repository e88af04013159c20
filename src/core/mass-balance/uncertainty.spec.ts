import { describe, expect, it } from '@jest/globals';
import { standardUncertaintyWithin, uncertaintyOfReading, weightOfPacks } from './uncertainty.js';

describe('the uncertainty of a weight', () => {
  it('is a limit of error divided by the root of three', () => {
    expect(standardUncertaintyWithin(1000)).toBeCloseTo(577.35027, 5);
    expect(standardUncertaintyWithin(0)).toBe(0);
    expect(() => standardUncertaintyWithin(-1)).toThrow(RangeError);
    expect(() => standardUncertaintyWithin(NaN)).toThrow(RangeError);
  });

  it('on a scale has the rounding of the display as its own and the scale’s error as shared', () => {
    const net = uncertaintyOfReading({
      scaleId: 'dryer',
      maximumPermissibleErrorGrams: 1000,
      intervalGrams: 500,
      readingCount: 2,
    });
    // By hand: 500/√12 · √2 and 1000/√3.
    expect(net.standardGrams).toBeCloseTo(204.12415, 5);
    expect(net.sharedBy).toBe('dryer');
    expect(net.sharedStandardGrams).toBeCloseTo(577.35027, 5);
  });

  it('of counted packs grows with the count', () => {
    expect(
      weightOfPacks({ packCount: 1000, meanMilligrams: 2_001_500, meanStandardMilligrams: 400, scale: null }),
    ).toEqual({ grams: 2_001_500, uncertainty: { standardGrams: 400, sharedBy: null, sharedStandardGrams: 0 } });
    const scale = { scaleId: 'bench', standardMilligrams: 250 };
    expect(weightOfPacks({ packCount: 400, meanMilligrams: 999_999, meanStandardMilligrams: 0, scale })).toEqual({
      grams: 400_000,
      uncertainty: { standardGrams: 0, sharedBy: 'bench', sharedStandardGrams: 100 },
    });
  });

  it.each([
    { packCount: 1.5, meanMilligrams: 1000, meanStandardMilligrams: 1, scale: null },
    { packCount: -1, meanMilligrams: 1000, meanStandardMilligrams: 1, scale: null },
    { packCount: 1, meanMilligrams: -1000, meanStandardMilligrams: 1, scale: null },
    { packCount: 1, meanMilligrams: 1000, meanStandardMilligrams: NaN, scale: null },
    { packCount: 1, meanMilligrams: 1000, meanStandardMilligrams: 1, scale: { scaleId: 'a', standardMilligrams: -1 } },
  ])('refuses packs like %j', (packs) => {
    expect(() => weightOfPacks(packs)).toThrow(RangeError);
  });
});
