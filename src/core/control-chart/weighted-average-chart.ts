import { chartPoint, type ControlChart } from './control-chart.js';

/** How an exponentially weighted moving average is drawn. */
export interface WeightedAveragePlan {
  /** What the process should give; the average starts from it. */
  readonly target: number;
  /** The standard deviation of a plotted figure: σ/√n for means of n packs. */
  readonly sigma: number;
  /** λ: how much the newest figure counts, above 0 and at most 1. */
  readonly newestWeight: number;
  /** L: limits lie so many standard deviations of the average from the target. */
  readonly width: number;
}

/**
 * The chart of the exponentially weighted moving average (EWMA), zᵢ = λxᵢ + (1 − λ)zᵢ₋₁ from z₀ = target, with the exact
 * limits of each point: target ± Lσ√(λ/(2 − λ) · (1 − (1 − λ)²ⁱ)).
 *
 * It finds a small lasting drift sooner than single means do, and a single bad sample later. The first limits are
 * narrower than the later ones, as there is less to average.
 *
 * @param values finite numbers in the order of time; none gives no points
 * @throws RangeError where the plan is outside of its ranges
 * @see Roberts (1959), Technometrics 1, 239; NIST/SEMATECH e-Handbook 6.3.2.4 prints the limits of many points only
 * @example weightedAverageChart([52], { target: 50, sigma: 2, newestWeight: 0.3, width: 3 }).points[0]
 * // { value: 50.6, sigma: 0.6, lower: 48.2, upper: 51.8 }
 */
export function weightedAverageChart(values: readonly number[], plan: WeightedAveragePlan): ControlChart {
  const { target, newestWeight, width } = plan;
  assertPlan(plan);
  let average = target;
  const points = values.map((value, at) => {
    average += newestWeight * (value - average);
    return chartPoint(average, { centre: target, sigma: averageSigma(plan, at + 1), width });
  });
  return { centre: target, points };
}

/**
 * The standard deviation of the average after so many figures; Infinity gives that of a long run.
 *
 * @example averageSigma({ sigma: 2.0539, newestWeight: 0.3 }, Infinity) // 0.8628…
 */
export function averageSigma(
  { sigma, newestWeight }: Pick<WeightedAveragePlan, 'sigma' | 'newestWeight'>,
  figureCount: number,
): number {
  const rest = (1 - newestWeight) ** (2 * figureCount);
  return sigma * Math.sqrt((newestWeight / (2 - newestWeight)) * (1 - rest));
}

function assertPlan({ target, sigma, newestWeight, width }: WeightedAveragePlan): void {
  if (!Number.isFinite(target) || !(sigma > 0)) throw new RangeError(`No chart about ${target} with ${sigma}`);
  if (!(newestWeight > 0 && newestWeight <= 1))
    throw new RangeError(`λ must be above 0 and at most 1: ${newestWeight}`);
  if (!(width > 0)) throw new RangeError(`The width must be above 0, not ${width}`);
}
