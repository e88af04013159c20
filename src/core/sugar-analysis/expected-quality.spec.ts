import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { describeWithChecks, readChecks } from '../../../test/support/checks.js';
import { whyNoBlend } from './blending.js';
import { expectedQuality, type CalculatedQuality, type QualityPart } from './expected-quality.js';

const drying = 'loss on drying, 105 °C, 3 h';

function aPart(given: {
  readonly sourceId: string;
  readonly likelyGrams: number;
  readonly value: number;
  readonly standard?: number;
  readonly resultId?: string;
  readonly method?: string;
  readonly leastGrams?: number;
  readonly mostGrams?: number;
}): QualityPart {
  const { sourceId, likelyGrams, value, standard = 1, resultId = sourceId, method = drying } = given;
  const { leastGrams = likelyGrams, mostGrams = likelyGrams } = given;
  return { sourceId, likelyGrams, leastGrams, mostGrams, result: { resultId, method, value, standard } };
}
const untested = (sourceId: string, likelyGrams: number): QualityPart => {
  return { sourceId, likelyGrams, leastGrams: likelyGrams, mostGrams: likelyGrams, result: null };
};

function calculated(property: string, parts: readonly QualityPart[]): CalculatedQuality {
  const found = expectedQuality(property, parts);
  if (found.kind === 'refused') throw new Error(found.reason);
  return found;
}

const light = aPart({ sourceId: 'light', likelyGrams: 600, value: 32 });
const dark = aPart({ sourceId: 'dark', likelyGrams: 400, value: 58 });

describe('the quality that a pack should have', () => {
  it('is the mean by mass, marked as calculated and with its method', () => {
    const found = calculated('colour-iu', [light, dark]);
    expect(found.value).toBeCloseTo(42.4, 12);
    expect(found).toMatchObject({ kind: 'calculated', property: 'colour-iu', method: drying, shareWithoutResult: 0 });
  });

  it('averages the doubt of two results, but not that of one result which stands for two bags', () => {
    expect(calculated('colour-iu', [light, dark]).standard).toBeCloseTo(Math.hypot(0.6, 0.4), 12);
    const composite = [light, dark].map((part) => ({
      ...part,
      result: { ...part.result!, resultId: 'shift', value: 40 },
    }));
    expect(calculated('colour-iu', composite).standard).toBeCloseTo(1, 12);
  });

  it('says between what it lies however the hopper flows', () => {
    const found = calculated('colour-iu', [
      { ...light, leastGrams: 200, mostGrams: 900 },
      { ...dark, leastGrams: 100, mostGrams: 700 },
    ]);
    expect(found.range?.lowest).toBeCloseTo(0.9 * 32 + 0.1 * 58, 12);
    expect(found.range?.highest).toBeCloseTo(0.3 * 32 + 0.7 * 58, 12);
  });

  it('counts a bag that is possible but not likely in what it can be', () => {
    const unlikely = aPart({ sourceId: 'unlikely', likelyGrams: 0, mostGrams: 250, value: 200 });
    const found = calculated('colour-iu', [{ ...light, leastGrams: 0 }, { ...dark, leastGrams: 0 }, unlikely]);
    expect(found.value).toBeCloseTo(42.4, 12);
    expect(found.range?.highest).toBeCloseTo(0.25 * 200 + 0.4 * 58 + 0.35 * 32, 12);
  });

  it.each([
    ['grain-mean-aperture-mm', 'spreads-add'],
    ['grain-coefficient-of-variation-percent', 'spreads-add'],
    ['colour-type-points', 'not-proportional'],
    ['equilibrium-relative-humidity-percent', 'not-proportional'],
    ['floc-points', 'not-proportional'],
    ['insoluble-matter-mg-per-kg', 'counted-apart'],
    ['yeast-count-per-10-g', 'counted-apart'],
    ['taste', 'not-known'],
  ] as const)('refuses %s, which does not blend: %s', (property, why) => {
    expect(whyNoBlend(property)).toBe(why);
    const found = expectedQuality(property, [light, dark]);
    expect(found).toEqual({ kind: 'refused', property, reason: 'does-not-blend', why });
  });

  it('is refused where a part has no result, and says which; next to nothing may lack one', () => {
    expect(expectedQuality('colour-iu', [light, untested('heel', 0.61)])).toMatchObject({
      reason: 'results-missing',
      sourceIds: ['heel'],
    });
    const found = calculated('colour-iu', [light, untested('heel', 0.6), untested('elsewhere', 0)]);
    expect(found).toMatchObject({ value: 32, withoutResult: ['heel'] });
    expect(found.shareWithoutResult).toBeCloseTo(0.6 / 600.6, 12);
    expect(found.range).toBeNull();
  });

  it('is refused where parts were tested by different methods, and where nothing is inside', () => {
    const titrated = aPart({ sourceId: 'dark', likelyGrams: 400, value: 0.05, method: 'titration for water' });
    expect(expectedQuality('moisture-percent', [light, titrated])).toMatchObject({
      reason: 'methods-differ',
      methods: [drying, 'titration for water'],
    });
    expect(expectedQuality('moisture-percent', [])).toMatchObject({ reason: 'nothing-inside' });
  });

  it('refuses grams out of order, results that are no numbers and sources that stand twice', () => {
    expect(() => expectedQuality('colour-iu', [{ ...light, leastGrams: 601 }])).toThrow(RangeError);
    expect(() => expectedQuality('colour-iu', [{ ...light, mostGrams: 599 }])).toThrow(RangeError);
    expect(() => expectedQuality('colour-iu', [aPart({ sourceId: 'a', likelyGrams: 1, value: NaN })])).toThrow(
      RangeError,
    );
    expect(() => expectedQuality('colour-iu', [light, light])).toThrow(RangeError);
  });

  it('lies between its limits, they between the results, and no mean is less doubtful than the parts allow', () => {
    const anyPart = fc.record({
      grams: fc.tuple(fc.nat(1000), fc.nat(1000), fc.nat(1000)),
      value: fc.integer({ min: 0, max: 100 }),
    });
    fc.assert(
      fc.property(fc.array(anyPart, { minLength: 1, maxLength: 8 }), (drawn) => {
        const parts = drawn.map(({ grams, value }, place) => {
          const [leastGrams = 0, likelyGrams = 0, mostGrams = 0] = [...grams].sort((a, b) => a - b);
          return aPart({
            sourceId: String(place),
            leastGrams,
            likelyGrams: likelyGrams + 1,
            mostGrams: mostGrams + 1,
            value,
          });
        });
        const { value, range, standard } = calculated('ash-percent', parts);
        const { lowest = NaN, highest = NaN } = range ?? {};
        const values = drawn.map((part) => part.value);
        expect(lowest).toBeLessThanOrEqual(value + 1e-9);
        expect(highest).toBeGreaterThanOrEqual(value - 1e-9);
        expect(lowest).toBeGreaterThanOrEqual(Math.min(...values) - 1e-9);
        expect(highest).toBeLessThanOrEqual(Math.max(...values) + 1e-9);
        expect(standard).toBeLessThanOrEqual(1 + 1e-12);
        expect(standard).toBeGreaterThanOrEqual(1 / Math.sqrt(parts.length) - 1e-12);
      }),
      { numRuns: 500, seed: 20261113 },
    );
  });
});

describeWithChecks('the quality of a blend against quality/lab_examples.json', () => {
  it('agrees with the sums written there, and refuses the grain size', () => {
    const { blend } = readChecks<{ blend: Readonly<Record<'IU' | 'LOD' | 'MA_CV', string>> }>(
      'quality/lab_examples.json',
    );
    const sums = [
      ['colour-iu', blend.IU],
      ['moisture-percent', blend.LOD],
    ] as const;
    for (const [property, written] of sums) {
      const [, share = '', one = '', otherShare = '', other = '', result = ''] =
        /^([\d.]+)\*([\d.]+)\+([\d.]+)\*([\d.]+)=([\d.]+)$/.exec(written) ?? [];
      const found = calculated(property, [
        aPart({ sourceId: 'one', likelyGrams: Number(share) * 1000, value: Number(one) }),
        aPart({ sourceId: 'other', likelyGrams: Number(otherShare) * 1000, value: Number(other) }),
      ]);
      expect(found.value).toBeCloseTo(Number(result), 12);
    }
    expect(blend.MA_CV).toContain('32.74 % (not 28.8)');
    expect(expectedQuality('grain-coefficient-of-variation-percent', [light, dark]).kind).toBe('refused');
  });
});
