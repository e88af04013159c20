import { describe, expect, it } from '@jest/globals';
import { fitLeastSquares } from './least-squares.js';

describe('a fit by least squares', () => {
  it('of one number is the mean, weighted by the uncertainties', () => {
    const fit = fitLeastSquares({
      start: [0],
      scales: [1],
      residualsAt: ([centre = NaN]) => [(1 - centre) / 0.5, (4 - centre) / 1],
    });
    expect(fit?.parameters[0]).toBeCloseTo((4 * 1 + 4) / 5, 9);
    expect(fit?.covariance[0]?.[0]).toBeCloseTo(1 / 5, 9);
    expect(fit?.sumOfSquares).toBeCloseTo((0.6 / 0.5) ** 2 + 2.4 ** 2, 9);
    expect(fit?.degreesOfFreedom).toBe(1);
  });

  it('of a straight line has the covariance of its closed form', () => {
    const places = [0, 1, 2, 3, 4];
    const fit = fitLeastSquares({
      start: [0, 0],
      scales: [1, 1],
      residualsAt: ([offset = NaN, rise = NaN]) => places.map((x, i) => [1, 2.9, 5.2, 7, 8.9][i]! - offset - rise * x),
    });
    expect(fit?.parameters[1]).toBeCloseTo(1.99, 8);
    expect(fit?.covariance[1]?.[1]).toBeCloseTo(1 / 10, 8);
    expect(fit?.covariance[0]?.[1]).toBeCloseTo(-2 / 10, 8);
    expect(fit?.covariance[0]?.[0]).toBeCloseTo(1 / 5 + 4 / 10, 8);
  });

  // NIST Statistical Reference Datasets, nonlinear regression, Misra1a (data and certified values from memory; another
  // program's fit of these data gives eight of the certified digits).
  const misra = [
    [77.6, 10.07],
    [114.9, 14.73],
    [141.1, 17.94],
    [190.8, 23.93],
    [239.9, 29.61],
    [289, 35.18],
    [332.8, 40.02],
    [378.4, 44.82],
    [434.8, 50.76],
    [477.3, 55.05],
    [536.8, 61.01],
    [593.1, 66.4],
    [689.1, 75.47],
    [760, 81.78],
  ] as const;

  it.each([
    [500, 0.0001],
    [250, 0.0005],
  ])('agrees with the certified values of Misra1a from b1 = %d, b2 = %d', (b1, b2) => {
    const fit = fitLeastSquares({
      start: [b1, b2],
      scales: [100, 0.0005],
      residualsAt: ([most = NaN, rate = NaN]) => misra.map(([x, y]) => y - most * -Math.expm1(-rate * x)),
    })!;
    const spread = fit.sumOfSquares / fit.degreesOfFreedom;
    expect(Math.abs(fit.parameters[0]! / 2.3894212918e2 - 1)).toBeLessThan(1e-8);
    expect(Math.abs(fit.parameters[1]! / 5.5015643181e-4 - 1)).toBeLessThan(1e-8);
    expect(Math.abs(Math.sqrt(spread * fit.covariance[0]![0]!) / 2.7070075241 - 1)).toBeLessThan(1e-6);
    expect(Math.abs(Math.sqrt(spread * fit.covariance[1]![1]!) / 7.2668688436e-6 - 1)).toBeLessThan(1e-6);
    expect(Math.abs(fit.sumOfSquares / 1.2455138894e-1 - 1)).toBeLessThan(1e-9);
  });

  it('says nothing about a parameter that makes no difference', () => {
    const both = fitLeastSquares({
      start: [0, 0],
      scales: [1, 1],
      residualsAt: ([one = NaN, other = NaN]) => [1 - one - other, 2 - one - other, 3 - one - other],
    });
    expect(both).toBeNull();
  });

  it('needs as many residuals as parameters, and a start that has some', () => {
    const residualsAt = () => [1];
    expect(() => fitLeastSquares({ start: [0, 0], scales: [1, 1], residualsAt })).toThrow(RangeError);
    expect(() => fitLeastSquares({ start: [0], scales: [1], residualsAt: () => [NaN] })).toThrow(RangeError);
  });
});
