import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import request, { type Response } from 'supertest';
import { aReleasedBag } from './support/a-bag.js';
import { aPerson, cookieFrom, signedIn, type TestPerson } from './support/a-person.js';
import { aPlant, type Plant } from './support/a-plant.js';
import { openHouse, type TestHouse } from './support/house.js';

describe('a form that is sent after its session was over', () => {
  let house: TestHouse;
  let plant: Plant;
  let tomas: TestPerson;
  beforeAll(async () => {
    house = await openHouse();
    plant = await aPlant(house);
    tomas = await aPerson(house, plant.siteId, { roles: ['line-lead', 'quality-officer'] });
  });
  afterAll(async () => {
    await house.close();
  });

  const server = (): ReturnType<typeof request> => request(house.app.getHttpServer());
  const hidden = (answer: Response, name: string): string =>
    new RegExp(`name="${name}" value="([^"]*)"`).exec(answer.text)?.[1] ?? '';
  const tipForm = async (): Promise<Record<string, string>> => ({
    ...{ bag: (await aReleasedBag(house, plant)).number, hopperId: plant.hopperId },
    ...{ csrf: 'of the old session', formKey: 'lost-form-0001', password: 'a secret', pin: '4093' },
  });

  it('loses nothing: it is shown after signing in again, and sent with the same key by one button', async () => {
    const fields = await tipForm();
    const lost = await server().post('/api/tips').set('Accept', 'text/html').type('form').send(fields);
    expect(lost.status).toBe(401);
    expect(lost.text).toContain('name="lost"');
    const carriedOn = hidden(lost, 'lost');
    const decoded = Buffer.from(carriedOn, 'base64url').toString();
    for (const secret of ['a secret', '4093', 'of the old session']) expect(decoded).not.toContain(secret);
    const signIn = { proof: 'password', code: tomas.code, password: 'wrong at first', next: '/', lost: carriedOn };
    const wrong = await server().post('/sign-in').set('Accept', 'text/html').type('form').send(signIn);
    expect(hidden(wrong, 'lost')).toBe(carriedOn);
    const shown = await server()
      .post('/sign-in')
      .set('Accept', 'text/html')
      .type('form')
      .send({ ...signIn, password: tomas.password });
    expect(shown.status).toBe(200);
    expect(shown.text).toContain(fields['bag'] ?? '?');
    expect(hidden(shown, 'formKey')).toBe('lost-form-0001');
    const again = await server()
      .post('/api/tips')
      .set('Cookie', cookieFrom(shown.headers, 'packthread-session'))
      .type('form')
      .send({
        ...{ bag: hidden(shown, 'bag'), hopperId: hidden(shown, 'hopperId') },
        ...{ csrf: hidden(shown, 'csrf'), formKey: hidden(shown, 'formKey') },
      });
    expect(again.status).toBe(201);
  });

  it('answers script with a problem document, and carries on nothing that comes from another site', async () => {
    const fields = await tipForm();
    const script = await server().post('/api/tips').set('Accept', 'application/json').type('form').send(fields);
    expect([script.status, (script.body as { type: string }).type]).toEqual([401, 'problem:not-signed-in']);
    const foreign = await server()
      .post('/api/tips')
      .set('Accept', 'text/html')
      .set('Sec-Fetch-Site', 'cross-site')
      .type('form')
      .send(fields);
    expect(foreign.status).toBe(401);
    expect(foreign.text).not.toContain('name="lost"');
  });

  it('carries on no more than a form holds, and leads to no other server', async () => {
    const large = { note: 'x'.repeat(30_000), formKey: 'lost-form-0002' };
    const answer = await server().post('/api/tips').set('Accept', 'text/html').type('form').send(large);
    expect([answer.status, answer.text.includes('name="lost"')]).toEqual([401, false]);
    const planted = Buffer.from(JSON.stringify(['//elsewhere.invalid/', []])).toString('base64url');
    const fields = { proof: 'password', code: tomas.code, password: tomas.password, lost: planted };
    const led = await server().post('/sign-in').set('Accept', 'text/html').type('form').send(fields);
    expect([led.status, led.text.includes('elsewhere')]).toEqual([303, false]);
    expect((await (await signedIn(house, tomas)).get('/')).status).toBeLessThan(400);
  });
});
