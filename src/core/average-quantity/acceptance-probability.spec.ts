import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { describeWithChecks, readChecks } from '../../../test/support/checks.js';
import { acceptanceProbability, acceptanceProbabilityOfBatch } from './acceptance-probability.js';
import { ruleSetOf } from './rule-sets.js';
import type { PlanKind, PlanStep } from './sample-plan.js';

const stepsOf = (kind: PlanKind): PlanStep[][] =>
  ruleSetOf('uk-2006-659')
    .plans.find((plan) => plan.kind === kind)!
    .rows.flatMap(({ counting }) => (counting.by === 'number' ? [[...counting.steps]] : []));
const step = (packCount: number, accept: number): PlanStep => ({ packCount, accept, reject: accept + 1 });

describe('the probability that a plan accepts', () => {
  it('is worked out by hand for small plans', () => {
    expect(acceptanceProbability([step(1, 0)], 0.25)).toBe(0.75);
    expect(acceptanceProbability([step(2, 1)], 0.5)).toBe(0.75);
    // Two and two of half short: none short, or one short and then none of the next two.
    const double = [
      { packCount: 2, accept: 0, reject: 2 },
      { packCount: 2, accept: 1, reject: 2 },
    ];
    expect(acceptanceProbability(double, 0.5)).toBeCloseTo(0.25 + 0.5 * 0.25, 15);
    // 4 packs with 2 short, 2 drawn: all good in 1 of 6 ways, one short in 4 of 6.
    expect(acceptanceProbabilityOfBatch([step(2, 0)], 4, 2)).toBeCloseTo(1 / 6, 15);
    expect(acceptanceProbabilityOfBatch([step(2, 1)], 4, 2)).toBeCloseTo(5 / 6, 15);
    // Of the double plan: 1/6 at once; one short (4/6), then the other two, of which one is short: never.
    expect(acceptanceProbabilityOfBatch(double, 4, 2)).toBeCloseTo(1 / 6, 15);
    expect(acceptanceProbabilityOfBatch(double, 4, 1)).toBeCloseTo(1, 15);
  });

  it('is one where no pack is short, and none where all are', () => {
    for (const steps of [...stepsOf('single'), ...stepsOf('double')]) {
      expect(acceptanceProbability(steps, 0)).toBe(1);
      expect(acceptanceProbability(steps, 1)).toBe(0);
      expect(acceptanceProbabilityOfBatch(steps, 1_000, 0)).toBe(1);
      expect(acceptanceProbabilityOfBatch(steps, 1_000, 1_000)).toBe(0);
    }
  });

  it('of a very large batch is nearly that of a series', () => {
    for (const steps of [...stepsOf('single'), ...stepsOf('double')]) {
      const series = acceptanceProbability(steps, 0.04);
      expect(acceptanceProbabilityOfBatch(steps, 1_000_000, 40_000)).toBeCloseTo(series, 4);
    }
  });

  it('never rises with the share that is short, and lies between none and one', () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(share, share, fc.constantFrom(...stepsOf('single'), ...stepsOf('double')), (one, other, steps) => {
        const [few, many] = [Math.min(one, other), Math.max(one, other)];
        const accepted = acceptanceProbability(steps, few);
        expect(accepted).toBeLessThanOrEqual(1 + 1e-12);
        expect(acceptanceProbability(steps, many)).toBeLessThanOrEqual(accepted + 1e-12);
        expect(acceptanceProbability(steps, many)).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  it('is refused for what no batch has', () => {
    for (const share of [-0.1, 1.1, NaN]) expect(() => acceptanceProbability([step(1, 0)], share)).toThrow(RangeError);
    for (const [batch, short] of [
      [1, 0],
      [10, 11],
      [10, -1],
      [10, 0.5],
      [10.5, 1],
    ] as const) {
      expect(() => acceptanceProbabilityOfBatch([step(2, 0)], batch, short)).toThrow(RangeError);
    }
  });
});

interface OperatingCharacteristic {
  readonly operating_characteristic_computed_here: {
    readonly p_defective: readonly number[];
    readonly single: Readonly<Record<string, readonly number[]>>;
    readonly double: Readonly<Record<string, readonly number[]>>;
    readonly 'destructive n=20,c=1': readonly number[];
  };
}

// Plans of Directive 76/211/EEC Annex II 2.2 and UK SI 2006/659 Schedule 2; the curves were computed elsewhere, to four decimals.
describeWithChecks('the operating characteristics of the reference test', () => {
  it('agree with curves that other software computed', () => {
    const {
      p_defective: shares,
      single,
      double,
      'destructive n=20,c=1': destructive,
    } = readChecks<OperatingCharacteristic>(
      'metrology/reference-test-76-211.json',
    ).operating_characteristic_computed_here;
    const expected = [...Object.values(single), ...Object.values(double), destructive];
    const plans = [...stepsOf('single'), ...stepsOf('double'), ...stepsOf('destructive')];
    expect(plans.length).toBe(7);
    const computed = plans.map((steps) => shares.map((share) => acceptanceProbability(steps, share)));
    computed.forEach((curve, plan) => {
      curve.forEach((accepted, at) => {
        expect(Math.abs(accepted - expected[plan]![at]!)).toBeLessThan(0.000_051);
      });
    });
  });
});
