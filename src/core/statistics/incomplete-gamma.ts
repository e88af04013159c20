import { continuedFraction } from './continued-fraction.js';
import { logGamma, stirlingRemainder } from './log-gamma.js';

const largestShape = 1e5;
/** Beside the sum of the series; what follows such a term is smaller than the rounding of the sum. */
const smallestTerm = 1e-19;
/** From here on the logarithm of the gamma function is taken apart, so that large numbers need not cancel. */
const largeShape = 10;

/** Both shares of a gamma distribution of scale 1: below x and above it; together 1. */
export interface IncompleteGamma {
  readonly lower: number;
  readonly upper: number;
}

/**
 * The regularized incomplete gamma functions P(a, x) and Q(a, x) = 1 − P: the share of a gamma distribution of shape a
 * that lies below x, and above it. For whole a, Q is the chance of fewer than a events where x are expected.
 *
 * Below a + 1 the power series of P, from there on the continued fraction of Q, evaluated forward after Lentz: each is
 * used where it converges fast and where its own share is not the far larger one, so the small tail never comes out of
 * a difference (NIST Digital Library of Mathematical Functions 8.11.4 and 8.9.2, from memory).
 *
 * @param shape a, above 0 and at most 100 000
 * @param x 0 or more; Infinity is allowed and gives lower 1
 * @returns each from 0 to 1; relative error of each below 2·10⁻¹³ for a up to 200, 10⁻¹¹ up to 100 000, as long as the
 * share is above 10⁻¹³⁰ (compared with 40-digit values)
 * @throws RangeError outside of these ranges
 * @example incompleteGamma(1, 0.5) // { lower: 0.3934693…, upper: 0.6065306… }: 1 − e^(−0.5) and e^(−0.5)
 */
export function incompleteGamma(shape: number, x: number): IncompleteGamma {
  assertShape(shape);
  if (!(x >= 0)) throw new RangeError(`x must be 0 or more, not ${x}`);
  if (x === 0) return { lower: 0, upper: 1 };
  if (x === Infinity) return { lower: 1, upper: 0 };
  if (x < shape + 1) {
    const lower = Math.min(1, gammaTerm(shape, x) * series(shape, x));
    return { lower, upper: 1 - lower };
  }
  const upper = Math.min(1, ((gammaTerm(shape, x) * shape) / x) * fraction(shape, x));
  return { lower: 1 - upper, upper };
}

/**
 * The same for the shapes 1, 2, … up to a count, at one x.
 *
 * P(a, x) = P(a + 1, x) + xᵃ e⁻ˣ/Γ(a + 1), each share summed up from its small end, so that none is a difference.
 *
 * @param count whole, 0 or more; 0 gives no shares
 * @param x 0 or more
 * @returns shape 1 first; relative error as `incompleteGamma`
 * @throws RangeError outside of these ranges
 * @example wholeIncompleteGammas(2, 3).map(({ upper }) => upper) // [0.0497870…, 0.1991482…]: e⁻³ and 4e⁻³
 */
export function wholeIncompleteGammas(count: number, x: number): readonly IncompleteGamma[] {
  if (!Number.isInteger(count) || count < 0) throw new RangeError(`The count must be whole, 0 or more, not ${count}`);
  if (count === 0) return [];
  const terms = Array.from({ length: count }, (_, shape) => gammaTerm(shape, x));
  const lower: number[] = [incompleteGamma(count, x).lower];
  for (let shape = count - 1; shape > 0; shape -= 1) lower.push((lower.at(-1) ?? 0) + (terms[shape] ?? 0));
  let upper = 0;
  return terms.map((term, place) => {
    upper += term;
    return { lower: Math.min(1, lower[count - 1 - place] ?? 0), upper: Math.min(1, upper) };
  });
}

/**
 * The term that both functions are made of: xᵃ e⁻ˣ/Γ(a + 1). For whole a it is the chance of exactly a events where x
 * are expected (Poisson).
 *
 * @param shape a, 0 or more and at most 100 000
 * @param x 0 or more, finite
 * @returns from 0 to 1; relative error as `incompleteGamma`
 * @throws RangeError outside of these ranges
 * @example gammaTerm(0, 0.5) // 0.6065306…
 */
export function gammaTerm(shape: number, x: number): number {
  if (shape !== 0) assertShape(shape);
  if (!(x >= 0) || !Number.isFinite(x)) throw new RangeError(`x must be finite and 0 or more, not ${x}`);
  if (shape === 0) return Math.exp(-x);
  if (x === 0) return 0;
  if (shape < largeShape) return Math.exp(shape * Math.log(x) - x - logGamma(shape + 1));
  const beyond = (x - shape) / shape;
  // x − a − a·ln(x/a), which is small about x = a, where the large parts of the plain form cancel.
  const distance = shape * (beyond - Math.log1p(beyond));
  return Math.exp(-distance - stirlingRemainder(shape)) / Math.sqrt(2 * Math.PI * shape);
}

/** 1 + x/(a + 1) + x²/((a + 1)(a + 2)) + …, all terms positive. */
function series(shape: number, x: number): number {
  let term = 1;
  let sum = 1;
  for (let n = 1; term > sum * smallestTerm; n += 1) {
    term *= x / (shape + n);
    sum += term;
  }
  return sum;
}

/** x e^x x^(−a) Γ(a, x). */
function fraction(shape: number, x: number): number {
  const settled = continuedFraction(x + 1 - shape, (n) => {
    return { numerator: -n * (n - shape), denominator: x + 1 - shape + 2 * n };
  });
  return x / settled;
}

function assertShape(shape: number): void {
  if (!(shape > 0 && shape <= largestShape))
    throw new RangeError(`The shape must be above 0 and at most 1e5, not ${shape}`);
}
