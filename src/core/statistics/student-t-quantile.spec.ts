import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { describeWithChecks, readChecks } from '../../../test/support/checks.js';
import { incompleteBeta } from './incomplete-beta.js';
import { logGamma } from './log-gamma.js';
import { studentTQuantile } from './student-t-quantile.js';

const probabilities = [1e-6, 0.0005, 0.01, 0.25, 0.4, 0.499, 0.6, 0.9, 0.975, 0.9995, 1 - 1e-6];

/** Closed forms: Cauchy's distribution for 1 degree of freedom; Shaw (2006), "Sampling Student's t distribution", for 2 and 4 (from memory). */
const closedForms: readonly (readonly [number, (probability: number) => number])[] = [
  [1, (p) => Math.tan(Math.PI * (p - 0.5))],
  [2, (p) => (2 * p - 1) / Math.sqrt(2 * p * (1 - p))],
  [
    4,
    (p) => {
      const root = Math.sqrt(4 * p * (1 - p));
      return Math.sign(p - 0.5) * 2 * Math.sqrt(Math.cos(Math.acos(root) / 3) / root - 1);
    },
  ],
];

describe('the gamma function', () => {
  it.each([
    [1, 0],
    [2, 0],
    [5, Math.log(24)],
    [11, Math.log(3628800)],
    [0.5, Math.log(Math.PI) / 2],
    [1.5, Math.log(Math.PI) / 2 - Math.log(2)],
  ])('ln Γ(%d)', (x, expected) => {
    expect(Math.abs(logGamma(x) - expected)).toBeLessThan(1e-14 * Math.max(1, Math.abs(expected)));
  });

  it('steps up by the logarithm of its argument', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 5000, noNaN: true }), (x) => {
        const size = Math.max(1, Math.abs(logGamma(x + 1)));
        expect(Math.abs(logGamma(x + 1) - logGamma(x) - Math.log(x)) / size).toBeLessThan(2e-14);
      }),
    );
  });

  it.each([0, -1, NaN, Infinity])('does not exist here for %d', (x) => {
    expect(() => logGamma(x)).toThrow(RangeError);
  });
});

describe('the incomplete beta function', () => {
  it('is a polynomial for whole numbers', () => {
    expect(incompleteBeta(0.5, 2, 3)).toBeCloseTo(11 / 16, 14);
    expect(incompleteBeta(0.3, 1, 4)).toBeCloseTo(1 - 0.7 ** 4, 14);
    expect(incompleteBeta(0.9, 3, 1)).toBeCloseTo(0.9 ** 3, 14);
  });

  it('runs from 0 to 1', () => {
    expect(incompleteBeta(0, 2, 3)).toBe(0);
    expect(incompleteBeta(1, 2, 3)).toBe(1);
    expect(() => incompleteBeta(1.1, 2, 3)).toThrow(RangeError);
    expect(() => incompleteBeta(NaN, 2, 3)).toThrow(RangeError);
  });
});

describe('the quantile of Student’s t', () => {
  it('gives the allowance of the mean test on thirty packs', () => {
    expect(studentTQuantile(0.995, 29)).toBeCloseTo(2.7563859, 7);
    expect(studentTQuantile(0.995, 29) / Math.sqrt(30)).toBeCloseTo(0.503, 3);
  });

  it.each(closedForms)('agrees with the closed form for %d degrees of freedom', (degreesOfFreedom, closedForm) => {
    for (const probability of probabilities) {
      const expected = closedForm(probability);
      const relativeError = Math.abs(studentTQuantile(probability, degreesOfFreedom) / expected - 1);
      expect([probability, relativeError < 1e-10]).toEqual([probability, true]);
    }
  });

  // NIST/SEMATECH e-Handbook of Statistical Methods 1.3.6.7.2, upper critical values, for 0.90, 0.95, 0.975, 0.99, 0.995, 0.999.
  it.each([
    [2, [1.886, 2.92, 4.303, 6.965, 9.925, 22.327]],
    [3, [1.638, 2.353, 3.182, 4.541, 5.841, 10.215]],
    [5, [1.476, 2.015, 2.571, 3.365, 4.032, 5.893]],
    [20, [1.325, 1.725, 2.086, 2.528, 2.845, 3.552]],
    [30, [1.31, 1.697, 2.042, 2.457, 2.75, 3.385]],
    [60, [1.296, 1.671, 2.0, 2.39, 2.66, 3.232]],
    [100, [1.29, 1.66, 1.984, 2.364, 2.626, 3.174]],
  ])('agrees with the printed table for %d degrees of freedom', (degreesOfFreedom, printed) => {
    const computed = [0.9, 0.95, 0.975, 0.99, 0.995, 0.999].map((p) => studentTQuantile(p, degreesOfFreedom));
    printed.forEach((value, index) => {
      expect(Math.abs((computed[index] ?? NaN) - value)).toBeLessThanOrEqual(0.00051);
    });
  });

  // Federighi (1959), Journal of the American Statistical Association 54, table of t for 0.9995.
  it.each([
    [1, 636.619],
    [3, 12.924],
    [4, 8.61],
    [9, 4.781],
    [29, 3.659],
  ])('agrees with the printed table at 0.9995 for %d degrees of freedom', (degreesOfFreedom, printed) => {
    expect(Math.abs(studentTQuantile(0.9995, degreesOfFreedom) - printed)).toBeLessThanOrEqual(0.00051);
  });

  it('is zero in the middle and the same on both sides', () => {
    expect(studentTQuantile(0.5, 7)).toBe(0);
    expect(studentTQuantile(0.25, 7)).toBe(-studentTQuantile(0.75, 7));
  });

  it('tends to the normal quantile for many degrees of freedom', () => {
    expect(studentTQuantile(0.975, 10_000)).toBeCloseTo(1.95996 + (1.95996 ** 3 + 1.95996) / 40_000, 5);
  });

  it('grows with the probability and shrinks with the degrees of freedom', () => {
    const upperHalf = fc.double({ min: 0.51, max: 0.9999, noNaN: true });
    fc.assert(
      fc.property(upperHalf, fc.integer({ min: 1, max: 500 }), (probability, degreesOfFreedom) => {
        const quantile = studentTQuantile(probability, degreesOfFreedom);
        expect(studentTQuantile((probability + 1) / 2, degreesOfFreedom)).toBeGreaterThan(quantile);
        expect(studentTQuantile(probability, degreesOfFreedom + 1)).toBeLessThan(quantile);
      }),
    );
  });

  it.each([
    [0, 5],
    [1, 5],
    [NaN, 5],
    [0.9, 0],
    [0.9, NaN],
    [0.9, 10_001],
  ])('refuses probability %d with %d degrees of freedom', (probability, degreesOfFreedom) => {
    expect(() => studentTQuantile(probability, degreesOfFreedom)).toThrow(RangeError);
  });
});

describeWithChecks('the quantile of Student’s t against printed factors', () => {
  // Directive 76/211/EEC Annex II 2.3 and UK SI 2006/659 Schedule 2: the factor is t(0.995; n − 1)/√n.
  it('gives the factors of the mean test', () => {
    const { mean_test: test } = readChecks<{
      readonly mean_test: { readonly rows: readonly { n: number; k_printed: number; k_recomputed: number }[] };
    }>('metrology/reference-test-76-211.json');
    expect(test.rows.length).toBeGreaterThan(0);
    for (const { n, k_printed, k_recomputed } of test.rows) {
      const factor = studentTQuantile(0.995, n - 1) / Math.sqrt(n);
      expect(factor).toBeCloseTo(k_printed, 3);
      expect(factor).toBeCloseTo(k_recomputed, 6);
    }
  });

  // OIML R 87:2004 Table 1: sample correction factors.
  it('gives the sample correction factors', () => {
    const { edition_2004: edition } = readChecks<{
      readonly edition_2004: { readonly rows: readonly { n: number; SCF_printed: number }[] };
    }>('metrology/oiml-r87-sampling.json');
    expect(edition.rows.length).toBeGreaterThan(0);
    for (const { n, SCF_printed } of edition.rows) {
      expect(studentTQuantile(0.995, n - 1) / Math.sqrt(n)).toBeCloseTo(SCF_printed, 3);
    }
  });
});
