import { mean } from '../statistics/mean.js';
import { standardDeviation } from '../statistics/standard-deviation.js';
import { studentTQuantile } from '../statistics/student-t-quantile.js';

/** What the packs of a run hold on average, and the limits it is taken to lie in. */
export interface MeanNet {
  readonly meanMilligrams: number;
  /** Hard limits: what is built on them (the bounds of a hopper) treats anything outside as impossible. */
  readonly lowerMilligrams: number;
  readonly upperMilligrams: number;
  /** The random part of the standard uncertainty of the mean, in milligrams; without the error of the scale. */
  readonly standardMilligrams: number;
  /** How many packs were weighed; 0 where the mean is assumed. */
  readonly packCount: number;
  readonly basis: 'measured' | 'assumed';
}

/** Two-sided 99.9 %, so 0.9995 on one side. Our own choice, no source. */
const oneSidedProbability = 0.9995;
const milligramsOfDecigram = 100;

/** Packs weighed by hand on one scale: the net of each, and the scale's maximum permissible error at that load. */
export interface HandSample {
  readonly netDecigrams: readonly number[];
  readonly scaleMaximumPermissibleErrorDecigrams: number;
}

/**
 * The mean net of a run's packs from packs weighed by hand, with hard limits.
 *
 * The limits are the mean ± (half the two-sided 99.9 % interval of the mean, by Student's t with n − 1 degrees of
 * freedom, plus the scale's maximum permissible error), rounded outward to whole milligrams and never below zero.
 *
 * Why so wide: the bounds of a hopper call a bag *ruled out* only when no course of events allows it, so what goes into
 * them must be a limit and not a likely value. The scale's error has such a limit, its maximum permissible error; the
 * same error sits in every reading, so weighing more packs does not shrink it and it is added, not combined in
 * quadrature. The part that comes from weighing some packs and not all has no limit at all, only odds; so a wide
 * interval stands for one. What is given up: for packs that vary normally and were taken at random through the run, the
 * true mean lies outside the statistical part once in a thousand runs; packs taken together, from one head, or before
 * an adjustment do not stand for the run, and no interval tells. The level and the sum of the two parts are our own
 * choice, no source. Two or three packs give very wide limits, and rightly so.
 *
 * The net is gross less tare. Where one tare is used for all packs, its own error belongs into the error that is passed
 * in.
 *
 * @param sample two packs or more; nets in whole decigrams, above 0; the scale's error in decigrams, 0 or more
 * @throws RangeError outside of these ranges
 * @example meanNetFromHandSample({ netDecigrams: [20010, 20030, 19990, 20010], scaleMaximumPermissibleErrorDecigrams: 10 })
 * // mean 2 001 000 mg, from 1 989 447 to 2 012 553
 */
export function meanNetFromHandSample(sample: HandSample): MeanNet {
  const { netDecigrams, scaleMaximumPermissibleErrorDecigrams: scaleError } = sample;
  if (netDecigrams.length < 2) throw new RangeError('A hand sample needs two packs or more');
  if (!netDecigrams.every((net) => Number.isSafeInteger(net) && net > 0)) {
    throw new RangeError('Nets must be whole decigrams above 0');
  }
  if (!(scaleError >= 0) || !Number.isFinite(scaleError)) {
    throw new RangeError(`The scale’s maximum permissible error must be 0 or more, not ${scaleError}`);
  }
  const centre = mean(netDecigrams);
  const standard = standardDeviation(netDecigrams) / Math.sqrt(netDecigrams.length);
  const halfWidth = studentTQuantile(oneSidedProbability, netDecigrams.length - 1) * standard + scaleError;
  return {
    meanMilligrams: Math.round(centre * milligramsOfDecigram),
    lowerMilligrams: Math.max(0, Math.floor((centre - halfWidth) * milligramsOfDecigram)),
    upperMilligrams: Math.ceil((centre + halfWidth) * milligramsOfDecigram),
    standardMilligrams: standard * milligramsOfDecigram,
    packCount: netDecigrams.length,
    basis: 'measured',
  };
}

/** What a format is taken to hold where nothing was weighed: the nominal quantity, and how far off the mean may be. */
export interface AssumedNet {
  readonly nominalMilligrams: number;
  /** How many thousandths of the nominal quantity the mean may lie below it. */
  readonly lowerPermille: number;
  /** How many thousandths of the nominal quantity the mean may lie above it. */
  readonly upperPermille: number;
}

/**
 * The mean net of packs that nobody weighed: the nominal quantity, with the limits that the format sets, marked as
 * assumed.
 *
 * The limits are rounded outward to whole milligrams. The standard uncertainty takes every value between them as
 * equally likely: the distance between them divided by √12 (JCGM 100:2008, 4.3.7).
 *
 * @param assumed the nominal quantity in whole milligrams above 0; whole thousandths, 0 or more, the lower ones at most
 * 1000
 * @throws RangeError outside of these ranges
 * @example assumedMeanNet({ nominalMilligrams: 2_000_000, lowerPermille: 10, upperPermille: 20 })
 * // mean 2 000 000 mg, from 1 980 000 to 2 040 000
 */
export function assumedMeanNet({ nominalMilligrams, lowerPermille, upperPermille }: AssumedNet): MeanNet {
  if (!Number.isSafeInteger(nominalMilligrams) || nominalMilligrams <= 0) {
    throw new RangeError(`The nominal quantity must be whole milligrams above 0, not ${nominalMilligrams}`);
  }
  const areWhole = Number.isSafeInteger(lowerPermille) && Number.isSafeInteger(upperPermille);
  if (!areWhole || lowerPermille < 0 || lowerPermille > 1000 || upperPermille < 0) {
    throw new RangeError(`Limits of ${lowerPermille} ‰ below and ${upperPermille} ‰ above are not possible`);
  }
  const lowerMilligrams = Math.floor((nominalMilligrams * (1000 - lowerPermille)) / 1000);
  const upperMilligrams = Math.ceil((nominalMilligrams * (1000 + upperPermille)) / 1000);
  return {
    meanMilligrams: nominalMilligrams,
    lowerMilligrams,
    upperMilligrams,
    standardMilligrams: (upperMilligrams - lowerMilligrams) / Math.sqrt(12),
    packCount: 0,
    basis: 'assumed',
  };
}
