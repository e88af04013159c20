import { mean } from '../statistics/mean.js';
import { standardDeviation } from '../statistics/standard-deviation.js';
import { deviationFactors, limitWidth, rangeFactors, unbiasingFactor } from './chart-constants.js';
import { chartPoint, type ControlChart } from './control-chart.js';

/** What a sample of packs says: all in the unit of what was measured. */
export interface SampleSummary {
  /** How many values; 2 or more. */
  readonly count: number;
  readonly mean: number;
  /** With n − 1. */
  readonly standardDeviation: number;
  readonly range: number;
}

/** A chart of the means of samples above a chart of how far the values of each lie apart. */
export interface MeansChart {
  /** The standard deviation of single values within a sample, that the limits rest on. */
  readonly sigmaWithin: number;
  readonly means: ControlChart;
  readonly spreads: ControlChart;
}

/**
 * What a sample says.
 *
 * @param values two or more finite numbers in any order
 * @throws RangeError when there are fewer, or one is not finite
 * @example summarizeSample([1002, 998, 1003]) // { count: 3, mean: 1001, standardDeviation: 2.645…, range: 5 }
 */
export function summarizeSample(values: readonly number[]): SampleSummary {
  return {
    count: values.length,
    mean: mean(values),
    standardDeviation: standardDeviation(values),
    range: Math.max(...values) - Math.min(...values),
  };
}

/**
 * The chart of means and ranges (x̄ and R): limits x̿ ± A₂R̄ and D₃R̄ to D₄R̄.
 *
 * The limits are as wide as what varies within a sample explains. Packs taken one after the other vary less than those
 * of a whole shift: heads, drift and adjustments between samples are what the chart is to show.
 *
 * @param samples one or more, all of one size from 2 to 25, in the order of time. From a few samples the limits are
 * uncertain themselves; 20 to 25 are customary
 * @throws RangeError where there is none, sizes differ, or they are too large for ranges
 * @see Shewhart's chart as in ISO 7870-2 (from memory); Montgomery, Introduction to Statistical Quality Control, ch. 6
 * @example meansAndRanges([{ count: 2, mean: 10, standardDeviation: 1.414, range: 2 }]).means.points[0].upper // 13.76
 */
export function meansAndRanges(samples: readonly SampleSummary[]): MeansChart {
  const size = samples[0]?.count ?? 0;
  if (samples.some(({ count }) => count !== size)) throw new RangeError('A chart of ranges needs samples of one size');
  const { d2, d3 } = rangeFactors(size);
  const centre = mean(samples.map(({ range }) => range));
  const sigmaWithin = centre / d2;
  return {
    sigmaWithin,
    means: meansAboutTarget(samples, { target: weightedMean(samples), sigma: sigmaWithin, width: limitWidth }),
    spreads: {
      centre,
      points: samples.map(({ range }) =>
        chartPoint(range, { centre, sigma: d3 * sigmaWithin, width: limitWidth, least: 0 }),
      ),
    },
  };
}

/**
 * The chart of means and standard deviations (x̄ and s): limits x̿ ± A₃s̄ and B₃s̄ to B₄s̄.
 *
 * Samples may differ in size: then each has its own limits, and σ is the mean of s/c₄ weighted by how certain each is,
 * c₄²/(1 − c₄²) (Burr 1969, Journal of Quality Technology 1, 163, from memory). For samples of one size this is s̄/c₄.
 *
 * With samples of hundreds of packs the limits of means grow so narrow that every harmless wave of the line lies beyond
 * them: chart the means as single values there (`individualsChart`).
 *
 * @param samples one or more, of 2 values or more each, in the order of time
 * @returns the spreads' centre is σ, each point's own centre c₄σ being taken into its limits; for samples of one size it
 * is s̄
 * @throws RangeError where there is none, or one has fewer than two values
 * @see Montgomery, Introduction to Statistical Quality Control, ch. 6 (from memory)
 * @example meansAndDeviations([{ count: 5, mean: 10, standardDeviation: 1, range: 2 }]).sigmaWithin // 1.0638…
 */
export function meansAndDeviations(samples: readonly SampleSummary[]): MeansChart {
  const weighted = samples.map(({ count, standardDeviation: s }) => {
    const c4 = unbiasingFactor(count);
    return { sigma: s / c4, weight: (c4 * c4) / (1 - c4 * c4) };
  });
  const weights = weighted.reduce((sum, { weight }) => sum + weight, 0);
  const sigmaWithin = weighted.reduce((sum, { sigma, weight }) => sum + sigma * weight, 0) / weights;
  return {
    sigmaWithin,
    means: meansAboutTarget(samples, { target: weightedMean(samples), sigma: sigmaWithin, width: limitWidth }),
    spreads: {
      centre: mean(samples.map(({ count }) => unbiasingFactor(count) * sigmaWithin)),
      points: samples.map(({ count, standardDeviation: s }) => {
        const { c4, b5, b6 } = deviationFactors(count);
        const sigma = Math.sqrt(1 - c4 * c4) * sigmaWithin;
        return { value: s, sigma, lower: b5 * sigmaWithin, upper: b6 * sigmaWithin };
      }),
    },
  };
}

/** What a line is set to, and how its single values vary: known beforehand, not taken from what is charted. */
export interface TargetLines {
  readonly target: number;
  readonly sigma: number;
  /** 3 by custom; 3.09 and 1.96 are the action and warning lines of the British tradition, one in 1000 and one in 40. */
  readonly width: number;
}

/**
 * The means of samples about what the line is set to: limits target ∓ width · σ/√n.
 *
 * @param samples of 1 value or more each, in the order of time; none gives no points
 * @throws RangeError when σ is below 0, the width is not above 0, or a sample is empty
 * @example meansAboutTarget([{ count: 5, mean: 199 }], { target: 200, sigma: 4, width: 3.09 }).points[0].lower // 194.47
 */
export function meansAboutTarget(
  samples: readonly Pick<SampleSummary, 'count' | 'mean'>[],
  { target, sigma, width }: TargetLines,
): ControlChart {
  if (!(sigma >= 0) || !(width > 0)) throw new RangeError(`No limits from a sigma of ${sigma} and a width of ${width}`);
  return {
    centre: target,
    points: samples.map(({ count, mean: value }) => {
      if (!(count >= 1)) throw new RangeError(`A sample of ${count} values has no mean`);
      return chartPoint(value, { centre: target, sigma: sigma / Math.sqrt(count), width });
    }),
  };
}

function weightedMean(samples: readonly SampleSummary[]): number {
  const [first] = samples;
  if (first === undefined) throw new RangeError('A chart needs a sample');
  // About the first mean, so that large values keep their small digits.
  const count = samples.reduce((sum, one) => sum + one.count, 0);
  return first.mean + samples.reduce((sum, one) => sum + one.count * (one.mean - first.mean), 0) / count;
}
