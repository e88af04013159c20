import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { mean } from './mean.js';

describe('the mean', () => {
  it('is what the values are on average', () => {
    expect(mean([1002, 998, 1003])).toBe(1001);
    expect(mean([7])).toBe(7);
  });

  it('keeps the small digits of large values', () => {
    expect(mean([1e15 + 1, 1e15 + 3, 1e15 + 2])).toBe(1e15 + 2);
    expect(mean([0.1, 0.1, 0.1])).toBe(0.1);
  });

  it('needs at least one value, and finite ones', () => {
    expect(() => mean([])).toThrow(RangeError);
    expect(() => mean([1, NaN])).toThrow(RangeError);
    expect(() => mean([1, Infinity])).toThrow(RangeError);
  });

  it('lies between the least and the greatest value, and does not depend on their order', () => {
    const values = fc.array(fc.integer({ min: -1_000_000, max: 1_000_000 }), { minLength: 1 });
    fc.assert(
      fc.property(values, (weights) => {
        const centre = mean(weights);
        expect(centre).toBeGreaterThanOrEqual(Math.min(...weights));
        expect(centre).toBeLessThanOrEqual(Math.max(...weights));
        expect(Math.abs(mean(weights.toReversed()) - centre)).toBeLessThanOrEqual(1e-9);
      }),
    );
  });
});
