import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { describeWithChecks, readChecks } from '../../../test/support/checks.js';
import { cumulativeSums, shiftedMean } from './cumulative-sums.js';
import { averageSigma, weightedAverageChart } from './weighted-average-chart.js';

type Values = readonly number[];
interface Examples {
  readonly ewma_6_3_2_4: {
    readonly lambda: number;
    readonly target: number;
    readonly s: number;
    readonly k_sigma: number;
    readonly data: Values;
    readonly ewma_published_2dp_with_start: Values;
    readonly UCL_published: number;
    readonly UCL_recomputed: number;
    readonly LCL_recomputed: number;
  };
  readonly cusum_6_3_2_3: {
    readonly target: number;
    readonly k: number;
    readonly h: number;
    readonly data: Values;
    readonly S_hi_recomputed: Values;
    readonly S_lo_recomputed: Values;
    readonly S_hi_remembered_2dp: Values;
    readonly first_signal_group_1_based: number;
  };
  readonly cusum_montgomery_runger_16_6: {
    readonly target: number;
    readonly K: number;
    readonly H: number;
    readonly data: Values;
    readonly S_H_published_1dp: Values;
    readonly S_L_published_1dp: Values;
  };
  readonly cusum_fir_lucas_crosier: {
    readonly k: number;
    readonly h: number;
    readonly head_start: number;
    readonly z: Values;
    readonly no_fir_published: Values;
    readonly fir_published: Values;
    readonly signal_no_fir_at: number;
    readonly signal_fir_at: number;
  };
}

const examples = () => readChecks<Examples>('metrology/ehandbook-examples.json');

describeWithChecks('published averages and sums', () => {
  // NIST/SEMATECH e-Handbook 6.3.2.4; its limits are those of a long run.
  it('the weighted average', () => {
    const { data, lambda, target, s, k_sigma, ...published } = examples().ewma_6_3_2_4;
    const { points } = weightedAverageChart(data, { target, sigma: s, newestWeight: lambda, width: k_sigma });
    const printed = published.ewma_published_2dp_with_start.slice(1);
    expect(points).toHaveLength(printed.length);
    // 21.565 and the like lie between two printed places.
    for (const [at, value] of printed.entries()) expect(Math.abs(points[at]!.value - value)).toBeLessThan(0.00501);
    const last = points.at(-1)!;
    expect(last.upper).toBeCloseTo(published.UCL_recomputed, 4);
    expect(last.upper).toBeCloseTo(published.UCL_published, 3);
    expect(last.lower).toBeCloseTo(published.LCL_recomputed, 4);
    expect(points[0]!.upper).toBeCloseTo(target + k_sigma * lambda * s, 10);
    expect(points.every(({ value, lower, upper }) => value > lower && value < upper)).toBe(true);
  });

  // NIST/SEMATECH e-Handbook 6.3.2.3, from memory and recomputed.
  it('the sums of the handbook', () => {
    const example = examples().cusum_6_3_2_3;
    const { target, k, h } = example;
    const sums = cumulativeSums(example.data, { target, allowance: k, decision: h, headStart: 0 });
    expect(sums).toHaveLength(20);
    for (const [at, { high, low }] of sums.entries()) {
      expect(high).toBeCloseTo(example.S_hi_recomputed[at]!, 9);
      expect(low).toBeCloseTo(example.S_lo_recomputed[at]!, 9);
      expect(Math.abs(high - example.S_hi_remembered_2dp[at]!)).toBeLessThan(0.0051);
    }
    const first = sums.findIndex(({ signal }) => signal !== null);
    expect([first + 1, sums[first]?.signal]).toEqual([example.first_signal_group_1_based, 'high']);
    // Begun with group 13: two groups.
    expect(sums[first]?.highCount).toBe(2);
    expect(shiftedMean(sums[first]!, { target, allowance: k })).toBeCloseTo(target + k + 4.94 / 2, 9);
    expect(shiftedMean(sums[0]!, { target, allowance: k })).toBeNull();
  });

  // Montgomery and Runger, Applied Statistics and Probability for Engineers, example 16-6.
  it('the sums of the textbook, which do not signal', () => {
    const { data, target, K, H, ...published } = examples().cusum_montgomery_runger_16_6;
    const sums = cumulativeSums(data, { target, allowance: K, decision: H, headStart: 0 });
    for (const [at, { high, low, signal }] of sums.entries()) {
      expect(high).toBeCloseTo(published.S_H_published_1dp[at]!, 9);
      expect(low).toBeCloseTo(published.S_L_published_1dp[at]!, 9);
      expect(signal).toBeNull();
    }
    expect(sums).toHaveLength(20);
  });

  // Lucas and Crosier (1982), as quoted in Six Sigma: Advanced Tools for Black Belts (2006), table 24.1.
  it('the sums with a head start, which signal four figures sooner', () => {
    const { z, k, h, head_start: headStart, ...published } = examples().cusum_fir_lucas_crosier;
    const plan = { target: 0, allowance: k, decision: h };
    const plain = cumulativeSums(z, { ...plan, headStart: 0 });
    const begun = cumulativeSums(z, { ...plan, headStart });
    for (const [at, value] of published.no_fir_published.entries()) expect(plain[at]!.high).toBeCloseTo(value, 9);
    for (const [at, value] of published.fir_published.entries()) expect(begun[at]!.high).toBeCloseTo(value, 9);
    const firstOf = (sums: typeof plain) => sums.findIndex(({ signal }) => signal === 'high') + 1;
    expect([firstOf(plain), firstOf(begun)]).toEqual([published.signal_no_fir_at, published.signal_fir_at]);
  });
});

const figures = fc.array(fc.integer({ min: -50, max: 50 }), { maxLength: 40 });

describe('the weighted average', () => {
  it('with all the weight on the newest is the chart of single values', () => {
    const { points } = weightedAverageChart([1, -2], { target: 0, sigma: 1, newestWeight: 1, width: 3 });
    expect(points).toEqual([
      { value: 1, sigma: 1, lower: -3, upper: 3 },
      { value: -2, sigma: 1, lower: -3, upper: 3 },
    ]);
  });

  it('has limits that widen to those of a long run', () => {
    const plan = { target: 0, sigma: 2, newestWeight: 0.2, width: 3 };
    const { points } = weightedAverageChart(new Array<number>(60).fill(0), plan);
    const widths = points.map(({ upper }) => upper);
    expect(widths.every((width, at) => at === 0 || width >= widths[at - 1]!)).toBe(true);
    expect(widths.at(-1)).toBeCloseTo(3 * averageSigma(plan, Infinity), 9);
    expect(averageSigma(plan, Infinity)).toBeCloseTo(2 * Math.sqrt(0.2 / 1.8), 12);
  });

  it('moves with the values, and stretches with them', () => {
    fc.assert(
      fc.property(figures, fc.integer({ min: -50, max: 50 }), fc.integer({ min: 1, max: 9 }), (values, shift, by) => {
        const plan = { target: 3, sigma: 2, newestWeight: 0.25, width: 3 };
        const plain = weightedAverageChart(values, plan);
        const moved = weightedAverageChart(
          values.map((value) => value * by + shift),
          { ...plan, target: 3 * by + shift, sigma: 2 * by },
        );
        for (const [at, { value, upper }] of plain.points.entries()) {
          expect((moved.points[at]!.value - shift) / by).toBeCloseTo(value, 8);
          expect((moved.points[at]!.upper - shift) / by).toBeCloseTo(upper, 8);
        }
      }),
    );
  });

  it.each([
    { target: NaN, sigma: 1, newestWeight: 0.2, width: 3 },
    { target: 0, sigma: 0, newestWeight: 0.2, width: 3 },
    { target: 0, sigma: 1, newestWeight: 0, width: 3 },
    { target: 0, sigma: 1, newestWeight: 1.1, width: 3 },
    { target: 0, sigma: 1, newestWeight: 0.2, width: 0 },
  ])('refuses $target, $sigma, $newestWeight, $width', (plan) => {
    expect(() => weightedAverageChart([1], plan)).toThrow(RangeError);
  });
});

describe('cumulative sums', () => {
  const plan = { target: 0, allowance: 1, decision: 5, headStart: 0 };

  it('turn about with the values', () => {
    fc.assert(
      fc.property(figures, (values) => {
        const plain = cumulativeSums(values, plan);
        const turned = cumulativeSums(
          values.map((value) => -value),
          plan,
        );
        expect(turned.map(({ high, low }) => [low, high])).toEqual(plain.map(({ high, low }) => [high, low]));
      }),
    );
  });

  it('are never below 0, and signal above H only', () => {
    expect(cumulativeSums([6, 1], plan).map(({ high, signal }) => [high, signal])).toEqual([
      [5, null],
      [5, null],
    ]);
    expect(cumulativeSums([6, 2], plan)[1]).toEqual({ high: 6, low: 0, highCount: 2, lowCount: 0, signal: 'high' });
    fc.assert(
      fc.property(figures, (values) => {
        for (const { high, low } of cumulativeSums(values, plan)) expect(Math.min(high, low)).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  it.each([
    { ...plan, target: NaN },
    { ...plan, allowance: -1 },
    { ...plan, decision: 0 },
    { ...plan, headStart: 6 },
  ])('refuse $target, $allowance, $decision, $headStart', (wrong) => {
    expect(() => cumulativeSums([1], wrong)).toThrow(RangeError);
  });

  it('refuse a figure that is none', () => {
    expect(() => cumulativeSums([NaN], plan)).toThrow(RangeError);
  });
});
