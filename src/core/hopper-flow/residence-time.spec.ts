import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { describeWithChecks, readChecks } from '../../../test/support/checks.js';
import { gramsOfLayer, lingeringGrams, residencePeak, shareLeft, zonesOfDispersion } from './residence-time.js';

const stirred = (zoneCount: number, holdUpGrams = 500, plugGrams = 0) => ({ zoneCount, holdUpGrams, plugGrams });
const stretch = (fromGrams: number, toGrams: number) => ({ fromGrams, toGrams });

describe('the residence time', () => {
  it('lets nothing out before the plug part has passed, and without zones everything then', () => {
    expect(shareLeft(stirred(3, 200, 300), 299.9)).toEqual({ left: 0, inside: 1 });
    expect(shareLeft(stirred(0, 0, 500), 499.9).left).toBe(0);
    expect(shareLeft(stirred(0, 0, 500), 500).left).toBe(1);
  });

  it('of one zone is the exponential', () => {
    expect(shareLeft(stirred(1), 500).inside).toBeCloseTo(1 / Math.E, 14);
  });

  it('gives a layer back whole once enough has been packed', () => {
    expect(gramsOfLayer(stirred(3), stretch(0, 1000), stretch(0, 50_000))).toBeCloseTo(1000, 9);
    expect(gramsOfLayer(stirred(3), stretch(0, 1000), stretch(-500, 0))).toBe(0);
  });

  it('keeps the small digits of a layer that has all but gone', () => {
    // 500 (e^2 − 1) e^−40 (1 − e^−2), the closed form for one zone.
    const expected = 500 * Math.expm1(2) * Math.exp(-40) * -Math.expm1(-2);
    const found = gramsOfLayer(stirred(1), stretch(0, 1000), stretch(20_000, 21_000));
    expect(Math.abs(found / expected - 1)).toBeLessThan(1e-11);
  });

  it('is the integral of the share that has left, taken apart by Simpson', () => {
    const anyZones = fc.integer({ min: 1, max: 12 });
    const anyGrams = fc.integer({ min: 1, max: 2000 });
    fc.assert(
      fc.property(anyZones, anyGrams, anyGrams, anyGrams, (zones, length, from, size) => {
        const residence = stirred(zones, 500, 100);
        const pointAt = (out: number) => shareLeft(residence, out).left - shareLeft(residence, out - length).left;
        const steps = 4000;
        const width = size / steps;
        const weight = (step: number) => (step === 0 || step === steps ? 1 : step % 2 === 1 ? 4 : 2);
        let sum = 0;
        for (let step = 0; step <= steps; step += 1) sum += weight(step) * pointAt(from + step * width);
        const exact = gramsOfLayer(residence, stretch(0, length), stretch(from, from + size));
        expect(Math.abs(exact - (sum * width) / 3)).toBeLessThan(1e-3);
      }),
      { numRuns: 20, seed: 20261102 },
    );
  });

  it('refuses what makes no sense', () => {
    for (const zones of [-1, 1.5, 10_001, NaN]) expect(() => shareLeft(stirred(zones), 1)).toThrow(RangeError);
    for (const holdUp of [0, -1, Infinity, NaN]) expect(() => shareLeft(stirred(1, holdUp), 1)).toThrow(RangeError);
    expect(() => shareLeft(stirred(1, 1, -1), 1)).toThrow(RangeError);
    expect(() => gramsOfLayer(stirred(1), stretch(1, 0), stretch(0, 1))).toThrow(RangeError);
    expect(() => gramsOfLayer(stirred(1), stretch(0, 1), stretch(0, Infinity))).toThrow(RangeError);
    expect(() => residencePeak(0)).toThrow(RangeError);
    for (const peclet of [0, NaN, 1e7]) expect(() => zonesOfDispersion(peclet)).toThrow(RangeError);
  });
});

type Washout = Readonly<Record<string, Readonly<Record<string, number>>>>;
interface Shares {
  readonly pack: readonly [number, number];
  readonly heel: number;
  readonly A: number;
  readonly B: number;
  readonly C: number;
  readonly later: number;
}
interface GenealogyTests {
  readonly washout_heel_share_1_minus_F: Washout;
  readonly plug_limit_F_at_theta: Readonly<Record<string, readonly number[]>>;
  readonly S1_const_holdup_500kg: readonly (Shares & { readonly N: number; readonly M: number })[];
  readonly S1_plug_500kg: readonly Shares[];
  readonly S1_plug300_plus_CSTR200: readonly Shares[];
  readonly closure_lotA: readonly {
    readonly N: number;
    readonly out_kg: number;
    readonly lotA_in_packs: number;
    readonly lotA_in_hopper: number;
  }[];
  readonly E_theta: Readonly<
    Record<string, { readonly theta_max: number; readonly E_max: number; readonly sigma2: number }>
  >;
  readonly dispersion_to_N: readonly {
    readonly Pe: number;
    readonly D_uL: number;
    readonly sigma2_theta_closed: number;
    readonly N_equiv: number;
  }[];
}

describeWithChecks('the residence time against quality/genealogy_tests.json, to the last digit printed', () => {
  const checks = () => readChecks<GenealogyTests>('quality/genealogy_tests.json');
  const lots = { heel: [-500, 0], A: [0, 1000], B: [1000, 2000], C: [2000, 3000], later: [3000, 4000] } as const;

  function expectShares(residence: ReturnType<typeof stirred>, row: Shares): void {
    const [from, to] = row.pack;
    const shareOf = ([start, end]: readonly [number, number]) =>
      gramsOfLayer(residence, stretch(start, end), stretch(from, to)) / (to - from);
    for (const lot of ['A', 'B', 'C', 'later'] as const) expect(shareOf(lots[lot])).toBeCloseTo(row[lot], 6);
    // A hopper full of heel has had it for ever: all that is not of a lot.
    const heel = shareOf([-1_000_000, 0]);
    expect(heel).toBeCloseTo(row.heel, 6);
  }

  it('washout', () => {
    const rows = Object.entries(checks().washout_heel_share_1_minus_F);
    expect(rows.map(([zones]) => zones)).toEqual(['1', '2', '3', '5', '10', '20', '50', '100']);
    for (const [zones, byTheta] of rows) {
      expect(Object.keys(byTheta)).toHaveLength(10);
      for (const [theta, inside] of Object.entries(byTheta)) {
        expect(shareLeft(stirred(Number(zones), 1), Number(theta)).inside).toBeCloseTo(inside, 6);
      }
    }
  });

  it('many zones: the limit of plug flow', () => {
    const thetas = [0.8, 0.9, 0.95, 1, 1.05, 1.1, 1.2];
    for (const [zones, shares] of Object.entries(checks().plug_limit_F_at_theta)) {
      const found = thetas.map((theta) => shareLeft(stirred(Number(zones), 1), theta).left);
      expect(found).toHaveLength(shares.length);
      found.forEach((share, place) => {
        expect(share).toBeCloseTo(shares[place] ?? NaN, 6);
      });
    }
  });

  it('shares of the heel and three lots in packs, for 1 to 20 zones, plug, and plug before one zone', () => {
    const { S1_const_holdup_500kg: mixed, S1_plug_500kg: plug, S1_plug300_plus_CSTR200: both } = checks();
    expect([mixed.length, plug.length, both.length]).toEqual([50, 10, 12]);
    for (const row of mixed) expectShares(stirred(row.N, row.M), row);
    for (const row of plug) expectShares(stirred(0, 0, 500), row);
    for (const row of both) expectShares(stirred(1, 200, 300), row);
  });

  it('what of a lot is packed and what still in the hopper', () => {
    const rows = checks().closure_lotA;
    expect(rows).toHaveLength(15);
    for (const { N, out_kg: out, lotA_in_packs: packed, lotA_in_hopper: inside } of rows) {
      expect(gramsOfLayer(stirred(N), stretch(0, 1000), stretch(0, out))).toBeCloseTo(packed, 6);
      expect(lingeringGrams(stirred(N), stretch(0, 1000), out)).toBeCloseTo(inside, 6);
    }
  });

  it('where most comes out', () => {
    const rows = Object.entries(checks().E_theta);
    expect(rows).toHaveLength(6);
    for (const [zones, { theta_max: holdUps, E_max: density, sigma2: variance }] of rows) {
      const peak = residencePeak(Number(zones));
      expect(peak.holdUps).toBeCloseTo(holdUps, 6);
      expect(peak.density).toBeCloseTo(density, 6);
      expect(peak.variance).toBeCloseTo(variance, 14);
    }
  });

  it('the number of zones for a dispersion number', () => {
    const rows = checks().dispersion_to_N;
    expect(rows).toHaveLength(6);
    for (const { Pe, D_uL: dispersion, sigma2_theta_closed: variance, N_equiv: zones } of rows) {
      expect(zonesOfDispersion(Pe)).toBeCloseTo(zones, 4);
      expect(zonesOfDispersion(1 / dispersion)).toBeCloseTo(zones, 4);
      expect(1 / zonesOfDispersion(Pe)).toBeCloseTo(variance, 6);
    }
  });
});
