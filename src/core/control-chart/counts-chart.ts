import { mean } from '../statistics/mean.js';
import { limitWidth } from './chart-constants.js';
import { chartPoint, type ControlChart } from './control-chart.js';

/**
 * The chart of counts of something rare in equal lots of work (a c chart): limits c̄ ± 3√c̄, the lower one not below 0.
 *
 * @param counts one or more whole numbers, 0 or more, in the order of time
 * @throws RangeError when there is none, or one is not such a number
 * @see NIST/SEMATECH e-Handbook of Statistical Methods 6.3.3.1
 * @example countsChart([4, 4]).points[0] // { value: 4, sigma: 2, lower: 0, upper: 10 }
 */
export function countsChart(counts: readonly number[]): ControlChart {
  if (!counts.every((count) => Number.isSafeInteger(count) && count >= 0)) throw new RangeError('Counts must be whole');
  const centre = mean(counts);
  const limits = { centre, sigma: Math.sqrt(centre), width: limitWidth, least: 0 };
  return { centre, points: counts.map((count) => chartPoint(count, limits)) };
}

/** How many of so many had a property, as packs beyond T1 among those weighed in an interval. */
export interface CountedShare {
  readonly found: number;
  readonly of: number;
}

/**
 * The chart of shares (a p chart): limits p̄ ± 3√(p̄(1 − p̄)/n), each with its own n, not below 0 and not above 1.
 *
 * @param samples one or more, in the order of time; whole numbers, `found` from 0 to `of`, `of` 1 or more
 * @throws RangeError when there is none, or one is not such a share
 * @see NIST/SEMATECH e-Handbook of Statistical Methods 6.3.3.2
 * @example sharesChart([{ found: 5, of: 100 }]).points[0].upper // 0.1153…
 */
export function sharesChart(samples: readonly CountedShare[]): ControlChart {
  const isShare = ({ found, of }: CountedShare) =>
    Number.isSafeInteger(found) && Number.isSafeInteger(of) && found >= 0 && found <= of && of >= 1;
  if (samples.length === 0 || !samples.every(isShare)) throw new RangeError('A chart of shares needs counted shares');
  const total = samples.reduce((sum, { of }) => sum + of, 0);
  const centre = samples.reduce((sum, { found }) => sum + found, 0) / total;
  const points = samples.map(({ found, of }) => {
    const sigma = Math.sqrt((centre * (1 - centre)) / of);
    const point = chartPoint(found / of, { centre, sigma, width: limitWidth, least: 0 });
    return { ...point, upper: Math.min(1, point.upper) };
  });
  return { centre, points };
}
