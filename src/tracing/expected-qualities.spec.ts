import { describe, expect, it } from '@jest/globals';
import type { BagResult } from '../laboratory/bag-results.js';
import { expectedQualities } from './expected-qualities.js';
import type { SourceLine } from './thread.js';

const colour = (of: Partial<BagResult> & { readonly amount: string }): BagResult => ({
  ...{ id: `r-${of.amount}-${of.sampleId ?? ''}`, sampleId: 's', sampleNumber: 'S-1', standsFor: 'bag' },
  ...{ property: 'colour-iu', method: 'GS2/3-10', isRetest: false, analysedAt: '2026-03-12T06:00:00.000Z' },
  ...of,
});

type Tested = SourceLine & { readonly results: readonly BagResult[] };

/** A sample of two bags has its results once. */
function threadOf(tested: readonly Tested[]): Parameters<typeof expectedQualities>[0] {
  return {
    sources: tested,
    results: [...new Map(tested.map((source) => [source.bagId, source])).values()].flatMap(({ bagId, results }) =>
      results.map((result) => ({ ...result, sampleId: sampleOf(bagId, result) })),
    ),
  };
}

function sampleOf(bagId: string, { sampleId }: BagResult): string {
  return `${bagId} ${sampleId}`;
}

function source(bagId: string, likelyGrams: number, results: readonly BagResult[]): Tested {
  return {
    sampleIds: [...new Set(results.map((result) => sampleOf(bagId, result)))],
    ...{ bagId, bagNumber: `B-${bagId}`, sscc: '', netGrams: 1_000_000, dryerCode: 'D1', dryerShift: null },
    ...{ filledAt: null, supplierLot: null, results, decision: 'released', isOnHold: false, isDoubtful: false },
    ...{ leastGrams: 0, likelyGrams, mostGrams: 1_000_000, word: 'likely' },
  };
}

const scatter = new Map([['colour-iu GS2/3-10', { standard: 1, degreesOfFreedom: 9 }]]);

describe('the quality that is expected', () => {
  it('is the mean by likely mass with its uncertainty and range, marked as calculated', () => {
    // The worked example of blending: 60 % of 32 IU and 40 % of 58 IU make 42.4 IU.
    const sources = [
      source('a', 600_000, [colour({ amount: '32' })]),
      source('b', 400_000, [colour({ amount: '58' })]),
    ];
    const [found] = expectedQualities(threadOf(sources), scatter);
    expect(found).toMatchObject({ kind: 'calculated', property: 'colour-iu', method: 'GS2/3-10', decimals: 1 });
    if (found?.kind !== 'calculated') throw new Error('not calculated');
    expect(found.value).toBeCloseTo(42.4, 9);
    expect(found.standard).toBeCloseTo(Math.hypot(0.6, 0.4), 9);
    expect(found.repeatCount).toBe(9);
    // However the hopper flows, it may be all of the one or all of the other.
    expect(found.range).toEqual({ lowest: 32, highest: 58 });
  });

  it('says that its uncertainty is not known where nothing was analysed again', () => {
    const [found] = expectedQualities(threadOf([source('a', 600_000, [colour({ amount: '32.5' })])]), new Map());
    expect(found).toMatchObject({ kind: 'calculated', value: 32.5, standard: null, repeatCount: 0, decimals: 2 });
  });

  it('takes a bag’s own results before those of its hour and its shift, and a retest beside the first', () => {
    const results = [
      colour({ amount: '20', standsFor: 'shift', sampleId: 'shift' }),
      colour({ amount: '30' }),
      colour({ amount: '32', isRetest: true }),
      colour({ amount: '40', standsFor: 'hour', sampleId: 'hour' }),
    ];
    const [found] = expectedQualities(threadOf([source('a', 1000, results)]), scatter);
    expect(found).toMatchObject({ value: 31, standard: expect.closeTo(Math.SQRT1_2, 12) });
  });

  it('is refused where a tenth of a percent has no result, naming the bags, and where methods differ', () => {
    const untested = [source('a', 990, [colour({ amount: '32' })]), source('b', 10, [])];
    expect(expectedQualities(threadOf(untested), scatter)).toMatchObject([
      { kind: 'refused', reason: 'results-missing', sourceIds: ['B-b'], share: 0.01 },
    ]);
    const other = colour({ amount: '31', method: 'GS1-7' });
    const mixed = [source('a', 600, [colour({ amount: '32' })]), source('b', 400, [other])];
    expect(expectedQualities(threadOf(mixed), scatter)).toMatchObject([{ kind: 'refused', reason: 'methods-differ' }]);
  });

  it('is refused for what does not blend, with the reason, and moisture comes first', () => {
    const spread = colour({ amount: '28', property: 'grain-coefficient-of-variation-percent', method: 'sieve' });
    const moisture = colour({ amount: '0.021', property: 'moisture-percent', method: 'GS2/1/3/9-15' });
    const found = expectedQualities(
      threadOf([source('a', 600, [spread, colour({ amount: '32' }), moisture])]),
      scatter,
    );
    expect(found.map(({ property }) => property)).toEqual([
      ...['moisture-percent', 'colour-iu', 'grain-coefficient-of-variation-percent'],
    ]);
    expect(found[2]).toMatchObject({ kind: 'refused', reason: 'does-not-blend', why: 'spreads-add' });
  });

  it('counts a bag once that is there in packs and whole', () => {
    const bag = source('a', 300_000, [colour({ amount: '32' })]);
    const [found] = expectedQualities(threadOf([bag, { ...bag, leastGrams: 700_000, likelyGrams: 650_000 }]), scatter);
    expect(found).toMatchObject({ kind: 'calculated', value: 32 });
  });
});
