import { logGamma } from '../statistics/log-gamma.js';
import { rangeMoments } from './range-moments.js';

/** The limits of a control chart lie so many standard deviations of the plotted figure from its centre line. */
export const limitWidth = 3;

/** The factors of charts of means and standard deviations, under their customary names. */
export interface DeviationFactors {
  /** The mean of s, in σ. */
  readonly c4: number;
  /** Limits of means from s̄, and from a known σ. */
  readonly a3: number;
  readonly a: number;
  /** Limits of s from s̄, and from a known σ; the lower ones cut off at 0. */
  readonly b3: number;
  readonly b4: number;
  readonly b5: number;
  readonly b6: number;
}

/** The factors of charts of means and ranges, under their customary names. */
export interface RangeFactors {
  /** The mean and the standard deviation of the range, in σ. */
  readonly d2: number;
  readonly d3: number;
  /** Limits of means from R̄. */
  readonly a2: number;
  /** Limits of R from a known σ (D₁, D₂) and from R̄ (D₃, D₄); the lower ones cut off at 0. */
  readonly lowerFromSigma: number;
  readonly upperFromSigma: number;
  readonly lowerFromMean: number;
  readonly upperFromMean: number;
}

/**
 * c₄, the mean of the standard deviation of n normal values (n − 1 below) in standard deviations of a value:
 * √(2/(n − 1)) · Γ(n/2)/Γ((n − 1)/2).
 *
 * @param count n, whole, 2 or more
 * @returns below 1; relative error below 10⁻¹² up to a hundred values, below 10⁻¹⁰ up to ten thousand
 * @throws RangeError when the count is not whole, or below 2
 * @example unbiasingFactor(5) // 0.939985602987…
 */
export function unbiasingFactor(count: number): number {
  if (!Number.isInteger(count) || count < 2) throw new RangeError(`c₄ needs 2 values or more, not ${count}`);
  return Math.sqrt(2 / (count - 1)) * Math.exp(logGamma(count / 2) - logGamma((count - 1) / 2));
}

/**
 * The factors for charts of means and standard deviations of n values each: A₃ = 3/(c₄√n), B₃ and B₄ = 1 ∓ 3√(1 − c₄²)/c₄,
 * A = 3/√n, B₅ and B₆ = c₄ ∓ 3√(1 − c₄²).
 *
 * @throws RangeError as `unbiasingFactor`
 * @example deviationFactors(5).a3 // 1.4272994…
 */
export function deviationFactors(count: number): DeviationFactors {
  const c4 = unbiasingFactor(count);
  const width = limitWidth * Math.sqrt(1 - c4 * c4);
  const a = limitWidth / Math.sqrt(count);
  const [b5, b6] = [Math.max(0, c4 - width), c4 + width];
  return { c4, a, a3: a / c4, b3: b5 / c4, b4: b6 / c4, b5, b6 };
}

/**
 * The factors for charts of means and ranges of n values each: A₂ = 3/(d₂√n), D₁ and D₂ = d₂ ∓ 3d₃, D₃ and D₄ = 1 ∓ 3d₃/d₂.
 *
 * @param count whole, 2 to 25. Above about ten the range wastes what the values tell, and s is better
 * @throws RangeError as `rangeMoments`
 * @example rangeFactors(5).a2 // 0.5768…
 */
export function rangeFactors(count: number): RangeFactors {
  const { d2, d3 } = rangeMoments(count);
  const [lower, upper] = [Math.max(0, d2 - limitWidth * d3), d2 + limitWidth * d3];
  return {
    d2,
    d3,
    a2: limitWidth / (d2 * Math.sqrt(count)),
    lowerFromSigma: lower,
    upperFromSigma: upper,
    lowerFromMean: lower / d2,
    upperFromMean: upper / d2,
  };
}
