import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { studentTQuantile } from '../statistics/student-t-quantile.js';
import { describeWithChecks, readChecks } from '../../../test/support/checks.js';
import { meanStanding, restsOnShortestPack } from './mean-test.js';
import { errorSums } from './pack-sums.js';
import { ruleSets } from './rule-sets.js';

const nominal = 1_000_000;
const standing = (errors: readonly number[], factor: number | null) =>
  meanStanding(
    errorSums(
      errors.map((error) => nominal + error),
      nominal,
    ),
    factor,
  );

describe('the mean test', () => {
  // Directive 76/211/EEC Annex II 2.3: the table of criteria has "equal or greater".
  it('passes exactly at its limit', () => {
    // By hand: errors −9, −5, −1 have mean −5 and s 4; 1.25 · 4 is 5, exactly.
    expect(standing([-9, -5, -1], 1_250)).toBe('at-the-limit');
    expect(standing([-9, -5, -1], 1_251)).toBe('within');
    expect(standing([-9, -5, -1], 1_249)).toBe('outside');
    expect(standing([-9, -5, -2], 1_250)).toBe('outside');
  });

  it('needs no allowance at or above the nominal quantity', () => {
    expect(standing([0, 0, 0], 503)).toBe('at-the-limit');
    expect(standing([-1, 1, 0], null)).toBe('at-the-limit');
    expect(standing([-1, 1, 0], 503)).toBe('within');
    expect(standing([-1, 2, 0], null)).toBe('within');
    expect(standing([-1, 0, 0], null)).toBe('outside');
  });

  it('has no allowance for packs that all weigh the same', () => {
    expect(standing([-1, -1, -1], 640)).toBe('outside');
    expect(standing([1, 1, 1], 640)).toBe('within');
  });

  it('takes one pack only where no factor is given', () => {
    expect(standing([-1], null)).toBe('outside');
    expect(standing([0], null)).toBe('at-the-limit');
    expect(standing([1], null)).toBe('within');
    expect(() => standing([0], 503)).toThrow(RangeError);
    expect(() => standing([], null)).toThrow(RangeError);
  });

  it.each([-1, 0.5, NaN])('refuses a factor of %d thousandths', (factor) => {
    expect(() => standing([0, 1], factor)).toThrow(RangeError);
  });

  it('agrees with the rule worked in binary fractions wherever that is not near the limit', () => {
    const errors = fc.array(fc.integer({ min: -5_000, max: 5_000 }), { minLength: 2, maxLength: 60 });
    fc.assert(
      fc.property(errors, fc.constantFrom(503, 379, 640, 295, 234), (some, factor) => {
        const mean = some.reduce((sum, error) => sum + error, 0) / some.length;
        const s = Math.sqrt(some.reduce((sum, error) => sum + (error - mean) ** 2, 0) / (some.length - 1));
        const margin = mean + (factor / 1000) * s;
        if (Math.abs(margin) > 1e-6) expect(standing(some, factor)).toBe(margin > 0 ? 'within' : 'outside');
        expect(standing(some.toReversed(), factor)).toBe(standing(some, factor));
        expect(
          standing(
            some.map((error) => error * 7),
            factor,
          ),
        ).toBe(standing(some, factor));
      }),
    );
  });
});

describe('a pass that rests on the shortest pack', () => {
  it('is told from one that does not', () => {
    expect(restsOnShortestPack([nominal, nominal - 1], nominal, 503)).toBe(false);
    expect(restsOnShortestPack([nominal, nominal, nominal], nominal, 503)).toBe(false);
    expect(
      restsOnShortestPack(
        [-3, -2, -2, -2].map((error) => nominal + error),
        nominal,
        503,
      ),
    ).toBe(false);
    const oneGross = [-20_000, ...Array.from({ length: 29 }, (_, index) => -1_000 + (index % 3))];
    expect(
      restsOnShortestPack(
        oneGross.map((error) => nominal + error),
        nominal,
        503,
      ),
    ).toBe(true);
  });
});

describe('the factors of the plans', () => {
  // k = t(0.995; n − 1)/√n for the directive and R 87, t(0.975; n − 1)/√n for Handbook 133 (97.5 % on one side).
  it('are those of the formula, to their last printed digit', () => {
    const tested = ruleSets.flatMap(({ id, plans }) =>
      plans.flatMap(({ rows }) =>
        rows.flatMap(({ mean, counting }) => {
          if (mean?.factorThousandths == null || counting.by === 'share') return [];
          const packCount = mean.packCount ?? counting.steps[0].packCount;
          const probability = id === 'us-handbook-133' ? 0.975 : 0.995;
          const factor = studentTQuantile(probability, packCount - 1) / Math.sqrt(packCount);
          return [[id, packCount, mean.factorThousandths, Math.round(factor * 1000)]];
        }),
      ),
    );
    // Single, both double, both destructive, R 87, category A.
    expect(tested.length).toBe(3 + 6 + 2 + 3 + 13);
    for (const [, , printed, computed] of tested) expect(printed).toBe(computed);
  });
});

interface ExampleCases {
  readonly cases: readonly {
    errors_g: readonly number[];
    label_g: number;
    SCF: number;
    over_MAV: number;
    average_requirement: 'pass' | 'fail';
  }[];
}

// An example of our own in the procedure of NIST Handbook 133; the handbook's printed exhibit was not read.
describeWithChecks('the mean test of Handbook 133', () => {
  it('decides every case of the example, and tells where one gross short pack carries the rest through', () => {
    const { cases } = readChecks<ExampleCases>('metrology/hb133-worked-example-own.json');
    expect(cases.length).toBe(3);
    const found = cases.map(({ errors_g, label_g }) => {
      const nets = errors_g.map((error) => Math.round((label_g + error) * 1000));
      const passed = meanStanding(errorSums(nets, label_g * 1000), 635) !== 'outside';
      return [passed ? 'pass' : 'fail', restsOnShortestPack(nets, label_g * 1000, 635)];
    });
    expect(found).toEqual(cases.map(({ average_requirement, over_MAV }) => [average_requirement, over_MAV > 0]));
  });
});

interface PowerChecks {
  readonly mean_test_pass_probability: readonly {
    n: number;
    k: number;
    shift_in_sigma: number;
    P_pass_mean_test: number;
  }[];
}

/** Normal errors, the same in every run of this test: Park and Miller's generator (1988), Box and Muller's draw (1958). */
function normalErrors(seed: number): () => number {
  let state = seed;
  const next = (): number => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
  return () => Math.sqrt(-2 * Math.log(next())) * Math.cos(2 * Math.PI * next());
}

// Factors of Directive 76/211/EEC Annex II 2.3; the probabilities were computed elsewhere.
describeWithChecks('the mean test as a proof of the mean', () => {
  it('is a poor one: packs that are too light by three tenths of a standard deviation mostly pass', () => {
    const { mean_test_pass_probability: rows } = readChecks<PowerChecks>('metrology/setpoint.json');
    const tested = rows.filter(({ n, k }) => [20, 30, 50].includes(n) && k > 0.3);
    expect(tested.length).toBeGreaterThan(10);
    const sampleCount = 400;
    const error = normalErrors(76_211);
    for (const { n, k, shift_in_sigma: shift, P_pass_mean_test: expected } of tested) {
      let passed = 0;
      for (let sample = 0; sample < sampleCount; sample += 1) {
        const errors = Array.from({ length: n }, () => Math.round(1_000 * (shift + error())));
        if (standing(errors, Math.round(k * 1000)) !== 'outside') passed += 1;
      }
      // Five standard deviations of the share that passes, and one sample more.
      const allowed = 5 * Math.sqrt((expected * (1 - expected)) / sampleCount) + 1 / sampleCount;
      expect([n, shift, Math.abs(passed / sampleCount - expected) < allowed]).toEqual([n, shift, true]);
    }
  });
});
