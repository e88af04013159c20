/**
 * How far a weight in the account may be off, as standard uncertainties (one standard deviation).
 *
 * The random part is a reading's own. The shared part is the error of the scale, the same in every reading of that
 * scale.
 */
export interface Uncertainty {
  readonly standardGrams: number;
  /** The scale whose error sits in this weight; `null` where none is shared. */
  readonly sharedBy: string | null;
  /** 0 where `sharedBy` is `null`. */
  readonly sharedStandardGrams: number;
}

/** A weight that is known exactly, such as nothing at all. */
export const noUncertainty: Uncertainty = { standardGrams: 0, sharedBy: null, sharedStandardGrams: 0 };

/**
 * The standard uncertainty of an error that is known only to stay within a limit: the limit divided by √3.
 *
 * Every value within the limits is taken as equally likely (JCGM 100:2008, 4.3.7).
 *
 * @param limitGrams the greatest error either way, such as a scale's maximum permissible error; 0 or more
 * @throws RangeError when it is negative or not finite
 * @example standardUncertaintyWithin(1000) // 577.350…
 */
export function standardUncertaintyWithin(limitGrams: number): number {
  if (!(limitGrams >= 0) || !Number.isFinite(limitGrams)) {
    throw new RangeError(`A limit of error must be 0 or more, not ${limitGrams}`);
  }
  return limitGrams / Math.sqrt(3);
}

/** A weight as read on a scale. */
export interface ScaleReading {
  readonly scaleId: string;
  readonly maximumPermissibleErrorGrams: number;
  /** The scale interval: the step of its display. */
  readonly intervalGrams: number;
  /** 1 for a weight that is read once, 2 for a net that is gross less tare. */
  readonly readingCount: 1 | 2;
}

/**
 * The uncertainty of a weight read on a scale.
 *
 * The maximum permissible error is all taken as shared by every reading of that scale: a scale that shows too much does
 * so all shift. It is counted once for a net too, since it applies to nets (Directive 90/384/EEC, Annex I, as scheduled
 * in UK SI 1995/1907). Random is the rounding of the display, half an interval either way for each reading. Taking the
 * whole error as shared is our own choice, no source: it is the cautious one, because shared parts do not average out.
 *
 * @throws RangeError when error or interval are negative or not finite
 * @example uncertaintyOfReading({ scaleId: 'dryer', maximumPermissibleErrorGrams: 1000, intervalGrams: 500, readingCount: 2 })
 * // { standardGrams: 204.124…, sharedBy: 'dryer', sharedStandardGrams: 577.350… }
 */
export function uncertaintyOfReading(reading: ScaleReading): Uncertainty {
  const { scaleId, maximumPermissibleErrorGrams, intervalGrams, readingCount } = reading;
  return {
    standardGrams: standardUncertaintyWithin(intervalGrams / 2) * Math.sqrt(readingCount),
    sharedBy: scaleId,
    sharedStandardGrams: standardUncertaintyWithin(maximumPermissibleErrorGrams),
  };
}

/** Packs that were counted, and what one of them holds on average. */
export interface CountedPacks {
  readonly packCount: number;
  readonly meanMilligrams: number;
  /** The random part of the standard uncertainty of the mean. */
  readonly meanStandardMilligrams: number;
  /**
   * The scale that the mean was taken on, and its standard uncertainty at one pack; `null` where the mean is assumed.
   */
  readonly scale: { readonly scaleId: string; readonly standardMilligrams: number } | null;
}

/** The weight of counted packs and how far it may be off. */
export interface WeightOfPacks {
  readonly grams: number;
  readonly uncertainty: Uncertainty;
}

/**
 * What so many packs hold together: count × mean, in whole grams.
 *
 * An error of the mean is the same for every pack, so it grows with the count and not with its root. The count is taken
 * as exact; a wrong count is a mistake, for which the account looks separately.
 *
 * @throws RangeError when the count is not whole or negative, or the mean or an uncertainty is negative or not finite
 * @example weightOfPacks({ packCount: 1000, meanMilligrams: 2_001_500, meanStandardMilligrams: 400, scale: null })
 * // { grams: 2001500, uncertainty: { standardGrams: 400, sharedBy: null, sharedStandardGrams: 0 } }
 */
export function weightOfPacks({
  packCount,
  meanMilligrams,
  meanStandardMilligrams,
  scale,
}: CountedPacks): WeightOfPacks {
  const amounts = [packCount, meanMilligrams, meanStandardMilligrams, scale?.standardMilligrams ?? 0];
  if (!Number.isSafeInteger(packCount) || amounts.some((amount) => !(amount >= 0) || !Number.isFinite(amount))) {
    throw new RangeError('Packs need a whole count, a mean and uncertainties, all 0 or more');
  }
  return {
    grams: Math.round((packCount * meanMilligrams) / 1000),
    uncertainty: {
      standardGrams: (packCount * meanStandardMilligrams) / 1000,
      sharedBy: scale?.scaleId ?? null,
      sharedStandardGrams: (packCount * (scale?.standardMilligrams ?? 0)) / 1000,
    },
  };
}
