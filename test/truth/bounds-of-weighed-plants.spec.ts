import { describe, expect, it } from '@jest/globals';
import { compareBounds } from './compare-bounds.js';
import { expectBoundsHold, seedsFrom } from './expect-bounds-hold.js';
import { faultsOfWeighed } from './recorded-period.js';
import { netsByWeighers } from './true-weighers.js';
import { truthCase, type TruthCase } from './truth-case.js';
import { truePlant } from './true-plant.js';

describe('plants whose packs are weighed one by one, by weighers that are off as far as they may be', () => {
  it('always have the truth between least and most', () => {
    expectBoundsHold(seedsFrom(0, 70), faultsOfWeighed);
  }, 300_000);

  it('are worth trying: some weighers weighed all but a few packs, and some were silent for a while', () => {
    const nets = seedsFrom(0, 30).flatMap((seed) => netsByWeighers(truePlant(seed, true)));
    const unweighed = nets.map(({ unweighedPackCount }) => unweighedPackCount);
    expect(unweighed.filter((packs) => packs > 0 && packs < 10).length).toBeGreaterThan(10);
    expect(unweighed.filter((packs) => packs > 100).length).toBeGreaterThan(5);
    const widths = nets.map(({ lowerMilligrams, upperMilligrams }) => upperMilligrams - lowerMilligrams);
    expect(widths.filter((width) => width < 8000).length).toBeGreaterThan(10);
  });

  it('would not have it there if the mean of the run were taken for that of each stretch', () => {
    const breaches = seedsFrom(0, 12).reduce((count, seed) => {
      return count + compareBounds(byMeanAlone(truthCase(seed, new Set(faultsOfWeighed)))).breaches.length;
    }, 0);
    expect(breaches).toBeGreaterThan(0);
  });
});

/** What left is taken as count times the mean of the run, give or take what a weigher may be off by. */
function byMeanAlone(one: TruthCase): TruthCase {
  const recorded = one.recorded.map((period) => {
    const packsOf = new Map(period.pieces.map(({ id, fromCount, toCount }) => [id, toCount - fromCount]));
    const events = period.events.map((entry) => {
      const packCount = entry.event.kind === 'exit' ? packsOf.get(entry.event.id) : undefined;
      if (entry.event.kind !== 'exit' || packCount === undefined) return entry;
      const { grams } = entry.event.mass;
      return {
        ...entry,
        event: { ...entry.event, mass: { lowerGrams: grams - packCount, grams, upperGrams: grams + packCount } },
      };
    });
    return { ...period, events };
  });
  return { ...one, recorded };
}
