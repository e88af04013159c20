import { describe, expect, it } from '@jest/globals';
import { likelyThresholdGrams, strengthOf } from './strength.js';

const word = (leastGrams: number, likelyGrams: number, mostGrams: number) =>
  strengthOf({ leastGrams, likelyGrams, mostGrams }, likelyThresholdGrams(2000));

describe('the word for a link', () => {
  it('is sure where some of the bag cannot have left any other way', () => {
    expect(word(1, 0, 1)).toBe('sure');
  });

  it('is likely from the threshold on: 2 g of a 2-kg pack', () => {
    expect(likelyThresholdGrams(2000)).toBe(2);
    expect(word(0, 2, 996_000)).toBe('likely');
    expect(word(0, 1, 996_000)).toBe('possible');
    expect(strengthOf({ leastGrams: 0, likelyGrams: 300, mostGrams: 996_000 }, 2)).toBe('likely');
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
    expect(() => likelyThresholdGrams(0)).toThrow(RangeError);
    expect(() => likelyThresholdGrams(2000, 0)).toThrow(RangeError);
    expect(() => likelyThresholdGrams(2000, 1.5)).toThrow(RangeError);
  });
});
