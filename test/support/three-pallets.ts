import { ChangeCode } from '../../src/packing/change-code.js';
import { aDelivery, deliveryClosed, palletLoaded, vehicleLeft } from './a-delivery.js';
import { aPallet } from './a-pallet.js';
import type { Plant } from './a-plant.js';
import { packsCounted } from './a-run.js';
import { aStartedRun, aTippedBag } from './a-tip.js';
import { asking, type TestHouse } from './house.js';

/** A run over a first bag with three pallets of 100 packs: one gone to a customer, one on a vehicle, one in store. */
export interface ThreePallets {
  readonly startedAt: string;
  /** After the first pallet. */
  readonly betweenAt: string;
  readonly firstBag: string;
  readonly firstTip: string;
  readonly runId: string;
  readonly lotId: string;
  readonly gone: string;
  readonly loaded: string;
  readonly inStore: string;
}

/** @param between what happens after the first pallet */
export async function threePallets(
  house: TestHouse,
  plant: Plant,
  between: () => Promise<void> = () => Promise.resolve(),
): Promise<ThreePallets> {
  const startedAt = house.clock.now();
  const first = await aTippedBag(house, plant, { netGrams: 1_000_000 });
  house.clock.pass(10);
  const { id: runId } = await aStartedRun(house, plant);
  const { lotId } = await house.get(ChangeCode).execute(asking(plant.actor), runId, { code: 'L6071A1', packCount: 0 });
  const nextPallet = async (upTo: number): Promise<string> => {
    house.clock.pass(30);
    await packsCounted(house, plant, runId, upTo);
    return (await aPallet(house, plant, { run: runId })).id;
  };
  const gone = await nextPallet(100);
  house.clock.pass(60);
  const betweenAt = house.clock.now();
  await between();
  const loaded = await nextPallet(200);
  const inStore = await nextPallet(300);
  const [left, open] = [await aDelivery(house, plant), await aDelivery(house, plant)];
  await palletLoaded(house, plant, left, gone);
  await deliveryClosed(house, plant, left, { blindCount: 1 });
  await vehicleLeft(house, plant, left);
  await palletLoaded(house, plant, open, loaded);
  return {
    ...{ startedAt, betweenAt, firstBag: first.bag.id, firstTip: first.tip.id, runId, lotId },
    ...{ gone, loaded, inStore },
  };
}
