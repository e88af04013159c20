import type { VNode } from 'preact';
import type { ControlChart } from '../core/control-chart/control-chart.js';
import type { Signal } from '../core/control-chart/find-signals.js';
import type { ChartRuleName } from '../core/control-chart/chart-rules.js';
import { say } from '../platform/sentences/sentences.js';
import { countText } from '../platform/web/figures-text.js';
import { Table } from '../platform/web/kit/table.js';
import { clockText, localText } from '../platform/web/local-text.js';
import { gramsText } from './weight-text.js';

/** What happened while packs were weighed: an adjustment, a tip, a stop. */
export interface ChartEvent {
  readonly at: string;
  readonly text: string;
}

/** Figures of intervals, in milligrams and in the order of time: their means, or how far packs of each lie apart. */
export interface MeansPictureFacts {
  /** What is charted, as sentences call it. */
  readonly figure: 'means' | 'deviations' | 'hours';
  readonly chart: ControlChart;
  /** When each interval began, and how many packs it has; as many as the chart has points. */
  readonly intervals: readonly { readonly at: string; readonly packCount: number }[];
  readonly signals: readonly Signal<ChartRuleName>[];
  /** Null: another picture of the same intervals says what happened. */
  readonly events: readonly ChartEvent[] | null;
  /** Null: the law has no line for this figure. */
  readonly nominalMilligrams: number | null;
  readonly timeZone: string;
}

/** More events than this would cover each other's numbers: then only their lines are drawn. */
const mostNumbered = 40;
/** Longer tables of events are folded away. */
const mostUnfolded = 12;

const [width, height, left, right, top, bottom] = [960, 360, 124, 116, 16, 94];
const rowHeight = 24;

/**
 * The figures of intervals between their control limits, with what happened below. Control limits are thin and dashed, the
 * nominal quantity is the law's thick whole line; a mean with a signal is a full square, one beyond its limits a full
 * diamond, others are open circles. The tables beneath say the same.
 */
export function MeansPicture({ of }: { readonly of: MeansPictureFacts }): VNode | null {
  const { chart, nominalMilligrams } = of;
  const [first, last] = [chart.points[0], chart.points.at(-1)];
  if (first === undefined || last === undefined) return null;
  const { x, y } = scalesOf(of);
  const end = width - right + 6;
  return (
    <figure class="weights">
      <svg class="picture weight-picture" viewBox={`0 0 ${width} ${height}`} role="img" aria-label={inWords(of)}>
        {nominalMilligrams === null ? null : (
          <path class="law" d={`M${left} ${y(nominalMilligrams)} H${width - right}`} />
        )}
        <path class="line" d={`M${left} ${y(chart.centre)} H${width - right}`} />
        <path class="control" d={limitPath(of, x, (place) => y(chart.points[place]?.upper ?? chart.centre))} />
        <path class="control" d={limitPath(of, x, (place) => y(chart.points[place]?.lower ?? chart.centre))} />
        <Labels at={end} of={of} y={y} />
        <path
          class="means"
          d={chart.points.map(({ value }, at) => `${at === 0 ? 'M' : 'L'}${x(at)} ${y(value)}`).join(' ')}
        />
        {chart.points.map((_, place) => (
          <Point key={place} of={of} place={place} x={x(place)} y={y(chart.points[place]?.value ?? chart.centre)} />
        ))}
        <Events of={of} x={x} />
      </svg>
      <details>
        <summary>{say('weights-as-table', { name: say(`weights-${of.figure}`) })}</summary>
        <MeansTable of={of} />
      </details>
      {of.events === null ? null : <EventsTable events={of.events} timeZone={of.timeZone} />}
    </figure>
  );
}

type Scale = (value: number) => number;

function scalesOf({ chart, intervals, nominalMilligrams }: MeansPictureFacts): {
  readonly x: Scale;
  readonly y: Scale;
} {
  const ends = [
    ...(nominalMilligrams === null ? [] : [nominalMilligrams]),
    ...chart.points.flatMap(({ value, lower, upper }) => [value, lower, upper]),
  ];
  const [low, high] = [Math.min(...ends), Math.max(...ends)];
  const margin = Math.max(1, high - low) * 0.06;
  const step = (width - left - right) / Math.max(1, intervals.length);
  const tall = height - top - bottom;
  return {
    x: (place) => round(left + (place + 0.5) * step),
    y: (value) => round(top + ((high + margin - value) / (high - low + 2 * margin)) * tall),
  };
}

/** Limits as steps: each interval has its own. */
function limitPath({ chart }: MeansPictureFacts, x: Scale, yAt: Scale): string {
  return chart.points
    .map((_, place) => `${place === 0 ? 'M' : 'L'}${x(place - 0.5)} ${yAt(place)} H${x(place + 0.5)}`)
    .join(' ');
}

function Labels({ at, of, y }: { readonly at: number; readonly of: MeansPictureFacts; readonly y: Scale }): VNode {
  const { centre, points } = of.chart;
  const { upper = centre, lower = centre } = points.at(-1) ?? {};
  const labels = [
    { text: say('weights-upper'), value: upper },
    { text: say('weights-centre'), value: centre },
    { text: say('weights-lower'), value: lower },
  ];
  return (
    <>
      {labels.map(({ text, value }) => (
        <g key={text}>
          <text x={at} y={y(value) - 3}>
            {text}
          </text>
          <text x={at} y={y(value) + 11}>
            {gramsText(value)}
          </text>
        </g>
      ))}
      {of.nominalMilligrams === null ? null : <NominalLabel milligrams={of.nominalMilligrams} y={y} />}
    </>
  );
}

function NominalLabel({ milligrams, y }: { readonly milligrams: number; readonly y: Scale }): VNode {
  return (
    <>
      <text class="law-name" x={left - 6} y={y(milligrams) - 3} text-anchor="end">
        {say('weights-nominal')}
      </text>
      <text class="law-name" x={left - 6} y={y(milligrams) + 11} text-anchor="end">
        {gramsText(milligrams)}
      </text>
    </>
  );
}

/** What a mean is, by shape: a circle is quiet, a square has a signal, a diamond lies beyond its limits. */
function Point({
  of,
  place,
  x,
  y,
}: {
  readonly of: MeansPictureFacts;
  readonly place: number;
  readonly x: number;
  readonly y: number;
}): VNode {
  if (isBeyond(of.chart, place))
    return <path class="beyond-limits" d={`M${x} ${y - 7} L${x + 7} ${y} L${x} ${y + 7} L${x - 7} ${y} Z`} />;
  if (of.signals.some(({ at }) => at === place))
    return <rect class="signal" x={x - 5} y={y - 5} width={10} height={10} />;
  return <circle class="open" cx={x} cy={y} r={4} />;
}

function isBeyond({ points }: ControlChart, place: number): boolean {
  const point = points[place];
  return point !== undefined && (point.value < point.lower || point.value > point.upper);
}

function Events({ of, x }: { readonly of: MeansPictureFacts; readonly x: Scale }): VNode {
  const foot = height - bottom + 8;
  const { intervals, events, timeZone } = of;
  const count = events?.length ?? 0;
  const isNumbered = count <= mostNumbered;
  // Numbers of many events stand in two rows, so that neighbours do not cover each other.
  const rows = count > 12 ? 2 : 1;
  const shown = [0, Math.floor((intervals.length - 1) / 2), intervals.length - 1].filter(
    (place, at, all) => all.indexOf(place) === at,
  );
  return (
    <>
      {shown.map((place) => (
        <text key={place} x={x(place)} y={height - 6} text-anchor="middle">
          {clockText(intervals[place]?.at ?? '', timeZone)}
        </text>
      ))}
      {(events ?? []).map(({ at }, number) => {
        const where = x(placeInTime(intervals, at));
        const row = foot + 14 + (number % rows) * rowHeight;
        return (
          <g key={number}>
            <path class="strong" d={`M${where} ${top} V${foot}`} stroke-dasharray="1 5" />
            {isNumbered ? (
              <>
                <circle class="open" cx={where} cy={row} r={11} />
                <text x={where} y={row + 4} text-anchor="middle">
                  {number + 1}
                </text>
              </>
            ) : null}
          </g>
        );
      })}
    </>
  );
}

/** Between the intervals about a time, by how far it is from one to the next; at the ends before and after all. */
function placeInTime(intervals: MeansPictureFacts['intervals'], at: string): number {
  const time = Date.parse(at);
  const next = intervals.findIndex((interval) => Date.parse(interval.at) > time);
  if (next === 0) return -0.5;
  if (next < 0) return intervals.length - 0.5;
  const [from, until] = [Date.parse(intervals[next - 1]?.at ?? ''), Date.parse(intervals[next]?.at ?? '')];
  return next - 1.5 + (time - from) / (until - from);
}

function inWords({ figure, chart, signals, intervals, nominalMilligrams }: MeansPictureFacts): string {
  return say(`weights-${figure}-says`, {
    count: intervals.length,
    centre: gramsText(chart.centre),
    nominal: nominalMilligrams === null ? null : gramsText(nominalMilligrams),
    beyond: chart.points.filter((_, place) => isBeyond(chart, place)).length,
    signals: new Set(signals.map(({ at }) => at)).size,
  });
}

function MeansTable({
  of: { figure, chart, intervals, signals, timeZone },
}: {
  readonly of: MeansPictureFacts;
}): VNode {
  const whens = whenTexts(intervals, timeZone);
  const rows = chart.points.map(({ value, lower, upper }, place) => {
    const own = signals.filter(({ at }) => at === place);
    return {
      key: String(place),
      cells: [
        whens[place],
        countText(intervals[place]?.packCount ?? 0),
        gramsText(value, 2),
        gramsText(lower, 2),
        gramsText(upper, 2),
        own.map(({ rule }) => say(`chart-rule-${rule}`)).join('; '),
      ],
      isLoud: own.length > 0,
    };
  });
  return (
    <Table
      caption={say(`weights-${figure}`)}
      columns={[
        { head: say('weights-interval') },
        { head: say('weights-packs'), align: 'number' },
        { head: say(`weights-one-of-${figure}`), align: 'number' },
        { head: say('weights-lower-limit'), align: 'number' },
        { head: say('weights-upper-limit'), align: 'number' },
        { head: say('weights-signal') },
      ]}
      rows={rows}
    />
  );
}

/** When each interval began: the day is said where it begins. */
function whenTexts(intervals: MeansPictureFacts['intervals'], timeZone: string): readonly string[] {
  const whole = intervals.map(({ at }) => localText(at, timeZone));
  // The clock ends the text in every language.
  const clock = (text: string): string => text.slice(-'00:00'.length);
  const day = (text = ''): string => text.slice(0, -'00:00'.length);
  return whole.map((text, place) => (place > 0 && day(whole[place - 1]) === day(text) ? clock(text) : text));
}

function EventsTable({
  events,
  timeZone,
}: {
  readonly events: readonly ChartEvent[];
  readonly timeZone: string;
}): VNode {
  const table = (
    <Table
      caption={say('weights-events')}
      columns={[
        { head: say('weights-event-number') },
        { head: say('weights-event-at') },
        { head: say('weights-event') },
      ]}
      rows={events.map(({ at, text }, number) => ({
        key: String(number),
        cells: [String(number + 1), localText(at, timeZone), text],
      }))}
      empty={say('weights-no-events')}
    />
  );
  if (events.length <= mostUnfolded) return table;
  return (
    <details>
      <summary>{say('weights-as-table', { name: say('weights-events') })}</summary>
      {table}
    </details>
  );
}

function round(value: number): number {
  return Math.round(value * 10) / 10;
}
