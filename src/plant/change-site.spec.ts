import { afterEach, beforeEach, describe, expect, it } from '@jest/globals';
import { aBag, readerOf } from '../../test/support/a-bag.js';
import { aPlant, type Plant } from '../../test/support/a-plant.js';
import { asking, openHouse, type TestHouse } from '../../test/support/house.js';
import { SystemIds } from '../platform/ids.js';
import { AddSite } from './add-site.js';
import { ChangeSite } from './change-site.js';
import { scaleStandingAt, siteOf } from './plant-facts.js';

const firstNumbers = {
  name: 'Packing house',
  timeZone: 'UTC',
  productionDayStart: '06:00',
  gln: '9520123000011',
  companyPrefix: '9520123',
  ssccExtensionDigit: 0,
};
const ownNumbers = {
  name: 'Alder Quay',
  timeZone: 'Europe/Madrid',
  productionDayStart: '05:00',
  gln: '9524567000019',
  companyPrefix: '9524567',
  ssccExtensionDigit: 1,
};

describe('a site that was opened with the demonstration numbers', () => {
  let house: TestHouse;
  let siteId: string;
  const asked = () =>
    asking({ siteId, personId: '00000000-0000-7000-8000-000000000001', deviceId: null, roles: ['administrator'] });

  beforeEach(async () => {
    house = await openHouse();
    siteId = new SystemIds().next();
    await house.get(AddSite).execute(asked(), { code: 'SITE', ...firstNumbers });
  });
  afterEach(async () => {
    await house.close();
  });

  it('takes its own name, time zone, production day and numbers, and keeps the first row as it was', async () => {
    await house.get(ChangeSite).execute(asked(), ownNumbers);
    expect(await siteOf(readerOf(house), siteId)).toEqual({
      id: siteId,
      code: 'SITE',
      ...ownNumbers,
      paperLanguage: 'en',
    });
    const [row] = await readerOf(house).sql<{ name: string }>`SELECT "name" FROM "site"`;
    expect(row).toEqual({ name: 'Packing house' });
    await house.get(ChangeSite).execute(asked(), { ...ownNumbers, name: 'Alder Quay West' });
    expect(await siteOf(readerOf(house), siteId)).toMatchObject({ name: 'Alder Quay West', gln: ownNumbers.gln });
  });

  it.each([
    [{ timeZone: 'Mars/Olympus' }, 'time-zone-unknown'],
    [{ gln: '9524567000018' }, 'gln-wrong'],
    [{ companyPrefix: '12' }, 'company-prefix-wrong'],
    [{ companyPrefix: '9520123' }, 'gln-not-of-prefix'],
  ])('refuses what cannot be: %j', async (wrong, code) => {
    await expect(house.get(ChangeSite).execute(asked(), { ...ownNumbers, ...wrong })).rejects.toMatchObject({ code });
    expect(await siteOf(readerOf(house), siteId)).toMatchObject(firstNumbers);
  });
});

describe('a site whose numbers stand on papers', () => {
  let house: TestHouse;
  let plant: Plant;
  beforeEach(async () => {
    house = await openHouse();
    plant = await aPlant(house);
  });
  afterEach(async () => {
    await house.close();
  });

  const numbers = async () => {
    const site = await siteOf(readerOf(house), plant.siteId);
    const { name, timeZone, productionDayStart, gln, companyPrefix, ssccExtensionDigit } = site;
    return { name, timeZone, productionDayStart, gln, companyPrefix, ssccExtensionDigit };
  };

  it('keeps its production day once its shifts begin with it', async () => {
    const form = { ...(await numbers()), productionDayStart: '05:00' };
    const change = house.get(ChangeSite).execute(asking(plant.actor), form);
    await expect(change).rejects.toMatchObject({ code: 'shifts-begin-otherwise', facts: { start: '06:00' } });
  });

  it('keeps its numbers and its time zone once a bag was filled, and may still change its name', async () => {
    await aBag(house, plant);
    const form = await numbers();
    for (const wish of [{ timeZone: 'Europe/Madrid' }, { ssccExtensionDigit: 3 }]) {
      const change = house.get(ChangeSite).execute(asking(plant.actor), { ...form, ...wish });
      await expect(change).rejects.toMatchObject({ code: 'site-in-use' });
    }
    await house.get(ChangeSite).execute(asking(plant.actor), { ...form, name: 'Alder Quay Old Works' });
    expect(await numbers()).toEqual({ ...form, name: 'Alder Quay Old Works' });
    const standing = await scaleStandingAt(readerOf(house), plant.scaleId, house.clock.now());
    expect(standing.isVerifiedForTrade).toBe(true);
  });
});
