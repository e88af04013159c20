import { westernElectricRules, type ChartRuleName } from '../../core/control-chart/chart-rules.js';
import { standardized, type ControlChart } from '../../core/control-chart/control-chart.js';
import { findSignals, type Signal } from '../../core/control-chart/find-signals.js';
import { individualsChart } from '../../core/control-chart/individuals-chart.js';
import type { HourWeighed } from './run-weights.js';

/** Fewer figures than this make limits that are themselves uncertain: 20 to 25 are customary. */
export const enoughHours = 20;

/** The means of a run's hours in milligrams, and what chart rules find in them. */
export interface HoursChart {
  readonly chart: ControlChart;
  readonly signals: readonly Signal<ChartRuleName>[];
}

/** The means of the hours as single figures: of hundreds of packs each, their own spread says nothing of hours. */
export function chartOfHours(hours: readonly HourWeighed[], nominalMilligrams: number): HoursChart | null {
  if (hours.length < 2) return null;
  const chart = individualsChart(hours.map((hour) => nominalMilligrams + hour.meanErrorMicrograms / 1000)).values;
  return { chart, signals: findSignals(standardized(chart), westernElectricRules) };
}
