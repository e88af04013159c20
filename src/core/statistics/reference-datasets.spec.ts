import { describe, expect, it } from '@jest/globals';
import { describeWithChecks, readChecks } from '../../../test/support/checks.js';
import { piScaled } from '../../../test/support/high-precision.js';
import { lagOneAutocorrelation } from './lag-one-autocorrelation.js';
import { mean } from './mean.js';
import { standardDeviation } from './standard-deviation.js';

/** A set as printed: decimal texts, so that the test decides what becomes of them. */
interface ReferenceDataset {
  readonly certified: {
    readonly mean: string;
    readonly sd_n_minus_1: string;
    readonly lag1_autocorrelation: string;
  };
  readonly data: readonly string[];
}

interface DigitsAsked {
  readonly name: string;
  readonly read: () => ReferenceDataset;
  /** Digits of mean, standard deviation, autocorrelation that doubles of the printed decimals allow. */
  readonly asDoubles: readonly [number, number, number];
}

const stored = (name: string) => () => readChecks<ReferenceDataset>(`metrology/strd/${name}.json`);

const storedSets: readonly DigitsAsked[] = [
  { name: 'Lew', read: stored('Lew'), asDoubles: [15, 15, 14] },
  { name: 'Lottery', read: stored('Lottery'), asDoubles: [15, 15, 14] },
  { name: 'Michelso', read: stored('Michelso'), asDoubles: [15, 13, 13] },
  { name: 'NumAcc1', read: stored('NumAcc1'), asDoubles: [15, 15, 15] },
  { name: 'NumAcc2', read: stored('NumAcc2'), asDoubles: [15, 14, 14] },
  { name: 'NumAcc3', read: stored('NumAcc3'), asDoubles: [15, 9, 11] },
];

// NIST Statistical Reference Datasets, univariate summary statistics: certified values of Mavro, NumAcc4 and PiDigits,
// and the fifty transmittances of Mavro (in hundred-thousandths above 2), as in Mavro.dat and NumAcc4.dat.
const mavro =
  '180 170 180 190 180 170 150 140 150 150 170 180 180 190 190 210 200 160 140 130 130 150 150 160 150 ' +
  '140 130 140 150 140 150 160 150 160 190 200 200 210 220 230 240 250 270 260 260 260 270 260 250 240';
const ownSets: readonly DigitsAsked[] = [
  {
    name: 'Mavro',
    read: () => ({
      certified: {
        mean: '2.001856',
        sd_n_minus_1: '0.000429123454003053',
        lag1_autocorrelation: '0.937989183438248',
      },
      data: mavro.split(' ').map((part) => `2.00${part}`),
    }),
    asDoubles: [15, 12, 12],
  },
  {
    name: 'NumAcc4',
    read: () => ({
      certified: { mean: '10000000.2', sd_n_minus_1: '0.1', lag1_autocorrelation: '-0.999' },
      data: ['10000000.2', ...Array.from({ length: 1000 }, (_, at) => `10000000.${at % 2 === 0 ? 1 : 3}`)],
    }),
    asDoubles: [15, 8, 9],
  },
  {
    // The first 5000 digits of π, its 3 included, computed here instead of kept. The certified sum and sum of squares
    // (22 674 and 143 922) are those of π (22 679 and 143 977) with one 8 read as a 3, and the autocorrelation is that of
    // an 8 whose neighbours sum to 7. Several are, and give the same; the first of them is taken.
    name: 'PiDigits',
    read: () => ({
      certified: {
        mean: '4.5348',
        sd_n_minus_1: '2.86733906028871',
        lag1_autocorrelation: '-0.00355099287237972',
      },
      data: [...piScaled(4999).toString()].map((digit, place) => (place === 18 ? '3' : digit)),
    }),
    asDoubles: [15, 14, 13],
  },
];

const tests = (sets: readonly DigitsAsked[]) => () => {
  it.each(sets)('$name as doubles: $asDoubles digits', ({ read, asDoubles }) => {
    const { certified, data } = read();
    const values = data.map(Number);
    const digits = [
      digitsInCommon(mean(values), certified.mean),
      digitsInCommon(standardDeviation(values), certified.sd_n_minus_1),
      digitsInCommon(lagOneAutocorrelation(values), certified.lag1_autocorrelation),
    ];
    for (const [at, asked] of asDoubles.entries())
      expect([at, digits[at]! >= asked, digits]).toEqual([at, true, digits]);
  });

  // Weights come as whole decigrams or milligrams: then nothing is lost before the sum begins.
  it.each(sets)('$name as whole numbers of its last decimal place: every certified digit', ({ read }) => {
    const { certified, data } = read();
    const places = Math.max(...data.map((decimal) => fractionOf(decimal).length));
    const values = data.map((decimal) => Number(decimal.replace(/\..*/, '') + fractionOf(decimal).padEnd(places, '0')));
    expect(digitsInCommon(mean(values) / 10 ** places, certified.mean)).toBeGreaterThanOrEqual(14.7);
    expect(digitsInCommon(standardDeviation(values) / 10 ** places, certified.sd_n_minus_1)).toBeGreaterThanOrEqual(
      14.3,
    );
    expect(digitsInCommon(lagOneAutocorrelation(values), certified.lag1_autocorrelation)).toBeGreaterThanOrEqual(13);
  });
};

describe('reference datasets that are written here', tests(ownSets));
describeWithChecks('reference datasets that are kept beside the project', tests(storedSets));

describe('the lag-1 autocorrelation', () => {
  it('is −1 ÷ n less than nothing for two values, and needs values that differ', () => {
    expect(lagOneAutocorrelation([1, 2])).toBe(-0.5);
    expect(() => lagOneAutocorrelation([1])).toThrow(RangeError);
    expect(() => lagOneAutocorrelation([3, 3, 3])).toThrow(RangeError);
    expect(() => lagOneAutocorrelation([3, NaN])).toThrow(RangeError);
  });
});

/** The digits behind the point, as printed. */
function fractionOf(decimal: string): string {
  return decimal.split('.')[1] ?? '';
}

/** The logarithm of the relative error (the LRE of the reference datasets), at most 15. */
function digitsInCommon(got: number, certified: string): number {
  const expected = Number(certified);
  return got === expected ? 15 : Math.min(15, -Math.log10(Math.abs(got - expected) / Math.abs(expected)));
}
