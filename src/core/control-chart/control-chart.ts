/** A figure on a chart, and the limits that hold for it alone: they differ where samples differ in size. */
export interface ChartPoint {
  readonly value: number;
  /** The standard deviation of such a figure while nothing has changed. */
  readonly sigma: number;
  readonly lower: number;
  readonly upper: number;
}

/** Figures in the order of time about one centre line. All in the unit of what was measured. */
export interface ControlChart {
  readonly centre: number;
  readonly points: readonly ChartPoint[];
}

/**
 * The figures of a chart in standard deviations above its centre line, as chart rules take them.
 *
 * @returns in the chart's order; 0 where nothing varies and the figure is on the line
 * @example standardized({ centre: 10, points: [{ value: 12, sigma: 2, lower: 4, upper: 16 }] }) // [1]
 */
export function standardized({ centre, points }: ControlChart): readonly number[] {
  return points.map(({ value, sigma }) => (value === centre ? 0 : (value - centre) / sigma));
}

/** Where a figure's limits are taken from. */
export interface PointLimits {
  readonly centre: number;
  readonly sigma: number;
  /** Limits lie so many σ from the centre. */
  readonly width: number;
  /** The least that such a figure can be: 0 for ranges and counts. */
  readonly least?: number;
}

/** A point with its limits: centre ∓ width · σ, the lower one not below the least that the figure can be. */
export function chartPoint(value: number, { centre, sigma, width, least = -Infinity }: PointLimits): ChartPoint {
  return { value, sigma, lower: Math.max(least, centre - width * sigma), upper: centre + width * sigma };
}
