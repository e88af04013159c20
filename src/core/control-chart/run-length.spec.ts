import { describe, expect, it } from '@jest/globals';
import { describeWithChecks, readChecks } from '../../../test/support/checks.js';
import { normalDraws } from '../../../test/support/normal-draws.js';
import { cumulativeSums } from './cumulative-sums.js';
import { chanceToMiss, cumulativeSumRunLength, meansRunLength, weightedAverageRunLength } from './run-length.js';
import { rulesRunLength } from './run-length-of-rules.js';
import { nelsonRules, westernElectricRules } from './chart-rules.js';

interface Design {
  readonly cusum_k_half: readonly {
    readonly k: number;
    readonly h: number;
    readonly shift_sigma: number;
    readonly ARL_two_sided_computed: number;
    readonly ARL_textbook_memory: number;
  }[];
  readonly cusum_h_for_ARL0_370: readonly { readonly k: number; readonly h_for_two_sided_ARL0_370: number }[];
  readonly ewma_combinations: readonly {
    readonly lambda: number;
    readonly L: number;
    readonly ARL: Readonly<Record<string, number>>;
  }[];
}

// Montgomery, Introduction to Statistical Quality Control, table 9.3 (from memory); Lucas and Saccucci (1990),
// Technometrics 32, 1, for the pairs of λ and L; all recomputed by integral equations for the check values.
describeWithChecks('average run lengths of the tables', () => {
  const design = () => readChecks<Design>('metrology/cusum-ewma-design.json');

  it('cumulative sums with k = ½', () => {
    const rows = design().cusum_k_half;
    expect(rows).toHaveLength(20);
    for (const { k, h, shift_sigma: shift, ...said } of rows) {
      const length = cumulativeSumRunLength(shift, { allowance: k, decision: h });
      expect([h, shift, Math.abs(length - said.ARL_two_sided_computed) <= 0.0051]).toEqual([h, shift, true]);
      expect(Number(length.toPrecision(3))).toBeCloseTo(said.ARL_textbook_memory, 1);
    }
  });

  it('the decision intervals for 370', () => {
    const rows = design().cusum_h_for_ARL0_370;
    expect(rows).toHaveLength(6);
    for (const { k, h_for_two_sided_ARL0_370: h } of rows) {
      // h is printed to three decimal places; a thousandth of it is worth half a figure at most.
      expect(Math.abs(cumulativeSumRunLength(0, { allowance: k, decision: h }) - 370)).toBeLessThan(0.8);
    }
  });

  it('weighted averages', () => {
    const rows = design().ewma_combinations;
    expect(rows).toHaveLength(6);
    for (const { lambda, L, ARL } of rows) {
      for (const [shift, length] of Object.entries(ARL)) {
        const got = weightedAverageRunLength(Number(shift), lambda, L);
        expect([lambda, shift, Math.abs(got - length) <= 0.051]).toEqual([lambda, shift, true]);
      }
    }
  });

  it('chart rules', () => {
    const { in_control_ARL_from_memory: said } = readChecks<{
      readonly in_control_ARL_from_memory: Readonly<Record<string, number>>;
    }>('metrology/control-rules.json');
    expect(rulesRunLength([westernElectricRules[0]], 0)).toBeCloseTo(said['WE 1 only']!, 1);
    expect(rulesRunLength(westernElectricRules, 0)).toBeCloseTo(said['WE 1-4']!, 2);
  });
});

describe('average run lengths', () => {
  it('of a chart of means are one over the chance of a signal', () => {
    expect(meansRunLength(0, 5)).toBeCloseTo(370.398, 3);
    expect(meansRunLength(1, 5)).toBeCloseTo(1 / (1 - chanceToMiss(1, 5)), 9);
    expect(meansRunLength(-1, 5)).toBe(meansRunLength(1, 5));
    expect(rulesRunLength([nelsonRules[0]], 1.5)).toBeCloseTo(meansRunLength(1.5, 1), 9);
  });

  // Montgomery, Introduction to Statistical Quality Control, 6.2.6 (from memory): a shift of 2σ, samples of five.
  it('come with the chance to miss a shift', () => {
    // Printed 0.0708, with the normal distribution looked up at −1.47 instead of −1.472.
    expect(Math.abs(chanceToMiss(2, 5) - 0.0708)).toBeLessThan(0.0004);
    expect(chanceToMiss(0, 5)).toBeCloseTo(0.9973, 4);
    expect(chanceToMiss(1, 20)).toBeLessThan(chanceToMiss(1, 5));
  });

  it('of a weighted average with all the weight on the newest are those of single values', () => {
    for (const shift of [0, 0.5, 2]) {
      expect(weightedAverageRunLength(shift, 1, 3)).toBeCloseTo(meansRunLength(shift, 1), 6);
    }
  });

  it('are shorter with a head start, more so after a shift', () => {
    const plan = { allowance: 0.5, decision: 5 };
    const share = (shift: number) =>
      cumulativeSumRunLength(shift, { ...plan, headStart: 2.5 }) / cumulativeSumRunLength(shift, plan);
    // Lucas and Crosier (1982), from memory: 430 instead of 465 without a shift, 6.35 instead of 10.4 at 1σ.
    expect(cumulativeSumRunLength(0, { ...plan, headStart: 2.5 })).toBeCloseTo(430, -1);
    expect(cumulativeSumRunLength(1, { ...plan, headStart: 2.5 })).toBeCloseTo(6.35, 1);
    expect(share(1)).toBeLessThan(share(0));
  });

  it('are what series drawn by chance come to', () => {
    const draw = normalDraws(11, 'run lengths');
    const plan = { target: 0, allowance: 0.5, decision: 4, headStart: 2 };
    const lengths = Array.from({ length: 4000 }, () => {
      const figures = Array.from({ length: 60 }, () => draw(1, 1));
      return cumulativeSums(figures, plan).findIndex(({ signal }) => signal !== null) + 1;
    });
    const expected = cumulativeSumRunLength(1, { allowance: 0.5, decision: 4, headStart: 2 });
    const average = lengths.reduce((sum, length) => sum + length, 0) / lengths.length;
    // Runs vary about as much as they are long: five times that over the root of 4000.
    expect(Math.min(...lengths)).toBeGreaterThan(0);
    expect(Math.abs(average - expected)).toBeLessThan((5 * expected) / Math.sqrt(4000));
  });

  it('of rules become shorter with each further rule and with a shift', () => {
    const lengths = [1, 2, 3, 4].map((count) => rulesRunLength(westernElectricRules.slice(0, count), 0));
    expect(lengths.every((length, at) => at === 0 || length < lengths[at - 1]!)).toBe(true);
    expect(rulesRunLength(westernElectricRules, 1)).toBeLessThan(10);
    expect(rulesRunLength(westernElectricRules, -1)).toBeCloseTo(rulesRunLength(westernElectricRules, 1), 9);
  });

  it('are refused where there is no such chart', () => {
    expect(() => chanceToMiss(NaN, 5)).toThrow(RangeError);
    expect(() => meansRunLength(0, 0)).toThrow(RangeError);
    expect(() => cumulativeSumRunLength(0, { allowance: -1, decision: 4 })).toThrow(RangeError);
    expect(() => cumulativeSumRunLength(0, { allowance: 0.5, decision: 21 })).toThrow(RangeError);
    expect(() => cumulativeSumRunLength(0, { allowance: 0.5, decision: 4, headStart: 5 })).toThrow(RangeError);
    expect(() => weightedAverageRunLength(0, 0.01, 3)).toThrow(RangeError);
    expect(() => rulesRunLength(nelsonRules, 0)).toThrow('nelson-3');
  });
});
