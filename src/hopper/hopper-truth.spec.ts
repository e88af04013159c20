import { afterEach, describe, expect, it } from '@jest/globals';
import { readerOf } from '../../test/support/a-bag.js';
import { aPlant } from '../../test/support/a-plant.js';
import { draws, TrueHopper, type HopperTruth, type Mixture } from '../../test/support/a-true-hopper.js';
import { openHouse, type TestHouse } from '../../test/support/house.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { contentOf } from './hopper-content.js';
import { boundsOfBags, linksByBag, rangesOfBag, sourcesOfTargets, type RunRange } from './hopper-links.js';

let house: TestHouse | null = null;
afterEach(async () => {
  await house?.close();
  house = null;
});

const gramsIn = (packs: readonly Mixture[], bagId: string): number =>
  packs.reduce((sum, pack) => sum + (pack.get(bagId) ?? 0), 0);

function trueGrams(truth: HopperTruth, ranges: readonly RunRange[], bagId: string): number {
  return ranges.reduce((sum, { runId, fromCount, toCount }) => {
    return sum + gramsIn(truth.packsByRun.get(runId)?.slice(fromCount, toCount) ?? [], bagId);
  }, 0);
}

/** Ranges of packs as pallets, minutes and lots are: of one run or of both, and everything that was packed. */
function someTargets(truth: HopperTruth, draw: (below: number) => number): readonly (readonly RunRange[])[] {
  const rangeOf = ([runId, packs]: readonly [string, readonly Mixture[]]): RunRange => {
    const fromCount = draw(packs.length);
    return { runId, fromCount, toCount: fromCount + 1 + draw(packs.length - fromCount) };
  };
  const runs = [...truth.packsByRun];
  const single = Array.from({ length: 8 }, () => [rangeOf(runs[draw(2)]!)]);
  const whole = runs.map(([runId, packs]) => ({ runId, fromCount: 0, toCount: packs.length }));
  return [...single, ...Array.from({ length: 4 }, () => runs.map(rangeOf)), whole];
}

const said = { sure: 0, ruledOut: 0 };

describe('a hopper that truly flowed somehow, recorded by people through the commands', () => {
  it.each([1, 2, 3, 4])('has the truth between least and most (seed %i)', (seed) => compare(seed), 120_000);

  it('was worth comparing: bags were sure in some packs and ruled out of others', () => {
    expect([said.sure > 10, said.ruledOut > 10]).toEqual([true, true]);
  });
});

async function compare(seed: number): Promise<void> {
  house = await openHouse();
  const plant = await aPlant(house, { capacityGrams: 2_500_000 });
  const truth = await new TrueHopper(house, plant, seed).live(90);
  const reader = readerOf(house);
  await compareTargets(reader, truth, someTargets(truth, draws(seed + 100)));
  const { level, bags } = await contentOf(reader, plant.hopperId);
  expect(level.findings).toEqual([]);
  for (const bagId of truth.bagIds) {
    expectWithin(
      bags.find((bag) => bag.bagId === bagId),
      truth.inside.get(bagId) ?? 0,
    );
    await compareRanges(reader, truth, bagId);
  }
}

async function compareTargets(
  reader: ReadFrom,
  truth: HopperTruth,
  targets: readonly (readonly RunRange[])[],
): Promise<void> {
  const links = await sourcesOfTargets(
    reader,
    targets.map((ranges) => ({ ranges })),
  );
  const group = truth.bagIds.slice(0, 6);
  const groups = await boundsOfBags(reader, group, targets);
  targets.forEach((ranges, place) => {
    const byBag = linksByBag(links[place] ?? []);
    for (const bagId of truth.bagIds) {
      const bounds = byBag.get(bagId);
      expectWithin(bounds, trueGrams(truth, ranges, bagId));
      if ((bounds?.leastGrams ?? 0) > 0) said.sure += 1;
      if (bounds === undefined) said.ruledOut += 1;
    }
    const grams = group.reduce((sum, bagId) => sum + trueGrams(truth, ranges, bagId), 0);
    expectWithin(groups[place]?.together, grams);
  });
}

/** No pack with some of the bag lies outside of where the bag may have gone. */
async function compareRanges(reader: ReadFrom, truth: HopperTruth, bagId: string): Promise<void> {
  const ranges = await rangesOfBag(reader, bagId);
  for (const [runId, packs] of truth.packsByRun) {
    const own = ranges.filter((range) => range.runId === runId);
    const isMissed = (at: number) => !own.some(({ fromCount, toCount }) => fromCount <= at && at < toCount);
    expect(packs.filter((pack, at) => pack.has(bagId) && isMissed(at))).toEqual([]);
  }
}

function expectWithin(bounds: { leastGrams: number; mostGrams: number } | undefined, grams: number): void {
  const { leastGrams, mostGrams } = bounds ?? { leastGrams: 0, mostGrams: 0 };
  expect([leastGrams <= grams, grams <= mostGrams, grams]).toEqual([true, true, grams]);
}
