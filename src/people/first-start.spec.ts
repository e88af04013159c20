import { afterEach, beforeEach, describe, expect, it } from '@jest/globals';
import request from 'supertest';
import { withSession, cookieFrom } from '../../test/support/a-person.js';
import { aPlant } from '../../test/support/a-plant.js';
import { openHouse, type TestHouse } from '../../test/support/house.js';
import { createFirstAdministrator } from './first-start.js';

describe('the first start', () => {
  let house: TestHouse;
  let printed: string[];
  const print = (line: string): void => {
    printed.push(line);
  };
  beforeEach(async () => {
    house = await openHouse();
    printed = [];
  });
  afterEach(async () => {
    await house.close();
  });

  const sites = () => house.databases.reader.sql<{ name: string; timeZone: string; gln: string }[]>`
    SELECT "name" AS "name", "time_zone" AS "timeZone", "gln" AS "gln" FROM "site"`;

  it('adds a site as the settings say and an administrator, who comes in once by the printed password', async () => {
    const settings = { SITE_CODE: 'AQ', SITE_NAME: 'Alder Quay', SITE_TIME_ZONE: 'Europe/Berlin' };
    const first = await createFirstAdministrator(house.app, settings, print);
    expect(await sites()).toEqual([{ name: 'Alder Quay', timeZone: 'Europe/Berlin', gln: '9520123000011' }]);
    expect(printed).toHaveLength(3);
    expect(printed[1]).toContain('SITE_DAY_START=06:00, SITE_GLN=9520123000011, SITE_COMPANY_PREFIX=9520123');
    expect(printed[2]).toContain(first?.password);
    const answer = await request(house.app.getHttpServer())
      .post('/api/sessions')
      .send({ proof: 'password', code: first?.code, password: first?.password });
    expect(answer.body).toMatchObject({ roles: ['administrator'], mustChangePassword: true });
    const me = withSession(house, cookieFrom(answer.headers, 'packthread-session'), '');
    expect((await me.get('/people')).headers['location']).toBe('/me');
  });

  it('says what it took by itself, and that the numbers are for demonstration only', async () => {
    await createFirstAdministrator(house.app, { SITE_NAME: ' ' }, print);
    expect(await sites()).toEqual([{ name: 'Packing house', timeZone: 'UTC', gln: '9520123000011' }]);
    expect(printed[1]).toContain('SITE_NAME=Packing house, SITE_TIME_ZONE=UTC');
    expect(printed[1]).toContain('no label made with them may leave the plant');
  });

  it('does nothing at the second start', async () => {
    await createFirstAdministrator(house.app, {}, print);
    printed = [];
    expect(await createFirstAdministrator(house.app, { SITE_NAME: 'Another' }, print)).toBeNull();
    expect(printed).toEqual([]);
    expect(await sites()).toHaveLength(1);
  });

  it('takes the site that is there, and another code where the first was used', async () => {
    const { siteId } = await aPlant(house);
    const first = await createFirstAdministrator(house.app, {}, print);
    expect(first).toMatchObject({ siteId, code: 'administrator' });
    await house.databases.writer.sql`DELETE FROM "credential"`;
    expect(await createFirstAdministrator(house.app, {}, print)).toMatchObject({ siteId, code: 'administrator-2' });
    expect(printed).toHaveLength(2);
  });

  it.each([
    [{ SITE_TIME_ZONE: 'Mars/Olympus' }, /Mars\/Olympus/],
    [{ SITE_GLN: '9520123000012' }, /9520123000012/],
    [{ SITE_DAY_START: '6 o’clock' }, /SITE_DAY_START: This takes a time of day/],
  ])('names the setting that cannot be used: %j', async (settings, says) => {
    await expect(createFirstAdministrator(house.app, settings, print)).rejects.toThrow(says);
    expect(await sites()).toEqual([]);
  });
});
