import { afterEach, beforeEach, describe, expect, it } from '@jest/globals';
import { readerOf } from '../../test/support/a-bag.js';
import { aDelivery, deliveryClosed, palletLoaded, vehicleLeft } from '../../test/support/a-delivery.js';
import { aPallet } from '../../test/support/a-pallet.js';
import { aPlant, type Plant } from '../../test/support/a-plant.js';
import { packsCounted } from '../../test/support/a-run.js';
import { aProvenEmpty, aStartedRun, aTippedBag } from '../../test/support/a-tip.js';
import { asking, openHouse, type TestHouse } from '../../test/support/house.js';
import { SetHoldClass } from '../disposition/set-hold-class.js';
import { openHolds, type HoldRow } from '../disposition/standings.js';
import { ChangeCode } from '../packing/change-code.js';
import { standingOfPallet } from '../pallets/pallet-standing.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { NarrowHold } from './narrow-hold.js';
import { reachOfHold, scopeOfRow } from './hold-reach.js';
import { PlaceHold } from './place-hold.js';

let house: TestHouse;
let plant: Plant;
let reader: ReadFrom;

beforeEach(async () => {
  house = await openHouse();
  reader = readerOf(house);
  plant = await aPlant(house, { packsPerPallet: 100, capacityGrams: 30_000_000 });
});
afterEach(async () => {
  await house.close();
});

/** Three hopper periods: 200 kg of the first go on into the second as its residue; the third begins clean. */
async function threePeriods() {
  const { bag, tip } = await aTippedBag(house, plant, { netGrams: 500_000 });
  house.clock.pass(10);
  const { id: runId } = await aStartedRun(house, plant);
  await house.get(ChangeCode).execute(asking(plant.actor), runId, { code: 'L6071A1', packCount: 0 });
  const first = await nextPallet(runId, 100);
  await emptied(runId, 100, 200_000);
  house.clock.pass(1);
  const second = (await aTippedBag(house, plant, { netGrams: 1_000_000 })).tip;
  house.clock.pass(10);
  const next = await nextPallet(runId, 200);
  for (const upTo of [300, 400]) await nextPallet(runId, upTo);
  const later = await nextPallet(runId, 500);
  await emptied(runId, 500, 0);
  house.clock.pass(1);
  await aTippedBag(house, plant, { netGrams: 1_000_000 });
  house.clock.pass(10);
  const clean = await nextPallet(runId, 600);
  return { bag, runId, firstPeriod: tip.periodId, secondPeriod: second.periodId, first, next, later, clean };
}

async function nextPallet(run: string, upTo: number): Promise<string> {
  house.clock.pass(30);
  await packsCounted(house, plant, run, upTo);
  return (await aPallet(house, plant, { run })).id;
}

async function emptied(run: string, packCount: number, residueGrams: number): Promise<void> {
  house.clock.pass(1);
  const counts = [{ run, packCount }];
  await aProvenEmpty(house, plant, { residueGrams, happened: true, counts });
}

async function heldPeriod(id: string, hazard: 'safety' | 'quality'): Promise<HoldRow> {
  const scope = { kind: 'hopper-period', id } as const;
  const { id: hold } = await house
    .get(PlaceHold)
    .execute(asking(plant.actor), { ...scope, reason: 'glass at the hatch' });
  await house.get(SetHoldClass).execute(asking(plant.actor), { hold, hazard, reason: 'test' });
  const row = (await openHolds(reader, [scope])).find((one) => one.id === hold);
  if (row === undefined) throw new Error('not open');
  return row;
}

/** What the hold's page shows, and what loading says, of the same pallets. */
async function bothSay(hold: HoldRow, palletIds: readonly string[]) {
  const reach = await reachOfHold(reader, scopeOfRow(hold), hold);
  const shown = hold.hazard === 'safety' ? reach.possible : reach.sureAndLikely;
  const page = palletIds.map((id) => shown.some(({ palletId }) => palletId === id));
  const loading: boolean[] = [];
  for (const id of palletIds) loading.push((await standingOfPallet(reader, id)).state === 'on-hold');
  return { page, loading };
}

describe('a hold on a hopper period', () => {
  it('covers what its residue may be in, up to an empty that leaves nothing, for its page and for loading alike', async () => {
    const { firstPeriod, first, next, later, clean } = await threePeriods();
    const hold = await heldPeriod(firstPeriod, 'safety');
    const covered = [true, true, true, false];
    expect(await bothSay(hold, [first, next, later, clean])).toEqual({ page: covered, loading: covered });
  });

  it('covers as a quality hold only what is sure and likely; of the rest it says that it may be', async () => {
    const { firstPeriod, first, next, later, clean } = await threePeriods();
    const hold = await heldPeriod(firstPeriod, 'quality');
    const covered = [true, true, false, false];
    expect(await bothSay(hold, [first, next, later, clean])).toEqual({ page: covered, loading: covered });
    const codes = (await standingOfPallet(reader, later)).reasons.map(({ code }) => code);
    expect(codes).toEqual(['perhaps-held-by']);
    expect((await standingOfPallet(reader, clean)).reasons).toEqual([]);
  });

  it('covers what a period began with too, and nothing that left before it', async () => {
    const { secondPeriod, first, next, later, clean } = await threePeriods();
    const hold = await heldPeriod(secondPeriod, 'safety');
    const covered = [false, true, true, false];
    expect(await bothSay(hold, [first, next, later, clean])).toEqual({ page: covered, loading: covered });
  });

  it('refuses a pallet of a later period at scan, at close and at the gate', async () => {
    const { firstPeriod, next, later, clean } = await threePeriods();
    const onHold = expect.objectContaining({ code: 'unit-on-hold' }) as unknown;
    const [open, closed] = [await aDelivery(house, plant), await aDelivery(house, plant)];
    await palletLoaded(house, plant, open, next);
    await palletLoaded(house, plant, closed, later);
    await deliveryClosed(house, plant, closed, { blindCount: 1 });
    const hold = await heldPeriod(firstPeriod, 'safety');
    await expect(vehicleLeft(house, plant, closed)).rejects.toMatchObject({ code: 'units-may-not-leave' });
    await expect(deliveryClosed(house, plant, open, { blindCount: 1 })).rejects.toEqual(onHold);
    const third = await aDelivery(house, plant);
    await palletLoaded(house, plant, third, clean);
    await house.get(NarrowHold).execute(asking(plant.actor), {
      ...{
        hold: hold.number,
        palletIds: [next, later],
        reason: 'sieved again',
        assessment: 'all packs opened and seen',
      },
    });
    await deliveryClosed(house, plant, open, { blindCount: 1 });
    await vehicleLeft(house, plant, closed);
  });

  it('refuses it at scan', async () => {
    const { firstPeriod, next } = await threePeriods();
    await heldPeriod(firstPeriod, 'safety');
    const scan = palletLoaded(house, plant, await aDelivery(house, plant), next);
    await expect(scan).rejects.toMatchObject({ code: 'unit-on-hold' });
  });
});
