import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import request from 'supertest';
import { aPerson, cookieFrom, signedIn, type TestPerson } from '../../test/support/a-person.js';
import { aPlant } from '../../test/support/a-plant.js';
import { asking, openHouse, type TestHouse } from '../../test/support/house.js';
import { say } from '../platform/sentences/sentences.js';
import { SetOwnLanguage } from './set-own-language.js';

describe('the language of a person', () => {
  let house: TestHouse;
  let siteId: string;
  let reader: TestPerson;
  beforeAll(async () => {
    house = await openHouse();
    ({ siteId } = await aPlant(house));
    reader = await aPerson(house, siteId, { roles: ['line-lead'] });
  });
  afterAll(async () => {
    await house.close();
  });

  const server = (): ReturnType<typeof request> => request(house.app.getHttpServer());
  const signInPage = (path = '/sign-in', headers: Record<string, string> = {}) =>
    server()
      .get(path)
      .set({ Accept: 'text/html', ...headers });
  const titleIn = (language: 'en' | 'es'): string => say('sign-in-title', {}, language);

  it('is chosen on the person’s own page, counts at once and on every device, and stands in the journal', async () => {
    const me = await signedIn(house, reader);
    expect((await me.get('/me')).text).toContain('<html lang="en">');
    const chosen = await me.send('/me/language', { language: 'es' });
    expect([chosen.status, chosen.headers['location']]).toEqual([303, '/me']);
    const page = await me.get('/me');
    expect(page.text).toContain('<html lang="es">');
    expect(page.text).toContain(say('own-page-title', {}, 'es'));
    const elsewhere = await signedIn(house, reader);
    expect((await elsewhere.get('/people')).text).toContain('<html lang="es">');
    const { items } = (await me.get('/api/journal')).body as { items: { action: string; after: string }[] };
    expect(items.find(({ action }) => action === 'set-own-language')?.after).toContain('es');
    const other = await signedIn(house, await aPerson(house, siteId));
    expect((await other.get('/people')).text).toContain('<html lang="en">');
  });

  it('is the language of refusals and problem documents, whose type never changes', async () => {
    const me = await signedIn(house, await aPerson(house, siteId, { language: 'es' }));
    const missing = await me.get('/api/people/0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10');
    expect(missing.body).toMatchObject({ type: 'problem:not-found', status: 404 });
    expect((missing.body as { detail: string }).detail).toContain('Aquí no existe: persona');
    const wrong = await me.send('/me/language', { language: 'fr' });
    expect(wrong.status).toBe(422);
    expect(wrong.text).toContain('<html lang="es">');
  });

  it('refuses a language that is not spoken, and counts the same form once', async () => {
    const me = await signedIn(house, reader);
    const answer = await me.post('/api/sessions/me/language', { language: 'fr' });
    expect([answer.status, (answer.body as { type: string }).type]).toEqual([422, 'problem:bad-form']);
    const twice = [1, 2].map(() => me.post('/api/sessions/me/language', { language: 'es' }, 'the-very-same-key'));
    expect((await Promise.all(twice)).map(({ status }) => status)).toEqual([201, 201]);
  });

  it('is nothing that a machine could choose', async () => {
    const machine = { siteId, personId: null, deviceId: null, roles: ['device'] as const };
    await expect(house.get(SetOwnLanguage).execute(asking(machine), { language: 'es' })).rejects.toThrow();
  });

  it('leads the old address of the page to the new one', async () => {
    const me = await signedIn(house, reader);
    const led = await me.get('/change-password');
    expect([led.status, led.headers['location']]).toEqual([303, '/me']);
  });

  describe('before anybody is known', () => {
    it('is what the browser asks for, the best of what is spoken here', async () => {
      const languageOf = async (accepted: string): Promise<string | undefined> =>
        /<html lang="(\w+)"/.exec((await signInPage('/sign-in', { 'Accept-Language': accepted })).text)?.[1];
      expect(await languageOf('es-MX,es;q=0.9,en;q=0.5')).toBe('es');
      expect(await languageOf('de,en;q=0.3,es;q=0.8')).toBe('es');
      expect(await languageOf('fr, de;q=0.5')).toBe('en');
      expect(await languageOf('es;q=0, en')).toBe('en');
      expect(await languageOf(';;;q=,,')).toBe('en');
    });

    it('can be chosen on the page by a link, which the device keeps', async () => {
      const page = await signInPage();
      expect(page.text).toContain(titleIn('en'));
      expect(page.text).toContain('href="/sign-in?language=es&amp;next=%2F"');
      const chosen = await signInPage('/sign-in?language=es&next=/bags');
      expect(chosen.text).toContain(titleIn('es'));
      expect(chosen.text).toContain('name="next" value="/bags"');
      const cookie = cookieFrom(chosen.headers, 'packthread-language');
      const failed = await server()
        .post('/sign-in')
        .set({ Accept: 'text/html', Cookie: cookie })
        .type('form')
        .send({ proof: 'password', code: 'nobody', password: 'nothing' });
      expect([failed.status, failed.text.includes(say('sign-in-failed', {}, 'es'))]).toEqual([422, true]);
      expect((await signInPage('/sign-in?language=fr')).headers['set-cookie']).toBeUndefined();
    });

    it('is the language of what is not there, too', async () => {
      const page = await signInPage('/nowhere', { Cookie: 'packthread-language=es' });
      expect([page.status, page.text.includes(say('no-such-page', {}, 'es'))]).toEqual([404, true]);
      const forProgram = await server().get('/api/nowhere').set('Cookie', 'packthread-language=es');
      expect((forProgram.body as { detail: string }).detail).toBe(say('no-such-page', {}, 'en'));
    });

    it('is that of the person who was there last', async () => {
      const { code, password } = reader;
      const answer = await server().post('/sign-in').type('form').send({ proof: 'password', code, password });
      expect(answer.status).toBe(303);
      const session = cookieFrom(answer.headers, 'packthread-session');
      const home = await server().get('/people').set('Cookie', session);
      const cookie = cookieFrom(home.headers, 'packthread-language');
      const again = await server().get('/people').set('Cookie', `${session}; ${cookie}`);
      expect(again.headers['set-cookie']).toBeUndefined();
      expect((await signInPage('/sign-in', { Cookie: cookie, 'Accept-Language': 'en' })).text).toContain(titleIn('es'));
    });
  });
});
