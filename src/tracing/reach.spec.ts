import { afterEach, beforeEach, describe, expect, it } from '@jest/globals';
import { readerOf } from '../../test/support/a-bag.js';
import { aPerson, signedIn, type SignedInPerson } from '../../test/support/a-person.js';
import { aPlant, type Plant } from '../../test/support/a-plant.js';
import { packsCounted } from '../../test/support/a-run.js';
import { aProvenEmpty, aReleasedBag, aStartedRun, aTippedBag } from '../../test/support/a-tip.js';
import { asking, openHouse, type TestHouse } from '../../test/support/house.js';
import { pageText } from '../../test/support/page-text.js';
import { threePallets } from '../../test/support/three-pallets.js';
import { ChangeCode } from '../packing/change-code.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { readBagReach, type BagReach } from './bag-reach.js';
import type { PlantReach } from './plant-reach.js';

let house: TestHouse;
let plant: Plant;
let reader: ReadFrom;
let manager: SignedInPerson;

beforeEach(async () => {
  house = await openHouse();
  reader = readerOf(house);
  plant = await aPlant(house, { packsPerPallet: 100, capacityGrams: 30_000_000 });
  manager = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['plant-manager', 'quality-officer'] }));
});
afterEach(async () => {
  await house.close();
});

describe('if this bag were bad', () => {
  it('says lots, pallets, where they are, customers and tonnes, on its file and as JSON', async () => {
    const { firstBag, lotId } = await threePallets(house, plant);
    const reach = (await manager.get(`/api/bags/${firstBag}/reach`)).body as BagReach;
    expect(reach).toMatchObject({
      ...{ bagId: firstBag, possible: { packCount: 300, grams: 600_000 }, lots: [{ lotId, code: 'L6071A1' }] },
      ...{ wholeLots: { packCount: 300, grams: 600_000 }, palletCount: 3, onVehicleCount: 1, awayCount: 1 },
    });
    expect(reach.customers).toMatchObject([{ customerId: plant.customerId, palletCount: 1, packCount: 100 }]);
    const page = pageText((await manager.get(`/quality/bags/${firstBag}?reach=true`)).text);
    expect(page).toContain('If this bag were bad');
    expect(page).toContain('300 packs may hold some of it. Of the pallets 1 are here, 1 on a vehicle, 1 gone.');
  });

  it('says of a bag that was never tipped that nothing of it can be anywhere', async () => {
    const { id } = await aReleasedBag(house, plant);
    expect(await readBagReach(reader, plant.siteId, id)).toMatchObject({
      ...{ possible: { packCount: 0, grams: 0 }, lots: [], palletCount: 0, customers: [] },
    });
    expect((await manager.get(`/api/bags/${lineIdAsBag()}/reach`)).status).toBe(404);
  });

  const lineIdAsBag = (): string => plant.lineIds[0];
});

describe('how far the bags of some days reach', () => {
  /**
   * From 13:00 local time on, over the change of shift at 14:00: 1200 kg packed an hour, counted by quarters, a bag each, and a proven
   * empty in the afternoon.
   */
  async function afternoon(): Promise<readonly string[]> {
    house.clock.set('2026-03-12T12:00:00.000Z');
    const bags = [(await aTippedBag(house, plant, { netGrams: 1_000_000 })).bag.id];
    const { id: runId } = await aStartedRun(house, plant);
    await house.get(ChangeCode).execute(asking(plant.actor), runId, { code: 'L6071A1', packCount: 0 });
    for (let quarter = 1; quarter <= 12; quarter += 1) {
      house.clock.pass(15);
      await packsCounted(house, plant, runId, quarter * 150);
      if (quarter % 4 === 3) bags.push((await aTippedBag(house, plant, { netGrams: 1_000_000 })).bag.id);
      if (quarter === 10) {
        await aProvenEmpty(house, plant, {
          residueGrams: 20_000,
          happened: true,
          counts: [{ run: runId, packCount: 1500 }],
        });
      }
    }
    return bags;
  }

  const asked = '/api/reach?from=2026-03-12&until=2026-03-12';

  it('is the sum of what each bag by itself may be in, through the residue of an empty', async () => {
    const bags = await afternoon();
    const reach = (await manager.get(asked)).body as PlantReach;
    const each = await Promise.all(bags.map((bag) => readBagReach(reader, plant.siteId, bag)));
    const alone = each.map(({ possible }) => possible.grams);
    expect(reach.bagCount).toBe(4);
    expect(reach.asIs.totalGrams).toBe(alone.reduce((sum, grams) => sum + grams, 0));
    expect(reach.asIs).toMatchObject({
      meanGrams: Math.round(reach.asIs.totalGrams / 4),
      worstGrams: Math.max(...alone),
    });
    expect(reach.worst.map(({ grams }) => grams)).toEqual(alone.toSorted((one, other) => other - one));
  });

  it('would be less with one more empty at the change of shift: never more, and the first bag ends with it', async () => {
    const bags = await afternoon();
    const { asIs, withEmpties, shrinkPercent } = (await manager.get(asked)).body as PlantReach;
    expect(withEmpties.emptyCount).toBe(1);
    expect(withEmpties.totalGrams).toBeLessThan(asIs.totalGrams);
    expect(shrinkPercent).toBeCloseTo(100 * (1 - withEmpties.totalGrams / asIs.totalGrams), 1);
    // Run empty at 14:00, what went in before is in no more packs than that: two bags, two tonnes.
    expect(withEmpties.worstGrams).toBeLessThanOrEqual(2_000_000);
    expect(bags).toHaveLength(4);
  });

  it('shows the sum on its page, for quality and the manager only, and refuses days that cannot be read', async () => {
    await afternoon();
    const page = await manager.get('/quality/reach?from=2026-03-12&until=2026-03-12');
    expect(page.status).toBe(200);
    const text = pageText(page.text);
    expect(text).toMatch(/A bag reached [\d.]+ t on average, [\d.]+ t at worst\./);
    expect(text).toContain('With 1 more empty');
    const lead = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['line-lead'] }));
    expect((await lead.get(asked)).status).toBe(403);
    expect(pageText((await manager.get('/quality/reach?from=2026-01-01&until=2026-01-02')).text)).toContain(
      'No bag was tipped on these days.',
    );
    const turned = await manager.get('/quality/reach?from=2026-03-12&until=2026-03-01');
    expect([turned.status, pageText(turned.text)]).toEqual([409, expect.stringContaining('lies before the first')]);
    const long = await manager.get('/api/reach?from=2025-01-01&until=2026-03-12');
    expect(long).toMatchObject({ status: 409, body: { type: 'problem:bag-reach-too-long' } });
  });
});
