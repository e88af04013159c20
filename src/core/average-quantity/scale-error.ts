/** Accuracy classes of weighing instruments that are not automatic (Directive 2014/31/EU, OIML R 76). */
export type AccuracyClass = 'I' | 'II' | 'III' | 'IIII';

/** A scale as its plate says it. */
export interface ScaleOfPack {
  readonly accuracyClass: AccuracyClass;
  /** Verification scale interval e, in whole milligrams. */
  readonly intervalMilligrams: number;
}

interface ClassLimits {
  /** Loads in e up to which half an e is permitted, up to which one e; above it one and a half. */
  readonly halfUpTo: number;
  readonly oneUpTo: number;
  /** Greatest capacity in e; `null`: none is laid down. */
  readonly mostIntervals: number | null;
  readonly leastIntervalMilligrams: number;
}

/** Directive 90/384/EEC Annex I Tables 1 and 3, as scheduled in UK SI 1995/1907. */
const classes: Readonly<Record<AccuracyClass, ClassLimits>> = {
  I: { halfUpTo: 50_000, oneUpTo: 200_000, mostIntervals: null, leastIntervalMilligrams: 1 },
  II: { halfUpTo: 5_000, oneUpTo: 20_000, mostIntervals: 100_000, leastIntervalMilligrams: 1 },
  III: { halfUpTo: 500, oneUpTo: 2_000, mostIntervals: 10_000, leastIntervalMilligrams: 100 },
  IIII: { halfUpTo: 50, oneUpTo: 200, mostIntervals: 1_000, leastIntervalMilligrams: 5_000 },
};

/** The least load in e (Min) of the same table: it depends on e in class II. */
function leastLoadIntervals({ accuracyClass, intervalMilligrams }: ScaleOfPack): number {
  if (accuracyClass === 'I') return 100;
  if (accuracyClass === 'II') return intervalMilligrams >= 100 ? 50 : 20;
  return accuracyClass === 'III' ? 20 : 10;
}

/** What a scale may be off at a load; or that it must not be used there. */
export type PermissibleError =
  | { readonly kind: 'error'; readonly milligrams: number }
  | { readonly kind: 'load-below-minimum'; readonly minimumMilligrams: number }
  | { readonly kind: 'load-above-maximum'; readonly maximumMilligrams: number }
  | { readonly kind: 'interval-not-of-class' };

/**
 * The maximum permissible error in service of a scale that is not automatic, at a load.
 *
 * At verification it is 0.5 e, 1 e or 1.5 e by how many e the load is (class III: up to 500, up to 2000, up to 10 000, the
 * upper edges included), in service twice that. It jumps with the load, so a finer scale can be the worse one.
 *
 * @param loadMilligrams what stands on the scale, so the gross; whole milligrams above 0
 * @throws RangeError where a mass is not whole milligrams above 0
 * @see Directive 90/384/EEC Annex I Tables 1 and 3 and 4.2 (UK SI 1995/1907 Schedule 2)
 * @example permissibleError({ accuracyClass: 'III', intervalMilligrams: 2_000 }, 1_006_000)
 * // { kind: 'error', milligrams: 4000 }: 503 e, so twice 1 e
 */
export function permissibleError(scale: ScaleOfPack, loadMilligrams: number): PermissibleError {
  const { accuracyClass, intervalMilligrams } = scale;
  for (const mass of [intervalMilligrams, loadMilligrams]) {
    if (!Number.isSafeInteger(mass) || mass <= 0) throw new RangeError(`A mass must be whole milligrams, not ${mass}`);
  }
  const { halfUpTo, oneUpTo, mostIntervals, leastIntervalMilligrams } = classes[accuracyClass];
  if (intervalMilligrams < leastIntervalMilligrams || !isStep(intervalMilligrams)) {
    return { kind: 'interval-not-of-class' };
  }
  const minimumMilligrams = leastLoadIntervals(scale) * intervalMilligrams;
  if (loadMilligrams < minimumMilligrams) return { kind: 'load-below-minimum', minimumMilligrams };
  const maximumMilligrams = (mostIntervals ?? Infinity) * intervalMilligrams;
  if (loadMilligrams > maximumMilligrams) return { kind: 'load-above-maximum', maximumMilligrams };
  if (loadMilligrams <= halfUpTo * intervalMilligrams) return { kind: 'error', milligrams: intervalMilligrams };
  const isUpToOne = loadMilligrams <= oneUpTo * intervalMilligrams;
  return { kind: 'error', milligrams: (isUpToOne ? 2 : 3) * intervalMilligrams };
}

/** 1, 2 or 5 times a power of ten. */
function isStep(intervalMilligrams: number): boolean {
  return /^[125]0*$/.test(String(intervalMilligrams));
}
