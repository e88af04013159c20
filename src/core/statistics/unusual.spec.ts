import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { countsInStretches, rankByUnusual, unusualness, unusualShare } from './unusual.js';

const twelve = [1, 1, 2, 2, 2, 3, 3, 3, 4, 4, 5, 5];
const numbers = fc.array(fc.integer({ min: -1000, max: 1000 }), { minLength: 12, maxLength: 60 });
const value = fc.integer({ min: -2000, max: 2000 });

describe('how unusual something is', () => {
  it('is the share of the records at least as far out, itself counted with them', () => {
    expect(unusualness({ value: 9, reference: twelve, tail: 'upper' })).toMatchObject({
      ...{ asFarCount: 0, referenceCount: 12, tailShare: 1 / 13, median: 3, word: 'usual' },
    });
    expect(unusualness({ value: 5, reference: twelve, tail: 'upper' })).toMatchObject({ asFarCount: 2 });
    expect(unusualness({ value: 5, reference: twelve, tail: 'both' })).toMatchObject({ asFarCount: 4 });
  });

  it('has a robust z by hand: median 3, median of the distances 1', () => {
    expect(unusualness({ value: 9, reference: twelve, tail: 'both' }).robustZ).toBeCloseTo(6 / 1.4826, 12);
    expect(unusualness({ value: 9, reference: [3, 3, 3, 3, 8], tail: 'both' }).robustZ).toBeNull();
  });

  it('is usual within the usual, unusual exactly from the share on, and outside its limits beyond them only', () => {
    const nineteen = Array.from({ length: 19 }, () => 0);
    expect(unusualness({ value: 1, reference: nineteen, tail: 'upper' })).toMatchObject({
      ...{ tailShare: unusualShare, word: 'unusual' },
    });
    expect(unusualness({ value: 0, reference: nineteen, tail: 'upper' }).word).toBe('usual');
    expect(unusualness({ value: 5, reference: twelve, tail: 'both', most: 5 }).word).toBe('usual');
    expect(unusualness({ value: 6, reference: twelve, tail: 'both', most: 5 }).word).toBe('outside-limits');
    expect(unusualness({ value: 0, reference: [], tail: 'both', least: 1 }).word).toBe('outside-limits');
  });

  it('says nothing where too few records make a habit', () => {
    expect(unusualness({ value: 99, reference: twelve.slice(1), tail: 'upper' }).word).toBe('too-few');
    expect(unusualness({ value: 99, reference: [], tail: 'upper' })).toMatchObject({ median: null, robustZ: null });
  });

  it('does not depend on the order of the records, and grows no less unusual farther out', () => {
    fc.assert(
      fc.property(numbers, value, fc.nat(500), (reference, at, farther) => {
        const one = unusualness({ value: at, reference, tail: 'both' });
        expect(unusualness({ value: at, reference: reference.toReversed(), tail: 'both' })).toEqual(one);
        expect(one.tailShare).toBeGreaterThan(0);
        expect(one.tailShare).toBeLessThanOrEqual(1);
        const out = at >= (one.median ?? 0) ? at + farther : at - farther;
        expect(unusualness({ value: out, reference, tail: 'both' }).tailShare).toBeLessThanOrEqual(one.tailShare);
      }),
    );
  });

  it('needs finite numbers', () => {
    expect(() => unusualness({ value: NaN, reference: [], tail: 'both' })).toThrow(RangeError);
    expect(() => unusualness({ value: 1, reference: [Infinity], tail: 'both' })).toThrow(RangeError);
  });
});

describe('findings in the order of a look', () => {
  const found = (
    word: 'outside-limits' | 'unusual' | 'usual' | 'too-few',
    tailShare: number,
    robustZ: number | null,
  ) => ({
    ...{ word, tailShare, robustZ },
  });

  it('have limits first, then what is rarest, then what lies farther out; usual ones last', () => {
    const [usual, few, far, near, rare, limit] = [
      found('usual', 0.3, 9),
      found('too-few', 0.5, null),
      found('unusual', 0.02, -8),
      found('unusual', 0.02, 4),
      found('unusual', 0.01, null),
      found('outside-limits', 0.9, 0),
    ];
    expect(rankByUnusual([usual, few, near, far, rare, limit] as never)).toEqual([limit, rare, far, near, few, usual]);
  });
});

describe('events in equal stretches', () => {
  it('are counted stretch by stretch, each span from its own beginning', () => {
    expect(countsInStretches([1, 2, 12, 24], [{ from: 0, until: 25 }], 10)).toEqual([2, 1]);
    expect(countsInStretches([5, 15], [{ from: 5, until: 15 }], 10)).toEqual([1]);
    expect(countsInStretches([], [{ from: 0, until: 9 }], 10)).toEqual([]);
    expect(() => countsInStretches([], [], 0)).toThrow(RangeError);
  });
});
