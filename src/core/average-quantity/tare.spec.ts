import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { describeWithChecks, readChecks } from '../../../test/support/checks.js';
import { tareRule, tareStretches } from './tare.js';

const empties = (count: number, tare: number, ...others: readonly number[]): number[] => [
  ...Array.from({ length: count }, () => tare),
  ...others,
];
const kilogram = { nominalMilligrams: 1_000_000, tolerableDeficiencyMilligrams: 15_000 };

// OIML R 87 Annex B, from memory.
describe('which tare to use', () => {
  it('is the mean of ten light packagings', () => {
    expect(tareRule({ ...kilogram, taresMilligrams: empties(10, 6_000) })).toEqual({
      ...{ use: 'mean', meanTareMilligrams: 6_000, emptyCount: 10 },
      ...{ clause: 'OIML R 87 Annex B', evidence: 'memory' },
    });
    expect(tareRule({ ...kilogram, taresMilligrams: empties(7, 6_000) })).toMatchObject({
      use: 'more-empties-needed',
      missingCount: 3,
    });
    expect(tareRule({ ...kilogram, taresMilligrams: [] })).toMatchObject({ missingCount: 10, meanTareMilligrams: 0 });
  });

  it('is rounded up, so that it never adds to a net', () => {
    expect(tareRule({ ...kilogram, taresMilligrams: empties(9, 6_000, 6_001) }).meanTareMilligrams).toBe(6_001);
  });

  it('is that mean up to exactly 10 % of the nominal quantity', () => {
    expect(tareRule({ ...kilogram, taresMilligrams: empties(10, 100_000) }).use).toBe('mean');
    expect(tareRule({ ...kilogram, taresMilligrams: empties(9, 100_000, 100_001) })).toMatchObject({
      use: 'more-empties-needed',
      missingCount: 15,
    });
    expect(tareRule({ ...kilogram, taresMilligrams: empties(25, 100_001) }).use).toBe('mean');
  });

  it('is each pack’s own where heavy packaging varies by more than a quarter of the tolerable deficiency', () => {
    // Thirteen on each side of 200 g, off by a: s² is 26·a²/25. With a = 3676 s is 3748.8, with 3678 it is 3750.8.
    const twoSided = (off: number) => [...empties(13, 200_000 - off), ...empties(13, 200_000 + off)];
    expect(tareRule({ ...kilogram, taresMilligrams: twoSided(3_676) }).use).toBe('mean');
    expect(tareRule({ ...kilogram, taresMilligrams: twoSided(3_678) }).use).toBe('each-pack');
    // Two of 26 on each side by a, the others between: s² is 4·a²/25, so a = 9375 makes s exactly 3750.
    const exactly = (a: number) => empties(22, 200_000, 200_000 - a, 200_000 - 9_375, 200_000 + 9_375, 200_000 + a);
    expect(tareRule({ ...kilogram, taresMilligrams: exactly(9_375) }).use).toBe('mean');
    expect(tareRule({ ...kilogram, taresMilligrams: exactly(9_376) }).use).toBe('each-pack');
  });

  it('does not ask how light packaging varies', () => {
    const uneven = [...empties(5, 1_000), ...empties(5, 50_000)];
    expect(tareRule({ ...kilogram, taresMilligrams: uneven }).use).toBe('mean');
  });

  it.each([[[0]], [[1.5]], [[-1]]])('refuses empties of %j mg', (taresMilligrams) => {
    expect(() => tareRule({ ...kilogram, taresMilligrams })).toThrow(RangeError);
  });
});

describe('a change of tare', () => {
  it('splits the statistics of a run', () => {
    const changes = [
      { fromPackCount: 0, tareMilligrams: 6_000 },
      { fromPackCount: 400, tareMilligrams: 6_100 },
    ];
    expect(tareStretches(changes, 1_000)).toEqual([
      { fromPackCount: 0, toPackCount: 400, tareMilligrams: 6_000 },
      { fromPackCount: 400, toPackCount: 1_000, tareMilligrams: 6_100 },
    ]);
  });

  it('splits nothing where the new tare is the same, and of two at one pack the later counts', () => {
    const changes = [
      { fromPackCount: 0, tareMilligrams: 6_000 },
      { fromPackCount: 400, tareMilligrams: 6_000 },
      { fromPackCount: 500, tareMilligrams: 6_100 },
      { fromPackCount: 500, tareMilligrams: 6_000 },
    ];
    expect(tareStretches(changes, 1_000)).toEqual([{ fromPackCount: 0, toPackCount: 1_000, tareMilligrams: 6_000 }]);
  });

  it('leaves packs before the first tare without one, and knows what the run began with', () => {
    expect(tareStretches([{ fromPackCount: 10, tareMilligrams: 6_000 }], 20)).toEqual([
      { fromPackCount: 0, toPackCount: 10, tareMilligrams: null },
      { fromPackCount: 10, toPackCount: 20, tareMilligrams: 6_000 },
    ]);
    const earlier = [
      { fromPackCount: -50, tareMilligrams: 5_900 },
      { fromPackCount: -3, tareMilligrams: 6_000 },
      { fromPackCount: 20, tareMilligrams: 6_100 },
    ];
    expect(tareStretches(earlier, 20)).toEqual([{ fromPackCount: 0, toPackCount: 20, tareMilligrams: 6_000 }]);
    expect(tareStretches(earlier, 0)).toEqual([]);
  });

  it('refuses changes out of order, and tares that are none', () => {
    const change = (fromPackCount: number, tareMilligrams: number) => ({ fromPackCount, tareMilligrams });
    expect(() => tareStretches([change(5, 6_000), change(4, 6_100)], 10)).toThrow(RangeError);
    expect(() => tareStretches([change(5, 0)], 10)).toThrow(RangeError);
    expect(() => tareStretches([change(5.5, 6_000)], 10)).toThrow(RangeError);
  });

  it('leaves no pack out and counts none twice', () => {
    const some = fc.array(fc.record({ fromPackCount: fc.nat(50), tareMilligrams: fc.integer({ min: 1, max: 3 }) }));
    fc.assert(
      fc.property(some, fc.nat(60), (changes, packCount) => {
        const inOrder = changes.toSorted((one, other) => one.fromPackCount - other.fromPackCount);
        const stretches = tareStretches(inOrder, packCount);
        let next = 0;
        for (const { fromPackCount, toPackCount, tareMilligrams } of stretches) {
          expect(fromPackCount).toBe(next);
          for (let pack = fromPackCount; pack < toPackCount; pack += 1) {
            const last = inOrder.findLast((change) => change.fromPackCount <= pack);
            expect(tareMilligrams).toBe(last?.tareMilligrams ?? null);
          }
          next = toPackCount;
        }
        expect(next).toBe(packCount);
        stretches.slice(1).forEach(({ tareMilligrams }, at) => {
          expect(tareMilligrams).not.toBe(stretches[at]!.tareMilligrams);
        });
      }),
    );
  });
});

interface TareChecks {
  readonly tare_rules_r87_annexB_memory: { readonly seen: boolean; readonly rules: readonly string[] };
}

describeWithChecks('the rule for tare', () => {
  it('is marked as from memory, as the notes have it', () => {
    expect(readChecks<TareChecks>('metrology/weighing.json').tare_rules_r87_annexB_memory.seen).toBe(false);
    expect(tareRule({ ...kilogram, taresMilligrams: [1] }).evidence).toBe('memory');
  });
});
