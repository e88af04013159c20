import { from, type Origin } from './evidence.js';
import { maximumAllowableVariationMilligrams } from './maximum-allowable-variation.js';
import { permissibleError, type PermissibleError, type ScaleOfPack } from './scale-error.js';
import { tolerableNegativeErrorMilligrams } from './tolerable-negative-error.js';

/** Whose demand on the scale: the reference test of the EU and the UK, OIML R 87, or NIST Handbook 133. */
export type ScaleDemand = 'directive' | 'oiml-r87' | 'handbook-133';

/**
 * Whether a scale will do for a pack. `error` and `allowed` are compared, in milligrams: `allowed` is a fifth of the
 * tolerable error, or a sixth of the maximum allowable variation; both may have fractions, the verdict has none.
 */
export type ScaleFitness = Origin &
  (
    | {
        readonly verdict: 'good-enough' | 'too-coarse';
        readonly errorMilligrams: number;
        readonly allowedMilligrams: number;
      }
    | { readonly verdict: 'cannot-weigh-it'; readonly why: Exclude<PermissibleError['kind'], 'error'> }
  );

/** A pack as it stands on the scale. */
export interface PackOnScale {
  readonly nominalMilligrams: number;
  /** The pack with its packaging, in whole milligrams: the error goes by what is on the scale, not by the net. */
  readonly grossMilligrams: number;
  /** The empty packaging where it is weighed on the same scale and taken off; `null` where its tare is known otherwise. */
  readonly tareMilligrams: number | null;
}

/**
 * Whether a scale is good enough to check packs of a nominal quantity on.
 *
 * EU and UK: its error is a fifth of the tolerable negative error at most. OIML R 87: its expanded uncertainty (k = 2) is
 * 0.2 T at most; without a certificate the error in service is taken as equally likely anywhere within its limits, so
 * U = 2·MPE/√3 (JCGM 100:2008, 4.3.7; our own reading). USA: its division is a sixth of the maximum allowable variation
 * at most. Where the empty packaging is weighed too, two readings make the net, and their errors may add up.
 *
 * It does not follow the size of the pack: 3 kg need e = 2 g on class III where 2.5 kg may have 5 g, because 600 e are
 * permitted twice the error of 500 e. So it is reckoned each time.
 *
 * @throws RangeError where a mass is not whole milligrams above 0, or the nominal quantity outside of the table
 * @see Directive 76/211/EEC Annex II 1; NI SR 2011/331 Schedule 2 paragraph 1.3; NIST Handbook 133 section 2.2
 * @example scaleForPack('directive', scaleOf5Grams, packOf3Kilograms) // too-coarse: 10 g against 9 g
 */
export function scaleForPack(demand: ScaleDemand, scale: ScaleOfPack, pack: PackOnScale): ScaleFitness {
  const gross = permissibleError(scale, pack.grossMilligrams);
  if (gross.kind !== 'error') return { verdict: 'cannot-weigh-it', why: gross.kind, ...origins[demand] };
  if (demand === 'handbook-133') return byDivision(scale, pack.nominalMilligrams);
  const errorMilligrams = gross.milligrams + tareErrorMilligrams(scale, pack.tareMilligrams);
  return byError(demand, errorMilligrams, pack.nominalMilligrams);
}

/** What is known of a weigher that has no accuracy class on its plate, such as one that weighs packs as they run by. */
export interface KnownScale {
  /** How far off a weighing may be, by its last verification or test; whole milligrams above 0. */
  readonly errorMilligrams: number;
  /** The step of its display, in whole milligrams above 0. */
  readonly intervalMilligrams: number;
}

/**
 * Whether a weigher whose error is known is good enough for packs of a nominal quantity.
 *
 * The rules are those of `scaleForPack`; the error is taken as known and not from a class. Its tare is known otherwise.
 *
 * @throws RangeError where the nominal quantity is outside of the table
 * @see Directive 76/211/EEC Annex II 1; NI SR 2011/331 Schedule 2 paragraph 1.3; NIST Handbook 133 section 2.2
 * @example weigherForPack('directive', { errorMilligrams: 500, intervalMilligrams: 200 }, 2_000_000).verdict // good-enough
 */
export function weigherForPack(demand: ScaleDemand, weigher: KnownScale, nominalMilligrams: number): ScaleFitness {
  if (demand === 'handbook-133') return byDivision(weigher, nominalMilligrams);
  return byError(demand, weigher.errorMilligrams, nominalMilligrams);
}

function byError(
  demand: Exclude<ScaleDemand, 'handbook-133'>,
  errorMilligrams: number,
  nominalMilligrams: number,
): ScaleFitness {
  const tolerance = tolerableNegativeErrorMilligrams(nominalMilligrams, demand);
  const isGoodEnough =
    demand === 'directive'
      ? 5 * errorMilligrams <= tolerance
      : // 2·E/√3 ≤ T/5, squared and multiplied out.
        100n * BigInt(errorMilligrams) ** 2n <= 3n * BigInt(tolerance) ** 2n;
  return {
    verdict: isGoodEnough ? 'good-enough' : 'too-coarse',
    errorMilligrams: demand === 'directive' ? errorMilligrams : (2 * errorMilligrams) / Math.sqrt(3),
    allowedMilligrams: tolerance / 5,
    ...origins[demand],
  };
}

const origins: Readonly<Record<ScaleDemand, Origin>> = {
  directive: from('NI SR 2011/331 Schedule 2 paragraph 1.3'),
  'oiml-r87': from('OIML R 87', 'memory'),
  'handbook-133': from('section 2.2'),
};

function byDivision(
  { intervalMilligrams }: Pick<ScaleOfPack, 'intervalMilligrams'>,
  labelledMilligrams: number,
): ScaleFitness {
  const variation = maximumAllowableVariationMilligrams(labelledMilligrams);
  return {
    verdict: 6 * intervalMilligrams <= variation ? 'good-enough' : 'too-coarse',
    errorMilligrams: intervalMilligrams,
    allowedMilligrams: variation / 6,
    ...origins['handbook-133'],
  };
}

/** Errors for net and tare are those of the load; a packaging below Min is taken with the least error, one e. */
function tareErrorMilligrams(scale: ScaleOfPack, tareMilligrams: number | null): number {
  if (tareMilligrams === null) return 0;
  const error = permissibleError(scale, tareMilligrams);
  return error.kind === 'error' ? error.milligrams : scale.intervalMilligrams;
}

/** 1 mg to 1 kg: every interval that a scale for packs can have. */
const intervals = Array.from({ length: 7 }, (_, power) => [1, 2, 5].map((step) => step * 10 ** power)).flat();

/**
 * The coarsest interval of a class that is good enough for a pack, so that somebody who buys a scale knows what to ask for.
 *
 * @returns whole milligrams, 1, 2 or 5 times a power of ten; `null` where no scale of that class will do
 * @throws RangeError as `scaleForPack`
 * @example coarsestInterval('directive', 'III', { nominalMilligrams: 1_000_000, grossMilligrams: 1_006_000, tareMilligrams: null }) // 1000
 */
export function coarsestInterval(
  demand: ScaleDemand,
  accuracyClass: ScaleOfPack['accuracyClass'],
  pack: PackOnScale,
): number | null {
  const isGoodEnough = (intervalMilligrams: number): boolean =>
    scaleForPack(demand, { accuracyClass, intervalMilligrams }, pack).verdict === 'good-enough';
  return intervals.findLast(isGoodEnough) ?? null;
}
