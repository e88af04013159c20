import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { defaultLikelyShare, likelyThresholdGrams, strengthOf } from './strength.js';

const pack = 2000;
const ofPack = likelyThresholdGrams({ targetGrams: pack, smallestUnitGrams: pack });

const word = (leastGrams: number, likelyGrams: number, mostGrams: number) =>
  strengthOf({ leastGrams, likelyGrams, mostGrams }, ofPack);

describe('the word for a link', () => {
  it('is sure where some of the bag cannot have left any other way', () => {
    expect(word(1, 0, 1)).toBe('sure');
  });

  it('is likely from the threshold on: 2 g of a 2-kg pack', () => {
    expect(ofPack).toBe(2);
    expect(word(0, 2, 996_000)).toBe('likely');
    expect(word(0, 1, 996_000)).toBe('possible');
    expect(strengthOf({ leastGrams: 0, likelyGrams: 300, mostGrams: 996_000 }, 2)).toBe('likely');
  });

  it('takes a thousandth of a pallet, and one pack of a lot however large', () => {
    const of = (targetGrams: number, share?: number) =>
      likelyThresholdGrams({ targetGrams, smallestUnitGrams: pack }, share);
    expect(of(1_000_000)).toBe(1000);
    expect(of(2_000_000)).toBe(2000);
    expect(of(10_000_000)).toBe(2000);
    expect(of(1_000_000_000)).toBe(2000);
    // Twice the share asks for twice as much, and never for more than a pack.
    expect(of(500_000, 0.002)).toBe(1000);
    expect(of(10_000_000, 0.002)).toBe(2000);
  });

  it('asks of what weighs nothing, or less than a pack, for the share of a pack', () => {
    expect(likelyThresholdGrams({ targetGrams: 0, smallestUnitGrams: pack })).toBe(2);
    expect(likelyThresholdGrams({ targetGrams: 40, smallestUnitGrams: pack })).toBe(2);
  });

  it('falls with no larger target and lies between the share of a pack and a pack', () => {
    const grams = fc.integer({ min: 0, max: 1_000_000_000 });
    fc.assert(
      fc.property(grams, grams, fc.integer({ min: 1, max: 50_000 }), (one, other, smallestUnitGrams) => {
        const [small, large] = [Math.min(one, other), Math.max(one, other)].map((targetGrams) =>
          likelyThresholdGrams({ targetGrams, smallestUnitGrams }),
        );
        expect(small).toBeLessThanOrEqual(large ?? NaN);
        expect(small).toBeGreaterThanOrEqual(smallestUnitGrams * defaultLikelyShare);
        expect(large).toBeLessThanOrEqual(smallestUnitGrams);
      }),
    );
  });

  it('is possible where the bag can be there at all', () => {
    expect(word(0, 0, 1)).toBe('possible');
  });

  it('is ruled out only where nothing can be there, whatever the flow model says', () => {
    expect(word(0, 0, 0)).toBe('ruled-out');
    expect(word(0, 500, 0)).toBe('ruled-out');
  });

  it('refuses amounts out of order and thresholds of nothing', () => {
    expect(() => word(2, 2, 1)).toThrow(RangeError);
    expect(() => word(-1, 2, 1)).toThrow(RangeError);
    expect(() => strengthOf({ leastGrams: 0, likelyGrams: 0, mostGrams: 0 }, 0)).toThrow(RangeError);
    const target = { targetGrams: pack, smallestUnitGrams: pack };
    expect(() => likelyThresholdGrams({ ...target, smallestUnitGrams: 0 })).toThrow(RangeError);
    expect(() => likelyThresholdGrams({ ...target, targetGrams: -1 })).toThrow(RangeError);
    expect(() => likelyThresholdGrams(target, 0)).toThrow(RangeError);
    expect(() => likelyThresholdGrams(target, 1.5)).toThrow(RangeError);
  });
});
