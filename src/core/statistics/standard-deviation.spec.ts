import { describe, expect, it } from '@jest/globals';
import { describeWithChecks, readChecks } from '../../../test/support/checks.js';
import { mean } from './mean.js';
import { standardDeviation } from './standard-deviation.js';

interface ReferenceDataset {
  readonly certified: { readonly mean: string; readonly sd_n_minus_1: string };
  readonly data: readonly string[];
}

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

// NIST Statistical Reference Datasets, univariate summary statistics, itl.nist.gov/div898/strd/univ.
describeWithChecks('mean and standard deviation against certified values', () => {
  it.each([
    ['Lew', 15, 14],
    ['Lottery', 15, 14],
    ['Michelso', 15, 13],
    ['NumAcc1', 15, 15],
    ['NumAcc2', 15, 14],
    ['NumAcc3', 15, 9],
  ])('%s: the mean to %d digits, the standard deviation to %d', (name, meanDigits, spreadDigits) => {
    const { certified, data } = readChecks<ReferenceDataset>(`metrology/strd/${name}.json`);
    const values = data.map(Number);
    expect(digitsInCommon(mean(values), Number(certified.mean))).toBeGreaterThanOrEqual(meanDigits);
    expect(digitsInCommon(standardDeviation(values), Number(certified.sd_n_minus_1))).toBeGreaterThanOrEqual(
      spreadDigits,
    );
  });
});

/** The logarithm of the relative error, at most 15: how many digits agree. */
function digitsInCommon(got: number, certified: number): number {
  if (got === certified) return 15;
  return Math.min(15, -Math.log10(Math.abs(got - certified) / Math.abs(certified)));
}
