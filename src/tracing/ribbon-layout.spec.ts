import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { layOutRibbons, ribbonSizes, type Corners } from './ribbon-layout.js';
import type { RibbonBag, Ribbons } from './ribbons.js';

const bag = (name: string, fromGrams: number, toGrams: number, amounts: Partial<RibbonBag> = {}): RibbonBag => ({
  ...{ bagId: name, name, spans: [{ fromGrams, toGrams }] },
  ...{ leastGrams: 0, likelyGrams: 0, mostGrams: toGrams - fromGrams, word: 'likely' },
  ...amounts,
});

/** Three bags of a tonne, one after the other, and the packs asked for: the second half of the second and half of the third. */
const three: Ribbons = {
  ...{ periodId: 'period', hopperCode: 'H1', startedAt: '2026-03-12T06:00:00.000Z' },
  additions: ['A', 'B', 'C'].map((name, place) => ({
    ...{ id: name, bagIds: [name], source: 'whole-bag' as never },
    ...{ fromGrams: place * 1_000_000, toGrams: (place + 1) * 1_000_000 },
  })),
  ...{ inGrams: 3_000_000, outGrams: 2_600_000, windows: [{ fromGrams: 1_500_000, toGrams: 2_500_000 }] },
  bags: [
    bag('B', 1_000_000, 2_000_000, { leastGrams: 100_000, likelyGrams: 500_000, word: 'sure' }),
    bag('C', 2_000_000, 3_000_000, { likelyGrams: 500_000 }),
    bag('A', 0, 1_000_000, { likelyGrams: 0, word: 'possible' }),
  ],
};

const bottomOf = (corners: Corners | undefined): readonly number[] => {
  const xs = (corners ?? []).filter(([, y]) => y === ribbonSizes.packedTop).map(([x]) => x);
  return [Math.min(...xs), Math.max(...xs)];
};

describe('the ribbons of a hopper period', () => {
  it('fill the packs asked for with the likely kilograms, in the order of tipping', () => {
    const { ribbons, windows } = layOutRibbons(three);
    const [window] = windows;
    const [b, c] = ribbons.map(({ likely }) => bottomOf(likely[0]));
    expect(ribbons.map(({ bagId }) => bagId)).toEqual(['B', 'C']);
    expect(b?.[0]).toBe(window?.x);
    expect(b?.[1]).toBe(c?.[0]);
    expect(c?.[1]).toBeCloseTo((window?.x ?? 0) + (window?.width ?? 0), 1);
  });

  it('tell least, likely and most apart by how wide they are, and draw no least where nothing is sure', () => {
    const [b, c] = layOutRibbons(three).ribbons;
    const wide = (shapes: readonly Corners[] | undefined): number => {
      const [left = 0, right = 0] = bottomOf(shapes?.[0]);
      return right - left;
    };
    expect(wide(b?.least) / wide(b?.likely)).toBeCloseTo(0.2, 2);
    expect(wide(b?.most) / wide(b?.likely)).toBeCloseTo(2, 2);
    expect(c?.least).toEqual([]);
  });

  it('mark what was tipped as drawn, as possible only, or as no part of it', () => {
    expect(layOutRibbons(three).boxes.map(({ part }) => part)).toEqual(['possible', 'drawn', 'drawn']);
    const without = { ...three, bags: three.bags.slice(0, 2) };
    expect(layOutRibbons(without).boxes.map(({ part }) => part)).toEqual(['none', 'drawn', 'drawn']);
  });

  it('have the amounts of the bags in their rows, on one scale', () => {
    const { rows, withoutRow } = layOutRibbons(three);
    expect(rows.map(({ bag: { name } }) => name)).toEqual(['B', 'C']);
    expect(withoutRow).toBe(1);
    expect(rows[0]?.mostWidth).toBe(ribbonSizes.barWidth);
    expect(rows[0]?.leastWidth).toBeCloseTo(ribbonSizes.barWidth / 10, 1);
  });

  it('go from a bag to several stretches of packs where two lines draw from the hopper', () => {
    const windows = [
      { fromGrams: 1_000_000, toGrams: 1_300_000 },
      { fromGrams: 1_600_000, toGrams: 2_000_000 },
    ];
    const { ribbons } = layOutRibbons({ ...three, windows });
    expect(ribbons[0]?.likely).toHaveLength(2);
  });

  it('never leave the picture, whatever the records say', () => {
    const grams = fc.nat({ max: 5_000_000 });
    const span = fc.tuple(grams, grams).map(([from, length]) => ({ fromGrams: from, toGrams: from + length + 1 }));
    const bags = fc.array(
      fc.record({ at: span, leastGrams: grams, likelyGrams: grams, mostGrams: grams, sure: fc.boolean() }),
      { maxLength: 60 },
    );
    fc.assert(
      fc.property(bags, fc.array(span, { minLength: 1, maxLength: 4 }), (some, windows) => {
        const named = some.map(({ at, sure, ...amounts }, place) =>
          bag(`B${place}`, at.fromGrams, at.toGrams, { ...amounts, word: sure ? 'sure' : 'possible' }),
        );
        const picture = layOutRibbons({ ...three, bags: named, windows });
        const corners = picture.ribbons.flatMap(({ most, likely, least }) => [...most, ...likely, ...least].flat());
        for (const [x, y] of corners) {
          expect(x).toBeGreaterThanOrEqual(0);
          expect(x).toBeLessThanOrEqual(picture.width);
          expect(y).toBeLessThanOrEqual(picture.height);
        }
      }),
    );
  });
});
