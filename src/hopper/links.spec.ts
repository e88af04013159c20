import { afterEach, beforeEach, describe, expect, it } from '@jest/globals';
import { readerOf } from '../../test/support/a-bag.js';
import { aPlant, type Plant } from '../../test/support/a-plant.js';
import { packsCounted } from '../../test/support/a-run.js';
import {
  aProvenEmpty,
  aReleasedBag,
  aStartedRun,
  aTip,
  aTippedBag,
  withoutDoubt,
  type TipWishes,
} from '../../test/support/a-tip.js';
import { aPerson } from '../../test/support/a-person.js';
import { asking, openHouse, type TestHouse } from '../../test/support/house.js';
import { boundEveryAdditionInTarget } from '../core/hopper-flow/bound-group-in-target.js';
import { exactMass, type HopperEvent } from '../core/hopper-flow/hopper-event.js';
import { prepareHopperPeriod } from '../core/hopper-flow/prepare-period.js';
import { exitsIn } from '../core/hopper-flow/target-steps.js';
import { RemoveSugar } from '../packing/remove-sugar.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { shifted } from '../platform/clock.js';
import { CloseReworkBin } from './close-rework-bin.js';
import { contentOf } from './hopper-content.js';
import {
  boundsOfBag,
  boundsOfBags,
  linksByBag,
  rangesOfBag,
  sourcesAndRuledOut,
  sourcesOfRanges,
  sourcesOfTargets,
} from './hopper-links.js';
import { readHopperPeriod } from './hopper-periods.js';
import { RunDown } from './run-down.js';
import { TipOneOfSeveral } from './tip-one-of-several.js';
import { TipReworkBin } from './tip-rework-bin.js';

let house: TestHouse;
let plant: Plant;
let reader: ReadFrom;
let exact: { readonly scaleId: string; readonly formatId: string };

beforeEach(async () => {
  house = await openHouse();
  plant = await aPlant(house);
  exact = await withoutDoubt(house, plant);
  reader = readerOf(house);
});
afterEach(async () => {
  await house.close();
});

/** Tips a bag of exactly so many kilograms, a minute after what was before. */
async function poured(kilograms: number, wishes: TipWishes = {}): Promise<string> {
  house.clock.pass(1);
  const netGrams = kilograms * 1000;
  const { bag } = await aTippedBag(house, plant, { netGrams, scaleId: exact.scaleId, ...wishes });
  return bag.id;
}

/** Counts a run a minute after what was before. */
async function counted(runId: string, packCount: number): Promise<void> {
  house.clock.pass(1);
  await packsCounted(house, plant, runId, packCount);
}

const onLine = (place: 0 | 1) => aStartedRun(house, plant, { lineId: plant.lineIds[place], formatId: exact.formatId });

const grams = (links: readonly { bagId: string; leastGrams: number; likelyGrams: number; mostGrams: number }[]) =>
  Object.fromEntries(links.map((link) => [link.bagId, [link.leastGrams, link.likelyGrams, link.mostGrams]]));

describe('bags in packs, where everything is exact', () => {
  it('are those of the worked example: at least 696 kg of the bag in lot B, at most 300 kg in lot A', async () => {
    const older = await poured(1000);
    const bag = await poured(996);
    const [one, two] = [await onLine(0), await onLine(1)];
    await counted(one.id, 150);
    const next = await poured(304);
    await counted(two.id, 1000);
    const lotA = [{ runId: one.id, fromCount: 0, toCount: 150 }];
    const lotB = [{ runId: two.id, fromCount: 0, toCount: 1000 }];
    expect(grams(await sourcesOfRanges(reader, lotA))).toEqual({
      [older]: [0, 300_000, 300_000],
      [bag]: [0, 0, 300_000],
    });
    expect(grams(await sourcesOfRanges(reader, lotB))).toEqual({
      [older]: [700_000, 700_000, 1_000_000],
      [bag]: [696_000, 996_000, 996_000],
      [next]: [304_000, 304_000, 304_000],
    });
    expect(await boundsOfBag(reader, bag, lotB)).toEqual({
      ...{ leastGrams: 696_000, likelyGrams: 996_000, mostGrams: 996_000, word: 'sure' },
    });
    expect(await boundsOfBag(reader, next, lotA)).toMatchObject({ mostGrams: 0, word: 'ruled-out' });
    const [inA, inB] = await boundsOfBags(reader, [bag, next], [lotA, lotB]);
    // Together they are at least what the older bag and lot A cannot hold.
    expect(inB?.together).toMatchObject({ leastGrams: 1_000_000, mostGrams: 1_300_000, word: 'sure' });
    expect(inA?.byBag.get(next)?.word).toBe('ruled-out');
  });

  it('agree with the core to the gram where the hopper ran down to 40 kg', async () => {
    const old = await poured(1000);
    const run = await onLine(0);
    await counted(run.id, 480);
    house.clock.pass(1);
    await house.get(RunDown).execute(asking(plant.actor), plant.hopperId, { atMostGrams: 40_000 });
    const fresh = await poured(1000);
    await counted(run.id, 600);
    const ranges = [{ runId: run.id, fromCount: 480, toCount: 600 }];
    const byHand: HopperEvent[] = [
      { kind: 'addition', id: old, mass: exactMass(1_000_000) },
      { kind: 'exit', id: 'first', mass: exactMass(960_000) },
      { kind: 'level-seen', id: 'run down', lowerGrams: 0, upperGrams: 40_000 },
      { kind: 'addition', id: fresh, mass: exactMass(1_000_000) },
      { kind: 'exit', id: 'second', mass: exactMass(240_000) },
    ];
    const period = prepareHopperPeriod({ capacityGrams: 4_000_000, events: byHand });
    const expected = boundEveryAdditionInTarget(period, exitsIn(['second']));
    const found = grams(await sourcesOfRanges(reader, ranges));
    for (const { additionId, leastGrams, mostGrams } of expected) {
      expect([additionId, found[additionId]?.[0], found[additionId]?.[2]]).toEqual([additionId, leastGrams, mostGrams]);
    }
    // At most 40 kg of all that is older goes on.
    expect(found[old]).toEqual([0, 40_000, 40_000]);
  });

  it('are found for packs between two counts, and for several targets at once', async () => {
    const first = await poured(100);
    const run = await onLine(0);
    await counted(run.id, 40);
    const second = await poured(100);
    await counted(run.id, 90);
    const targets = [
      { ranges: [{ runId: run.id, fromCount: 10, toCount: 20 }] },
      { ranges: [{ runId: run.id, fromCount: 80, toCount: 90 }] },
      { ranges: [{ runId: run.id, fromCount: 90, toCount: 200 }] },
    ];
    const found = (await sourcesOfTargets(reader, targets)).map(grams);
    expect(found).toEqual([
      { [first]: [20_000, 20_000, 20_000] },
      { [second]: [0, 20_000, 20_000], [first]: [0, 0, 20_000] },
      {},
    ]);
    expect(await sourcesOfRanges(reader, [])).toEqual([]);
  });

  it('are at least what the certain part holds, and at most what the widened one may', async () => {
    const first = await poured(100);
    const run = await onLine(0);
    await counted(run.id, 50);
    const second = await poured(100);
    await counted(run.id, 100);
    const ranges = [{ runId: run.id, fromCount: 40, toCount: 60 }];
    const certain = [{ runId: run.id, fromCount: 40, toCount: 50 }];
    expect(grams(await sourcesOfRanges(reader, ranges, { certain }))).toEqual({
      [first]: [20_000, 20_000, 20_000],
      [second]: [0, 20_000, 20_000],
    });
  });

  it('may be any of the candidates where a number could not be read', async () => {
    const wishes = { netGrams: 100_000, scaleId: exact.scaleId };
    const one = await aReleasedBag(house, plant, wishes);
    const other = await aReleasedBag(house, plant, wishes);
    const { personId } = await aPerson(house, plant.siteId);
    await house.get(TipOneOfSeveral).execute(asking(plant.actor), {
      candidates: [{ bag: one.id }, { bag: other.id }],
      ...{ hopperId: plant.hopperId, secondPersonId: personId, isOff: true },
    });
    const run = await onLine(0);
    await counted(run.id, 50);
    const ranges = [{ runId: run.id, fromCount: 0, toCount: 50 }];
    expect(grams(await sourcesOfRanges(reader, ranges))).toEqual({
      [one.id]: [0, 50_000, 100_000],
      [other.id]: [0, 50_000, 100_000],
    });
    const [both] = await boundsOfBags(reader, [one.id, other.id], [ranges]);
    expect(both?.together).toMatchObject({ leastGrams: 100_000, likelyGrams: 100_000, mostGrams: 100_000 });
  });
});

describe('what is left in a hopper', () => {
  it('goes on into the next period, by no more than the residue, and no further than a thread that is cut', async () => {
    const first = await poured(100);
    const run = await onLine(0);
    await counted(run.id, 47);
    const second = await poured(4);
    await counted(run.id, 49);
    house.clock.pass(1);
    const counts = [{ run: run.number, packCount: 49 }];
    await aProvenEmpty(house, plant, { residueGrams: 6_000, residueUpperGrams: 8_000, counts });
    const third = await poured(94);
    await counted(run.id, 99);
    const after = [{ runId: run.id, fromCount: 49, toCount: 99 }];
    const links = await sourcesOfRanges(reader, after);
    expect(grams(links)).toEqual({
      // 8 kg may have stuck, so 2 kg may be inside still.
      [first]: [0, 2_000, 6_000],
      [second]: [0, 4_000, 4_000],
      [third]: [92_000, 94_000, 94_000],
    });
    const all = [{ runId: run.id, fromCount: 0, toCount: 99 }];
    expect(linksByBag(await sourcesOfRanges(reader, all)).get(first)).toMatchObject({ likelyGrams: 100_000 });
    const went = await rangesOfBag(reader, second);
    expect(went.map(({ fromCount, toCount }) => [fromCount, toCount])).toEqual([
      [47, 49],
      [49, 99],
    ]);
    house.clock.pass(1);
    await aProvenEmpty(house, plant, { counts: [{ run: run.number, packCount: 99 }] });
    await poured(20);
    await counted(run.id, 109);
    const later = await sourcesOfRanges(reader, [{ runId: run.id, fromCount: 99, toCount: 109 }]);
    expect(later.map(({ likelyGrams }) => likelyGrams)).toEqual([20_000]);
  });

  it('of packs counted across a proven empty none or all may be of either period, unless they were counted then', async () => {
    const first = await poured(100);
    const run = await onLine(0);
    await counted(run.id, 30);
    house.clock.pass(10);
    await aProvenEmpty(house, plant, { happened: true });
    const second = await poured(100);
    house.clock.pass(8);
    await counted(run.id, 80);
    const ranges = [{ runId: run.id, fromCount: 30, toCount: 80 }];
    const links = grams(await sourcesOfRanges(reader, ranges));
    expect(links[first]?.[2]).toBeGreaterThanOrEqual(40_000);
    expect(links[second]?.[2]).toBe(100_000);
    const { packs } = await readHopperPeriod(reader, (await sourcesOfRanges(reader, ranges))[0]!.periodId);
    expect(packs.some(({ isWhole }) => !isWhole)).toBe(true);
  });

  it('is what may be inside now', async () => {
    const first = await poured(100);
    const run = await onLine(0);
    await counted(run.id, 45);
    const second = await poured(100);
    const { level, bags } = await contentOf(reader, plant.hopperId);
    expect(level).toMatchObject({ grams: 110_000, lowerGrams: 110_000, upperGrams: 110_000 });
    expect(grams(bags)).toEqual({ [first]: [10_000, 10_000, 10_000], [second]: [100_000, 100_000, 100_000] });
  });
});

describe('where a bag went', () => {
  it('is told run by run, with what is ruled out cut off at both ends', async () => {
    await poured(100);
    const [one, two] = [await onLine(0), await onLine(1)];
    await counted(one.id, 20);
    const bag = await poured(100);
    await counted(one.id, 60);
    await counted(two.id, 20);
    await poured(100);
    await counted(two.id, 40);
    await counted(two.id, 90);
    house.clock.pass(1);
    await house.get(RunDown).execute(asking(plant.actor), plant.hopperId, { atMostGrams: 0 });
    await poured(100);
    await counted(two.id, 140);
    const went = await rangesOfBag(reader, bag);
    expect(went.map(({ runId, fromCount, toCount, word }) => [runId, fromCount, toCount, word])).toEqual([
      [one.id, 20, 60, 'sure'],
      [two.id, 0, 40, 'likely'],
      [two.id, 40, 90, 'possible'],
    ]);
    expect(went.map(({ leastGrams, likelyGrams, mostGrams }) => [leastGrams, likelyGrams, mostGrams])).toEqual([
      [20_000, 20_000, 80_000],
      [0, 80_000, 80_000],
      // 40 kg of it at most were inside when the next bag came.
      [0, 0, 40_000],
    ]);
  });

  it('goes through rework: opened packs go back, and the bag goes with them', async () => {
    const bag = await poured(100);
    const run = await onLine(0);
    await counted(run.id, 50);
    const bin = await house.get(CloseReworkBin).execute(asking(plant.actor), {
      ...{ content: 'opened-packs', netGrams: 20_000, scaleId: exact.scaleId },
      parents: [{ run: run.number, fromCount: 30, toCount: 50 }],
    });
    await poured(100);
    house.clock.pass(1);
    await house.get(TipReworkBin).execute(asking(plant.actor), { bin: bin.number, hopperId: plant.hopperId });
    await counted(run.id, 110);
    const ranges = [{ runId: run.id, fromCount: 50, toCount: 110 }];
    // All of the second bag and all of the bin left; the bin holds nothing but the first bag.
    expect(await boundsOfBag(reader, bag, ranges)).toMatchObject({
      ...{ leastGrams: 20_000, likelyGrams: 20_000, mostGrams: 20_000, word: 'sure' },
    });
    const went = await rangesOfBag(reader, bag);
    expect(went.at(-1)).toMatchObject({ toCount: 110 });
  });

  it('never holds in rework what was poured after its bin was closed', async () => {
    const before = await poured(500);
    const run = await onLine(0);
    const rejected = async (): Promise<void> => {
      const reject = { kind: 'reject', removalReason: 'underweight', fate: 'rework' } as const;
      const weighed = { netGrams: 10_000, scaleId: exact.scaleId, lineId: plant.lineIds[0] };
      await house.get(RemoveSugar).execute(asking(plant.actor), { ...reject, ...weighed });
    };
    await counted(run.id, 50);
    await rejected();
    const bin = await house.get(CloseReworkBin).execute(asking(plant.actor), {
      ...{ content: 'weight-rejects', netGrams: 10_000, scaleId: exact.scaleId },
      parents: [{ run: run.number, fromCount: 0, toCount: 50 }],
    });
    house.clock.pass(1);
    await house.get(TipReworkBin).execute(asking(plant.actor), { bin: bin.number, hopperId: plant.hopperId });
    await counted(run.id, 150);
    const after = await poured(500);
    await counted(run.id, 300);
    // The rejects of the run after the bin was closed are in no bin yet.
    await rejected();
    const ranges = [{ runId: run.id, fromCount: 50, toCount: 150 }];
    expect((await sourcesOfRanges(reader, ranges)).map(({ bagId }) => bagId)).toEqual([before]);
    const { ruledOut } = await sourcesAndRuledOut(reader, ranges);
    expect(ruledOut.flatMap(({ bags }) => bags)).toMatchObject([{ bagId: after, reason: 'tipped-later' }]);
  });
});

describe('a tip that comes late', () => {
  it('goes where it belongs, as early as its time allows, and never across a proven empty', async () => {
    const late = await aReleasedBag(house, plant, { netGrams: 100_000, scaleId: exact.scaleId });
    const run = await onLine(0);
    house.clock.pass(5);
    const openedAt = house.clock.now();
    await counted(run.id, 50);
    house.clock.pass(4);
    await aProvenEmpty(house, plant, { happened: true, counts: [{ run: run.number, packCount: 50 }] });
    const next = await poured(100);
    await counted(run.id, 100);
    house.clock.pass(10);
    const tip = await aTip(house, plant, late.id, { openedAt: shifted(openedAt, -60_000) });
    const before = [{ runId: run.id, fromCount: 0, toCount: 50 }];
    const after = [{ runId: run.id, fromCount: 50, toCount: 100 }];
    expect(grams(await sourcesOfRanges(reader, before))).toEqual({ [late.id]: [100_000, 100_000, 100_000] });
    expect(grams(await sourcesOfRanges(reader, after))).toEqual({ [next]: [100_000, 100_000, 100_000] });
    const { additions, period } = await readHopperPeriod(reader, tip.periodId);
    expect(period.endedAt).not.toBeNull();
    expect(additions).toMatchObject([{ id: tip.id, isLate: true }]);
  });
});
