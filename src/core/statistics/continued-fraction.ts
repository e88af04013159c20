/** Stands in for a denominator of exactly zero (modified Lentz). */
const almostZero = 1e-300;
/** More steps than any fraction here takes within the ranges that its function states. */
const mostSteps = 20_000;

/** A term of a continued fraction: its numerator, and the denominator that the next term is added to. */
export interface FractionTerm {
  readonly numerator: number;
  readonly denominator: number;
}

/**
 * The value of the continued fraction whole + n₁/(d₁ + n₂/(d₂ + …)), evaluated forward after Lentz in Thompson's and
 * Barnett's modified form (from memory), until a step changes it by no more than one rounding.
 *
 * @param whole what stands before the first term
 * @param termAt gives term 1, 2, …; called once for each, in order
 * @throws RangeError when 20 000 terms are not enough
 * @example continuedFraction(1, () => ({ numerator: 1, denominator: 1 })) // 1.618…, the golden ratio
 */
export function continuedFraction(whole: number, termAt: (index: number) => FractionTerm): number {
  let value = notZero(whole);
  let upper = value;
  let lower = 0;
  for (let index = 1; index <= mostSteps; index += 1) {
    const { numerator, denominator } = termAt(index);
    lower = 1 / notZero(denominator + numerator * lower);
    upper = notZero(denominator + numerator / upper);
    value *= upper * lower;
    if (Math.abs(upper * lower - 1) <= Number.EPSILON) return value;
  }
  throw new RangeError(`The continued fraction does not settle in ${mostSteps} terms`);
}

function notZero(denominator: number): number {
  return Math.abs(denominator) < almostZero ? almostZero : denominator;
}
