import { describe, expect, it } from '@jest/globals';
import { describeWithChecks, readChecks } from '../../../test/support/checks.js';
import { maximumAllowableVariationMilligrams } from './maximum-allowable-variation.js';
import { type AccuracyClass, permissibleError } from './scale-error.js';
import { coarsestInterval, scaleForPack, weigherForPack } from './scale-for-pack.js';

const classThree = (intervalGrams: number) =>
  ({ accuracyClass: 'III', intervalMilligrams: Math.round(intervalGrams * 1000) }) as const;

/** A pack whose packaging weighs nothing, as the notes reckon. */
const bare = (grams: number) => ({
  nominalMilligrams: Math.round(grams * 1000),
  grossMilligrams: Math.round(grams * 1000),
  tareMilligrams: null,
});

describe('the error of a scale in service', () => {
  // Directive 90/384/EEC Annex I Table 3 and 4.2, as scheduled in UK SI 1995/1907: upper edges included.
  it.each<[AccuracyClass, number, number]>([
    ['I', 50_000, 1],
    ['I', 50_001, 2],
    ['I', 200_001, 3],
    ['II', 5_000, 1],
    ['II', 5_001, 2],
    ['II', 20_000, 2],
    ['II', 20_001, 3],
    ['III', 500, 1],
    ['III', 501, 2],
    ['III', 2_000, 2],
    ['III', 2_001, 3],
    ['III', 10_000, 3],
    ['IIII', 50, 1],
    ['IIII', 51, 2],
    ['IIII', 200, 2],
    ['IIII', 201, 3],
  ])('of class %s at %d e is %d e', (accuracyClass, load, error) => {
    const scale = { accuracyClass, intervalMilligrams: 10_000 };
    expect(permissibleError(scale, load * 10_000)).toEqual({ kind: 'error', milligrams: error * 10_000 });
  });

  it('is not laid down below the least and above the greatest load', () => {
    expect(permissibleError(classThree(2), 39_999)).toEqual({ kind: 'load-below-minimum', minimumMilligrams: 40_000 });
    expect(permissibleError(classThree(2), 40_000)).toMatchObject({ kind: 'error' });
    expect(permissibleError(classThree(2), 20_000_001)).toMatchObject({ kind: 'load-above-maximum' });
    expect(permissibleError({ accuracyClass: 'IIII', intervalMilligrams: 5_000 }, 5_000_001)).toEqual({
      ...{ kind: 'load-above-maximum', maximumMilligrams: 5_000_000 },
    });
    // Class II has 20 e below 0.1 g and 50 e from there on.
    expect(permissibleError({ accuracyClass: 'II', intervalMilligrams: 50 }, 1_000)).toMatchObject({ kind: 'error' });
    expect(permissibleError({ accuracyClass: 'II', intervalMilligrams: 100 }, 4_999)).toMatchObject({
      kind: 'load-below-minimum',
    });
  });

  it('is not laid down for an interval that its class has not', () => {
    expect(permissibleError({ accuracyClass: 'III', intervalMilligrams: 50 }, 5_000).kind).toBe(
      'interval-not-of-class',
    );
    expect(permissibleError({ accuracyClass: 'III', intervalMilligrams: 3_000 }, 300_000).kind).toBe(
      'interval-not-of-class',
    );
    expect(() => permissibleError(classThree(0), 5_000)).toThrow(RangeError);
    expect(() => permissibleError(classThree(1), 1.5)).toThrow(RangeError);
  });
});

describe('a scale for a pack', () => {
  // NI SR 2011/331 Schedule 2 paragraph 1.3: a fifth of the tolerable negative error.
  it('may be worse for a larger pack than for a smaller one', () => {
    expect(scaleForPack('directive', classThree(5), bare(2_500))).toMatchObject({
      ...{ verdict: 'good-enough', errorMilligrams: 5_000, allowedMilligrams: 7_500 },
    });
    expect(scaleForPack('directive', classThree(5), bare(3_000))).toMatchObject({
      ...{ verdict: 'too-coarse', errorMilligrams: 10_000, allowedMilligrams: 9_000 },
    });
  });

  it('is judged by what stands on it, so by the gross', () => {
    expect(coarsestInterval('directive', 'III', bare(1_000))).toBe(2_000);
    expect(coarsestInterval('directive', 'III', { ...bare(1_000), grossMilligrams: 1_006_000 })).toBe(1_000);
  });

  it('errs twice where the empty packaging is weighed on it too', () => {
    const pack = { nominalMilligrams: 1_000_000, grossMilligrams: 1_050_000, tareMilligrams: 50_000 };
    expect(scaleForPack('directive', classThree(1), pack)).toMatchObject({
      verdict: 'good-enough',
      errorMilligrams: 3_000,
    });
    expect(scaleForPack('directive', classThree(2), pack)).toMatchObject({
      verdict: 'too-coarse',
      errorMilligrams: 6_000,
    });
    // 6 g of packaging are below the least load of 20 g: taken with one e.
    const light = { ...pack, grossMilligrams: 1_006_000, tareMilligrams: 6_000 };
    expect(scaleForPack('directive', classThree(1), light)).toMatchObject({ errorMilligrams: 3_000 });
  });

  it('is good enough exactly at the fifth', () => {
    // 15 kg: a fifth of 150 g is 30 g; 10 g at 1500 e are 20 g, 20 g at 750 e are 40 g.
    expect(scaleForPack('directive', classThree(10), bare(15_000))).toMatchObject({ verdict: 'good-enough' });
    expect(scaleForPack('directive', classThree(20), bare(15_000))).toMatchObject({ verdict: 'too-coarse' });
    // 50 kg by the table of the directive: a fifth of 500 g is 100 g, and 100 g at 500 e are 100 g.
    expect(scaleForPack('directive', classThree(100), bare(50_000))).toMatchObject({
      ...{ verdict: 'good-enough', errorMilligrams: 100_000, allowedMilligrams: 100_000 },
    });
  });

  // OIML R 87 (from memory): U (k = 2) of 0.2 T at most; U from the limits as 2·MPE/√3, JCGM 100:2008 4.3.7.
  it('has its uncertainty compared by OIML R 87', () => {
    const fit = scaleForPack('oiml-r87', classThree(2), bare(1_000));
    expect(fit).toMatchObject({ verdict: 'good-enough', allowedMilligrams: 3_000, evidence: 'memory' });
    expect('errorMilligrams' in fit ? fit.errorMilligrams : NaN).toBeCloseTo(2_309.4, 1);
    expect(scaleForPack('oiml-r87', classThree(5), bare(1_000)).verdict).toBe('too-coarse');
    // 3 kg: 10 g of error are 11.5 g of uncertainty, against 9 g.
    expect(scaleForPack('oiml-r87', classThree(5), bare(3_000)).verdict).toBe('too-coarse');
  });

  // NIST Handbook 133 section 2.2, seen: 7.2 g / 6 = 1.2 g for a pack of 113 g, so a division of 1 g will do.
  it('has its division compared in the United States', () => {
    expect(scaleForPack('handbook-133', classThree(1), bare(113))).toMatchObject({
      ...{ verdict: 'good-enough', errorMilligrams: 1_000, allowedMilligrams: 1_200, evidence: 'seen' },
    });
    expect(scaleForPack('handbook-133', classThree(2), bare(113)).verdict).toBe('too-coarse');
  });

  it('says why it cannot weigh a pack at all', () => {
    expect(scaleForPack('directive', classThree(2), bare(25))).toMatchObject({
      ...{ verdict: 'cannot-weigh-it', why: 'load-below-minimum' },
    });
    expect(coarsestInterval('directive', 'IIII', bare(1_000))).toBeNull();
  });
});

interface AdequateChecks {
  readonly adequate_e_computed_here: {
    readonly rows: readonly { Qn_g: number; largest_class_III_e_g_in_service_2xMPE: number }[];
  };
}

// Directive 90/384/EEC Annex I with NI SR 2011/331 Schedule 2; the table was computed elsewhere.
describeWithChecks('the coarsest scale of class III for a pack', () => {
  it('agrees with a table that other software computed, and does not follow the size of the pack', () => {
    const { rows } = readChecks<AdequateChecks>('metrology/weighing.json').adequate_e_computed_here;
    expect(rows.length).toBeGreaterThan(0);
    const computed = rows.map(({ Qn_g }) => [Qn_g, coarsestInterval('directive', 'III', bare(Qn_g))]);
    expect(computed).toEqual(
      rows.map((row) => [row.Qn_g, Math.round(row.largest_class_III_e_g_in_service_2xMPE * 1000)]),
    );
    expect(coarsestInterval('directive', 'III', bare(2_500))).toBeGreaterThan(
      coarsestInterval('directive', 'III', bare(3_000))!,
    );
  });
});

describe('a weigher whose error is known', () => {
  // TNE of 2 kg is 30 g, a fifth of it 6 g; the maximum allowable variation of 2 kg is 54 g (memory), a sixth of it 9 g.
  it('is good enough up to a fifth of the tolerable error, the edge included', () => {
    const at = (errorMilligrams: number) =>
      weigherForPack('directive', { errorMilligrams, intervalMilligrams: 200 }, 2_000_000);
    expect(at(6_000)).toMatchObject({ verdict: 'good-enough', errorMilligrams: 6_000, allowedMilligrams: 6_000 });
    expect(at(6_001).verdict).toBe('too-coarse');
  });

  it('is judged by its uncertainty under OIML R 87, and by its division in the USA', () => {
    const at = (errorMilligrams: number) =>
      weigherForPack('oiml-r87', { errorMilligrams, intervalMilligrams: 200 }, 2_000_000).verdict;
    // 2·E/√3 ≤ 6 g: E up to 5.196 g.
    expect([at(5_196), at(5_197)]).toEqual(['good-enough', 'too-coarse']);
    const american = weigherForPack('handbook-133', { errorMilligrams: 500, intervalMilligrams: 200 }, 2_000_000);
    const { verdict, ...figures } = american;
    expect(verdict).toBe('good-enough');
    expect(figures).toMatchObject({
      errorMilligrams: 200,
      allowedMilligrams: maximumAllowableVariationMilligrams(2_000_000) / 6,
    });
  });
});
