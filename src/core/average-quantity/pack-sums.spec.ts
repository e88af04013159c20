import { describe, expect, it } from '@jest/globals';
import { describeWithChecks, readChecks } from '../../../test/support/checks.js';
import { errorSums, exactSums, meanErrorMicrograms, standardDeviationMilligrams } from './pack-sums.js';

describe('sums over packs', () => {
  it('are about the nominal quantity, and exact', () => {
    const sums = errorSums([1_000_500, 999_500], 1_000_000);
    expect(sums).toEqual({ packCount: 2, errorSumMilligrams: 0n, errorSquareSum: 500_000n });
    expect(errorSums([], 5)).toEqual({ packCount: 0, errorSumMilligrams: 0n, errorSquareSum: 0n });
  });

  it('are taken as numbers or as bigints', () => {
    const stored = { packCount: 3, errorSumMilligrams: -6, errorSquareSum: 14n };
    expect(exactSums(stored)).toEqual({ packCount: 3n, sum: -6n, squares: 14n });
  });

  it.each([
    { packCount: 2, errorSumMilligrams: 4, errorSquareSum: 7 },
    { packCount: 0, errorSumMilligrams: 1, errorSquareSum: 1 },
    { packCount: 0, errorSumMilligrams: 0, errorSquareSum: 1 },
    { packCount: 1, errorSumMilligrams: 0, errorSquareSum: -1 },
    { packCount: -1, errorSumMilligrams: 0, errorSquareSum: 0 },
    { packCount: 1.5, errorSumMilligrams: 0, errorSquareSum: 0 },
    { packCount: 2, errorSumMilligrams: 0.5, errorSquareSum: 1 },
    { packCount: 2, errorSumMilligrams: 0, errorSquareSum: 2 ** 53 },
  ])('are refused where no packs have them: %j', (sums) => {
    expect(() => exactSums(sums)).toThrow(RangeError);
  });

  it.each([[[1.5]], [[-1]], [[NaN]]])('are refused of nets %j', (nets) => {
    expect(() => errorSums(nets, 5)).toThrow(RangeError);
  });

  it('never show a mean that is short as none', () => {
    const oneShort = [...Array.from({ length: 9_999_999 }, () => 0), -1];
    const sums = { packCount: oneShort.length, errorSumMilligrams: -1, errorSquareSum: 1 };
    expect(meanErrorMicrograms(exactSums(sums))).toBe(-1);
    expect(meanErrorMicrograms(exactSums({ ...sums, errorSumMilligrams: 1 }))).toBe(0);
    expect(meanErrorMicrograms(exactSums(errorSums([], 5)))).toBeNull();
  });

  it('have no standard deviation of one pack', () => {
    expect(standardDeviationMilligrams(exactSums(errorSums([7], 5)))).toBeNull();
    expect(standardDeviationMilligrams(exactSums(errorSums([10_000_001, 10_000_003, 10_000_002], 5)))).toBe(1);
  });
});

interface CertifiedSet {
  readonly data: readonly string[];
  readonly certified: { readonly sd_n_minus_1: string };
}

// NIST StRD univariate sets, where sums of squares in binary fractions lose their digits.
describeWithChecks('the standard deviation from sums', () => {
  it.each([
    ['NumAcc3', 1],
    ['Lew', 0],
    ['Michelso', 2],
  ])('of %s is the certified one', (name, decimals) => {
    const { data, certified } = readChecks<CertifiedSet>(`metrology/strd/${name}.json`);
    const scale = 10 ** decimals;
    const whole = data.map((value) => Math.round(Number(value) * scale) + 1_000_000);
    const found = standardDeviationMilligrams(exactSums(errorSums(whole, 5)))! / scale;
    expect(found / Number(certified.sd_n_minus_1)).toBeCloseTo(1, 12);
  });
});
