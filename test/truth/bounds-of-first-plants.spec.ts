import { describe, expect, it } from '@jest/globals';
import { compareBounds } from './compare-bounds.js';
import { expectBoundsHold, seedsFrom } from './expect-bounds-hold.js';
import { allFaults, type RecordedPeriod } from './recorded-period.js';
import { truthCase, type TruthCase } from './truth-case.js';

describe('plants 0 to 99, of which the simulator knows where each gram went', () => {
  it('always have the truth between least and most, with every fault that records may have', () => {
    expectBoundsHold(seedsFrom(0, 100));
  }, 300_000);
});

/** How many of some plants' answers are found untrue, or their records impossible, once something is denied. */
function foundUntrue(deny: (one: TruthCase) => TruthCase): number {
  return seedsFrom(0, 9).reduce((count, seed) => {
    const { breaches, falseAlarms } = compareBounds(deny(truthCase(seed, new Set(allFaults))));
    return count + breaches.length + falseAlarms;
  }, 0);
}

const withEvents = (one: TruthCase, change: (event: RecordedPeriod['events'][number]) => typeof event): TruthCase => ({
  ...one,
  recorded: one.recorded.map((period) => ({ ...period, events: period.events.map(change) })),
});

describe('the comparison with the truth', () => {
  it('finds bounds untrue that deny what the scales are off by', () => {
    const untrue = foundUntrue((one) =>
      withEvents(one, (entry) => {
        if (entry.event.kind !== 'addition' && entry.event.kind !== 'exit') return entry;
        const { grams } = entry.event.mass;
        return { ...entry, event: { ...entry.event, mass: { lowerGrams: grams, grams, upperGrams: grams } } };
      }),
    );
    expect(untrue).toBeGreaterThan(0);
  });

  it('finds bounds untrue that take a late scan for the time of the tip', () => {
    const untrue = foundUntrue((one) =>
      withEvents(one, (entry) => {
        return entry.event.kind === 'addition' ? { ...entry, earliestAt: entry.likelyAt } : entry;
      }),
    );
    expect(untrue).toBeGreaterThan(0);
  });

  it('finds bounds untrue that take the printed minute for the true one', () => {
    const untrue = foundUntrue((one) => ({
      ...one,
      targets: one.targets.map((target) => ({
        ...target,
        exits: target.exits.map((exits) => new Map([...exits.keys()].map((id) => [id, 'in'] as const))),
      })),
    }));
    expect(untrue).toBeGreaterThan(0);
  });
});
