import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { normalShareAbove } from '../../../test/support/high-precision.js';
import { normalDensity, normalQuantile, normalShares, upperNormalQuantile } from './standard-normal.js';

const distances = Array.from({ length: 97 }, (_, step) => step / 12);
const shares = [1e-30, 1e-15, 1e-9, 1e-6, 1e-4, 0.001, 0.00135, 0.025, 0.1, 0.25, 0.4, 0.49, 0.4999, 0.4999999];

describe('the normal distribution', () => {
  it('agrees with 120-digit sums up to a distance of 8, in both tails', () => {
    for (const distance of distances) {
      const above = normalShareAbove(distance);
      for (const [got, expected] of [
        [normalShares(distance).above, above],
        [normalShares(-distance).below, above],
        [normalShares(distance).below, 1 - above],
        [normalShares(-distance).above, 1 - above],
      ] as const) {
        expect([distance, Math.abs(got / expected - 1) < 2e-14]).toEqual([distance, true]);
      }
    }
  });

  it('keeps its digits far out', () => {
    for (const distance of [9, 10.5, 12]) {
      expect(Math.abs(normalShares(distance).above / normalShareAbove(distance) - 1)).toBeLessThan(2e-13);
    }
  });

  it('ends at 0 and 1', () => {
    expect(normalShares(Infinity)).toEqual({ below: 1, above: 0 });
    expect(normalShares(-Infinity)).toEqual({ below: 0, above: 1 });
    expect(normalShares(0)).toEqual({ below: 0.5, above: 0.5 });
    expect(() => normalShares(NaN)).toThrow(RangeError);
  });

  it('has its density as its slope', () => {
    for (const x of [-3, -1, 0, 0.5, 2, 4]) {
      const slope = (normalShares(x + 1e-4).below - normalShares(x - 1e-4).below) / 2e-4;
      expect(Math.abs(slope / normalDensity(x) - 1)).toBeLessThan(1e-7);
    }
    expect(normalDensity(Infinity)).toBe(0);
  });

  it('grows, and its shares make up the whole', () => {
    const places = fc.double({ min: -30, max: 30, noNaN: true });
    fc.assert(
      fc.property(places, fc.double({ min: 1e-6, max: 5, noNaN: true }), (x, step) => {
        const { below, above } = normalShares(x);
        expect(Math.abs(below + above - 1)).toBeLessThan(1e-15);
        expect(normalShares(x + step).below).toBeGreaterThanOrEqual(below);
      }),
    );
  });
});

describe('the normal quantile', () => {
  it.each([
    [0.975, 1.959963984540054],
    [0.9999, 3.719016485455709],
    [0.99865010196837, 3],
    [0.5, 0],
  ])('of %d', (probability, expected) => {
    expect(normalQuantile(probability)).toBeCloseTo(expected, 12);
  });

  it('is off by less than 1e-14 of itself or of 1, as 120-digit sums show on either side', () => {
    for (const share of shares) {
      const quantile = upperNormalQuantile(share);
      const bound = 1e-14 * Math.max(1, quantile);
      expect([share, normalShareAbove(quantile - bound) > share, normalShareAbove(quantile + bound) < share]).toEqual([
        share,
        true,
        true,
      ]);
      expect(normalQuantile(share)).toBe(0 - quantile);
    }
  });

  it('undoes the share', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-12, max: 1 - 1e-12, noNaN: true }), (probability) => {
        const back = normalShares(normalQuantile(probability)).below;
        expect(Math.abs(back - probability)).toBeLessThan(1e-13 * Math.max(probability, 1e-3));
      }),
    );
  });

  it.each([0, 1, -0.1, NaN])('does not exist for %d', (probability) => {
    expect(() => normalQuantile(probability)).toThrow(RangeError);
  });
});
