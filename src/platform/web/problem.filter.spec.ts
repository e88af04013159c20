import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { aPerson, signedIn, type SignedInPerson } from '../../../test/support/a-person.js';
import { aPlant } from '../../../test/support/a-plant.js';
import { openHouse, type TestHouse } from '../../../test/support/house.js';

describe('what cannot be read', () => {
  let house: TestHouse;
  let person: SignedInPerson;
  beforeAll(async () => {
    house = await openHouse();
    const plant = await aPlant(house);
    person = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['quality-officer'] }));
  });
  afterAll(async () => {
    await house.close();
  });

  const ask = (url: string, rest: object = {}) =>
    house.app
      .getHttpAdapter()
      .getInstance()
      .inject({ method: 'GET', url, headers: { cookie: person.cookie }, ...rest });
  const typeOf = (answer: { body: string }) => (JSON.parse(answer.body) as { type: string }).type;

  it.each(['/api/bags/none', '/api/bags/%2e%2e%2fruns', '/api/bags/%E0%A4%A', '/%E0%A4%A'])(
    'is told apart: the address %s is wrong, no JSON is',
    async (url) => {
      const answer = await ask(url);
      expect([answer.statusCode, typeOf(answer)]).toEqual([400, 'problem:address-not-read']);
      expect(answer.headers['content-type']).toContain('application/problem+json');
      expect(answer.body).not.toMatch(/FST_|stack|\.js/);
    },
  );

  it('is told apart: a body that is no JSON', async () => {
    const headers = { cookie: person.cookie, 'x-csrf-token': person.csrf, 'content-type': 'application/json' };
    for (const payload of ['{', '{"__proto__":{"a":1}}']) {
      const answer = await ask('/api/decisions', { method: 'POST', headers, payload });
      expect([answer.statusCode, typeOf(answer)]).toEqual([400, 'problem:body-not-read']);
    }
  });

  it('does not keep a connection for ever: a request that is not there within half a minute is ended', () => {
    const server = house.app.getHttpServer() as { requestTimeout: number; headersTimeout: number };
    expect(server.requestTimeout).toBe(30_000);
    expect(server.headersTimeout).toBeLessThan(server.requestTimeout);
  });
});
