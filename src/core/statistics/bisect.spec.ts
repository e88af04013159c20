import { describe, expect, it } from '@jest/globals';
import { bisect } from './bisect.js';

describe('halving', () => {
  it('finds the root of two to its last digit', () => {
    expect(Math.abs(bisect(0, 2, (x) => x * x < 2) - Math.SQRT2)).toBeLessThanOrEqual(Number.EPSILON);
  });

  it('ends at an edge where the condition changes there', () => {
    expect(bisect(-1, 3, () => true)).toBeCloseTo(3, 12);
    expect(bisect(-1, 3, () => false)).toBe(-1);
  });

  it('needs two different edges', () => {
    expect(() => bisect(1, 1, () => true)).toThrow(RangeError);
    expect(() => bisect(0, Infinity, () => true)).toThrow(RangeError);
  });
});
