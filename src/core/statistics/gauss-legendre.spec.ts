import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { gaussLegendre } from './gauss-legendre.js';
import { normalDensity, normalShares } from './standard-normal.js';
import { solveLinear } from './solve-linear.js';

const integralOf = (f: (at: number) => number, [count, low, high]: readonly [number, number, number]): number =>
  gaussLegendre(count, low, high).reduce((sum, { at, weight }) => sum + weight * f(at), 0);

describe('Gauss and Legendre’s sum', () => {
  // Abramowitz and Stegun table 25.4 (from memory): the nodes for three.
  it('has the nodes and weights of the printed table', () => {
    const [low, middle, high] = gaussLegendre(3, -1, 1);
    expect(low?.at).toBeCloseTo(-Math.sqrt(0.6), 15);
    expect(middle?.at).toBeCloseTo(0, 15);
    expect(middle?.weight).toBeCloseTo(8 / 9, 14);
    expect(high?.weight).toBeCloseTo(5 / 9, 14);
  });

  it('is exact for polynomials of a degree up to 2n − 1, and not beyond', () => {
    for (const count of [1, 2, 5, 32, 80]) {
      const degree = 2 * count - 1;
      expect(Math.abs(integralOf((at) => (degree + 1) * at ** degree, [count, 0, 1]) - 1)).toBeLessThan(1e-11);
    }
    expect(integralOf((at) => at ** 6, [3, -1, 1])).toBeLessThan(2 / 7 - 0.01);
  });

  it('adds up a density to a share', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -4, max: 0, noNaN: true }),
        fc.double({ min: 0.1, max: 4, noNaN: true }),
        (low, high) => {
          const share = normalShares(high).below - normalShares(low).below;
          expect(Math.abs(integralOf(normalDensity, [40, low, high]) - share)).toBeLessThan(1e-14);
        },
      ),
    );
  });

  it.each([
    [0, 0, 1],
    [1.5, 0, 1],
    [501, 0, 1],
    [3, 0, Infinity],
  ])('is refused for %d nodes from %d to %d', (count, low, high) => {
    expect(() => gaussLegendre(count, low, high)).toThrow(RangeError);
  });
});

describe('linear equations', () => {
  it('are solved, also where the first pivot is 0', () => {
    expect(
      solveLinear(
        [
          [0, 2],
          [1, 3],
        ],
        [4, 7],
      ),
    ).toEqual([1, 2]);
    expect(solveLinear([], [])).toEqual([]);
  });

  it('are satisfied by what is said to solve them', () => {
    const row = fc.array(fc.integer({ min: -9, max: 9 }), { minLength: 5, maxLength: 5 });
    fc.assert(
      fc.property(fc.array(row, { minLength: 5, maxLength: 5 }), row, (rows, right) => {
        // A heavy diagonal keeps them solvable.
        const matrix = rows.map((one, at) => one.map((value, column) => value + (at === column ? 60 : 0)));
        const solution = solveLinear(matrix, right);
        for (const [at, one] of matrix.entries()) {
          const left = one.reduce((sum, value, column) => sum + value * (solution[column] ?? NaN), 0);
          expect(Math.abs(left - (right[at] ?? NaN))).toBeLessThan(1e-12);
        }
      }),
    );
  });

  it('that settle nothing are refused', () => {
    expect(() =>
      solveLinear(
        [
          [1, 2],
          [2, 4],
        ],
        [1, 2],
      ),
    ).toThrow('No single solution');
    expect(() => solveLinear([[1, 2]], [1])).toThrow('The shapes do not fit');
  });
});
