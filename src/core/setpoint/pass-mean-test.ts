import { gaussLegendre } from '../statistics/gauss-legendre.js';
import { logGamma } from '../statistics/log-gamma.js';
import { normalShares } from '../statistics/standard-normal.js';

/** The reference test's look at the mean: accepted where x̄ is at least Qn − k·s of n packs. */
export interface MeanTest {
  /** n, 2 to 1000. */
  readonly packCount: number;
  /** k, 0 or more: t(0.995; n − 1)/√n. */
  readonly factor: number;
}

/**
 * The chance that a lot passes the mean test of the reference test.
 *
 * Why it stands here: it is generous. With a true mean of exactly Qn a lot passes 995 times in 1000, and with 0.3 σ less
 * still 7 times in 10, so passing it is no proof that the mean is right, and no packer may steer by it.
 *
 * The share of normal means that pass for a given s, over the distribution of s (chi with n − 1 degrees of freedom).
 *
 * @param shift the true mean less Qn, in standard deviations of a pack
 * @returns from 0 to 1; absolute error below 10⁻¹⁰
 * @throws RangeError outside of the ranges
 * @see Directive 76/211/EEC Annex II 2.3; UK SI 2006/659 Schedule 2, 4.5 to 4.7
 * @example chanceToPassMeanTest({ packCount: 50, factor: 0.379 }, -0.3) // 0.7005…
 */
export function chanceToPassMeanTest({ packCount, factor }: MeanTest, shift: number): number {
  if (!Number.isInteger(packCount) || packCount < 2 || packCount > 1000) {
    throw new RangeError(`The mean test takes 2 to 1000 packs, not ${packCount}`);
  }
  if (!(factor >= 0) || !Number.isFinite(factor + shift)) throw new RangeError(`No mean test of ${factor} at ${shift}`);
  const freedom = packCount - 1;
  const logScale = Math.LN2 + (freedom / 2) * Math.log(freedom / 2) - logGamma(freedom / 2);
  // s/σ lies about 1 within 1/√(2ν); ten times that leaves out less than rounding.
  const reach = 10 / Math.sqrt(2 * freedom);
  return gaussLegendre(100, Math.max(0, 1 - reach), 1 + reach).reduce((sum, { at, weight }) => {
    const density = Math.exp(logScale + (freedom - 1) * Math.log(at) - (freedom * at * at) / 2);
    return sum + weight * density * normalShares(Math.sqrt(packCount) * (shift + factor * at)).below;
  }, 0);
}
