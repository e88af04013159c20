import { gammaTerm, incompleteGamma } from '../statistics/incomplete-gamma.js';

/**
 * How long a gram stays in a hopper that is always as full, told in grams packed since it went in and never in minutes:
 * first it waits its turn in the plug part, then it passes through equal stirred zones, one after the other.
 */
export interface Residence {
  /** How many zones share the stirred part; whole, 0 for no stirred part at all, at most 10 000. */
  readonly zoneCount: number;
  /** The hold-up of the stirred part: what all its zones hold together. Above 0 (0 where there is no zone). */
  readonly holdUpGrams: number;
  /** What passes in order, nothing overtaking anything; 0 or more. */
  readonly plugGrams: number;
}

/** A stretch on the axis of cumulative grams, from ≤ to. */
export interface Stretch {
  readonly fromGrams: number;
  readonly toGrams: number;
}

/**
 * The share of what entered in one instant that has left by the time so many grams are packed: F.
 *
 * P(N, N(x − plug)/M) with the regularized incomplete gamma function P; without zones 0 before the plug has passed and 1
 * from then on. What is still inside is the washout 1 − F: also the share that is still heel in what leaves.
 *
 * @param grams packed since it entered; below 0 nothing has left
 * @returns `left` and `inside`, 0 to 1, together 1; relative error as `incompleteGamma`
 * @throws RangeError when the residence makes no sense
 * @see quality.md 4.3; tanks in series after Levenspiel, Chemical Reaction Engineering, ch. 14 (chapter from memory)
 * @example shareLeft({ zoneCount: 1, holdUpGrams: 500_000, plugGrams: 0 }, 500_000).inside // 0.3678794…, 1/e
 */
export function shareLeft(residence: Residence, grams: number): { readonly left: number; readonly inside: number } {
  assertResidence(residence);
  const { zoneCount, holdUpGrams, plugGrams } = residence;
  const stirredFor = grams - plugGrams;
  if (stirredFor < 0) return { left: 0, inside: 1 };
  if (zoneCount === 0) return { left: 1, inside: 0 };
  const { lower, upper } = incompleteGamma(zoneCount, (stirredFor * zoneCount) / holdUpGrams);
  return { left: lower, inside: upper };
}

/**
 * The peak of the residence time: where most of what entered in one instant comes out, as θ = grams/hold-up of the
 * stirred part, with the density E of θ there.
 *
 * θ = (N − 1)/N and E = N(N − 1)^(N − 1) e^−(N − 1)/(N − 1)!; one zone lets most out at once.
 *
 * @param zoneCount whole, 1 to 10 000
 * @returns the variance of θ too, 1/N
 * @throws RangeError outside of this range
 * @see quality.md 4.3
 * @example residencePeak(3) // { holdUps: 0.6666666…, density: 0.8120117…, variance: 0.3333333… }
 */
export function residencePeak(zoneCount: number): {
  readonly holdUps: number;
  readonly density: number;
  readonly variance: number;
} {
  assertResidence({ zoneCount, holdUpGrams: 1, plugGrams: 0 });
  if (zoneCount === 0) throw new RangeError('Without a zone there is no peak');
  return {
    holdUps: (zoneCount - 1) / zoneCount,
    density: zoneCount * gammaTerm(zoneCount - 1, zoneCount - 1),
    variance: 1 / zoneCount,
  };
}

/**
 * The number of zones that spread as much as a published dispersion number: to compare a trial with the literature, not
 * to choose a model by.
 *
 * N = 1/σ², σ² = 2/Pe − 2(1 − e^−Pe)/Pe² for a vessel closed at both ends.
 *
 * @param peclet u·L/D, from 0.01 to 10⁶; the greater, the less it mixes
 * @returns the number of zones, with fractions; near 1 for a small Péclet number
 * @throws RangeError outside of this range
 * @see quality.md 4.3; closed vessel after Levenspiel, ch. 13 (chapter from memory)
 * @example zonesOfDispersion(10) // 5.5555…
 */
export function zonesOfDispersion(peclet: number): number {
  if (!(peclet >= 0.01 && peclet <= 1e6)) {
    throw new RangeError(`A Péclet number must lie from 0.01 to 1e6, not ${peclet}`);
  }
  return peclet ** 2 / (2 * (peclet + Math.expm1(-peclet)));
}

/**
 * How many grams of a layer are in what left in a stretch, exactly: the mean over the stretch, not the value at a point.
 *
 * Both stretches lie on the axis of grams packed, and the layer enters at the rate at which packs leave (the hopper is
 * always as full). With G(x) = ∫₀ˣ F: G(q − a) − G(p − a) − G(q − b) + G(p − b) for a layer [a, b) and packs [p, q).
 *
 * @param entered when the layer went in, on the axis of grams packed; below 0 before the first pack
 * @param left the packs
 * @returns grams, 0 to the lesser of both lengths; over all layers without gaps they sum to the packs, over all packs to
 * what left of the layer. Error below 10⁻¹² of the greater of hold-up and layer; once the layer has entered whole, below
 * 10⁻¹¹ of the amount itself as long as that is above 10⁻¹² of the layer
 * @throws RangeError when the residence or a stretch makes no sense
 * @see quality.md 4.3 (pack share)
 * @example
 * gramsOfLayer({ zoneCount: 1, holdUpGrams: 500, plugGrams: 0 }, { fromGrams: 0, toGrams: 1000 },
 *   { fromGrams: 1000, toGrams: 2000 }) // 373.82…
 */
export function gramsOfLayer(residence: Residence, entered: Stretch, left: Stretch): number {
  assertResidence(residence);
  assertStretch(entered);
  assertStretch(left);
  return outflowOfLayer(residence, entered, left);
}

/**
 * What of a layer is still in the stirred part when so many grams are packed; from its last gram on (`grams` at least
 * `toGrams` + plug).
 * @returns grams, never rising
 * @example lingeringGrams({ zoneCount: 1, holdUpGrams: 500, plugGrams: 0 }, { fromGrams: 0, toGrams: 1000 }, 2000) // 58.5…
 */
export function lingeringGrams(residence: Residence, entered: Stretch, grams: number): number {
  const since = grams - residence.plugGrams;
  return stillToCome(residence, since - entered.toGrams) - stillToCome(residence, since - entered.fromGrams);
}

/** `gramsOfLayer` without its checks. */
export function outflowOfLayer(residence: Residence, entered: Stretch, left: Stretch): number {
  const [p, q] = [left.fromGrams - residence.plugGrams, left.toGrams - residence.plugGrams];
  const [a, b] = [entered.fromGrams, entered.toGrams];
  if (residence.zoneCount === 0) return Math.max(0, Math.min(b, q) - Math.max(a, p));
  if (q <= a) return 0;
  const grams =
    p >= b
      ? lingeringGrams(residence, entered, left.fromGrams) - lingeringGrams(residence, entered, left.toGrams)
      : leftOfFeed(residence, q - a) - leftOfFeed(residence, p - a) - leftOfFeed(residence, q - b);
  return Math.max(0, grams);
}

/**
 * F averaged over the packs of a stretch, for any number of zones above 0, whole or not: for the fit of a trial.
 * @param left counted from when it entered; where both ends are one, F there
 * @returns 0 to 1
 * @example meanShareLeft({ zoneCount: 1, holdUpGrams: 500, plugGrams: 0 }, { fromGrams: 0, toGrams: 1000 }) // 0.5676676…
 */
export function meanShareLeft(residence: Residence, { fromGrams, toGrams }: Stretch): number {
  const [p, q] = [fromGrams - residence.plugGrams, toGrams - residence.plugGrams];
  if (q > p) return (leftOfFeed(residence, q) - leftOfFeed(residence, p)) / (q - p);
  return p <= 0 ? 0 : incompleteGamma(residence.zoneCount, (p * residence.zoneCount) / residence.holdUpGrams).lower;
}

/** G(x): what has left of a feed that entered evenly for x grams. */
function leftOfFeed({ zoneCount, holdUpGrams }: Residence, x: number): number {
  if (x <= 0) return 0;
  const scaled = (x * zoneCount) / holdUpGrams;
  return x * incompleteGamma(zoneCount, scaled).lower - holdUpGrams * incompleteGamma(zoneCount + 1, scaled).lower;
}

/** ∫ₓ^∞ (1 − F): small where x is large, and never a difference of large numbers there. */
function stillToCome({ zoneCount, holdUpGrams }: Residence, x: number): number {
  if (zoneCount === 0) return 0;
  const scaled = (x * zoneCount) / holdUpGrams;
  return holdUpGrams * incompleteGamma(zoneCount + 1, scaled).upper - x * incompleteGamma(zoneCount, scaled).upper;
}

function assertResidence({ zoneCount, holdUpGrams, plugGrams }: Residence): void {
  if (!Number.isInteger(zoneCount) || zoneCount < 0 || zoneCount > 10_000) {
    throw new RangeError(`The number of zones must be whole, 0 to 10 000, not ${zoneCount}`);
  }
  const holds = zoneCount === 0 ? holdUpGrams >= 0 : holdUpGrams > 0;
  if (!holds || !(plugGrams >= 0) || !Number.isFinite(holdUpGrams + plugGrams)) {
    throw new RangeError(`A hold-up of ${holdUpGrams} g with a plug part of ${plugGrams} g makes no sense`);
  }
}

function assertStretch({ fromGrams, toGrams }: Stretch): void {
  if (!(fromGrams <= toGrams) || !Number.isFinite(toGrams - fromGrams)) {
    throw new RangeError(`From ${fromGrams} to ${toGrams} g is no stretch`);
  }
}
