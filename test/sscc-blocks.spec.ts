import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { Response } from 'supertest';
import { CorrectPallet } from '../src/pallets/correct-pallet.js';
import { aPackedRun } from './support/a-pallet.js';
import { aPerson, signedIn, type TestPerson } from './support/a-person.js';
import { aPlant, type Plant } from './support/a-plant.js';
import { aDevice, aQueue, signedInOn, ssccOf, type TestDevice } from './support/a-queue.js';
import { asking, openHouse, type TestHouse } from './support/house.js';

describe('pallet numbers set aside for a device', () => {
  let house: TestHouse;
  let plant: Plant;
  let tablet: TestDevice;
  let tomas: TestPerson;
  let run: string;
  beforeAll(async () => {
    house = await openHouse();
    plant = await aPlant(house, { packsPerPallet: 20 });
    tablet = await aDevice(house, plant.siteId);
    tomas = await aPerson(house, plant.siteId, { roles: ['line-lead'] });
    run = (await aPackedRun(house, plant, { packCount: 480 })).number;
  });
  afterAll(async () => {
    await house.close();
  });

  const typeOf = (answer: Response): string => (answer.body as { type: string }).type;
  const aBlock = async (device = tablet, numberCount = 3): Promise<readonly string[]> => {
    const me = await signedInOn(house, tomas, device);
    const answer = await me.post('/api/sscc-blocks', { numberCount });
    expect(answer.status).toBe(201);
    return (answer.body as { ssccs: string[] }).ssccs;
  };
  const aPalletForm = (sscc?: string): Record<string, string> => ({
    ...{ run, packCount: '20', label: 'false' },
    ...(sscc === undefined ? {} : { sscc }),
  });

  it('come out of the one series, each once, and are journalled', async () => {
    const [first, second] = await Promise.all([aBlock(tablet, 20), aBlock(tablet, 20)]);
    const me = await signedInOn(house, tomas, tablet);
    const built = await me.post('/api/pallets', { ...aPalletForm(), packCount: 20, label: false });
    const all = [...first, ...second, ssccOf(built)];
    expect(new Set(all).size).toBe(41);
    const entries: { subjectId: string }[] = await house.databases.reader.query(
      `SELECT "subject_id" AS "subjectId" FROM "journal_entry" WHERE "action" = 'set-ssccs-aside'`,
    );
    expect(entries).toHaveLength(2);
  });

  it('are given to no one but an enrolled device', async () => {
    const me = await signedIn(house, tomas);
    expect(typeOf(await me.post('/api/sscc-blocks', { numberCount: 3 }))).toBe('problem:block-needs-device');
    expect((await me.post('/api/sscc-blocks', { numberCount: 101 })).status).toBe(422);
  });

  it('are borne by the pallets that were built on the device, scanned with or without their identifier', async () => {
    const [first = '', second = '', third = ''] = await aBlock();
    const queue = await aQueue(house, tomas, tablet);
    for (const scanned of [first, `(00)${second}`, `00${third}`]) {
      const built = await queue.send('/api/pallets', aPalletForm(scanned));
      expect([built.status, ssccOf(built)]).toEqual([201, scanned.slice(-18)]);
    }
    const left = await queue.me.get('/api/sscc-blocks/unused');
    const { ssccs } = left.body as { ssccs: string[] };
    for (const used of [first, second, third]) expect(ssccs).not.toContain(used);
  });

  it('are used once: never again, even after the pallet was corrected away', async () => {
    const [sscc = ''] = await aBlock();
    const queue = await aQueue(house, tomas, tablet);
    const built = await queue.send('/api/pallets', aPalletForm(sscc));
    const { id } = built.body as { id: string };
    await house.get(CorrectPallet).execute(asking(plant.actor), id, { reason: 'built twice in the records' });
    const me = await signedInOn(house, tomas, tablet);
    expect(typeOf(await me.send('/api/pallets', aPalletForm(sscc)))).toBe('problem:sscc-used-already');
    const again = await queue.send('/api/pallets', aPalletForm(sscc));
    expect(again.body).toMatchObject({ kept: true, code: 'sscc-used-already' });
  });

  it('are refused where they were set aside for another device, or for nobody', async () => {
    const [sscc = ''] = await aBlock(await aDevice(house, plant.siteId));
    const me = await signedInOn(house, tomas, tablet);
    expect(typeOf(await me.send('/api/pallets', aPalletForm(sscc)))).toBe('problem:sscc-of-another');
    const desk = await signedIn(house, tomas);
    expect(typeOf(await desk.send('/api/pallets', aPalletForm(sscc)))).toBe('problem:sscc-of-another');
    expect(typeOf(await me.send('/api/pallets', aPalletForm('095201230000999990')))).toBe('problem:sscc-not-set-aside');
    expect((await me.send('/api/pallets', aPalletForm('12345'))).status).toBe(422);
  });

  it('go to one of two pallets that claim the same number at the same moment', async () => {
    const [sscc = ''] = await aBlock();
    const me = await signedInOn(house, tomas, tablet);
    const answers = await Promise.all(
      [1, 2, 3].map(() => me.post('/api/pallets', { run, packCount: 20, label: false, sscc })),
    );
    expect(answers.map(({ status }) => status).sort()).toEqual([201, 409, 409]);
    const pallets: unknown[] = await house.databases.reader.query(`SELECT "id" FROM "pallet" WHERE "sscc" = '${sscc}'`);
    expect(pallets).toHaveLength(1);
  });
});
