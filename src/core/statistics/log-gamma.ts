/** The series of Stirling: B₂ₖ / (2k(2k − 1)) for k = 1 to 8, B₂ₖ being Bernoulli's numbers. */
const stirling = [1 / 12, -1 / 360, 1 / 1260, -1 / 1680, 1 / 1188, -691 / 360360, 1 / 156, -3617 / 122400];

/** Below this the argument is first stepped up, because the series is good for large arguments only. */
const seriesStartsAt = 10;

/**
 * The natural logarithm of the gamma function, which the distributions below are made of.
 *
 * Stirling's series after stepping the argument up to 10 or more (NIST Digital Library of Mathematical Functions 5.5.1
 * and 5.11.1, from memory).
 *
 * @param x a finite number above 0
 * @returns ln Γ(x). The series is cut off where the next term is below 2·10⁻¹⁸; what remains is rounding, within 10⁻¹⁴
 * of the larger of 1 and the result
 * @throws RangeError when x is not a finite number above 0
 * @example logGamma(5) // 3.1780538303479458, the logarithm of 24
 */
export function logGamma(x: number): number {
  if (!(x > 0) || !Number.isFinite(x)) throw new RangeError(`ln Γ needs a finite number above 0, not ${x}`);
  let steppedUp = x;
  let product = 1;
  while (steppedUp < seriesStartsAt) {
    product *= steppedUp;
    steppedUp += 1;
  }
  const remainder = stirlingRemainder(steppedUp);
  return (
    (steppedUp - 0.5) * Math.log(steppedUp) - steppedUp + 0.5 * Math.log(2 * Math.PI) + remainder - Math.log(product)
  );
}

/**
 * What Stirling's formula leaves out: ln Γ(x) less (x − ½)·ln x − x + ½·ln 2π.
 *
 * @param x 10 or more
 * @returns about 1/(12x); absolute error below 10⁻¹⁷ (NIST Digital Library of Mathematical Functions 5.11.1, from memory)
 * @throws RangeError when x is below 10, where the series is cut off too early, or not finite
 * @example stirlingRemainder(10) // 0.0083305…
 */
export function stirlingRemainder(x: number): number {
  if (!(x >= seriesStartsAt) || !Number.isFinite(x))
    throw new RangeError(`Stirling's series needs 10 or more, not ${x}`);
  const square = x * x;
  return stirling.reduceRight((sum, coefficient) => sum / square + coefficient, 0) / x;
}
