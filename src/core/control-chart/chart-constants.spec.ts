import { describe, expect, it } from '@jest/globals';
import { describeWithChecks, readChecks } from '../../../test/support/checks.js';
import { normalShares } from '../statistics/standard-normal.js';
import { deviationFactors, rangeFactors, unbiasingFactor } from './chart-constants.js';
import { rangeMoments } from './range-moments.js';

describe('the moments of the range', () => {
  // Closed forms (David and Nagaraja, Order Statistics, from memory).
  it.each([
    [2, 2 / Math.sqrt(Math.PI)],
    [3, 3 / Math.sqrt(Math.PI)],
    [4, (6 / Math.PI ** 1.5) * Math.acos(-1 / 3)],
  ])('have the closed form of the mean of the range of %d values', (count, d2) => {
    expect([rangeMoments(count).d2, Math.abs(rangeMoments(count).d2 - d2) < 1e-10]).toEqual([
      rangeMoments(count).d2,
      true,
    ]);
  });

  it('have the closed form of the spread of the range of two values', () => {
    expect(Math.abs(rangeMoments(2).d3 - Math.sqrt(2 - 4 / Math.PI))).toBeLessThan(1e-10);
  });

  it('agree with the mean of the range by its other integral', () => {
    for (const count of [2, 5, 10, 25]) {
      const step = 1 / 64;
      let other = 0;
      for (let x = -9; x <= 9; x += step) {
        const { below, above } = normalShares(x);
        other += step * (1 - below ** count - above ** count);
      }
      expect(Math.abs(rangeMoments(count).d2 - other)).toBeLessThan(1e-10);
    }
  });

  it.each([1, 2.5, 26, NaN])('do not exist here for %d values', (count) => {
    expect(() => rangeMoments(count)).toThrow(RangeError);
  });
});

describe('the mean of the standard deviation', () => {
  it('comes with the next one to √((n − 1)/n), as Γ(x + 1) is x·Γ(x)', () => {
    for (const [count, error] of [
      [2, 1e-14],
      [5, 1e-14],
      [25, 3e-14],
      [100, 1e-13],
      [10_000, 2e-11],
    ] as const) {
      const product = unbiasingFactor(count) * unbiasingFactor(count + 1);
      expect([count, Math.abs(product / Math.sqrt((count - 1) / count) - 1) < error]).toEqual([count, true]);
    }
  });

  it('is √(2/π) for two values and nearly 1 for many', () => {
    expect(unbiasingFactor(2)).toBeCloseTo(Math.sqrt(2 / Math.PI), 14);
    // 1 − 1/4n − 7/32n², from memory.
    expect(unbiasingFactor(1000)).toBeCloseTo(1 - 1 / 4000 - 7 / 32e6, 9);
    expect(() => unbiasingFactor(1)).toThrow(RangeError);
    expect(() => unbiasingFactor(2.5)).toThrow(RangeError);
  });
});

interface ConstantsRow {
  readonly n: number;
  readonly printed: Readonly<Record<string, number>>;
  readonly [name: string]: number | Readonly<Record<string, number>>;
}

// Printed: Pyzdek and Keller, Handbook for Quality Management, p. 401, and a second textbook's Table A.22. Their last
// digits slip here and there by one, from chained rounding.
describeWithChecks('the factors of control charts', () => {
  it('agree with six computed decimals and with the printed tables, for 2 to 25 values', () => {
    const { rows } = readChecks<{ readonly rows: readonly ConstantsRow[] }>('metrology/control-chart-constants.json');
    expect(rows).toHaveLength(24);
    for (const row of rows) {
      const s = deviationFactors(row.n);
      const r = rangeFactors(row.n);
      const computed: Readonly<Record<string, number>> = {
        A: s.a,
        A2: r.a2,
        A3: s.a3,
        c4: s.c4,
        inv_c4: 1 / s.c4,
        B3: s.b3,
        B4: s.b4,
        B5: s.b5,
        B6: s.b6,
        d2: r.d2,
        inv_d2: 1 / r.d2,
        d3: r.d3,
        D1: r.lowerFromSigma,
        D2: r.upperFromSigma,
        D3: r.lowerFromMean,
        D4: r.upperFromMean,
      };
      for (const [name, value] of Object.entries(computed)) {
        expect([row.n, name, Math.abs(value - (row[name] as number)) <= 5.1e-7]).toEqual([row.n, name, true]);
        const printed = row.printed[name];
        if (printed === undefined) continue;
        expect([row.n, name, Math.abs(value - printed) <= 0.001]).toEqual([row.n, name, true]);
      }
    }
  });
});
