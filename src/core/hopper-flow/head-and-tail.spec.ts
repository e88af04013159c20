import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { describeWithChecks, readChecks } from '../../../test/support/checks.js';
import { gramsUntilGone, gramsUntilShare } from './head-and-tail.js';
import { exactMass } from './hopper-event.js';
import { flowPourAndDrain } from './pour-and-drain.js';
import { shareLeft } from './residence-time.js';
import { heelShareAfterPour } from './slow-pour.js';

const stirred = (zoneCount: number, holdUpGrams = 500, plugGrams = 0) => ({ zoneCount, holdUpGrams, plugGrams });

describe('when a bag first shows and when it is gone', () => {
  it('of one zone is a logarithm', () => {
    expect(gramsUntilShare(stirred(1), 0.01)).toBeCloseTo(-500 * Math.log(0.99), 9);
    expect(gramsUntilGone(stirred(1), 1000, 0.001)).toBeCloseTo(500 * Math.log((1 - Math.exp(-2)) / 0.001), 9);
  });

  it('comes later by the plug part, and without zones at once', () => {
    expect(gramsUntilShare(stirred(3, 500, 70), 0.01)).toBeCloseTo(gramsUntilShare(stirred(3), 0.01) + 70, 9);
    expect(gramsUntilShare(stirred(0, 0, 500), 0.3)).toBeCloseTo(500, 9);
    expect(gramsUntilGone(stirred(0, 0, 500), 1000, 0.3)).toBeCloseTo(500, 9);
  });

  it('is never for a bag that is too small to make up the share', () => {
    expect(gramsUntilGone(stirred(1), 1, 0.01)).toBeNull();
    expect(gramsUntilGone(stirred(20), 1, 0.01)).toBeNull();
  });

  it('is the last place at which what leaves has the share', () => {
    const anyBag = fc.integer({ min: 20, max: 3000 });
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 40 }),
        anyBag,
        fc.double({ min: 1e-6, max: 0.5, noNaN: true }),
        (zones, bag, share) => {
          const at = (out: number) => shareLeft(stirred(zones), out + bag).left - shareLeft(stirred(zones), out).left;
          const gone = gramsUntilGone(stirred(zones), bag, share);
          if (gone === null) {
            for (let out = -bag; out < 2000; out += 10) expect(at(out)).toBeLessThan(share * (1 + 1e-9));
          } else {
            expect(at(gone)).toBeCloseTo(share, 9);
            for (let out = gone + 0.01; out < gone + 5000; out += 50) expect(at(out)).toBeLessThan(share);
          }
        },
      ),
      { numRuns: 300, seed: 20261109 },
    );
  });

  it('refuses what is no share and no bag', () => {
    for (const share of [0, 1, NaN]) expect(() => gramsUntilShare(stirred(1), share)).toThrow(RangeError);
    expect(() => gramsUntilGone(stirred(1), 0, 0.1)).toThrow(RangeError);
  });
});

describe('a pour that takes time', () => {
  it('is pour and drain in slices, the finer the nearer', () => {
    const sliced = (sliceCount: number) => {
      const slice = (place: number) => [
        { kind: 'addition', id: `in ${place}`, mass: exactMass(3_000_000 / sliceCount) } as const,
        { kind: 'exit', id: `out ${place}`, mass: exactMass(2_000_000 / sliceCount) } as const,
      ];
      const heel = { kind: 'addition', id: 'heel', mass: exactMass(1_000_000) } as const;
      const events = [heel, ...Array.from({ length: sliceCount }, (_, place) => slice(place)).flat()];
      const flow = flowPourAndDrain({ capacityGrams: null, events });
      return (flow.inside[0]?.grams ?? 0) / 2_000_000;
    };
    const exact = heelShareAfterPour({ heelGrams: 1_000_000, pouredGrams: 3_000_000, leftGrams: 2_000_000 });
    expect(exact).toBeCloseTo(0.125, 15);
    expect(Math.abs(sliced(100) - exact)).toBeLessThan(0.01);
    expect(Math.abs(sliced(1000) - exact)).toBeLessThan(0.001);
  });

  it('is the exponential where as much goes in as comes out, without a seam', () => {
    const even = { heelGrams: 500, pouredGrams: 1000, leftGrams: 1000 };
    expect(heelShareAfterPour(even)).toBeCloseTo(Math.exp(-2), 14);
    expect(heelShareAfterPour({ ...even, leftGrams: 1000.0001 })).toBeCloseTo(Math.exp(-2), 6);
  });

  it('leaves all of the heel where nothing is poured, and none where there was none or nothing is left', () => {
    expect(heelShareAfterPour({ heelGrams: 5, pouredGrams: 0, leftGrams: 3 })).toBe(1);
    expect(heelShareAfterPour({ heelGrams: 0, pouredGrams: 5, leftGrams: 3 })).toBe(0);
    expect(heelShareAfterPour({ heelGrams: 5, pouredGrams: 5, leftGrams: 10 })).toBe(0);
    expect(() => heelShareAfterPour({ heelGrams: 5, pouredGrams: 5, leftGrams: 11 })).toThrow(RangeError);
    expect(() => heelShareAfterPour({ heelGrams: 0, pouredGrams: 0, leftGrams: 0 })).toThrow(RangeError);
  });
});

interface GenealogyTests {
  readonly tail_lotA_M500_L1000: readonly Readonly<Record<'N' | 'eps' | 'tail_kg_after_last_input', number>>[];
  readonly head_M500: readonly Readonly<Record<'N' | 'eps' | 'first_kg_after_start', number>>[];
  readonly variable_holdup: readonly Readonly<Record<'M0' | 'win' | 'wout' | 't' | 'heel', number>>[];
}

describeWithChecks('head, tail and slow pours against quality/genealogy_tests.json, to the last digit printed', () => {
  const checks = () => readChecks<GenealogyTests>('quality/genealogy_tests.json');

  it('tail of a lot of 1000 kg behind 500 kg', () => {
    const rows = checks().tail_lotA_M500_L1000;
    expect(rows).toHaveLength(20);
    for (const { N, eps, tail_kg_after_last_input: tail } of rows) {
      expect((gramsUntilGone(stirred(N, 500_000), 1_000_000, eps) ?? NaN) / 1000).toBeCloseTo(tail, 2);
    }
  });

  it('first appearance behind 500 kg', () => {
    const rows = checks().head_M500;
    expect(rows).toHaveLength(10);
    for (const { N, eps, first_kg_after_start: first } of rows) {
      expect(gramsUntilShare(stirred(N, 500_000), eps) / 1000).toBeCloseTo(first, 3);
    }
  });

  it('the heel after an hour or two of pouring while packing', () => {
    const rows = checks().variable_holdup;
    expect(rows).toHaveLength(3);
    for (const { M0, win, wout, t, heel } of rows) {
      const share = heelShareAfterPour({
        heelGrams: M0 * 1000,
        pouredGrams: win * t * 1000,
        leftGrams: wout * t * 1000,
      });
      expect(share).toBeCloseTo(heel, 12);
    }
  });
});
