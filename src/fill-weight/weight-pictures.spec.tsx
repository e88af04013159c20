import { describe, expect, it } from '@jest/globals';
import { render } from 'preact-render-to-string';
import { normalDraws } from '../../test/support/normal-draws.js';
import { standardized } from '../core/control-chart/control-chart.js';
import { findSignals } from '../core/control-chart/find-signals.js';
import { meansAboutTarget } from '../core/control-chart/means-chart.js';
import { nelsonRules, westernElectricRules } from '../core/control-chart/chart-rules.js';
import { equalBins } from '../core/statistics/equal-bins.js';
import { hasSentence } from '../platform/sentences/sentences.js';
import './fill-weight.sentences.js';
import { MeansPicture, type MeansPictureFacts } from './means-picture.js';
import { WeightHistogram, type HistogramFacts } from './weight-histogram.js';
import './weight-pictures.sentences.es.js';
import './weight-pictures.sentences.js';
import { gramsText } from './weight-text.js';

const rules = [...westernElectricRules, ...nelsonRules];

/** 400 packs of 1 kg about 1002 g; two of them short beyond T1, one beyond T2. */
function histogram(): HistogramFacts {
  const draw = normalDraws(5, 'histogram');
  const drawn = Array.from({ length: 397 }, () => Math.round(draw(1_002_000, 4_000) / 100) * 100);
  const weights = [...drawn, 984_000, 983_000, 968_000];
  const values = weights.map((value) => ({ value, count: 1 }));
  return {
    bins: equalBins(values, { anchor: 1_000_000, mostBins: 40, resolution: 100 }),
    packCount: weights.length,
    meanMilligrams: weights.reduce((sum, weight) => sum + weight, 0) / weights.length,
    nominalMilligrams: 1_000_000,
    t1: { milligrams: 985_000, beyondCount: 3, permittedCount: 10 },
    t2: { milligrams: 970_000, beyondCount: 1, permittedCount: 0 },
  };
}

function means(): MeansPictureFacts {
  const draw = normalDraws(6, 'means');
  const samples = Array.from({ length: 30 }, (_, at) => ({
    count: 5,
    mean: draw(at < 18 ? 1_002_000 : 1_004_500, 1_800),
  }));
  const chart = meansAboutTarget(samples, { target: 1_002_000, sigma: 4_000, width: 3 });
  const at = (minutes: number) => new Date(Date.UTC(2026, 2, 12, 6, minutes)).toISOString();
  return {
    figure: 'means',
    chart,
    intervals: samples.map(({ count }, place) => ({ at: at(place * 15), packCount: count })),
    signals: findSignals(standardized(chart), westernElectricRules),
    events: [
      { at: at(18 * 15 - 5), text: 'Setting raised by 2 g' },
      { at: at(22 * 15 + 7), text: 'Bag 260312-05 tipped' },
    ],
    nominalMilligrams: 1_000_000,
    timeZone: 'Europe/London',
  };
}

describe('the histogram of weights', () => {
  const html = render(<WeightHistogram of={histogram()} />);

  it('has a bar for each stretch, told apart by more than colour beyond T1 and T2', () => {
    const { bins } = histogram();
    expect(html.match(/class="bar[^"]*"/g)).toHaveLength(bins.length);
    const beyond = bins.filter(({ until }) => until <= 985_000);
    expect(html.match(/class="bar beyond-t1"/g)).toHaveLength(beyond.filter(({ until }) => until > 970_000).length);
    expect(html.match(/class="bar beyond-t2"/g)).toHaveLength(beyond.filter(({ until }) => until <= 970_000).length);
    expect(html.match(/class="hatch"/g)).toHaveLength(beyond.filter(({ until }) => until > 970_000).length);
  });

  it('draws the law’s lines in their own style, with their names', () => {
    expect(html.match(/class="law"/g)).toHaveLength(3);
    expect(html).not.toContain('class="control"');
    for (const text of ['>T1<', '>T2<', '>nominal<', '>985.0<', '>970.0<', '>1\u202f000.0<'])
      expect(html).toContain(text);
  });

  it('says beneath what is permitted and what was found', () => {
    const rows = [...html.matchAll(/<tr[^>]*>(.*?)<\/tr>/g)].map(([, row = '']) => row.replaceAll(/<[^>]+>/g, '|'));
    const [t1, t2] = ['T1', 'T2'].map((name) => rows.find((row) => row.includes(`|${name}|`)));
    expect(t1?.split('|').filter(Boolean)).toEqual(['T1', '985.0', '3', '10', 'within what is permitted']);
    expect(t2?.split('|').filter(Boolean).slice(0, 4)).toEqual(['T2', '970.0', '1', '0']);
    expect(t2).toContain('too many');
    const { bins } = histogram();
    expect(rows.length).toBe(2 + 1 + bins.length + 1);
  });

  it('says the same to who does not see it', () => {
    expect(html).toContain('Net weights of 400 packs about the nominal 1\u202f000.0 g');
    expect(html).toContain('3 beyond T1, 1 beyond T2');
  });

  it('draws nothing of nothing, and has no style of its own', () => {
    expect(render(<WeightHistogram of={{ ...histogram(), bins: [] }} />)).toBe('');
    expect(html).not.toMatch(/style=|NaN|Infinity/);
  });

  it('has room for the limits where no pack is near them', () => {
    const one = equalBins([{ value: 1_020_000, count: 3 }], { anchor: 1_000_000, mostBins: 40, resolution: 100 });
    const alone = render(<WeightHistogram of={{ ...histogram(), bins: one }} />);
    const places = [...alone.matchAll(/class="law" d="M([\d.]+)/g)].map(([, x]) => Number(x));
    expect(places.every((x) => x > 56 && x < 744)).toBe(true);
    expect(places).toEqual([...places].sort((left, right) => left - right));
    expect(alone).not.toMatch(/NaN|Infinity/);
  });
});

describe('the picture of means', () => {
  const facts = means();
  const html = render(<MeansPicture of={facts} />);

  it('never draws control limits and the law’s line in one style', () => {
    expect(html.match(/class="control"/g)).toHaveLength(2);
    expect(html.match(/class="law"/g)).toHaveLength(1);
  });

  it('marks each mean by its shape', () => {
    const { chart, signals } = facts;
    const beyond = chart.points.filter(({ value, lower, upper }) => value < lower || value > upper).length;
    const signalled = new Set(signals.map(({ at }) => at)).size;
    expect(signalled).toBeGreaterThan(beyond);
    expect(html.match(/class="beyond-limits"/g) ?? []).toHaveLength(beyond);
    expect(html.match(/class="signal"/g)).toHaveLength(signalled - beyond);
    expect(html.match(/<circle class="open"[^>]*r="4"/g)).toHaveLength(30 - signalled);
  });

  it('says beneath which rule each signal is of, and what happened', () => {
    expect(html).toContain('eight in a row on one side (Western Electric 4)');
    expect(html).toContain('Setting raised by 2 g');
    expect(html).toContain('Bag 260312-05 tipped');
    expect(html.match(/<tr/g)).toHaveLength(1 + 30 + 1 + 2);
    expect(html).toContain('Means of 30 intervals about 1\u202f002.0 g');
    expect(render(<MeansPicture of={{ ...facts, events: [] }} />)).toContain('nothing recorded');
  });

  it('puts what happened between the intervals that it fell between', () => {
    const xs = [...html.matchAll(/<circle class="open" cx="([\d.]+)"[^>]*r="11"/g)].map(([, x]) => Number(x));
    const points = [...html.matchAll(/class="means" d="([^"]+)"/g)][0]?.[1]?.match(/[ML]([\d.]+)/g) ?? [];
    const xOf = (place: number) => Number(points[place]?.slice(1));
    expect(xs).toHaveLength(2);
    // An interval is drawn at its middle: its begin lies half a step before.
    const half = (xOf(1) - xOf(0)) / 2;
    expect(xs[0]! > xOf(17) - half && xs[0]! < xOf(18) - half).toBe(true);
    expect(xs[1]! > xOf(22) - half && xs[1]! < xOf(23) - half).toBe(true);
  });

  it('has no line of the law, and no events, for how far packs lie apart', () => {
    const html = render(
      <MeansPicture of={{ ...facts, figure: 'deviations', nominalMilligrams: null, events: null }} />,
    );
    expect(html).not.toContain('class="law');
    expect(html.match(/class="control"/g)).toHaveLength(2);
    expect(html).toContain('Standard deviations of 30 intervals');
    expect(html).not.toContain('Setting raised');
  });

  it('leaves out the numbers of events that would cover each other', () => {
    const events = Array.from({ length: 41 }, () => ({ at: facts.intervals[3]!.at, text: 'Stop' }));
    const many = render(<MeansPicture of={{ ...facts, events }} />);
    expect(many).not.toContain('r="11"');
    expect(many.match(/stroke-dasharray="1 5"/g)).toHaveLength(41);
    expect(render(<MeansPicture of={{ ...facts, events: events.slice(1) }} />)).toContain('r="11"');
  });

  it('draws nothing of nothing, and has no style of its own', () => {
    const none = { ...facts, chart: { centre: 1, points: [] }, intervals: [], signals: [] };
    expect(render(<MeansPicture of={none} />)).toBe('');
    const one = { ...facts, chart: { ...facts.chart, points: facts.chart.points.slice(0, 1) } };
    const single = render(<MeansPicture of={{ ...one, intervals: facts.intervals.slice(0, 1), signals: [] }} />);
    for (const text of [html, single]) expect(text).not.toMatch(/style=|NaN|Infinity/);
  });

  it('has words for every rule, in both languages', () => {
    for (const { name } of rules) {
      expect([name, hasSentence(`chart-rule-${name}`), hasSentence(`chart-rule-${name}`, 'es')]).toEqual([
        name,
        true,
        true,
      ]);
    }
  });
});

describe('grams', () => {
  it('stand with thin spaces and a true minus', () => {
    expect(gramsText(1_003_450)).toBe('1\u202f003.5');
    expect(gramsText(-1_250, 2)).toBe('−1.25');
    expect(gramsText(-40)).toBe('0.0');
    expect(gramsText(25_000_000, 0)).toBe('25\u202f000');
  });
});
