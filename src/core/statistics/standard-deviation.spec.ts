import { describe, expect, it } from '@jest/globals';
import { standardDeviation } from './standard-deviation.js';

describe('the standard deviation', () => {
  it('is taken with n − 1', () => {
    expect(standardDeviation([10000001, 10000003, 10000002])).toBe(1);
    expect(standardDeviation([2, 4, 4, 4, 5, 5, 7, 9])).toBeCloseTo(Math.sqrt(32 / 7), 15);
  });

  it('is zero when all values are equal', () => {
    expect(standardDeviation([0.1, 0.1, 0.1])).toBe(0);
  });

  it('needs at least two values, and finite ones', () => {
    expect(() => standardDeviation([5])).toThrow(RangeError);
    expect(() => standardDeviation([5, NaN])).toThrow(RangeError);
  });
});
