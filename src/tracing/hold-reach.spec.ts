import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { aPerson, signedIn, type SignedInPerson } from '../../test/support/a-person.js';
import { aPackedRun, aPallet, aTippedBag } from '../../test/support/a-pallet.js';
import { aPlant, type Plant } from '../../test/support/a-plant.js';
import { openHouse, type TestHouse } from '../../test/support/house.js';
import type { HoldReach } from './hold-reach.js';

describe('what a hold would cover, looked at before it is placed', () => {
  let house: TestHouse;
  let plant: Plant;
  let person: SignedInPerson;
  let runId: string;
  const palletIds: string[] = [];
  beforeAll(async () => {
    house = await openHouse();
    plant = await aPlant(house, { packsPerPallet: 100 });
    person = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['loader'] }));
    await aTippedBag(house, plant);
    runId = (await aPackedRun(house, plant, { packCount: 300 })).runId;
    for (let place = 0; place < 3; place += 1) palletIds.push((await aPallet(house, plant, { run: runId })).id);
  });
  afterAll(async () => {
    await house.close();
  });

  const reach = (part: string) => person.get(`/api/holds/reach?kind=packing-run&id=${runId}${part}`);
  const palletsIn = (body: unknown) => (body as HoldReach).possible.map(({ palletId }) => palletId);

  it('is the whole run, where no part of it is named', async () => {
    const answer = await reach('');
    expect(answer.status).toBe(200);
    expect(palletsIn(answer.body)).toEqual(expect.arrayContaining(palletIds));
  });

  it('is only the pallets that packs of a named part stand on', async () => {
    expect(palletsIn((await reach('&fromCount=0&toCount=100')).body)).toEqual([palletIds[0]]);
    const two = palletsIn((await reach('&fromCount=199&toCount=201')).body);
    expect(two.toSorted()).toEqual([palletIds[1], palletIds[2]].toSorted());
  });

  it.each([
    ['turned round', '&fromCount=250&toCount=100'],
    ['empty', '&fromCount=100&toCount=100'],
    ['without an end', '&fromCount=100'],
    ['without a beginning', '&toCount=100'],
  ])('refuses a part that is %s, as placing the hold does, instead of showing another reach', async (_, part) => {
    expect(await reach(part)).toMatchObject({ status: 409, body: { type: 'problem:hold-range-not-usable' } });
    const counts = Object.fromEntries([...new URLSearchParams(part)].map(([name, text]) => [name, Number(text)]));
    const placed = await person.post('/api/holds', { kind: 'packing-run', id: runId, ...counts, reason: 'test' });
    expect(placed).toMatchObject({ status: 409, body: { type: 'problem:hold-range-not-usable' } });
  });

  it('refuses a part of anything but a run, since only packs of a run are counted', async () => {
    const answer = await person.get(`/api/holds/reach?kind=pallet&id=${palletIds[0]}&fromCount=0&toCount=10`);
    expect(answer).toMatchObject({ status: 409, body: { type: 'problem:hold-range-not-usable' } });
  });
});
