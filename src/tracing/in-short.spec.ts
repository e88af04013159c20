import { afterEach, beforeEach, describe, expect, it } from '@jest/globals';
import { aBag, readerOf } from '../../test/support/a-bag.js';
import { aPlant, type Plant } from '../../test/support/a-plant.js';
import { aReleasedBag, aStartedRun, aTip } from '../../test/support/a-tip.js';
import { asking, openHouse, type TestHouse } from '../../test/support/house.js';
import { threePallets } from '../../test/support/three-pallets.js';
import { bagOriginsOf } from '../drying/bag-origins.js';
import { bagsOf } from '../drying/bulk-bags.js';
import { ReweighBag } from '../drying/reweigh-bag.js';
import { EndTip } from '../hopper/end-tip.js';
import { contentsOf, palletsOf } from '../pallets/pallet-list.js';
import { UnitOfWork } from '../platform/database/unit-of-work.js';
import { SystemIds } from '../platform/ids.js';
import { PalletContent } from '../pallets/pallet-content.entity.js';
import { groupBy } from '../platform/group-by.js';
import { palletsInShort } from '../pallets/pallets-in-short.js';

let house: TestHouse;
let plant: Plant;

beforeEach(async () => {
  house = await openHouse();
  plant = await aPlant(house, { packsPerPallet: 100, capacityGrams: 30_000_000 });
});
afterEach(async () => {
  await house.close();
});

const unknown = '01890000-0000-7000-8000-000000000000';

describe('what a thread reads of many', () => {
  it('says of bags what the whole bags say, in the order asked for, of a doubtful scale too', async () => {
    const good = await aBag(house, plant);
    const doubtful = await aBag(house, plant, { scaleId: plant.staleScaleId, netGrams: 987_654 });
    const ids = [doubtful.id, unknown, good.id];
    const origins = await bagOriginsOf(readerOf(house), ids);
    const bags = await bagsOf(readerOf(house), ids);
    expect(origins.map(({ id, isDoubtful, netGrams }) => [id, isDoubtful, netGrams])).toEqual([
      [doubtful.id, true, 987_654],
      [good.id, false, 1_000_000],
    ]);
    origins.forEach((origin, place) => {
      expect(bags[place]).toMatchObject(origin);
    });
  });

  it('takes a bag as it was weighed again, and never what was weighed back', async () => {
    const bag = await aReleasedBag(house, plant);
    const weighed = { tareGrams: 1_800, isPresetTare: true, scaleId: plant.scaleId };
    house.clock.pass(5);
    const again = { bag: bag.number, ...weighed, grossGrams: 1_001_300, reason: 'test' };
    await house.get(ReweighBag).execute(asking(plant.actor), again);
    const tip = await aTip(house, plant, bag.number, { isOff: false });
    house.clock.pass(5);
    const rest = { ...weighed, grossGrams: 301_800 };
    await house.get(EndTip).execute(asking(plant.actor), tip.id, rest);
    const [origin] = await bagOriginsOf(readerOf(house), [bag.id]);
    const [whole] = await bagsOf(readerOf(house), [bag.id]);
    expect(origin?.netGrams).toBe(999_500);
    expect(whole).toMatchObject(origin ?? {});
  });

  it('names what stands on a pallet in the order of the runs, then of their counts', async () => {
    const { inStore, runId, lotId } = await threePallets(house, plant);
    const { id: laterRunId, number } = await aStartedRun(house, plant, { lineId: plant.lineIds[1] });
    const added = { id: new SystemIds().next(), palletId: inStore, runId: laterRunId, lotId, fromCount: 0, toCount: 5 };
    await house.get(UnitOfWork).run((tx) => tx.insert(PalletContent, { ...added, voidedBy: null }));
    const contents = await contentsOf(readerOf(house), [inStore]);
    expect(contents.map((row) => [row.runId, row.fromCount, row.toCount])).toEqual([
      [runId, 200, 300],
      [laterRunId, 0, 5],
    ]);
    expect(contents.map((row) => [row.runNumber, row.lotCode])).toEqual([
      [expect.stringMatching(/^PR-/), 'L6071A1'],
      [number, 'L6071A1'],
    ]);
  });

  it('says of pallets what the whole pallets say', async () => {
    const { gone, loaded, inStore } = await threePallets(house, plant);
    const palletIds = [gone, loaded, inStore];
    const contents = groupBy(await contentsOf(readerOf(house), palletIds), (row) => row.palletId);
    const short = await palletsInShort(readerOf(house), [...palletIds, unknown], contents);
    const whole = await palletsOf(readerOf(house), palletIds);
    expect([...short.keys()].sort()).toEqual([...palletIds].sort());
    for (const pallet of whole) expect(pallet).toMatchObject(short.get(pallet.id) ?? {});
    expect([...short.values()].map(({ packCount }) => packCount)).toEqual([100, 100, 100]);
  });
});
