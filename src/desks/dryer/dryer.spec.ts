import { afterEach, beforeEach, describe, expect, it } from '@jest/globals';
import { readerOf } from '../../../test/support/a-bag.js';
import { aPerson, signedIn, type SignedInPerson } from '../../../test/support/a-person.js';
import { aPlant, type Plant } from '../../../test/support/a-plant.js';
import { asking, openHouse, type TestHouse } from '../../../test/support/house.js';
import { AddBagType } from '../../plant/add-bag-type.js';
import { SetUsualNet } from '../../plant/set-usual-net.js';

const type = {
  code: 'FOURLOOP',
  name: 'Four loops',
  usualTareGrams: 2_000,
  leastTareGrams: 1_800,
  mostTareGrams: 2_200,
  safeLoadGrams: 1_250_000,
};

describe('the dryer operator’s desk', () => {
  let house: TestHouse;
  let plant: Plant;
  let bagTypeId: string;
  let ilka: SignedInPerson;
  let desk: string;

  beforeEach(async () => {
    house = await openHouse();
    plant = await aPlant(house);
    bagTypeId = (await house.get(AddBagType).execute(asking(plant.actor), type)).id;
    const person = await aPerson(house, plant.siteId, { roles: ['dryer-operator'], name: 'Ilka Brandeis' });
    ilka = await signedIn(house, person);
    desk = `/dryer/${plant.dryerId}`;
  });
  afterEach(async () => {
    await house.close();
  });

  const page = async (path = desk): Promise<string> => (await ilka.get(path)).text;

  async function begun(): Promise<string> {
    await ilka.send(`${desk}/runs`, { gradeId: plant.gradeId });
    return runNumber();
  }

  async function runNumber(): Promise<string> {
    const [run] = await readerOf(house).sql<{ number: string }>`SELECT "number" FROM "dryer_run"`;
    return run?.number ?? '';
  }

  async function hung(): Promise<string> {
    const run = await runNumber();
    await ilka.send(`${desk}/bags`, { run: run === '' ? await begun() : run, bagTypeId });
    const rows = await readerOf(house).sql<{ id: string }>`SELECT "id" FROM "bulk_bag" ORDER BY "id" DESC LIMIT 1`;
    return rows[0]?.id ?? '';
  }

  const weigh = (bagId: string, grossGrams: string, more: Record<string, string> = {}) =>
    ilka.send(`${desk}/closes`, { bagId, grossGrams, scaleId: plant.scaleId, ...more });

  it('opens at the only dryer, starts its run, and offers the next bag', async () => {
    expect((await ilka.get('/dryer')).text).toContain('No run is open');
    const answer = await ilka.send(`${desk}/runs`, { gradeId: plant.gradeId });
    expect([answer.status, answer.headers['location']]).toEqual([303, desk]);
    expect(await page()).toContain('Bag on');
  });

  it('fills a bag by one tap, one weight with a comma, and one tap, and the label lies ready', async () => {
    const bagId = await hung();
    expect(await page()).toContain('Hanging under the filler');
    const answer = await weigh(bagId, ' 1 002,5 kg');
    expect(answer.status).toBe(303);
    const [, paperId] = /label=([0-9a-f-]{36})$/.exec(answer.headers['location'] ?? '') ?? [];
    const [weighing] = await readerOf(house).sql`
      SELECT "gross_grams" AS "gross", "tare_grams" AS "tare", "net_grams" AS "net" FROM "bag_weighing"`;
    expect(weighing).toEqual({ gross: 1_002_500, tare: 2_000, net: 1_000_500 });
    expect(await page(answer.headers['location'])).toContain(`/papers/${paperId}/file`);
    const label = await ilka.get(`/papers/${paperId}/file`);
    expect([label.status, label.headers['content-type']]).toEqual([200, 'application/pdf']);
  });

  it('asks once more about a weight that is not usual, shows what was typed, and takes it when it is confirmed', async () => {
    const band = { gradeId: plant.gradeId, leastNetGrams: 980_000, mostNetGrams: 1_020_000 };
    await house.get(SetUsualNet).execute(asking(plant.actor), band);
    const bagId = await hung();
    const asked = await weigh(bagId, '902,5');
    expect(asked.status).toBe(409);
    expect(asked.text).toContain('bags of this grade on this scale usually have 980 to 1\u202f020 kg');
    expect(asked.text).toContain('value="902,5"');
    expect(asked.text).toContain('name="confirmed" value="902500/2000"');
    expect(asked.text).toContain('It is so: 900.5 kg net');
    const other = await weigh(bagId, '802,5', { confirmed: '902500/2000' });
    expect(other.status).toBe(409);
    expect((await weigh(bagId, '902,5', { confirmed: '902500/2000' })).status).toBe(303);
  });

  it.each([
    ['nine hundred', 422],
    ['', 422],
    ['1,5', 409],
    ['1300', 409],
  ])('shows the form again for the weight “%s”, and records nothing', async (grossGrams, status) => {
    const bagId = await hung();
    const answer = await weigh(bagId, grossGrams);
    expect(answer.status).toBe(status);
    expect(answer.text).toContain('role="alert"');
    expect(await readerOf(house).sql`SELECT "id" FROM "bag_weighing"`).toEqual([]);
  });

  it('asks for the tare where the bag’s type was not said', async () => {
    const run = await begun();
    await ilka.send(`${desk}/bags`, { run, safeLoadGrams: '1250' });
    const [bag] = await readerOf(house).sql<{ id: string }>`SELECT "id" FROM "bulk_bag"`;
    const without = await weigh(bag?.id ?? '', '1000');
    expect([without.status, without.text.includes('data-field="tareGrams"')]).toEqual([422, true]);
    expect((await weigh(bag?.id ?? '', '1000', { tareGrams: '2,1' })).status).toBe(303);
  });

  it('counts a bag sent twice once, with one label', async () => {
    const bagId = await hung();
    const fields = { bagId, grossGrams: '1000', scaleId: plant.scaleId };
    const first = await ilka.send(`${desk}/closes`, fields, 'same-key-of-a-form');
    const second = await ilka.send(`${desk}/closes`, fields, 'same-key-of-a-form');
    expect(second.headers['location']).toBe(first.headers['location']);
    expect(await readerOf(house).sql`SELECT "id" FROM "bag_weighing"`).toHaveLength(1);
    expect(await readerOf(house).sql`SELECT "id" FROM "paper"`).toHaveLength(1);
  });

  it('counts the bags of the shift, names those nobody closed, and says which have no sample', async () => {
    await weigh(await hung(), '1000');
    await hung();
    await hung();
    const text = await page();
    expect(text).toContain('never closed: 1');
    expect(text).toMatch(/Bags this shift<\/dt><dd>1</);
    expect(text).toContain('without a sample: 1');
    const [bag] = await readerOf(house).sql<{ number: string }>`SELECT "number" FROM "bulk_bag" ORDER BY "id" LIMIT 1`;
    await ilka.send(`${desk}/samples`, { bag: bag?.number ?? '' });
    expect(await page()).not.toContain('without a sample');
  });

  it('lets the one who typed a weight correct it, and nobody else', async () => {
    await weigh(await hung(), '1000');
    const [weighing] = await readerOf(house).sql<{ id: string }>`SELECT "id" FROM "bag_weighing"`;
    const path = `/dryer/weighings/${weighing?.id}`;
    const other = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['dryer-operator'] }));
    const refused = await other.send(path, { grossGrams: '1010', reason: 'Read wrongly' });
    expect([refused.status, refused.text.includes('name="grossGrams"')]).toEqual([409, false]);
    expect((await ilka.send(path, { grossGrams: '1010', reason: '' })).status).toBe(422);
    expect((await ilka.send(path, { grossGrams: '1010', reason: 'Read wrongly' })).status).toBe(303);
    expect(await page()).toContain('1\u202f008 kg');
  });

  it('moves a bag to a place by scan, keeps the place chosen, and says why it can’t', async () => {
    await weigh(await hung(), '1000');
    const [bag] = await readerOf(house).sql<{ number: string; sscc: string }>`SELECT "number", "sscc" FROM "bulk_bag"`;
    const placeId = plant.placeIds.store;
    const moved = await ilka.send('/dryer/moves', { bag: `(00)${bag?.sscc}`, placeId });
    expect(moved.headers['location']).toBe(`/dryer/moves?place=${placeId}`);
    expect(await page(`/dryer/moves?place=${placeId}`)).toContain('LANE-1');
    const again = await ilka.send('/dryer/moves', { bag: bag?.number ?? '', placeId });
    expect([again.status, again.text.includes('is at LANE-1 already')]).toEqual([409, true]);
    expect((await ilka.send('/dryer/moves', { bag: 'NO-SUCH', placeId })).status).toBe(404);
    expect((await ilka.send('/dryer/moves', { bag: bag?.number ?? '', placeId: plant.dryerId })).status).toBe(404);
  });

  it('takes a supplier’s bags in, a line each, and names the line that it can’t read', async () => {
    const head = { supplierCode: 'SUP-07', supplierLot: 'A-4471', documentNumber: 'DN 88213' };
    const form = { ...head, gradeId: plant.gradeId, bagTypeId, scaleId: plant.scaleId };
    const wrong = await ilka.send('/dryer/receipts', { ...form, weights: '1001,2\r\nabout a tonne\r\n' });
    expect([wrong.status, wrong.text.includes('Line 2 (“about a tonne”)')]).toEqual([422, true]);
    const weights = '1001,2\r\n\r\n 998.5 kg 395212340000000014\r\n';
    const taken = await ilka.send('/dryer/receipts', { ...form, weights });
    expect(taken.status).toBe(303);
    const nets = await readerOf(house).sql`SELECT "net_grams" AS "net" FROM "bag_weighing" ORDER BY "id"`;
    expect(nets).toEqual([{ net: 999_200 }, { net: 996_500 }]);
  });

  it('records the check of a scale with a known weight', async () => {
    const check = { scaleId: plant.staleScaleId, knownGrams: '1000', shownGrams: '1000,5' };
    expect((await ilka.send('/dryer/scales', check)).status).toBe(303);
    house.clock.pass(1);
    expect((await ilka.send('/dryer/scales', { ...check, shownGrams: '1001,5' })).status).toBe(303);
    const rows = await readerOf(house).sql<{ deviation: number }>`
      SELECT "deviation_milligrams" AS "deviation" FROM "scale_check" WHERE "scale_id" = ${plant.staleScaleId}
      ORDER BY "checked_at" DESC LIMIT 2`;
    expect(rows.map(({ deviation }) => deviation)).toEqual([1_500_000, 500_000]);
    expect(await page('/dryer/scales')).toContain('The last check failed');
  });

  it('shows everything to an auditor, and no form', async () => {
    await hung();
    const auditor = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['auditor'] }));
    for (const path of ['/dryer', desk, '/dryer/moves', '/dryer/receipts', '/dryer/scales']) {
      const answer = await auditor.get(path);
      const forms = [...answer.text.matchAll(/<form[^>]*method="post"[^>]*action="([^"]*)"/g)].map(
        ([, action]) => action,
      );
      expect([path, answer.status, forms]).toEqual([path, 200, ['/sign-out']]);
    }
  });
});
