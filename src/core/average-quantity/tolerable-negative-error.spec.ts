import { describe, expect, it } from '@jest/globals';
import { describeWithChecks, readChecks } from '../../../test/support/checks.js';
import { shortPackLimits, tolerableNegativeErrorMilligrams } from './tolerable-negative-error.js';

interface GermanChecks {
  readonly examples_where_this_differs_from_2xTNE: readonly {
    Qn: number;
    '2xTNE_rounded_first': number;
    FPackV_T2_rounded_last: number;
  }[];
}

interface ToleranceChecks {
  readonly bands: readonly { from_g: number; to_g: number; kind: 'percent' | 'absolute'; value: number }[];
  readonly float_trap_examples_q_times_fraction: readonly { Qn: number; exact: number }[];
  readonly worked_values: readonly {
    Qn_g: number;
    TNE_eu_uk_g: number;
    T1_limit_g: number;
    T2_limit_g: number;
    T_r87_g: number;
  }[];
}

const milligrams = (grams: number): number => Math.round(grams * 1000);

describe('the tolerable negative error', () => {
  it.each([
    [25, 2.3],
    [125, 5.7],
    [250, 9],
    [454, 13.7],
    [1000, 15],
    [2000, 30],
    [15_020, 150.2],
    [50_000, 500],
  ])('of %d g is %d g', (nominalGrams, grams) => {
    expect(tolerableNegativeErrorMilligrams(milligrams(nominalGrams))).toBe(milligrams(grams));
  });

  it('is rounded up to whole grams above one kilogram by OIML R 87', () => {
    expect(tolerableNegativeErrorMilligrams(1_050_000, 'directive')).toBe(15_800);
    expect(tolerableNegativeErrorMilligrams(1_050_000, 'oiml-r87')).toBe(16_000);
    expect(tolerableNegativeErrorMilligrams(454_000, 'oiml-r87')).toBe(13_700);
  });

  it('begins above nothing by OIML R 87', () => {
    expect(tolerableNegativeErrorMilligrams(4_000, 'oiml-r87')).toBe(400);
    expect(() => tolerableNegativeErrorMilligrams(0, 'oiml-r87')).toThrow(RangeError);
  });

  // FPackV section 9(3) and (4): 18 % of 35 g are 6.3 g, while twice the rounded 3.2 g are 6.4 g.
  it('is doubled before it is rounded by the German regulation', () => {
    expect(shortPackLimits(35_000, 'fpackv')).toEqual({ t1Milligrams: 31_800, t2Milligrams: 28_700 });
    expect(shortPackLimits(35_000)).toEqual({ t1Milligrams: 31_800, t2Milligrams: 28_600 });
  });

  it('is taken off once and twice', () => {
    expect(shortPackLimits(1_000_000)).toEqual({ t1Milligrams: 985_000, t2Milligrams: 970_000 });
  });

  it('never falls as the nominal quantity rises', () => {
    const tolerances = Array.from({ length: 49_996 }, (_, step) => tolerableNegativeErrorMilligrams((step + 5) * 1000));
    const falls = tolerances.filter((tolerance, index) => tolerance < (tolerances[index - 1] ?? 0));
    expect(falls).toEqual([]);
  });

  it.each([4_999, 50_000_001, 1000.5, NaN, -1])('is not laid down for %d mg', (nominalMilligrams) => {
    expect(() => tolerableNegativeErrorMilligrams(nominalMilligrams)).toThrow(RangeError);
  });
});

// Directive 76/211/EEC Annex I 2.4 and the sources named in the file.
describeWithChecks('the tolerable negative error against the table of the law', () => {
  const checks = () => readChecks<ToleranceChecks>('metrology/tne.json');

  it('agrees with every worked value, by both roundings', () => {
    const { worked_values: values } = checks();
    expect(values.length).toBeGreaterThan(0);
    for (const { Qn_g, TNE_eu_uk_g, T1_limit_g, T2_limit_g, T_r87_g } of values) {
      const nominal = milligrams(Qn_g);
      expect([Qn_g, tolerableNegativeErrorMilligrams(nominal)]).toEqual([Qn_g, milligrams(TNE_eu_uk_g)]);
      expect([Qn_g, tolerableNegativeErrorMilligrams(nominal, 'oiml-r87')]).toEqual([Qn_g, milligrams(T_r87_g)]);
      expect(shortPackLimits(nominal)).toEqual({
        t1Milligrams: milligrams(T1_limit_g),
        t2Milligrams: milligrams(T2_limit_g),
      });
    }
  });

  it('agrees at the edges of every band and in the middle', () => {
    for (const { from_g, to_g, kind, value } of checks().bands) {
      for (const nominalGrams of [from_g, (from_g + to_g) / 2, to_g]) {
        // Whole tenths of grams, rounded up; the percentages of the table have one decimal.
        const tenths = kind === 'absolute' ? value * 10 : Math.ceil((nominalGrams * Math.round(value * 10)) / 100);
        const nominal = milligrams(nominalGrams);
        expect([nominalGrams, tolerableNegativeErrorMilligrams(nominal)]).toEqual([
          nominalGrams,
          Math.round(tenths * 100),
        ]);
      }
    }
  });

  it('agrees where fractions of grams go wrong', () => {
    const { float_trap_examples_q_times_fraction: traps } = checks();
    expect(traps.length).toBeGreaterThan(0);
    for (const { Qn, exact } of traps) {
      expect([Qn, tolerableNegativeErrorMilligrams(milligrams(Qn))]).toEqual([Qn, milligrams(exact)]);
    }
  });
});

// FPackV section 9(4), as the file names it.
describeWithChecks('the German limit T2', () => {
  it('agrees with every example, and differs there from twice the rounded error', () => {
    const { examples_where_this_differs_from_2xTNE: examples } =
      readChecks<GermanChecks>('metrology/de-fpackv-s9.json');
    expect(examples.length).toBeGreaterThan(0);
    for (const { Qn, '2xTNE_rounded_first': doubled, FPackV_T2_rounded_last: german } of examples) {
      const nominal = milligrams(Qn);
      expect([Qn, nominal - shortPackLimits(nominal, 'fpackv').t2Milligrams]).toEqual([Qn, milligrams(german)]);
      expect([Qn, nominal - shortPackLimits(nominal).t2Milligrams]).toEqual([Qn, milligrams(doubled)]);
    }
  });
});
