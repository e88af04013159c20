import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { continuedFraction } from './continued-fraction.js';
import { gammaTerm, incompleteGamma, wholeIncompleteGammas } from './incomplete-gamma.js';
import { logGamma, stirlingRemainder } from './log-gamma.js';

/** a, x, P, Q with 40 digits by mpmath 1.3.0; from a = 10 000 on off the mean by its sum of Poisson's terms. */
const reference: readonly (readonly [number, number, number, number])[] = [
  [0.5, 0.005, 7.9655674554057963e-2, 9.2034432544594204e-1],
  [0.5, 0.25, 5.2049987781304654e-1, 4.7950012218695346e-1],
  [0.5, 0.5, 6.826894921370859e-1, 3.173105078629141e-1],
  [0.5, 2.5, 9.7465268132253174e-1, 2.5347318677468264e-2],
  [3.077, 0.03077, 3.2913253849269288e-6, 9.9999670867461507e-1],
  [3.077, 3.077, 5.7584457372186995e-1, 4.2415542627813005e-1],
  [3.077, 15.385, 9.9996762546289807e-1, 3.2374537101932116e-5],
  [10, 0.1, 2.5163478067703148e-17, 9.9999999999999997e-1],
  [10, 9, 4.1259175566805859e-1, 5.8740824433194141e-1],
  [10, 10, 5.4207028552814779e-1, 4.5792971447185221e-1],
  [10, 50, 9.9999999999874039e-1, 1.2596084591660908e-12],
  [20, 0.2, 3.5626284992395299e-33, 1],
  [20, 20, 5.2974273316076001e-1, 4.7025726683923999e-1],
  [20, 100, 1, 3.764893576001475e-23],
  [57, 0.57, 1.7134197852792669e-91, 1],
  [57, 285, 1, 8.7109772879364762e-62],
  [200, 100, 9.3431500729883903e-19, 1],
  [200, 200, 5.0940341800723633e-1, 4.9059658199276367e-1],
  [200, 210, 7.6396967450115385e-1, 2.3603032549884615e-1],
  [200, 400, 1, 6.2095118429960886e-29],
];
const largeReference: readonly (readonly [number, number, number, number])[] = [
  [1000, 500, 3.2982727970670996e-86, 1],
  [1000, 1000, 5.0420524418021551e-1, 4.9579475581978449e-1],
  [1000, 2000, 1, 6.8473494596147532e-136],
  [10000, 9800, 2.2207543813969694e-2, 9.7779245618603031e-1],
  [10000, 10000, 5.013298083399552e-1, 4.986701916600448e-1],
  [10000, 10500, 9.9999957241275449e-1, 4.2758724550596473e-7],
  [100000, 98000, 9.6908351581604864e-11, 9.9999999990309165e-1],
  [100000, 100000, 5.0042052211036518e-1, 4.9957947788963482e-1],
  [100000, 101000, 9.9919157848707441e-1, 8.0842151292559073e-4],
];
const offBy = (found: number, expected: number) => Math.abs(found / expected - 1);

describe('the incomplete gamma function', () => {
  it.each(reference)('agrees with 40 digits at a = %d, x = %d, within 2·10⁻¹³ of each share', (a, x, lower, upper) => {
    expect(offBy(incompleteGamma(a, x).lower, lower)).toBeLessThan(2e-13);
    expect(offBy(incompleteGamma(a, x).upper, upper)).toBeLessThan(2e-13);
  });

  it.each(largeReference)(
    'agrees with 40 digits at a = %d, x = %d, within 10⁻¹¹ of each share',
    (a, x, lower, upper) => {
      expect(offBy(incompleteGamma(a, x).lower, lower)).toBeLessThan(1e-11);
      expect(offBy(incompleteGamma(a, x).upper, upper)).toBeLessThan(1e-11);
    },
  );

  it('of shape 1 is the exponential', () => {
    expect(incompleteGamma(1, 0.5).upper).toBeCloseTo(Math.exp(-0.5), 14);
    expect(incompleteGamma(1, 0.5).lower).toBeCloseTo(0.3934693402873666, 14);
  });

  it('holds nothing below 0 and everything below infinity', () => {
    expect(incompleteGamma(3, 0)).toEqual({ lower: 0, upper: 1 });
    expect(incompleteGamma(3, Infinity)).toEqual({ lower: 1, upper: 0 });
    expect(incompleteGamma(3, 1e6)).toEqual({ lower: 1, upper: 0 });
  });

  it('loses one term from each shape to the next', () => {
    const anyShape = fc.integer({ min: 1, max: 200 });
    const anyTime = fc.double({ min: 0.001, max: 4, noNaN: true });
    fc.assert(
      fc.property(anyShape, anyTime, (shape, times) => {
        const x = shape * times;
        const step = incompleteGamma(shape, x).lower - incompleteGamma(shape + 1, x).lower;
        expect(Math.abs(step - gammaTerm(shape, x))).toBeLessThan(2e-15 + 4e-13 * gammaTerm(shape, x));
        const { lower, upper } = incompleteGamma(shape, x);
        expect(Math.abs(lower + upper - 1)).toBeLessThanOrEqual(2e-16);
      }),
      { numRuns: 500, seed: 20261101 },
    );
  });

  it('comes for the shapes 1, 2, … at once', () => {
    for (const x of [0, 1e-3, 1, 9, 60, 500]) {
      const shares = wholeIncompleteGammas(60, x);
      expect(shares).toHaveLength(60);
      shares.forEach(({ lower, upper }, place) => {
        const alone = incompleteGamma(place + 1, x);
        expect(Math.abs(lower - alone.lower)).toBeLessThanOrEqual(4e-13 * alone.lower);
        expect(Math.abs(upper - alone.upper)).toBeLessThanOrEqual(4e-13 * alone.upper);
      });
    }
    expect(wholeIncompleteGammas(0, 1)).toEqual([]);
    for (const count of [-1, 1.5]) expect(() => wholeIncompleteGammas(count, 1)).toThrow(RangeError);
  });

  it('refuses what has no value', () => {
    for (const shape of [0, -1, NaN, 100_001]) expect(() => incompleteGamma(shape, 1)).toThrow(RangeError);
    for (const x of [-1, NaN]) expect(() => incompleteGamma(1, x)).toThrow(RangeError);
    expect(() => gammaTerm(1, Infinity)).toThrow(RangeError);
    expect(() => gammaTerm(-1, 1)).toThrow(RangeError);
  });
});

describe('the term of the gamma function', () => {
  it('is the chance of so many events', () => {
    expect(gammaTerm(0, 0.5)).toBeCloseTo(0.6065306597126334, 15);
    expect(gammaTerm(2, 3)).toBeCloseTo((9 / 2) * Math.exp(-3), 15);
    expect(gammaTerm(2, 0)).toBe(0);
  });

  it('is taken apart from 10 on without a seam', () => {
    const plain = (a: number, x: number) => Math.exp(a * Math.log(x) - x - logGamma(a + 1));
    for (const a of [10, 10.5, 14]) expect(offBy(gammaTerm(a, 12), plain(a, 12))).toBeLessThan(1e-13);
  });
});

describe("the remainder of Stirling's formula", () => {
  it('is what ln 10! leaves', () => {
    const plain = 9.5 * Math.log(10) - 10 + 0.5 * Math.log(2 * Math.PI);
    expect(stirlingRemainder(10)).toBeCloseTo(Math.log(362_880) - plain, 14);
    expect(() => stirlingRemainder(9.9)).toThrow(RangeError);
  });
});

describe('a continued fraction', () => {
  it('of ones is the golden ratio', () => {
    expect(continuedFraction(1, () => ({ numerator: 1, denominator: 1 }))).toBeCloseTo((1 + Math.sqrt(5)) / 2, 15);
  });

  it('that does not settle is refused', () => {
    expect(() => continuedFraction(0, () => ({ numerator: -1, denominator: 1 }))).toThrow(RangeError);
  });
});
