import { describe, expect, it } from '@jest/globals';
import { checkLevel } from '../../src/core/hopper-flow/check-level.js';
import { noTipMissingBefore } from '../../src/core/hopper-flow/missing-tip-shown.js';
import { orderForLevelCheck } from '../../src/core/hopper-flow/order-for-bounds.js';
import { compareMistake } from './compare-mistake.js';
import { seedsFrom } from './expect-bounds-hold.js';
import { makeMistake, type MistakeName } from './mistakes.js';
import { allFaults, type Fault } from './recorded-period.js';
import { truthCase } from './truth-case.js';

const faultSets: readonly (readonly Fault[])[] = [['scales'], allFaults];

const mistakes = (name: MistakeName, seeds: readonly number[]) =>
  faultSets.flatMap((faults) =>
    seeds.flatMap((seed) => {
      const { plant, recorded } = truthCase(seed, new Set(faults));
      return makeMistake(plant, recorded, name) ?? [];
    }),
  );

describe('one mistake in the records of a plant whose truth is known', () => {
  it.each<MistakeName>(['missing tip', 'double tip', 'tip of another hopper', 'tip entered at another hopper'])(
    '(%s) always shows, by the proven empty at the latest, and is mostly told',
    (name) => {
      const found = mistakes(name, seedsFrom(0, 12)).map(compareMistake);
      expect(found.length).toBe(24);
      expect(found.filter(({ isFound }) => !isFound)).toEqual([]);
      expect(found.filter(({ isBest, isTied }) => isBest || isTied).length).toBeGreaterThan(18);
      expect(found.filter(({ naming }) => naming === 'wrong').length).toBeLessThan(2);
      // What is claimed is the least that it must come to, or what the named tip holds.
      expect(found.filter(({ offGrams }) => offGrams > 0)).toEqual([]);
    },
    120_000,
  );

  it.each<MistakeName>(['late tip', 'lost packs', 'an empty that was none'])(
    '(%s) is told more often than not where it shows',
    (name) => {
      const found = mistakes(name, seedsFrom(0, 12))
        .map(compareMistake)
        .filter(({ isFound }) => isFound);
      expect(found.length).toBeGreaterThan(6);
      expect(found.filter(({ isBest, isTied }) => isBest || isTied).length).toBeGreaterThan(found.length / 2);
      expect(found.filter(({ naming }) => naming === 'wrong').length).toBeLessThan(2);
    },
    120_000,
  );
});

describe('a tip that nobody entered', () => {
  it('is never said to have shown already while it still hides', () => {
    let said = 0;
    for (const seed of seedsFrom(0, 20)) {
      const { plant, recorded } = truthCase(seed, new Set<Fault>(['scales']));
      const mistaken = makeMistake(plant, recorded, 'missing tip');
      if (mistaken === null) throw new Error('every plant has a tip');
      const { period, at, grams } = mistaken;
      const ordered = orderForLevelCheck(period);
      const shows = checkLevel(ordered).findings[0]?.eventIndex ?? ordered.events.length;
      const hidden = { ...ordered, events: ordered.events.slice(0, shows) };
      const placeById = new Map(
        period.events.map(({ event, earliestAt, latestAt }) => [
          event.id,
          event.kind === 'addition' ? earliestAt : latestAt,
        ]),
      );
      const truly = hidden.events.findIndex(({ id }) => (placeById.get(id) ?? 0) >= at);
      // A scale may have shown the tip a little heavier than it was.
      const before = noTipMissingBefore(hidden, grams - 2_000);
      expect([seed, before <= (truly < 0 ? hidden.events.length : truly)]).toEqual([seed, true]);
      if (before > 0) said += 1;
    }
    // Mostly something can be said.
    expect(said).toBeGreaterThan(10);
  }, 120_000);
});

describe('clean shifts', () => {
  it('raise no false alarm', () => {
    for (const faults of faultSets) {
      for (const seed of seedsFrom(40, 20)) {
        const { recorded } = truthCase(seed, new Set(faults));
        expect(recorded.map((period) => checkLevel(orderForLevelCheck(period)).findings)).toEqual([[], []]);
      }
    }
  }, 120_000);
});
