import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { aCheckPlan, failed } from '../../test/support/a-check-plan.js';
import { aDelivery, deliveryClosed, palletLoaded, vehicleLeft } from '../../test/support/a-delivery.js';
import { aPackedRun, aPallet, aTippedBag, decided } from '../../test/support/a-pallet.js';
import { aPackScale } from '../../test/support/a-run.js';
import { aPlant, type Plant } from '../../test/support/a-plant.js';
import { asking, openHouse, type TestHouse } from '../../test/support/house.js';
import { WeighHandSample } from '../fill-weight/weigh-hand-sample.js';
import { lineCheckOf } from '../line-checks/line-checks.js';
import { MovePallet } from '../pallets/move-pallet.js';
import { SplitPallet } from '../pallets/split-pallet.js';
import { PalletState } from '../pallets/pallet-state.entity.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { UnitOfWork } from '../platform/database/unit-of-work.js';
import { HoldSinceLastGood } from './hold-since-last-good.js';
import { suspectsOfCheck } from './suspects-of-check.js';

let house: TestHouse;
let from: ReadFrom;
let plant: Plant;
let run: Awaited<ReturnType<typeof aPackedRun>>;
let checkId: string;
let pallets: Awaited<ReturnType<typeof aPallet>>[];

/** Ten pallets' worth of packs: one away, one on a vehicle, one on the dock, two in store, one came back, 400 packs loose. */
beforeAll(async () => {
  house = await openHouse();
  from = house.app.get<ReadFrom>(READER, { strict: false });
  plant = await aPlant(house, { packsPerPallet: 100 });
  await aCheckPlan(house, plant);
  await aTippedBag(house, plant);
  run = await aPackedRun(house, plant, { packCount: 1000 });
  await decided(house, plant, { kind: 'lot', id: run.lotId }, 'released');
  pallets = [];
  for (let place = 0; place < 6; place += 1) {
    pallets.push(await aPallet(house, plant, { run: run.runId, placeId: plant.placeIds.store }));
  }
  const first = await aDelivery(house, plant);
  await palletLoaded(house, plant, first, pallets[0]!.sscc);
  await deliveryClosed(house, plant, first, { blindCount: 1 });
  await vehicleLeft(house, plant, first);
  await palletLoaded(house, plant, await aDelivery(house, plant), pallets[1]!.sscc);
  await house.get(MovePallet).execute(asking(plant.actor), pallets[2]!.id, { placeId: plant.placeIds.dock });
  const back = { status: 'returned', placeId: plant.placeIds.store } as const;
  await house.get(UnitOfWork).run((tx) => tx.update(PalletState, { palletId: pallets[5]!.id }, back));
  const [planId] = (await from.sql<{ planId: string }>`SELECT "plan_id" AS "planId" FROM "check_plan"`).map(
    (row) => row.planId,
  );
  checkId = (await failed(house, plant, planId ?? '')).id;
});
afterAll(() => house.close());

const suspects = async () => suspectsOfCheck(from, await lineCheckOf(from, plant.siteId, checkId), house.clock.now());
const counts = (places: readonly { readonly place: string; readonly packCount: number }[]) =>
  Object.fromEntries(places.map(({ place, packCount }) => [place, packCount]));
const sum = (values: readonly number[]) => values.reduce((all, value) => all + value, 0);

describe('what a failed check makes suspect', () => {
  it('is told by place in packs and kilograms that add up, taken at nominal while nothing was weighed', async () => {
    const { places, packCount, hasAssumed, loosePackCount, pallets: listed } = await suspects();
    expect(counts(places)).toEqual({
      ...{ away: 100, 'on-vehicle': 100, 'on-dock': 100, 'in-store': 200, 'came-back': 100, loose: 400 },
    });
    expect([packCount, loosePackCount, hasAssumed]).toEqual([1000, 400, true]);
    expect(sum(places.map(({ milligrams }) => milligrams))).toBe(1000 * 2_000_000);
    expect(listed.map(({ place, whereabouts }) => [place, whereabouts === null])).toContainEqual(['came-back', false]);
  });

  it('goes by the mean net of the run once packs were weighed', async () => {
    const scaleId = await aPackScale(house, plant);
    const sample = { run: run.runId, netDecigrams: [20_010, 20_030, 20_000, 20_012], scaleId };
    await house.get(WeighHandSample).execute(asking(plant.actor), sample);
    const { places, hasAssumed } = await suspects();
    expect(hasAssumed).toBe(false);
    expect(places.find(({ place }) => place === 'on-dock')?.milligrams).toBe(100 * 2_001_300);
  });

  it('follows a pallet that is split, while all of it stays at one place', async () => {
    const parts = [40, 60].map((packCount) => ({ shares: [{ packCount }] }));
    const split = { parts, reason: 'half pallets' };
    await house.get(SplitPallet).execute(asking(plant.actor), pallets[3]!.id, split);
    const { places, packCount } = await suspects();
    expect(sum(places.map((one) => one.packCount))).toBe(packCount);
    expect(counts(places)).toMatchObject({ 'in-store': 200, loose: 400 });
  });

  it('is held by one act with the same totals, and then nothing of it is left', async () => {
    const before = await suspects();
    const held = await house.get(HoldSinceLastGood).execute(asking(plant.actor), { check: checkId });
    expect(held).toMatchObject({ packCount: 1000, places: before.places });
    expect((await suspects()).placesNotHeld).toEqual([]);
  });
});
