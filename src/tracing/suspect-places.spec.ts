import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { packsIn, united } from '../packing/run-ranges.js';
import { packsByPlace, suspectPlaces, type PlacedPacks, type SuspectPlace } from './suspect-places.js';

const means = new Map([
  ['A', 2_001_300],
  ['B', 1_000_700],
]);
const range = (runId: string, fromCount: number, toCount: number) => ({ runId, fromCount, toCount });
const pallet = (place: SuspectPlace, fromCount: number, toCount: number, isCertain = true): PlacedPacks => ({
  ...{ place, isCertain },
  ranges: [range('A', fromCount, toCount)],
});
const counts = (found: ReturnType<typeof packsByPlace>) =>
  Object.fromEntries(found.map(({ place, packCount }) => [place, packCount]));

describe('suspect packs by place', () => {
  it('are what stands on pallets there, and the rest is loose', () => {
    const pallets = [pallet('in-store', 0, 100), pallet('on-vehicle', 100, 200), pallet('away', 200, 260)];
    const found = packsByPlace([range('A', 50, 300)], pallets, means);
    expect(counts(found)).toEqual({ 'in-store': 50, 'on-vehicle': 100, away: 60, loose: 40 });
    expect(found.find(({ place }) => place === 'loose')?.milligrams).toBe(40 * 2_001_300);
  });

  it('on pallets that came of a split are at their place where that is one, else nobody knows at which', () => {
    const ranges = [range('A', 40, 80)];
    const together = [pallet('in-store', 0, 60, false), pallet('in-store', 60, 100, false)];
    expect(counts(packsByPlace(ranges, together, means))).toEqual({ 'in-store': 40 });
    const apart = [pallet('in-store', 0, 60, false), pallet('away', 60, 100, false)];
    expect(counts(packsByPlace(ranges, apart, means))).toEqual({ split: 40 });
  });

  it('add up to all of them, in packs and in milligrams, whatever the records say of pallets', () => {
    const ranges = fc.array(fc.tuple(fc.constantFrom('A', 'B'), fc.nat(300), fc.integer({ min: 1, max: 100 })), {
      maxLength: 5,
    });
    const made = (parts: readonly (readonly [string, number, number])[]) =>
      united(parts.map(([runId, from, count]) => range(runId, from, from + count)));
    const placed = fc.record({ place: fc.constantFrom(...suspectPlaces), isCertain: fc.boolean(), ranges });
    fc.assert(
      fc.property(ranges, fc.array(placed, { maxLength: 6 }), (of, on) => {
        const suspect = made(of);
        const pallets = on.map((one) => ({ ...one, ranges: made(one.ranges) }));
        const found = packsByPlace(suspect, pallets, means);
        const all = suspect.reduce((sum, one) => sum + packsIn([one]) * (means.get(one.runId) ?? 0), 0);
        expect(found.reduce((sum, { packCount }) => sum + packCount, 0)).toBe(packsIn(suspect));
        expect(found.reduce((sum, { milligrams }) => sum + milligrams, 0)).toBe(all);
      }),
    );
  });
});
