import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { candidateMistakes } from './candidate-mistakes.js';
import { type CandidateMistake, differenceLeftBy, suspectsOf } from './suspects.js';

const bags = [
  { recordId: 'tip-1', grams: 990_000 },
  { recordId: 'tip-2', grams: 1_000_000 },
  { recordId: 'tip-3', grams: 1_030_000 },
];
const pallets = [
  { recordId: 'pallet-1', grams: 800_000 },
  { recordId: 'pallet-2', grams: 400_000 },
];

describe('a mistake in the records', () => {
  it.each<readonly [CandidateMistake['mistake'], number]>([
    ['bag-not-recorded', -1000],
    ['rework-not-recorded', -1000],
    ['pallet-counted-twice', -1000],
    ['bag-entered-twice', 1000],
    ['rework-entered-twice', 1000],
    ['pallet-not-counted', 1000],
    ['weigh-back-not-recorded', 1000],
  ])('%s leaves %d g of difference for 1000 g', (mistake, difference) => {
    expect(differenceLeftBy({ mistake, recordId: null, grams: 1000, standardGrams: 0 })).toBe(difference);
  });
});

describe('the suspects for a difference', () => {
  it('say what would remain once the mistake is put right', () => {
    const missing: CandidateMistake = {
      mistake: 'bag-not-recorded',
      recordId: null,
      grams: 1_000_000,
      standardGrams: 20_000,
    };
    expect(suspectsOf(-998_000, 1_500, [missing])).toEqual([{ ...missing, remainingGrams: 2_000 }]);
  });

  it('name the bag whose net fits, not its neighbours', () => {
    const suspects = suspectsOf(1_000_800, 600, candidateMistakes(bags, pallets));
    expect(suspects.map(({ mistake, recordId }) => [mistake, recordId])).toEqual([['bag-entered-twice', 'tip-2']]);
  });

  it('put the nearer one first, and of two equally near ones the more definite', () => {
    const at = (recordId: string, grams: number, standardGrams: number): CandidateMistake => ({
      mistake: 'bag-entered-twice',
      recordId,
      grams,
      standardGrams,
    });
    const suspects = suspectsOf(1_000_000, 1_000, [
      at('far', 1_001_500, 0),
      at('vague', 1_000_200, 30_000),
      at('near', 1_000_200, 0),
    ]);
    expect(suspects.map(({ recordId }) => recordId)).toEqual(['near', 'far', 'vague']);
  });

  it('are those within twice the uncertainty, exactly at it included', () => {
    const bag: CandidateMistake = { mistake: 'bag-entered-twice', recordId: 'tip', grams: 1_000_000, standardGrams: 0 };
    expect(suspectsOf(1_002_000, 1_000, [bag])).toHaveLength(1);
    expect(suspectsOf(1_002_001, 1_000, [bag])).toHaveLength(0);
  });

  it('are none where nothing fits', () => {
    expect(suspectsOf(300_000, 1_000, candidateMistakes(bags, pallets))).toEqual([]);
    expect(suspectsOf(300_000, 1_000, [])).toEqual([]);
  });

  it('need sizes above zero and spreads that are not negative', () => {
    const bag: CandidateMistake = { mistake: 'bag-entered-twice', recordId: 'tip', grams: 1_000_000, standardGrams: 0 };
    expect(() => suspectsOf(1, 1, [{ ...bag, grams: 0 }])).toThrow(RangeError);
    expect(() => suspectsOf(1, 1, [{ ...bag, standardGrams: -1 }])).toThrow(RangeError);
    expect(() => suspectsOf(1, NaN, [bag])).toThrow(RangeError);
  });

  it('always leave no more than the difference plus what the uncertainty allows', () => {
    const difference = fc.integer({ min: -2_000_000, max: 2_000_000 });
    fc.assert(
      fc.property(difference, fc.integer({ min: 0, max: 20_000 }), (differenceGrams, uncertaintyGrams) => {
        for (const suspect of suspectsOf(differenceGrams, uncertaintyGrams, candidateMistakes(bags, pallets))) {
          expect(suspect.remainingGrams + differenceLeftBy(suspect)).toBe(differenceGrams);
          const allowed = 2 * Math.hypot(uncertaintyGrams, suspect.standardGrams);
          expect(Math.abs(suspect.remainingGrams)).toBeLessThanOrEqual(allowed);
        }
      }),
    );
  });
});

describe('the mistakes worth looking for', () => {
  it('are one bag more, each bag twice, one full pallet more, each pallet twice', () => {
    const candidates = candidateMistakes(bags, pallets);
    expect(candidates.map(({ mistake, recordId }) => [mistake, recordId])).toEqual([
      ['bag-not-recorded', null],
      ['bag-entered-twice', 'tip-1'],
      ['bag-entered-twice', 'tip-2'],
      ['bag-entered-twice', 'tip-3'],
      ['pallet-not-counted', null],
      ['pallet-counted-twice', 'pallet-1'],
      ['pallet-counted-twice', 'pallet-2'],
    ]);
    expect(candidates[0]).toMatchObject({ grams: 1_006_667 });
    expect(candidates[4]).toMatchObject({ grams: 800_000, standardGrams: 0 });
    // By hand: differences −16 666.7, −6 666.7, 23 333.3 from the mean.
    expect(candidates[0]?.standardGrams).toBeCloseTo(20_816.66, 2);
  });

  it('take a spread for granted where a single bag shows none', () => {
    const candidates = candidateMistakes([{ recordId: 'tip-1', grams: 1_000_000 }], []);
    expect(candidates.map(({ mistake }) => mistake)).toEqual(['bag-not-recorded', 'bag-entered-twice']);
    expect(candidates[0]?.standardGrams).toBe(50_000);
  });

  it('are none where there is neither bag nor pallet, and never of 0 g', () => {
    expect(candidateMistakes([], [])).toEqual([]);
    expect(candidateMistakes([{ recordId: 'tip-1', grams: 0 }], [])).toEqual([]);
    expect(() => candidateMistakes([{ recordId: 'tip-1', grams: -1 }], [])).toThrow(RangeError);
  });
});
