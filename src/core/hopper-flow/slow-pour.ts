/** A heel onto which sugar is poured evenly while packs leave evenly, all of it mixed all the time. */
export interface SlowPour {
  readonly heelGrams: number;
  readonly pouredGrams: number;
  /** At most heel and poured together. */
  readonly leftGrams: number;
}

/**
 * The share that the heel still has of what leaves at the end of a pour that takes time.
 *
 * (heel/level)^(poured/(poured − left)), level being heel + poured − left; e^(−left/heel) where as much is poured as
 * leaves. Pour and drain takes a tip as poured at once, heel/(heel + poured): this says what that leaves out. Only the
 * ratio of both rates matters, not the time.
 *
 * @param pour all 0 or more, heel and poured together above 0
 * @returns 0 to 1: what is inside has the same share; 0 without a heel
 * @throws RangeError on negative grams, and when more leaves than was there
 * @see quality.md 4.3 (single zone, varying hold-up, linear filling)
 * @example heelShareAfterPour({ heelGrams: 1000, pouredGrams: 3000, leftGrams: 2000 }) // 0.125
 */
export function heelShareAfterPour({ heelGrams, pouredGrams, leftGrams }: SlowPour): number {
  const levelGrams = heelGrams + pouredGrams - leftGrams;
  if (!(heelGrams >= 0 && pouredGrams >= 0 && leftGrams >= 0 && levelGrams >= 0 && heelGrams + pouredGrams > 0)) {
    throw new RangeError(`${heelGrams} g, ${pouredGrams} g poured and ${leftGrams} g left make no sense`);
  }
  if (heelGrams === 0) return 0;
  if (pouredGrams === 0) return 1;
  const growth = (pouredGrams - leftGrams) / heelGrams;
  if (growth === 0) return Math.exp(-pouredGrams / heelGrams);
  if (levelGrams === 0) return 0;
  return Math.exp((-pouredGrams / heelGrams) * (Math.log1p(growth) / growth));
}
