import { mean } from '../statistics/mean.js';

/** How far results of one method scatter in one laboratory, from samples that were analysed more than once. */
export interface Repeatability {
  /** Standard deviation of a single result, in the unit of the results. */
  readonly standard: number;
  readonly degreesOfFreedom: number;
}

/** Fewer leave the scatter itself unknown by more than half. Our own value, no source. */
export const fewestRepeats = 4;

/**
 * The repeatability standard deviation of a method from a laboratory's own repeats: the spread within each sample,
 * pooled over samples.
 *
 * s_r² = Σ (x − mean of its sample)² / Σ (n − 1). It says how far two results of one sample lie apart; what the
 * method makes all of them off by is not in it, nor that one laboratory differs from another.
 * @param samples the results of each sample by one method, in any order; those of one result do not count
 * @returns null where there are fewer than `fewestRepeats` degrees of freedom, or all repeats agree to the last digit: a scatter below
 * the rounding is not none
 * @throws RangeError when a result is not finite
 * @see ISO 5725-2, the repeatability variance (clause from memory)
 * @example repeatabilityOf([[30, 32], [28, 28], [25, 24], [31, 30]]) // { standard: 0.866…, degreesOfFreedom: 4 }
 */
export function repeatabilityOf(samples: readonly (readonly number[])[]): Repeatability | null {
  let [squares, degreesOfFreedom] = [0, 0];
  for (const results of samples) {
    if (results.length < 2) continue;
    const centre = mean(results);
    squares += results.reduce((sum, result) => sum + (result - centre) ** 2, 0);
    degreesOfFreedom += results.length - 1;
  }
  if (degreesOfFreedom < fewestRepeats || squares === 0) return null;
  return { standard: Math.sqrt(squares / degreesOfFreedom), degreesOfFreedom };
}
