import { describe, expect, it } from '@jest/globals';
import { describeWithChecks, readChecks } from '../../../test/support/checks.js';
import {
  maximumAllowableVariationMilligrams,
  maximumAllowableVariationThousandthsOfPound,
} from './maximum-allowable-variation.js';

interface VariationChecks {
  readonly rows: readonly {
    to_lb: number | null;
    to_metric: string | null;
    MAV_lb: number | null;
    MAV_g: number | null;
    text: string | null;
  }[];
}

/** "36 g" or "1.12 kg" in whole milligrams. */
function milligrams(text: string): number {
  const [number, unit] = text.split(' ');
  return Math.round(Number(number) * (unit === 'kg' ? 1_000_000 : 1_000));
}

describe('the maximum allowable variation', () => {
  // NIST Handbook 133 section 2.2, seen: 7.2 g (0.016 lb) for a pack of 113 g (0.25 lb).
  it('is 7.2 g or 0.016 lb for a quarter of a pound', () => {
    expect(maximumAllowableVariationMilligrams(113_000)).toBe(7_200);
    expect(maximumAllowableVariationThousandthsOfPound(25)).toBe(16);
  });

  // The pound figure in grams would be 19.958 g, rounded 20.0 g; the metric column of Table 2-5 has 19.9 g (from memory).
  it('is not the pound figure made into grams', () => {
    expect(maximumAllowableVariationMilligrams(454_000)).toBe(19_900);
    expect(maximumAllowableVariationThousandthsOfPound(100)).toBe(44);
  });

  it('is a share of the smallest and the largest packs, and jumps at 24.67 kg', () => {
    expect(maximumAllowableVariationMilligrams(20_005)).toBe(2_000);
    expect(maximumAllowableVariationMilligrams(24_670_000)).toBe(226_000);
    expect(maximumAllowableVariationMilligrams(24_670_001)).toBe(493_400);
    expect(maximumAllowableVariationThousandthsOfPound(5)).toBe(5);
    expect(maximumAllowableVariationThousandthsOfPound(6_000)).toBe(1_200);
  });

  it.each([0, -1, 1.5, NaN, Infinity])('is not laid down for a label of %d', (labelled) => {
    expect(() => maximumAllowableVariationMilligrams(labelled)).toThrow(RangeError);
    expect(() => maximumAllowableVariationThousandthsOfPound(labelled)).toThrow(RangeError);
  });
});

// NIST Handbook 133 Table 2-5; the file says which rows were seen.
describeWithChecks('the maximum allowable variation against the table', () => {
  it('agrees in both columns at every edge and just above it', () => {
    const { rows } = readChecks<VariationChecks>('metrology/hb133-mav.json');
    expect(rows.length).toBe(34);
    rows.forEach(({ to_lb: toPounds, to_metric: toMetric, MAV_g: grams, MAV_lb: pounds }, index) => {
      const below = rows[index - 1];
      if (grams === null || pounds === null) return;
      expect([toMetric, maximumAllowableVariationMilligrams(milligrams(toMetric!))]).toEqual([
        toMetric,
        Math.round(grams * 1000),
      ]);
      expect(maximumAllowableVariationMilligrams(milligrams(below!.to_metric!) + 1)).toBe(Math.round(grams * 1000));
      const labelled = Math.round(toPounds! * 100);
      expect([toPounds, maximumAllowableVariationThousandthsOfPound(labelled)]).toEqual([
        toPounds,
        Math.round(pounds * 1000),
      ]);
      const justAbove = Math.round(below!.to_lb! * 100) + 1;
      expect(maximumAllowableVariationThousandthsOfPound(justAbove)).toBe(Math.round(pounds * 1000));
    });
  });
});
