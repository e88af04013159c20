import { gaussLegendre } from '../statistics/gauss-legendre.js';
import { solveLinear } from '../statistics/solve-linear.js';
import { normalDensity, normalShares } from '../statistics/standard-normal.js';
import { averageSigma } from './weighted-average-chart.js';

/**
 * The operating characteristic of a chart of means: the chance that the next mean of n values does not show a shift.
 *
 * @param shift of the mean of the process, in standard deviations of a single value; either sign
 * @param count n, 1 or more
 * @param width limits lie ± so many standard deviations of the mean from the centre line, above 0
 * @returns from 0 to 1; as exact as the normal shares
 * @throws RangeError outside of these ranges
 * @see Montgomery, Introduction to Statistical Quality Control, 6.2.6 (from memory)
 * @example chanceToMiss(1, 5) // 0.7775…
 */
export function chanceToMiss(shift: number, count: number, width = 3): number {
  if (!(count >= 1) || !(width > 0) || !Number.isFinite(shift)) throw new RangeError('No such chart of means');
  const moved = Math.abs(shift) * Math.sqrt(count);
  return normalShares(width - moved).below - normalShares(-width - moved).below;
}

/**
 * The average run length of a chart of means without chart rules: how many means until one lies beyond the limits.
 *
 * @returns 1 or more; 370.4 without a shift at ± 3
 * @throws RangeError as `chanceToMiss`
 * @example meansRunLength(0, 5) // 370.398…
 */
export function meansRunLength(shift: number, count: number, width = 3): number {
  const moved = Math.abs(shift) * Math.sqrt(count);
  chanceToMiss(shift, count, width);
  return 1 / (normalShares(width - moved).above + normalShares(-width - moved).below);
}

/** Cumulative sums of figures of standard deviation 1. */
export interface CumulativeSumDesign {
  /** k = K/σ, 0 or more. */
  readonly allowance: number;
  /** h = H/σ, above 0, at most 20. */
  readonly decision: number;
  /** In σ, from 0 to h; of both sums. 0 where left out. */
  readonly headStart?: number;
}

/**
 * The average run length of cumulative sums to both sides: how many figures until one of the sums is above H.
 *
 * One side by its integral equation, L(u) = 1 + L(0)·Φ(k − u − δ) + ∫₀ʰ L(v) φ(v − u + k − δ) dv (Page 1954), solved at the
 * nodes of Gauss and Legendre; both together by Lucas and Crosier's (1982) formula, which is exact as long as both sums
 * can't be about to signal at once (k at least ½, or a small head start).
 *
 * @param shift of the mean, in standard deviations of a figure, from the moment that the sums start
 * @returns 1 or more; relative error below 10⁻⁹ and 10⁻¹⁴ of the length together (with half and twice the nodes the same)
 * @throws RangeError outside of the ranges
 * @example cumulativeSumRunLength(1, { allowance: 0.5, decision: 4 }) // 8.38…
 */
export function cumulativeSumRunLength(shift: number, design: CumulativeSumDesign): number {
  const { headStart = 0 } = design;
  if (!(headStart >= 0 && headStart <= design.decision)) throw new RangeError(`No head start of ${headStart}`);
  const [up, down] = [oneSided(shift, design), oneSided(-shift, design)];
  const [upBegun, downBegun] = [up(headStart), down(headStart)];
  return (upBegun * down(0) + up(0) * downBegun - up(0) * down(0)) / (up(0) + down(0));
}

function oneSided(shift: number, { allowance, decision }: CumulativeSumDesign): (start: number) => number {
  if (!(allowance >= 0) || !(decision > 0 && decision <= 20) || !Number.isFinite(shift)) {
    throw new RangeError('No such cumulative sums');
  }
  const nodes = gaussLegendre(nodesFor(decision), 0, decision);
  const move = shift - allowance;
  // From a sum of u, 0 is next with the first chance, and v with the density beside it.
  const chancesFrom = (u: number) => [
    normalShares(-u - move).below,
    ...nodes.map(({ at, weight }) => weight * normalDensity(at - u - move)),
  ];
  const lengths = lengthsOf([0, ...nodes.map(({ at }) => at)].map(chancesFrom));
  return (start) => 1 + weighted(chancesFrom(start), lengths);
}

/**
 * The average run length of an exponentially weighted moving average with the limits of a long run: how many figures
 * until the average lies beyond them.
 *
 * By the integral equation L(u) = 1 + (1/λ) ∫ L(y) φ((y − (1 − λ)u)/λ − δ) dy between the limits (Crowder 1987,
 * Technometrics 29, 401, from memory), solved at the nodes of Gauss and Legendre. The exact limits of the first points
 * are narrower, so a drift that is there from the start shows a little sooner than said here.
 *
 * @param shift of the mean, in standard deviations of a figure
 * @param newestWeight λ, from 0.02 to 1
 * @param width L, above 0
 * @returns 1 or more; relative error below 10⁻⁹ and 10⁻¹⁴ of the length together (with half and twice the nodes the same)
 * @throws RangeError outside of these ranges
 * @example weightedAverageRunLength(1, 0.2, 2.962) // 10.5…
 */
export function weightedAverageRunLength(shift: number, newestWeight: number, width: number): number {
  if (!(newestWeight >= 0.02 && newestWeight <= 1) || !(width > 0 && width <= 10) || !Number.isFinite(shift)) {
    throw new RangeError('No such weighted average');
  }
  const limit = width * averageSigma({ sigma: 1, newestWeight }, Infinity);
  const nodes = gaussLegendre(nodesFor(limit / newestWeight), -limit, limit);
  const chancesFrom = (u: number) =>
    nodes.map(({ at, weight }) => {
      return (weight / newestWeight) * normalDensity((at - (1 - newestWeight) * u) / newestWeight - shift);
    });
  const lengths = lengthsOf(nodes.map(({ at }) => chancesFrom(at)));
  return 1 + weighted(chancesFrom(0), lengths);
}

/** So many nodes follow a bell of width 1 over a distance with digits to spare. */
function nodesFor(distance: number): number {
  return 24 + Math.ceil(6 * distance);
}

/** L = 1 + P·L, solved for L. */
function lengthsOf(chances: readonly (readonly number[])[]): readonly number[] {
  const rows = chances.map((row, at) => row.map((chance, column) => (at === column ? 1 : 0) - chance));
  return solveLinear(
    rows,
    chances.map(() => 1),
  );
}

function weighted(chances: readonly number[], lengths: readonly number[]): number {
  return chances.reduce((sum, chance, at) => sum + chance * (lengths[at] ?? NaN), 0);
}
