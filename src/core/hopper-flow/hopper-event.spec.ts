import { describe, expect, it } from '@jest/globals';
import {
  assertHopperPeriod,
  assertRange,
  exactMass,
  massWithin,
  soundPeriod,
  type HopperEvent,
} from './hopper-event.js';

const bag: HopperEvent = { kind: 'addition', id: 'bag', mass: exactMass(1000) };

describe('a mass with hard limits', () => {
  it('is the same three times where there is no doubt', () => {
    expect(exactMass(1000)).toEqual({ lowerGrams: 1000, grams: 1000, upperGrams: 1000 });
  });

  it('carries a limit of error on both sides, and stops at nothing', () => {
    expect(massWithin(1000, 5)).toEqual({ lowerGrams: 995, grams: 1000, upperGrams: 1005 });
    expect(massWithin(3, 5)).toEqual({ lowerGrams: 0, grams: 3, upperGrams: 8 });
  });

  it.each([-1, 0.5, NaN, Infinity, 2 ** 53])('is never %p grams', (grams) => {
    expect(() => exactMass(grams)).toThrow(RangeError);
  });
});

describe('a hopper period', () => {
  it('may be empty', () => {
    expect(() => {
      assertHopperPeriod({ capacityGrams: null, events: [] });
    }).not.toThrow();
  });

  it('may have a tip and an exit of the same name', () => {
    const events: HopperEvent[] = [bag, { ...bag, kind: 'exit' }];
    expect(() => {
      assertHopperPeriod({ capacityGrams: 2000, events });
    }).not.toThrow();
  });

  it.each<[string, HopperEvent[]]>([
    ['bag stands twice', [bag, bag]],
    ['above 10', [{ kind: 'exit', id: 'packs', mass: { lowerGrams: 11, grams: 10, upperGrams: 12 } }]],
    ['above 9', [{ kind: 'exit', id: 'packs', mass: { lowerGrams: 1, grams: 10, upperGrams: 9 } }]],
    ['ran down', [{ kind: 'level-seen', id: 'ran down', lowerGrams: 50, upperGrams: 40 }]],
    ['full', [{ kind: 'ceiling', id: 'full', upperGrams: -1 }]],
  ])('is refused, saying "%s"', (words, events) => {
    expect(() => {
      assertHopperPeriod({ capacityGrams: null, events });
    }).toThrow(new RegExp(words));
  });

  it('is refused with a capacity that is no number of grams', () => {
    expect(() => {
      assertHopperPeriod({ capacityGrams: 0.5, events: [] });
    }).toThrow(/capacityGrams/);
  });

  it('is believed where it was made of a checked one', () => {
    expect(() => {
      assertHopperPeriod(soundPeriod({ capacityGrams: null, events: [bag, bag] }));
    }).not.toThrow();
  });

  it('takes a level between two limits', () => {
    expect(() => {
      assertRange(0, 40_000, 'run down');
    }).not.toThrow();
  });
});
