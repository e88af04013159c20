import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { gramsIn, pourInto, takeMixed, type Composition } from './composition.js';
import { HopperCells, usualHopper } from './hopper-cells.js';
import { seededRandom } from './random.js';
import { readScale } from './scale-reading.js';

describe('the demo’s own hopper', () => {
  it('loses no gram of any bag, however it is filled and drawn from', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -400_000, max: 1_050_000 }), { maxLength: 60 }), (moves) => {
        const hopper = new HopperCells(usualHopper);
        const out: Composition = new Map();
        const poured = new Map<string, number>();
        moves.forEach((grams, place) => {
          if (grams > 0) {
            poured.set(`bag-${place}`, grams);
            hopper.pour(new Map([[`bag-${place}`, grams]]));
          } else pourInto(out, hopper.draw(Math.min(-grams, hopper.flowingGrams)));
        });
        expect(hopper.levelGrams + gramsIn(out)).toBe(gramsIn(poured));
        pourInto(out, hopper.scrapeOut());
        expect(hopper.levelGrams).toBe(0);
        expect([...out].sort()).toEqual([...poured].sort());
      }),
    );
  });

  it('lets some of a fresh bag out before an older one, and keeps some of the older one at its wall', () => {
    const hopper = new HopperCells(usualHopper);
    hopper.pour(new Map([['old', 1_000_000]]));
    hopper.pour(new Map([['new', 1_000_000]]));
    const early = hopper.draw(200_000);
    hopper.draw(1_500_000);
    const late = hopper.draw(50_000);
    expect([early.get('new'), late.get('old')]).toEqual([expect.any(Number), expect.any(Number)]);
    expect(early.get('old')).toBeGreaterThan(early.get('new') ?? 0);
  });

  it('gives no more than flows', () => {
    const hopper = new HopperCells(usualHopper);
    hopper.pour(new Map([['bag', 100_000]]));
    expect(hopper.flowingGrams).toBe(91_000);
    expect(() => hopper.draw(91_001)).toThrow(RangeError);
    expect(gramsIn(hopper.draw(91_000))).toBe(91_000);
    expect(gramsIn(hopper.scrapeOut(2000))).toBe(7000);
    expect(hopper.levelGrams).toBe(2000);
  });

  it('takes from a mixture each bag’s share', () => {
    const sugar: Composition = new Map([
      ['a', 600],
      ['b', 300],
      ['c', 100],
    ]);
    expect(takeMixed(sugar, 10)).toEqual(
      new Map([
        ['a', 6],
        ['b', 3],
        ['c', 1],
      ]),
    );
    expect(gramsIn(takeMixed(sugar, 7))).toBe(7);
    expect(gramsIn(sugar)).toBe(983);
    expect(() => takeMixed(sugar, 984)).toThrow(RangeError);
  });
});

describe('the demo’s chance', () => {
  it('is the same for the same seed, and another for another', () => {
    const draws = (seed: number, name: string) => Array.from({ length: 5 }, () => seededRandom(seed, name).next());
    expect(draws(1, 'dryer')).toEqual(draws(1, 'dryer'));
    expect(draws(1, 'dryer')).not.toEqual(draws(2, 'dryer'));
    expect(draws(1, 'dryer')).not.toEqual(draws(1, 'line'));
  });

  it('spreads normally about its centre', () => {
    const random = seededRandom(7, 'test');
    const values = Array.from({ length: 20_000 }, () => random.normal(100, 5));
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
    const variance = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length;
    expect(Math.abs(mean - 100)).toBeLessThan(0.2);
    expect(Math.abs(Math.sqrt(variance) - 5)).toBeLessThan(0.15);
  });

  it('never reads a scale further off than its maximum permissible error', () => {
    const scale = { intervalGrams: 500, maximumErrorGrams: 1000, biasGrams: 300, spreadGrams: 400 };
    const random = seededRandom(3, 'scale');
    for (let load = 950_000; load < 1_050_000; load += 37) {
      expect(Math.abs(readScale(scale, load, random) - load)).toBeLessThanOrEqual(1000);
    }
  });
});
