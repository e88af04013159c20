import { describe, expect, it } from '@jest/globals';
import { standardDeviation } from '../statistics/standard-deviation.js';
import { fewestRepeats, repeatabilityOf } from './repeatability.js';

describe('repeatability from a laboratory’s own repeats', () => {
  it('pools what results of one sample differ by', () => {
    // Pairs: half the squared differences are 2, 0, 0.5, 0.5; together 3 over 4 degrees of freedom.
    const found = repeatabilityOf([[30, 32], [28, 28], [25, 24], [31, 30], [40]]);
    expect(found?.standard).toBeCloseTo(Math.sqrt(3 / 4), 12);
    expect(found?.degreesOfFreedom).toBe(4);
  });

  it('is the standard deviation where one sample was analysed many times, wherever it lies', () => {
    const results = [31.2, 30.8, 31.9, 30.1, 31.0];
    expect(repeatabilityOf([results])?.standard).toBeCloseTo(standardDeviation(results), 12);
    const shifted = results.map((result) => result + 1000);
    expect(repeatabilityOf([shifted])?.standard).toBeCloseTo(standardDeviation(results), 9);
  });

  it('is not known from too few repeats, nor from repeats that agree to the last digit', () => {
    const pairs = Array.from({ length: fewestRepeats }, () => [20, 21]);
    expect(repeatabilityOf(pairs)).not.toBeNull();
    expect(repeatabilityOf(pairs.slice(1))).toBeNull();
    expect(repeatabilityOf(pairs.map(() => [20, 20]))).toBeNull();
    expect(repeatabilityOf([])).toBeNull();
    expect(() => repeatabilityOf([[20, Number.NaN]])).toThrow(RangeError);
  });
});
