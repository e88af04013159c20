import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { describeWithChecks, readChecks } from '../../../test/support/checks.js';
import { capability } from './capability.js';
import { countsChart, sharesChart } from './counts-chart.js';
import { individualsChart } from './individuals-chart.js';
import { meansAboutTarget, meansAndDeviations, meansAndRanges, summarizeSample } from './means-chart.js';

interface SubgroupExample {
  readonly data: readonly (readonly number[])[];
  readonly xbar: readonly number[];
  readonly R: readonly number[];
  readonly s: readonly number[];
  readonly grand_mean: number;
  readonly Rbar: number;
  readonly sbar: number;
  readonly sigma_R: number;
  readonly sigma_s: number;
  readonly xbar_R_limits: readonly [number, number];
  readonly R_limits: readonly [number, number];
  readonly xbar_s_limits: readonly [number, number];
  readonly s_limits: readonly [number, number];
  readonly phase2_samples_26_to_40?: readonly (readonly number[])[];
}

interface Examples {
  readonly xbar_nist_ccxbar: SubgroupExample;
  readonly xbar_R_ishikawa_p66: SubgroupExample;
  readonly xbar_montgomery_pistonrings_phase1: SubgroupExample;
  readonly individuals_mr_6_3_2_2: {
    readonly data: readonly number[];
    readonly moving_ranges: readonly number[];
    readonly mean: number;
    readonly MRbar: number;
    readonly UCL_with_exact_d2: number;
    readonly LCL_with_exact_d2: number;
    readonly UCL_remembered: number;
  };
  readonly c_chart_6_3_3_1: {
    readonly data: readonly number[];
    readonly cbar: number;
    readonly UCL: number;
    readonly LCL: number;
  };
  readonly p_chart_6_3_3_2: {
    readonly n: number;
    readonly data: readonly number[];
    readonly pbar: number;
    readonly UCL: number;
    readonly LCL: number;
  };
  readonly capability_6_1_6: {
    readonly LSL: number;
    readonly USL: number;
    readonly mean: number;
    readonly s: number;
    readonly Cp: number;
    readonly Cpk: number;
    readonly Cpu: number;
    readonly Cpl: number;
  };
}

const examples = () => readChecks<Examples>('metrology/ehandbook-examples.json');

// NIST Dataplot CCXBAR; Ishikawa, Guide to Quality Control (1982) p. 66; Montgomery, Introduction to Statistical Quality
// Control (1991) pp. 206-213, piston rings.
describeWithChecks('charts of published samples', () => {
  it.each(['xbar_nist_ccxbar', 'xbar_R_ishikawa_p66', 'xbar_montgomery_pistonrings_phase1'] as const)(
    '%s: means, ranges, standard deviations and all limits',
    (name) => {
      const example = examples()[name];
      const samples = example.data.map(summarizeSample);
      expect(samples.map(({ mean }) => round(mean))).toEqual(example.xbar);
      expect(samples.map(({ range }) => round(range))).toEqual(example.R);
      expect(samples.map(({ standardDeviation }) => round(standardDeviation))).toEqual(example.s);
      const byRange = meansAndRanges(samples);
      const bySpread = meansAndDeviations(samples);
      expect(round(byRange.means.centre)).toBe(round(example.grand_mean));
      expect(round(byRange.spreads.centre)).toBe(round(example.Rbar));
      expect(round(bySpread.spreads.centre)).toBe(round(example.sbar));
      expect([round(byRange.sigmaWithin), round(bySpread.sigmaWithin)]).toEqual([example.sigma_R, example.sigma_s]);
      expectNear(limitsOf(byRange.means), example.xbar_R_limits);
      expectNear(limitsOf(byRange.spreads), example.R_limits);
      expectNear(limitsOf(bySpread.means), example.xbar_s_limits);
      expectNear(limitsOf(bySpread.spreads), example.s_limits);
    },
  );

  it('the piston rings of the second phase leave the limits of the first', () => {
    const { data, phase2_samples_26_to_40: later = [] } = examples().xbar_montgomery_pistonrings_phase1;
    const { means, sigmaWithin } = meansAndRanges(data.map(summarizeSample));
    expect(later).toHaveLength(15);
    const lines = { target: means.centre, sigma: sigmaWithin, width: 3 };
    const { points } = meansAboutTarget(later.map(summarizeSample), lines);
    // Montgomery: samples 37, 38 and 39 lie above the upper limit.
    expect(points.flatMap(({ value, upper }, at) => (value > upper ? [26 + at] : []))).toEqual([37, 38, 39]);
  });

  // NIST/SEMATECH e-Handbook 6.3.2.2; its printed limits rest on d2 = 1.128 and differ in the third decimal place.
  it('single values with their moving ranges', () => {
    const example = examples().individuals_mr_6_3_2_2;
    const { values, movingRanges } = individualsChart(example.data);
    expect(values.centre).toBeCloseTo(example.mean, 10);
    expect(movingRanges.points.map(({ value }) => round(value))).toEqual(example.moving_ranges);
    expect(movingRanges.centre).toBeCloseTo(example.MRbar, 5);
    expect(values.points[0]?.upper).toBeCloseTo(example.UCL_with_exact_d2, 4);
    expect(values.points[0]?.lower).toBeCloseTo(example.LCL_with_exact_d2, 4);
    expect(Math.abs((values.points[0]?.upper ?? NaN) - example.UCL_remembered)).toBeLessThan(0.002);
    // 3.267 times the mean range, as printed tables say.
    expect((movingRanges.points[0]?.upper ?? NaN) / movingRanges.centre).toBeCloseTo(3.267, 3);
  });

  // NIST/SEMATECH e-Handbook 6.3.3.1 and 6.3.3.2.
  it('counts and shares', () => {
    const { c_chart_6_3_3_1: c, p_chart_6_3_3_2: p } = examples();
    const counts = countsChart(c.data);
    expect([counts.centre, ...limitsOf(counts)]).toEqual([c.cbar, c.LCL, c.UCL]);
    const shares = sharesChart(p.data.map((share) => ({ found: Math.round(share * p.n), of: p.n })));
    expect([round(shares.centre), ...limitsOf(shares)]).toEqual([p.pbar, p.LCL, p.UCL]);
  });

  // NIST/SEMATECH e-Handbook 6.1.6; Cano, Moguerza and Redchuk, Six Sigma with R (2012), ch. 7, for the bottles.
  it('capability', () => {
    const { LSL, USL, mean, s, Cp, Cpk, Cpu, Cpl } = examples().capability_6_1_6;
    const { within } = capability({ mean, sigmaWithin: s, sigmaOverall: s, lower: LSL, upper: USL });
    for (const [got, expected] of [
      [within.spread, Cp],
      [within.least, Cpk],
      [within.upper, Cpu],
      [within.lower, Cpl],
    ] as const) {
      expect(got).toBeCloseTo(expected, 4);
    }
    const { sixsigma_winery: bottles } = readChecks<{
      readonly sixsigma_winery: {
        readonly data: readonly number[];
        readonly LSL: number;
        readonly USL: number;
        readonly computed: { readonly Cp: number; readonly Cpk: number };
      };
    }>('metrology/datasets-fill.json');
    const { mean: centre, standardDeviation } = summarizeSample(bottles.data);
    const facts = { mean: centre, sigmaWithin: standardDeviation, lower: bottles.LSL, upper: bottles.USL };
    const { overall } = capability({ ...facts, sigmaOverall: standardDeviation });
    expect(overall.spread).toBeCloseTo(bottles.computed.Cp, 6);
    expect(overall.least).toBeCloseTo(bottles.computed.Cpk, 6);
  });

  // Scenario of 5 packs of 200 g each half hour, from UK guidance; factors of the British tradition, from memory.
  it('a packer’s warning and action lines', () => {
    const { rows } = readChecks<{
      readonly rows: readonly {
        readonly Qt: number;
        readonly sigma: number;
        readonly n: number;
        readonly 'warning_lower_1.96': number;
        readonly 'action_lower_3.09': number;
        readonly 'action_upper_3.09': number;
        readonly action_lower_3: number;
      }[];
    }>('metrology/packers-chart-worked.json');
    expect(rows).toHaveLength(6);
    for (const { Qt, sigma, n, ...lines } of rows) {
      const at = (width: number) => limitsOf(meansAboutTarget([{ count: n, mean: Qt }], { target: Qt, sigma, width }));
      expect(at(1.96)[0]).toBeCloseTo(lines['warning_lower_1.96'], 2);
      expect(at(3.09)[0]).toBeCloseTo(lines['action_lower_3.09'], 2);
      expect(at(3.09)[1]).toBeCloseTo(lines['action_upper_3.09'], 2);
      expect(at(3)[0]).toBeCloseTo(lines.action_lower_3, 2);
    }
  });

  // SAS/QC cans, Nelson, Coffin and Copeland's drums and filling tubes, Ott and Snee's six heads.
  it('what published fill weights come to', () => {
    type Values = readonly number[];
    const sets = readChecks<{
      readonly sas_cans: { readonly data: Values; readonly computed: { mean: number; sd: number } };
      readonly engrexpt_drums: {
        readonly net: Values;
        readonly empty: Values;
        readonly full: Values;
        readonly computed: Record<'net' | 'empty' | 'full', { mean: number; sd: number }>;
      };
      readonly slgf_bottles: { readonly data: readonly Values[]; readonly computed: { mean: number; sd: number } };
      readonly engrexpt_fillweight: {
        readonly data: Readonly<Record<string, Values>>;
        readonly computed: { mean: number; sd: number };
      };
    }>('metrology/datasets-fill.json');
    const drums = sets.engrexpt_drums;
    for (const [values, { mean, sd }] of [
      [sets.sas_cans.data, sets.sas_cans.computed],
      [drums.net, drums.computed.net],
      [drums.empty, drums.computed.empty],
      [drums.full, drums.computed.full],
      [sets.slgf_bottles.data.flat(), sets.slgf_bottles.computed],
      [Object.values(sets.engrexpt_fillweight.data).flat(), sets.engrexpt_fillweight.computed],
    ] as const) {
      const summary = summarizeSample(values);
      expect(round(summary.mean)).toBeCloseTo(mean, 6);
      expect(round(summary.standardDeviation)).toBeCloseTo(sd, 6);
    }
  });
});

const sample = fc.array(fc.integer({ min: 900_000, max: 1_100_000 }), { minLength: 4, maxLength: 4 });
const samplesOfFour = fc.array(sample, { minLength: 2, maxLength: 12 });

describe('charts of samples', () => {
  it('move with the values, and stretch with them', () => {
    fc.assert(
      fc.property(
        samplesOfFour,
        fc.integer({ min: 1, max: 9 }),
        fc.integer({ min: -500, max: 500 }),
        (rows, by, shift) => {
          for (const chart of [meansAndRanges, meansAndDeviations]) {
            const plain = chart(rows.map(summarizeSample));
            const moved = chart(rows.map((row) => summarizeSample(row.map((value) => value * by + shift))));
            expect(moved.sigmaWithin / by).toBeCloseTo(plain.sigmaWithin, 5);
            for (const [at, point] of plain.means.points.entries()) {
              expect((moved.means.points[at]!.upper - shift) / by).toBeCloseTo(point.upper, 5);
              expect((moved.means.points[at]!.lower - shift) / by).toBeCloseTo(point.lower, 5);
              expect(moved.spreads.points[at]!.upper / by).toBeCloseTo(plain.spreads.points[at]!.upper, 5);
            }
          }
        },
      ),
    );
  });

  it('do not depend on the order of packs in a sample, nor limits on that of samples', () => {
    fc.assert(
      fc.property(samplesOfFour, (rows) => {
        const plain = meansAndRanges(rows.map(summarizeSample));
        const turned = meansAndRanges(rows.toReversed().map((row) => summarizeSample(row.toReversed())));
        expect(turned.means.centre).toBeCloseTo(plain.means.centre, 6);
        expect(turned.sigmaWithin).toBeCloseTo(plain.sigmaWithin, 6);
      }),
    );
  });

  it('have limits of their own where samples differ in size', () => {
    const { means, spreads } = meansAndDeviations([
      { count: 4, mean: 10, standardDeviation: 2, range: 0 },
      { count: 16, mean: 11, standardDeviation: 2, range: 0 },
    ]);
    expect(means.centre).toBeCloseTo(10.8, 12);
    const [narrow, wide] = [means.points[1]!, means.points[0]!];
    expect((wide.upper - means.centre) / (narrow.upper - means.centre)).toBeCloseTo(2, 12);
    expect(spreads.points[0]!.lower).toBe(0);
    expect(spreads.points[1]!.lower).toBeGreaterThan(0);
  });

  it('need what they rest on', () => {
    expect(() => meansAndRanges([])).toThrow(RangeError);
    expect(() => meansAndDeviations([])).toThrow(RangeError);
    expect(() => meansAndRanges([summarizeSample([1, 2]), summarizeSample([1, 2, 3])])).toThrow('one size');
    expect(() => meansAboutTarget([{ count: 0, mean: 1 }], { target: 1, sigma: 1, width: 3 })).toThrow(RangeError);
    expect(() => meansAboutTarget([], { target: 1, sigma: -1, width: 3 })).toThrow(RangeError);
    expect(() => individualsChart([1])).toThrow(RangeError);
    expect(() => countsChart([1, -1])).toThrow(RangeError);
    expect(() => countsChart([])).toThrow(RangeError);
    expect(() => sharesChart([{ found: 3, of: 2 }])).toThrow(RangeError);
    expect(() => sharesChart([])).toThrow(RangeError);
  });
});

describe('capability', () => {
  it('looks at one side alone where only that side is law', () => {
    const packs = { mean: 1000, sigmaWithin: 4, sigmaOverall: 5, lower: 985, upper: null };
    expect(capability(packs)).toEqual({
      within: { spread: null, lower: 1.25, upper: null, least: 1.25 },
      overall: { spread: null, lower: 1, upper: null, least: 1 },
    });
    expect(capability({ ...packs, lower: null }).within.least).toBeNull();
    expect(capability({ ...packs, lower: null, upper: 1010 }).overall.least).toBeCloseTo(2 / 3, 12);
  });

  it.each([
    { mean: NaN, sigmaWithin: 1, sigmaOverall: 1, lower: 1, upper: 2 },
    { mean: 1, sigmaWithin: 0, sigmaOverall: 1, lower: 1, upper: 2 },
    { mean: 1, sigmaWithin: 1, sigmaOverall: Infinity, lower: 1, upper: 2 },
    { mean: 1, sigmaWithin: 1, sigmaOverall: 1, lower: 2, upper: 2 },
  ])('refuses $mean, $sigmaWithin, $sigmaOverall, $lower, $upper', (facts) => {
    expect(() => capability(facts)).toThrow(RangeError);
  });
});

function round(value: number): number {
  return Math.round(value * 1e6) / 1e6;
}

/** The check values were made from factors of six decimal places. */
function expectNear(got: readonly number[], expected: readonly number[]): void {
  for (const [at, value] of expected.entries()) expect(Math.abs((got[at] ?? NaN) - value)).toBeLessThan(2.1e-6);
}

function limitsOf({ points }: { readonly points: readonly { readonly lower: number; readonly upper: number }[] }) {
  return [round(points[0]?.lower ?? NaN), round(points[0]?.upper ?? NaN)];
}
