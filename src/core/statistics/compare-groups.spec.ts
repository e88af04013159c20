import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { describeWithChecks, readChecks } from '../../../test/support/checks.js';
import { normalDraws } from '../../../test/support/normal-draws.js';
import { compareGroups, type GroupSums } from './compare-groups.js';
import { compareMeans, type MeanOfMany } from './compare-means.js';
import { mean } from './mean.js';
import { standardDeviation } from './standard-deviation.js';

const manyOf = (values: readonly number[]): MeanOfMany => ({
  count: values.length,
  mean: mean(values),
  standardDeviation: standardDeviation(values),
});
const sumsOf = (values: readonly number[]): GroupSums => ({
  count: values.length,
  sum: values.reduce((sum, value) => sum + value, 0),
  squareSum: values.reduce((sum, value) => sum + value * value, 0),
});

describe('two means compared', () => {
  // Miles per gallon of two lots of cars, NIST/SEMATECH e-Handbook 1.3.5.3, from memory: T and degrees of freedom.
  it('give the t and the degrees of freedom of the handbook where spreads are not taken as equal', () => {
    const american = { count: 249, mean: 20.14458, standardDeviation: 6.4147 };
    const japanese = { count: 79, mean: 30.48101, standardDeviation: 6.10771 };
    const { difference, standardError, degreesOfFreedom, isSignificant } = compareMeans(american, japanese, 0.05);
    expect(difference / standardError).toBeCloseTo(-12.94627, 4);
    expect(degreesOfFreedom).toBeCloseTo(136.875, 2);
    expect(isSignificant).toBe(true);
  });

  // Two samples of ten with what a statistics program printed for them in a public answer: p-value 0.08356.
  it('give the share that another program printed', () => {
    const one = manyOf([11, 9, 10, 11, 10, 12, 9, 11, 12, 9]);
    const other = manyOf([11, 13, 10, 13, 12, 9, 11, 12, 12, 11]);
    const { difference, standardError, degreesOfFreedom, chanceShare, isSignificant } = compareMeans(one, other, 0.05);
    expect(difference / standardError).toBeCloseTo(-1.8325, 4);
    expect(degreesOfFreedom).toBeCloseTo(17.9, 1);
    expect(chanceShare).toBeCloseTo(0.08356, 5);
    expect(isSignificant).toBe(false);
  });

  it('differ by any difference where nothing varies, and by none where there is none', () => {
    const still = { count: 5, mean: 10, standardDeviation: 0 };
    expect(compareMeans(still, { ...still, mean: 10.001 }, 0.01).isSignificant).toBe(true);
    expect(compareMeans(still, still, 0.01)).toMatchObject({ difference: 0, isSignificant: false });
  });

  it.each([
    [{ count: 1, mean: 1, standardDeviation: 0 }, 0.01],
    [{ count: 2, mean: NaN, standardDeviation: 0 }, 0.01],
    [{ count: 2, mean: 1, standardDeviation: -1 }, 0.01],
    [{ count: 2, mean: 1, standardDeviation: 1 }, 0],
    [{ count: 2, mean: 1, standardDeviation: 1 }, 1],
  ])('are refused for %j and a risk of %d', (wrong, risk) => {
    const right = { count: 2, mean: 1, standardDeviation: 1 };
    expect(() => compareMeans(wrong, right, risk)).toThrow(RangeError);
  });
});

// Nelson, Coffin and Copeland 2003, data fillweight: four runs of five filling tubes, the fifth of which fills heavily.
describeWithChecks('five filling tubes', () => {
  it('show the one that fills more than the others, and no other', () => {
    const { engrexpt_fillweight: found } = readChecks<{
      engrexpt_fillweight: { data: Record<string, number[]>; computed: { tube_means: Record<string, number> } };
    }>('metrology/datasets-fill.json');
    const runs = Object.values(found.data);
    const tubes = [0, 1, 2, 3, 4].map((tube) => runs.map((run) => run[tube] ?? NaN));
    const compared = compareGroups(tubes.map(sumsOf), { risk: 0.05, least: 0 });
    expect(compared.map((tube) => Math.round(tube.mean * 1000) / 1000)).toEqual(
      Object.values(found.computed.tube_means),
    );
    const largest = compared.map(({ fromOthers }) => fromOthers?.difference ?? 0);
    expect(largest[4]).toBeCloseTo(99.65 - (97.65 + 98.425 + 98.05 + 98.3) / 4, 6);
    // Four fills a tube are few: with the risk shared out none stands out yet.
    expect(compared.some(({ isOff }) => isOff)).toBe(false);
    const sizes = compared.map(({ fromOthers }) => Math.abs(fromOthers!.difference) / fromOthers!.standardError);
    expect(sizes.indexOf(Math.max(...sizes))).toBe(4);
    // Ten times as many fills of the same spread would show it.
    const more = compareGroups(
      tubes.map((tube) => sumsOf(Array.from({ length: 10 }, () => tube).flat())),
      { risk: 0.05, least: 1 },
    );
    expect(more.map(({ isOff }) => isOff)).toEqual([false, false, false, false, true]);
  });
});

describe('groups compared', () => {
  const values = fc.array(fc.integer({ min: -5000, max: 5000 }), { minLength: 2, maxLength: 30 });

  it('are each held against all others that are not off', () => {
    const limits = { risk: 0.01, least: 0 };
    fc.assert(
      fc.property(fc.array(values, { minLength: 2, maxLength: 5 }), (groups) => {
        const compared = compareGroups(groups.map(sumsOf), limits);
        expect(compared.filter(({ isOff }) => isOff).length).toBeLessThanOrEqual(groups.length / 2);
        for (const [at, group] of groups.entries()) {
          const rest = groups.filter((_, place) => place !== at && compared[place]?.isOff !== true).flat();
          if (rest.length < 2) continue;
          const expected = compareMeans(manyOf(group), manyOf(rest), limits.risk / groups.length);
          expect(compared[at]?.fromOthers?.difference).toBeCloseTo(expected.difference, 6);
          expect(compared[at]?.fromOthers?.chanceShare).toBeCloseTo(expected.chanceShare, 6);
        }
      }),
      { numRuns: 40 },
    );
  });

  it('are not called off for one that draws their mean after it', () => {
    const draw = normalDraws(9, 'groups');
    const groups = [0, 0, 0, 0, 0, -18].map((shift) => Array.from({ length: 800 }, () => draw(shift, 30)));
    const off = (least: number) => compareGroups(groups.map(sumsOf), { risk: 0.01, least }).map(({ isOff }) => isOff);
    expect(off(2)).toEqual([false, false, false, false, false, true]);
    expect(off(30)).toEqual([false, false, false, false, false, false]);
  });

  it('are off by chance no more often than the risk says', () => {
    const draw = normalDraws(10, 'alike');
    let found = 0;
    for (let round = 0; round < 400; round += 1) {
      const groups = Array.from({ length: 12 }, () => Array.from({ length: 20 }, () => draw(0, 5)));
      if (compareGroups(groups.map(sumsOf), { risk: 0.05, least: 0 }).some(({ isOff }) => isOff)) found += 1;
    }
    // 20 of 400 are expected at most; four standard deviations more may be chance.
    expect(found).toBeGreaterThan(5);
    expect(found).toBeLessThan(20 + 4 * Math.sqrt(20));
  });

  it('say nothing of a single value, of one group alone, or of none', () => {
    expect(compareGroups([], { risk: 0.01, least: 0 })).toEqual([]);
    expect(compareGroups([sumsOf([1, 2, 3])], { risk: 0.01, least: 0 })[0]?.fromOthers).toBeNull();
    const [single, others] = compareGroups([sumsOf([5]), sumsOf([1, 2, 3])], { risk: 0.01, least: 0 });
    expect(single).toEqual({ count: 1, mean: 5, standardDeviation: null, fromOthers: null, isOff: false });
    expect(others).toMatchObject({ count: 3, mean: 2, standardDeviation: 1, fromOthers: null });
  });
});
