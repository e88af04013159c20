import type { ControlChart } from '../../core/control-chart/control-chart.js';
import { begunSignals } from '../../core/control-chart/find-signals.js';
import type { Instant } from '../../platform/clock.js';
import { printedDay } from '../../platform/printing/printed-figures.js';
import { say } from '../../platform/sentences/sentences.js';
import { clockText, localText } from '../../platform/web/local-text.js';
import { localOfInstant } from '../../platform/web/local-time.js';
import { chartOfHours, enoughHours, type HoursChart } from '../run-weights/hours-chart.js';
import type { HourWeighed, RunWeights } from '../run-weights/run-weights.js';
import { gramsText } from '../weight-text.js';
import type { HourMark, PrintedHours } from './weight-report.facts.js';

/** Signals that are said in words; how many more there are is said. */
const mostSaid = 8;

/** The chart of a run's hours as its report draws it; null where there are fewer than two. */
export function printedHours({ hours, yardstick }: RunWeights, timeZone: string): PrintedHours | null {
  const drawn = chartOfHours(hours, yardstick.nominalMilligrams);
  if (drawn === null) return null;
  const { chart } = drawn;
  const marks = chart.points.map((_, at) => markOf(drawn, at));
  const [{ lower, upper } = { lower: chart.centre, upper: chart.centre }] = chart.points;
  return {
    nominal: yardstick.nominalMilligrams * 1000,
    ...{ centre: micrograms(chart.centre), lower: micrograms(lower), upper: micrograms(upper) },
    points: chart.points.map(({ value }, at) => ({
      ...timeOf(hours, at, timeZone),
      value: micrograms(value),
      mark: marks[at] ?? 'within',
    })),
    says: [
      hoursText(chart, marks, yardstick.nominalMilligrams),
      [say('run-weights-means-says'), ...fewText(hours)].join(' '),
      ...signalTexts(drawn, hours, timeZone),
    ],
  };
}

function markOf({ chart, signals }: HoursChart, at: number): HourMark {
  const { value = 0, lower = 0, upper = 0 } = chart.points[at] ?? {};
  if (value < lower || value > upper) return 'beyond';
  return signals.some((signal) => signal.at === at) ? 'signal' : 'within';
}

function timeOf(
  hours: readonly HourWeighed[],
  at: number,
  timeZone: string,
): { readonly day: string | null; readonly clock: string } {
  const hourAt = hours[at]?.hourAt ?? '';
  const day = (instant: Instant): string => localOfInstant(instant, timeZone).slice(0, 'YYYY-MM-DD'.length);
  const before = hours[at - 1];
  const begins = before === undefined || day(before.hourAt) !== day(hourAt);
  return { day: begins ? printedDay(day(hourAt)) : null, clock: clockText(hourAt, timeZone) };
}

/** Facts of a paper are whole numbers. */
function micrograms(milligrams: number): number {
  return Math.round(milligrams * 1000);
}

function hoursText({ centre, points }: ControlChart, marks: readonly HourMark[], nominalMilligrams: number): string {
  return say('weights-hours-says', {
    count: points.length,
    centre: gramsText(centre, 2),
    nominal: gramsText(nominalMilligrams),
    beyond: marks.filter((mark) => mark === 'beyond').length,
    signals: marks.filter((mark) => mark !== 'within').length,
  });
}

function fewText(hours: readonly HourWeighed[]): readonly string[] {
  return hours.length < enoughHours ? [say('run-weights-few-hours', { count: hours.length })] : [];
}

function signalTexts({ signals }: HoursChart, hours: readonly HourWeighed[], timeZone: string): readonly string[] {
  const begun = begunSignals(signals);
  const said = begun.slice(0, mostSaid).map(({ rule, at }) =>
    say('run-weights-signal', {
      at: localText(hours[at]?.hourAt ?? '', timeZone),
      rule: say(`chart-rule-${rule}`),
    }),
  );
  const more = begun.length - said.length;
  return more === 0 ? said : [...said, say('weight-report-more-signals', { count: more })];
}
