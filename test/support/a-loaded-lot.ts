import { RemoveSugar } from '../../src/packing/remove-sugar.js';
import { aDelivery, deliveryClosed, palletLoaded, vehicleChecked, vehicleLeft } from './a-delivery.js';
import { aPackedRun, aPallet, aTippedBag } from './a-pallet.js';
import type { Plant } from './a-plant.js';
import { asking, type TestHouse } from './house.js';

/** A bag tipped, 500 packs on five pallets, some of them loaded for a customer, 2 packs rejected and 1 retained. */
export async function aLotLoaded(house: TestHouse, plant: Plant, palletsLoaded = 3) {
  const bag = await aTippedBag(house, plant);
  const run = await aPackedRun(house, plant, { packCount: 500 });
  const remove = (kind: 'reject' | 'sample', packCount: number, fate: 'waste' | 'retained') =>
    house.get(RemoveSugar).execute(asking(plant.actor), {
      ...{ kind, lineId: plant.lineIds[0], packCount, fate, removalReason: kind === 'reject' ? 'seal' : 'retained' },
    });
  await remove('reject', 2, 'waste');
  await remove('sample', 1, 'retained');
  const pallets = [];
  for (let place = 0; place < 5; place += 1) {
    pallets.push(await aPallet(house, plant, { run: run.runId, placeId: plant.placeIds.store }));
  }
  const delivery = await aDelivery(house, plant);
  await vehicleChecked(house, plant, delivery);
  for (const pallet of pallets.slice(0, palletsLoaded)) await palletLoaded(house, plant, delivery, pallet.sscc);
  return { bag, run, pallets, delivery };
}

/** The vehicle leaves with what was loaded. */
export async function lotLeaves(house: TestHouse, plant: Plant, delivery: string, unitCount = 3): Promise<void> {
  await deliveryClosed(house, plant, delivery, { blindCount: unitCount });
  await vehicleLeft(house, plant, delivery);
}
