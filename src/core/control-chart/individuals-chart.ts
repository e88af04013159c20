import { mean } from '../statistics/mean.js';
import { limitWidth } from './chart-constants.js';
import { chartPoint, type ControlChart } from './control-chart.js';
import { rangeMoments } from './range-moments.js';

/** A chart of single values above a chart of the steps between them. */
export interface IndividualsChart {
  readonly sigmaWithin: number;
  readonly values: ControlChart;
  /** One point fewer: the first step leads to the second value. */
  readonly movingRanges: ControlChart;
}

/**
 * The chart of single values and moving ranges: limits x̄ ± 3·M̄R̄/d₂ and 0 to (1 + 3d₃/d₂)·M̄R̄, with d₂ and d₃ of two
 * values. With the exact d₂ the factor is 2.6587; printed tables say 2.66.
 *
 * For figures of which each is one: a moisture, or the mean of an interval with hundreds of packs, whose waves within
 * minutes say nothing of those between intervals.
 *
 * @param values two or more finite numbers in the order of time
 * @throws RangeError when there are fewer, or one is not finite
 * @see Montgomery, Introduction to Statistical Quality Control, 6.4 (from memory)
 * @example individualsChart([10, 12, 11]).sigmaWithin // 1.329…: the mean range 1.5 over 1.128
 */
export function individualsChart(values: readonly number[]): IndividualsChart {
  if (values.length < 2) throw new RangeError('A chart of single values needs two or more');
  const centre = mean(values);
  const ranges = values.slice(1).map((value, at) => Math.abs(value - (values[at] ?? NaN)));
  const meanRange = mean(ranges);
  const { d2, d3 } = rangeMoments(2);
  const sigmaWithin = meanRange / d2;
  const rangeLimits = { centre: meanRange, sigma: d3 * sigmaWithin, width: limitWidth, least: 0 };
  return {
    sigmaWithin,
    values: {
      centre,
      points: values.map((value) => chartPoint(value, { centre, sigma: sigmaWithin, width: limitWidth })),
    },
    movingRanges: { centre: meanRange, points: ranges.map((range) => chartPoint(range, rangeLimits)) },
  };
}
