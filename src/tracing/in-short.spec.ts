import { afterEach, beforeEach, describe, expect, it } from '@jest/globals';
import { aBag, readerOf } from '../../test/support/a-bag.js';
import { aPlant, type Plant } from '../../test/support/a-plant.js';
import { openHouse, type TestHouse } from '../../test/support/house.js';
import { threePallets } from '../../test/support/three-pallets.js';
import { bagOriginsOf } from '../drying/bag-origins.js';
import { bagsOf } from '../drying/bulk-bags.js';
import { contentsOf, palletsOf } from '../pallets/pallet-list.js';
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
