import type { VNode } from 'preact';
import type { Bin } from '../core/statistics/equal-bins.js';
import { say } from '../platform/sentences/sentences.js';
import { countText } from '../platform/web/figures-text.js';
import { Table } from '../platform/web/kit/table.js';
import { gramsText } from './weight-text.js';

/** A limit of the law, how many packs lie beyond it, and how many may. */
interface LawLine {
  readonly milligrams: number;
  readonly beyondCount: number;
  readonly permittedCount: number;
}

/** The weights of a run's packs, and the law's limits. Bins in milligrams, in order. */
export interface HistogramFacts {
  readonly bins: readonly Bin[];
  readonly packCount: number;
  readonly meanMilligrams: number;
  readonly nominalMilligrams: number;
  readonly t1: LawLine;
  readonly t2: LawLine;
}

const [width, height, left, right, top, bottom] = [760, 300, 56, 16, 64, 44];

/**
 * How the packs' net weights lie about the nominal quantity, T1 and T2. The law's lines are thick and whole, each with its
 * name above; bars beyond a limit are hatched or dark, and counted in words in the table beneath.
 */
export function WeightHistogram({ of }: { readonly of: HistogramFacts }): VNode | null {
  if (of.bins.length === 0) return null;
  const { x, y, most } = scalesOf(of);
  const lines = [
    { name: 'T2', milligrams: of.t2.milligrams },
    { name: 'T1', milligrams: of.t1.milligrams },
    { name: say('weights-nominal'), milligrams: of.nominalMilligrams },
  ];
  return (
    <figure class="weights">
      <svg class="picture weight-picture" viewBox={`0 0 ${width} ${height}`} role="img" aria-label={inWords(of)}>
        {[0, most / 2, most].map((count) => (
          <g key={count}>
            <path class="line" d={`M${left} ${y(count)} H${width - right}`} />
            <text x={left - 6} y={y(count) + 4} text-anchor="end">
              {countText(Math.round(count))}
            </text>
          </g>
        ))}
        {of.bins.map((bin) => (
          <Bar key={bin.from} bin={bin} of={of} x={x} y={y} />
        ))}
        {lines.map(({ name, milligrams }) => (
          <g key={name}>
            <path class="law" d={`M${x(milligrams)} ${top - 22} V${height - bottom}`} />
            <text x={x(milligrams)} y={top - 42} text-anchor="middle">
              {name}
            </text>
            <text x={x(milligrams)} y={top - 27} text-anchor="middle">
              {gramsText(milligrams)}
            </text>
          </g>
        ))}
        <path class="mean-mark" d={meanMark(x(of.meanMilligrams))} />
        <text x={x(of.meanMilligrams)} y={height - 8} text-anchor="middle">
          {say('weights-mean-mark', { grams: gramsText(of.meanMilligrams) })}
        </text>
      </svg>
      <LimitsTable of={of} />
      <details>
        <summary>{say('weights-as-table', { name: say('weights-bins') })}</summary>
        <div class="few-columns">
          <BinsTable of={of} />
        </div>
      </details>
    </figure>
  );
}

interface Scales {
  readonly x: (milligrams: number) => number;
  readonly y: (count: number) => number;
  readonly most: number;
}

/** Room for the bars, and for all three limits where no bar reaches them. */
function scalesOf({ bins, t2, nominalMilligrams, meanMilligrams }: HistogramFacts): Scales {
  const ends = [t2.milligrams, nominalMilligrams, meanMilligrams, ...bins.flatMap(({ from, until }) => [from, until])];
  const [low, high] = [Math.min(...ends), Math.max(...ends)];
  const margin = (high - low) * 0.04;
  const most = Math.max(2, ...bins.map(({ count }) => count));
  const wide = high - low + 2 * margin;
  return {
    x: (milligrams) => round(left + ((milligrams - low + margin) / wide) * (width - left - right)),
    y: (count) => round(height - bottom - (count / most) * (height - top - bottom)),
    most,
  };
}

function Bar({ bin, of, x, y }: Pick<Scales, 'x' | 'y'> & { readonly bin: Bin; readonly of: HistogramFacts }): VNode {
  const [from, until, high] = [x(bin.from), x(bin.until), y(bin.count)];
  const box = { x: from, y: high, width: round(until - from), height: round(height - bottom - high) };
  if (bin.until <= of.t2.milligrams) return <rect class="bar beyond-t2" {...box} />;
  if (bin.until > of.t1.milligrams) return <rect class="bar" {...box} />;
  const hatches = Array.from({ length: Math.floor(box.height / 6) }, (_, at) => `M${from} ${high + at * 6} H${until}`);
  return (
    <g>
      <rect class="bar beyond-t1" {...box} />
      <path class="hatch" d={hatches.join(' ')} />
    </g>
  );
}

function meanMark(x: number): string {
  const foot = height - bottom;
  return `M${x} ${foot} L${x - 7} ${foot + 14} H${x + 7} Z`;
}

/** For who does not see the picture. */
function inWords({ packCount, meanMilligrams, nominalMilligrams, t1, t2 }: HistogramFacts): string {
  return say('weights-histogram-says', {
    packs: countText(packCount),
    mean: gramsText(meanMilligrams),
    nominal: gramsText(nominalMilligrams),
    beyondT1: countText(t1.beyondCount),
    beyondT2: countText(t2.beyondCount),
  });
}

function LimitsTable({ of: { t1, t2 } }: { readonly of: HistogramFacts }): VNode {
  const row = (name: string, { milligrams, beyondCount, permittedCount }: LawLine) => ({
    key: name,
    cells: [
      name,
      gramsText(milligrams),
      countText(beyondCount),
      countText(permittedCount),
      say(beyondCount > permittedCount ? 'weights-too-many' : 'weights-within'),
    ],
    isLoud: beyondCount > permittedCount,
  });
  return (
    <Table
      caption={say('weights-limits')}
      columns={[
        { head: say('weights-limit') },
        { head: say('weights-grams'), align: 'number' },
        { head: say('weights-beyond'), align: 'number' },
        { head: say('weights-permitted'), align: 'number' },
        { head: say('weights-verdict') },
      ]}
      rows={[row('T1', t1), row('T2', t2)]}
    />
  );
}

function BinsTable({ of: { bins } }: { readonly of: HistogramFacts }): VNode {
  return (
    <Table
      caption={say('weights-bins')}
      columns={[
        { head: say('weights-from') },
        { head: say('weights-until'), align: 'number' },
        { head: say('weights-packs'), align: 'number' },
      ]}
      rows={bins.map(({ from, until, count }) => ({
        key: String(from),
        cells: [gramsText(from), gramsText(until), countText(count)],
      }))}
    />
  );
}

function round(value: number): number {
  return Math.round(value * 10) / 10;
}
