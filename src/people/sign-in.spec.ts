import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import request, { type Response, type Test } from 'supertest';
import { aPerson, cookieFrom, signedIn, withSession, type TestPerson } from '../../test/support/a-person.js';
import { aPlant } from '../../test/support/a-plant.js';
import { anActor, asking, openHouse, type TestHouse } from '../../test/support/house.js';
import { sha256 } from '../platform/canonical-text.js';
import { AddMachine } from './add-machine.js';
import { EndRole } from './end-role.js';
import { EnrolDevice } from './enrol-device.js';
import { GiveBadge } from './give-badge.js';
import { GiveOneTimePassword } from './give-one-time-password.js';
import { GiveRole } from './give-role.js';
import { WithdrawDevice } from './withdraw-device.js';

describe('signing in', () => {
  let house: TestHouse;
  let siteId: string;
  let anna: TestPerson;
  beforeAll(async () => {
    house = await openHouse({ ATTEMPTS_PER_QUARTER_HOUR: '3' });
    ({ siteId } = await aPlant(house));
    anna = await aPerson(house, siteId, { code: 'anna', name: 'Anna <b>Heron</b>', roles: ['line-lead'] });
  });
  afterAll(async () => {
    await house.close();
  });

  const server = (): ReturnType<typeof request> => request(house.app.getHttpServer());
  const administrator = (): ReturnType<typeof asking> => asking(anActor(siteId, 'administrator'));
  const signIn = (fields: object): Test => server().post('/api/sessions').send(fields);
  const byPassword = (person: TestPerson, password = person.password): Test =>
    signIn({ proof: 'password', code: person.code, password });
  const problemOf = (answer: Response): string => (answer.body as { type: string }).type;
  /** Every attempt in vain counts for the address, so each test leaves the window behind. */
  const waitAQuarter = (): void => {
    house.clock.pass(15);
  };
  const enrol = async (code: string, kind: 'shared-tablet' | 'handheld' | 'desk' = 'shared-tablet') => {
    const { id, token } = await house.get(EnrolDevice).execute(administrator(), { code, kind });
    return { id, cookie: `packthread-device=${token ?? ''}` };
  };
  /** Chooses a PIN for the person, as the person does it. */
  const choosePin = async (person: TestPerson, pin: string): Promise<void> => {
    const me = await signedIn(house, person);
    const answer = await me.post('/api/sessions/me/pin', { password: person.password, pin });
    expect(answer.status).toBe(201);
  };

  describe('at a desk', () => {
    it('takes code and password in under two seconds, tells who is signed in, and hides the cookie from scripts', async () => {
      const before = Date.now();
      const answer = await byPassword(anna);
      expect(Date.now() - before).toBeLessThan(2000);
      expect(answer.status).toBe(201);
      expect(answer.body).toMatchObject({
        person: { id: anna.personId, code: 'anna', name: 'Anna <b>Heron</b>' },
        siteId,
        deviceId: null,
        roles: ['line-lead'],
        endsAt: '2026-03-12T20:00:00.000Z',
        mustChangePassword: false,
      });
      const [cookie] = answer.headers['set-cookie'] as unknown as string[];
      expect(cookie).toMatch(/^packthread-session=[\w-]{43};/);
      expect(cookie).toContain('; HttpOnly');
      expect(cookie).toContain('; SameSite=Lax');
      expect(cookie).toContain('; Path=/');
      expect(cookie).toContain('; Max-Age=50400');
      expect(cookie).not.toContain('; Secure');
    });

    it('does not mind capitals in the code', async () => {
      expect((await byPassword({ ...anna, code: 'ANNA' })).status).toBe(201);
    });

    it('keeps neither the cookie nor the password in the database, only their hashes', async () => {
      const answer = await byPassword(anna);
      const token = cookieFrom(answer.headers, 'packthread-session').split('=')[1] ?? '';
      const stored = await house.databases.reader.sql<{ hash: string }[]>`SELECT "token_hash" AS "hash" FROM "session"`;
      expect(stored.map((row) => row.hash)).toContain(sha256(token));
      expect(JSON.stringify(stored)).not.toContain(token);
      const [credential] = await house.databases.reader.sql<{ hash: string }[]>`
        SELECT "secret_hash" AS "hash" FROM "credential" WHERE "person_id" = ${anna.personId}`;
      expect(credential?.hash).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$/);
    });

    it('gives the same answer to a wrong password, an unknown code and a missing one', async () => {
      const answers = [
        await byPassword(anna, 'seven grey heron'),
        await signIn({ proof: 'password', code: 'nobody', password: anna.password }),
        await signIn({ proof: 'password' }),
      ];
      waitAQuarter();
      for (const answer of answers) {
        expect(answer.status).toBe(409);
        expect(answer.body).toEqual(answers[0]?.body);
        expect(problemOf(answer)).toBe('problem:sign-in-failed');
        expect(answer.headers['set-cookie']).toBeUndefined();
      }
    });

    it('refuses a person who holds no role any more', async () => {
      const gone = await aPerson(house, siteId, { roles: ['loader'] });
      await house.get(EndRole).execute(administrator(), gone.personId, { role: 'loader' });
      const answer = await byPassword(gone);
      expect(problemOf(answer)).toBe('problem:person-has-no-role');
      waitAQuarter();
    });

    it('says which field is of the wrong kind', async () => {
      const answer = await signIn({ proof: 'voice', code: ['anna'], colour: 'grey' });
      expect(answer.status).toBe(422);
      const { fields } = answer.body as { fields: { field: string; type: string }[] };
      expect(fields.map(({ field, type }) => `${field} ${type}`).sort()).toEqual([
        'code problem:field-not-text',
        'colour problem:field-unknown',
        'proof problem:field-not-choice',
      ]);
    });

    it('begins a session of its own whatever cookie was sent, and ends the one that was', async () => {
      const planted = await server()
        .post('/api/sessions')
        .set('Cookie', `packthread-session=${'a'.repeat(43)}`)
        .send({ proof: 'password', code: anna.code, password: anna.password });
      const first = cookieFrom(planted.headers, 'packthread-session');
      expect(first).not.toContain('a'.repeat(43));
      const again = await server()
        .post('/api/sessions')
        .set('Cookie', first)
        .send({ proof: 'password', code: anna.code, password: anna.password });
      const second = cookieFrom(again.headers, 'packthread-session');
      expect(second).not.toBe(first);
      expect((await server().get('/api/sessions/me').set('Cookie', first)).status).toBe(401);
      expect((await server().get('/api/sessions/me').set('Cookie', second)).status).toBe(200);
    });

    it('refuses a form that another site’s page sends', async () => {
      const fields = { proof: 'password', code: anna.code, password: anna.password };
      const foreign = [
        await server().post('/api/sessions').set('Sec-Fetch-Site', 'cross-site').send(fields),
        await server().post('/sign-in').set('Origin', 'https://elsewhere.invalid').type('form').send(fields),
        await server().post('/sign-in').set('Origin', 'null').type('form').send(fields),
      ];
      for (const answer of foreign) {
        expect(answer.status).toBe(403);
        expect(answer.headers['set-cookie']).toBeUndefined();
      }
      const own = await server().post('/api/sessions').set('Sec-Fetch-Site', 'same-origin').send(fields);
      expect(own.status).toBe(201);
    });
  });

  describe('on a shared tablet', () => {
    it('takes a badge in under two seconds, and the records name the tablet', async () => {
      const { id, cookie } = await enrol('tablet-1');
      const { badge } = await house.get(GiveBadge).execute(administrator(), anna.personId);
      const scanned = `${badge?.slice(0, 13).toLowerCase() ?? ''}-${badge?.slice(13) ?? ''}`;
      const before = Date.now();
      const answer = await server()
        .post('/api/sessions')
        .set('Cookie', cookie)
        .send({ proof: 'badge', badge: scanned });
      expect(Date.now() - before).toBeLessThan(2000);
      expect(answer.status).toBe(201);
      expect(answer.body).toMatchObject({ person: { code: 'anna' }, deviceId: id });
    });

    it('takes a PIN in under two seconds after the person was chosen', async () => {
      await choosePin(anna, '4093');
      const { id, cookie } = await enrol('handheld-1', 'handheld');
      const pin = { proof: 'pin', person: anna.personId, pin: '4093' };
      const before = Date.now();
      const answer = await server().post('/api/sessions').set('Cookie', cookie).send(pin);
      expect(Date.now() - before).toBeLessThan(2000);
      expect(answer.body).toMatchObject({ person: { code: 'anna' }, deviceId: id });
      const wrong = await server()
        .post('/api/sessions')
        .set('Cookie', cookie)
        .send({ ...pin, pin: '4094' });
      const nobody = await server()
        .post('/api/sessions')
        .set('Cookie', cookie)
        .send({ ...pin, person: siteId });
      expect([problemOf(wrong), problemOf(nobody)]).toEqual(['problem:sign-in-failed', 'problem:sign-in-failed']);
      waitAQuarter();
    });

    it('refuses badge and PIN on a device that is not enrolled, on a desk, by a machine’s token, and once withdrawn', async () => {
      const { badge } = await house.get(GiveBadge).execute(administrator(), anna.personId);
      const desk = await enrol('desk-1', 'desk');
      const lost = await enrol('tablet-lost');
      await house.get(WithdrawDevice).execute(administrator(), lost.id);
      const { token } = await house.get(AddMachine).execute(administrator(), { code: 'weigher-9' });
      const places = ['packthread-device=none', desk.cookie, lost.cookie, `packthread-device=${token ?? ''}`];
      for (const cookie of places) {
        const byBadge = await server().post('/api/sessions').set('Cookie', cookie).send({ proof: 'badge', badge });
        const pin = { proof: 'pin', person: anna.personId, pin: '4093' };
        const byPin = await server().post('/api/sessions').set('Cookie', cookie).send(pin);
        expect([problemOf(byBadge), problemOf(byPin)]).toEqual(Array(2).fill('problem:device-not-enrolled'));
      }
    });

    it('refuses the badge that was given before, and one that nobody has', async () => {
      const { cookie } = await enrol('tablet-2');
      const { badge: old } = await house.get(GiveBadge).execute(administrator(), anna.personId);
      await house.get(GiveBadge).execute(administrator(), anna.personId);
      for (const badge of [old, 'AAAAAAAAAAAAAAAAAAAAAAAAAA', undefined]) {
        const answer = await server().post('/api/sessions').set('Cookie', cookie).send({ proof: 'badge', badge });
        expect(problemOf(answer)).toBe('problem:sign-in-failed');
      }
      waitAQuarter();
    });

    it('ends the sessions on a device that is withdrawn', async () => {
      const { id, cookie } = await enrol('tablet-3');
      const { badge } = await house.get(GiveBadge).execute(administrator(), anna.personId);
      const answer = await server().post('/api/sessions').set('Cookie', cookie).send({ proof: 'badge', badge });
      const session = cookieFrom(answer.headers, 'packthread-session');
      await house.get(WithdrawDevice).execute(administrator(), id);
      expect((await server().get('/api/sessions/me').set('Cookie', session)).status).toBe(401);
    });

    it('does not take a person of another site, nor write a device of another site into this one', async () => {
      const other = await aPlant(house, { siteCode: 'OTHER' });
      const stranger = await aPerson(house, other.siteId);
      const { cookie } = await enrol('tablet-4');
      const { badge } = await house
        .get(GiveBadge)
        .execute(asking(anActor(other.siteId, 'administrator')), stranger.personId);
      const byBadge = await server().post('/api/sessions').set('Cookie', cookie).send({ proof: 'badge', badge });
      const fields = { proof: 'password', code: stranger.code, password: stranger.password };
      const byCode = await server().post('/api/sessions').set('Cookie', cookie).send(fields);
      expect([problemOf(byBadge), problemOf(byCode)]).toEqual(Array(2).fill('problem:sign-in-failed'));
      waitAQuarter();
    });
  });

  describe('too many attempts', () => {
    const attemptsRow = async (name: string): Promise<number> => {
      const [row] = await house.databases.reader.sql<{ attempts: number }[]>`
        SELECT "attempts" AS "attempts" FROM "attempt_count" WHERE "name" = ${name}`;
      return row?.attempts ?? 0;
    };

    it('refuses the fourth, tells how long to wait, and refuses even the right password until then', async () => {
      const bert = await aPerson(house, siteId);
      for (let attempt = 1; attempt <= 3; attempt += 1) {
        expect(problemOf(await byPassword(bert, 'wrong'))).toBe('problem:sign-in-failed');
        house.clock.pass(1);
      }
      const refused = await byPassword(bert);
      expect(problemOf(refused)).toBe('problem:too-many-attempts');
      expect((refused.body as { facts: object }).facts).toEqual({ seconds: 720, minutes: 12 });
      expect(refused.headers['retry-after']).toBe('720');
      house.clock.pass(12);
      expect((await byPassword(bert)).status).toBe(201);
    });

    it('counts for the person, for the device and for the address apart', async () => {
      const carl = await aPerson(house, siteId);
      const { id, cookie } = await enrol('tablet-5');
      await server()
        .post('/api/sessions')
        .set('Cookie', cookie)
        .send({ proof: 'password', code: carl.code, password: 'wrong' });
      expect(await attemptsRow(`person:${sha256(carl.code)}`)).toBe(1);
      expect(await attemptsRow(`device:${id}`)).toBe(1);
      const names = await house.databases.reader.sql<{ name: string }[]>`SELECT "name" AS "name" FROM "attempt_count"`;
      expect(names.filter(({ name }) => name.startsWith('address:'))).toHaveLength(1);
      waitAQuarter();
    });

    it('counts PIN and password of one person together', async () => {
      const dora = await aPerson(house, siteId);
      await choosePin(dora, '7305');
      const { cookie } = await enrol('tablet-6');
      const pin = { proof: 'pin', person: dora.personId, pin: '1111' };
      await server().post('/api/sessions').set('Cookie', cookie).send(pin);
      await byPassword(dora, 'wrong');
      expect(await attemptsRow(`person:${sha256(dora.code)}`)).toBe(2);
      waitAQuarter();
    });

    it('looks at no more than three of ten that come at once', async () => {
      const eve = await aPerson(house, siteId);
      const answers = await Promise.all(Array.from({ length: 10 }, () => byPassword(eve, 'wrong')));
      const kinds = answers.map(problemOf);
      expect(kinds.filter((kind) => kind === 'problem:sign-in-failed')).toHaveLength(3);
      expect(kinds.filter((kind) => kind === 'problem:too-many-attempts')).toHaveLength(7);
      waitAQuarter();
    });

    it('does not count those that succeed', async () => {
      for (let attempt = 1; attempt <= 5; attempt += 1) expect((await byPassword(anna)).status).toBe(201);
      expect(await attemptsRow(`person:${sha256(anna.code)}`)).toBe(0);
    });

    it('counts wrong passwords where a password is changed, too', async () => {
      const me = await signedIn(house, anna);
      const kinds: string[] = [];
      for (let attempt = 1; attempt <= 4; attempt += 1) {
        const answer = await me.post('/api/sessions/me/pin', { password: 'wrong', pin: '4093' });
        kinds.push(problemOf(answer));
      }
      expect(kinds).toEqual([...Array<string>(3).fill('problem:password-wrong'), 'problem:too-many-attempts']);
      waitAQuarter();
    });
  });

  describe('a session', () => {
    it('is over after its hours', async () => {
      const me = await signedIn(house, anna);
      house.clock.pass(14 * 60 - 1);
      expect((await me.get('/api/sessions/me')).status).toBe(200);
      house.clock.pass(1);
      const answer = await me.get('/api/sessions/me');
      expect([answer.status, problemOf(answer)]).toEqual([401, 'problem:not-signed-in']);
    });

    it('ends when the person signs out, and the cookie is taken back', async () => {
      const me = await signedIn(house, anna);
      const answer = await me.delete('/api/sessions');
      expect(answer.status).toBe(204);
      expect(String(answer.headers['set-cookie'])).toContain('packthread-session=;');
      expect((await me.get('/api/sessions/me')).status).toBe(401);
    });

    it('ends when the person is given another role, loses one, or gets another password or badge', async () => {
      const frida = await aPerson(house, siteId);
      const changes = [
        () => house.get(GiveRole).execute(administrator(), frida.personId, { role: 'loader' }),
        () => house.get(EndRole).execute(administrator(), frida.personId, { role: 'loader' }),
        () => house.get(GiveBadge).execute(administrator(), frida.personId),
        () => house.get(GiveOneTimePassword).execute(administrator(), frida.personId),
      ];
      for (const change of changes) {
        const me = await signedIn(house, frida);
        await change();
        expect((await me.get('/api/sessions/me')).status).toBe(401);
      }
    });

    it('asks for its token with every change, in a header or in the form', async () => {
      const me = await signedIn(house, await aPerson(house, siteId, { roles: ['administrator'] }));
      const add = (code: string): Test =>
        server()
          .post('/api/people')
          .set('Cookie', me.cookie)
          .set('Idempotency-Key', `key-for-${code}`)
          .send({ code, name: 'Somebody' });
      const other = await signedIn(house, anna);
      for (const token of ['', 'nonsense', other.csrf]) {
        const answer = await add('somebody').set('x-csrf-token', token);
        expect([answer.status, problemOf(answer)]).toEqual([403, 'problem:form-not-ours']);
      }
      const without = await add('somebody');
      expect([without.status, problemOf(without)]).toEqual([403, 'problem:form-not-ours']);
      expect((await add('somebody').set('x-csrf-token', me.csrf)).status).toBe(201);
      const inForm = await server()
        .post('/api/people')
        .set('Cookie', me.cookie)
        .set('Idempotency-Key', 'key-in-a-form')
        .send({ code: 'someone', name: 'Someone', csrf: me.csrf });
      expect(inForm.status).toBe(201);
    });

    it('asks for the token when signing out, so that nobody is signed out from elsewhere', async () => {
      const me = await signedIn(house, anna);
      expect((await server().post('/sign-out').set('Cookie', me.cookie)).status).toBe(403);
      expect((await me.get('/api/sessions/me')).status).toBe(200);
    });
  });

  describe('a one-time password', () => {
    it('opens nothing but the change of the password, which opens the rest', async () => {
      const gina = await aPerson(house, siteId);
      const { password } = await house.get(GiveOneTimePassword).execute(administrator(), gina.personId);
      const me = await signedIn(house, { ...gina, password: password ?? '' });
      expect((await me.get('/api/sessions/me')).body).toMatchObject({ mustChangePassword: true });
      expect(problemOf(await me.get('/api/people'))).toBe('problem:password-change-needed');
      const led = await me.get('/people');
      expect([led.status, led.headers['location']]).toEqual([303, '/me']);
      const page = await me.get('/me');
      expect(page.text).toContain('one-time password');
      expect(page.text).not.toContain('/change-pin');

      const changed = await me.send('/change-password', {
        oldPassword: password ?? '',
        newPassword: 'nine red foxes',
      });
      expect([changed.status, changed.headers['location']]).toEqual([303, '/']);
      expect((await me.get('/api/sessions/me')).status).toBe(401);
      const next = withSession(house, cookieFrom(changed.headers, 'packthread-session'), '');
      expect((await next.get('/people')).status).toBe(200);
      expect(problemOf(await byPassword(gina, password ?? ''))).toBe('problem:sign-in-failed');
      waitAQuarter();
    });
  });

  describe('the pages', () => {
    it('lead someone who is not signed in to the sign-in page, and back to where they wanted to go', async () => {
      const led = await server().get('/people?limit=5').set('Accept', 'text/html');
      expect([led.status, led.headers['location']]).toEqual([303, '/sign-in?next=%2Fpeople%3Flimit%3D5']);
      const page = await server()
        .get(led.headers['location'] ?? '')
        .set('Accept', 'text/html');
      expect(page.status).toBe(200);
      expect(page.text).toContain('<input type="hidden" name="next" value="/people?limit=5"/>');
      const fields = { proof: 'password', code: anna.code, password: anna.password, next: '/people?limit=5' };
      const answer = await server().post('/sign-in').type('form').send(fields);
      expect([answer.status, answer.headers['location']]).toEqual([303, '/people?limit=5']);
      const me = withSession(house, cookieFrom(answer.headers, 'packthread-session'), '');
      const people = await me.get('/people?limit=200');
      expect(people.status).toBe(200);
      expect(people.headers['cache-control']).toBe('no-store');
      expect(people.text).toContain('Anna &lt;b>Heron&lt;/b>');
    });

    it('never lead elsewhere', async () => {
      for (const next of ['https://elsewhere.invalid/', '//elsewhere.invalid', '/\\elsewhere.invalid', 'people']) {
        const fields = { proof: 'password', code: anna.code, password: anna.password, next };
        const answer = await server().post('/sign-in').type('form').send(fields);
        expect([answer.status, answer.headers['location']]).toEqual([303, '/home']);
      }
    });

    it('show a failed form again, with the code but not the password', async () => {
      const fields = { proof: 'password', code: 'an"na', password: 'secret words here', next: '/people' };
      const answer = await server().post('/sign-in').set('Accept', 'text/html').type('form').send(fields);
      expect(answer.status).toBe(422);
      expect(answer.headers['content-type']).toContain('text/html');
      expect(answer.text).toContain('role="alert"');
      expect(answer.text).toContain('value="an&quot;na"');
      expect(answer.text).toContain('value="/people"');
      expect(answer.text).not.toContain('secret words here');
      const strange = await server().post('/sign-in').type('form').send({ proof: 'voice', extra: '1' });
      expect(strange.status).toBe(422);
      expect(strange.text).toContain('Way of signing in');
      waitAQuarter();
    });

    it('answer 429 after too many attempts, saying how long to wait', async () => {
      const fields = { proof: 'password', code: 'nobody-at-all', password: 'wrong' };
      const send = (): Test => server().post('/sign-in').type('form').send(fields);
      for (let attempt = 1; attempt <= 3; attempt += 1) await send();
      const answer = await send();
      expect([answer.status, answer.headers['retry-after']]).toEqual([429, '900']);
      expect(answer.text).toContain('Wait 15 minutes');
      waitAQuarter();
    });

    it('list those with a PIN on an enrolled tablet only', async () => {
      const hal = await aPerson(house, siteId, { name: 'Hal Otter' });
      await choosePin(hal, '40934093');
      const { cookie } = await enrol('tablet-7');
      const there = await server().get('/sign-in').set('Cookie', cookie);
      expect(there.text).toContain('Hal Otter');
      expect(there.text).toContain('name="badge"');
      const elsewhere = await server().get('/sign-in');
      expect(elsewhere.text).not.toContain('Hal Otter');
      expect(elsewhere.text).not.toContain('name="badge"');
    });

    it('enrol the device in hand, whose cookie then lets badges in', async () => {
      const me = await signedIn(house, await aPerson(house, siteId, { roles: ['administrator'] }));
      const answer = await me.send('/devices', { code: 'Tablet-8', kind: 'shared-tablet' });
      expect([answer.status, answer.headers['location']]).toEqual([303, '/devices']);
      const { badge } = await house.get(GiveBadge).execute(administrator(), anna.personId);
      const cookie = cookieFrom(answer.headers, 'packthread-device');
      const inside = await server().post('/sign-in').set('Cookie', cookie).type('form').send({ proof: 'badge', badge });
      expect(inside.status).toBe(303);
      expect(cookieFrom(inside.headers, 'packthread-device')).toBe(cookie);
      const taken = await me.send('/devices', { code: 'tablet-8', kind: 'desk' });
      expect(taken.status).toBe(422);
      expect(taken.text).toContain('value="tablet-8"');
      expect((await me.get('/devices')).text).toContain('tablet-8');
    });

    it('show the password form again when the old password is wrong or the new one is refused', async () => {
      const ida = await aPerson(house, siteId, { code: 'ida-otter' });
      const me = await signedIn(house, ida);
      const change = (oldPassword: string, newPassword: string): Test =>
        me.send('/change-password', { oldPassword, newPassword });
      const wrong = await change('wrong', 'nine red foxes');
      expect(wrong.status).toBe(422);
      expect(wrong.text).toContain('The password you have now is not this one');
      expect(wrong.text).toContain('value="ida-otter"');
      expect((await change(ida.password, 'short')).text).toContain('at least 10 characters');
      expect((await change(ida.password, 'I am ida-otter!')).text).toContain('contains your code');
      expect((await change(ida.password, ida.password)).text).toContain('is the old one');
      expect((await change(ida.password, 'abcdefghijkl')).text).toContain('guessed too easily');
      expect((await change(ida.password, '')).text).toContain('New password: This is missing.');
      expect((await me.get('/api/sessions/me')).status).toBe(200);
      waitAQuarter();
    });

    it('sign out by a plain form', async () => {
      const me = await signedIn(house, anna);
      const answer = await me.send('/sign-out', {});
      expect([answer.status, answer.headers['location']]).toEqual([303, '/sign-in']);
      expect((await me.get('/people')).headers['location']).toBe('/sign-in?next=%2Fpeople');
    });
  });

  it('counts attempts for a person from whatever address they come', async () => {
    const behindProxy = await openHouse({ ATTEMPTS_PER_QUARTER_HOUR: '3', TRUST_PROXY: 'yes' });
    try {
      const plant = await aPlant(behindProxy);
      const person = await aPerson(behindProxy, plant.siteId);
      const from = (address: string, code: string, password: string): Test =>
        request(behindProxy.app.getHttpServer())
          .post('/api/sessions')
          .set('X-Forwarded-For', address)
          .send({ proof: 'password', code, password });
      for (const address of ['192.0.2.1', '192.0.2.2', '192.0.2.3']) await from(address, person.code, 'wrong');
      const fromAFourth = await from('192.0.2.4', person.code, person.password);
      expect(problemOf(fromAFourth)).toBe('problem:too-many-attempts');
      for (const code of ['one', 'two', 'three']) await from('192.0.2.5', code, 'wrong');
      const other = await aPerson(behindProxy, plant.siteId);
      expect(problemOf(await from('192.0.2.5', other.code, other.password))).toBe('problem:too-many-attempts');
      expect((await from('192.0.2.6', other.code, other.password)).status).toBe(201);
    } finally {
      await behindProxy.close();
    }
  });

  it('sends its cookies over secure lines only where the settings say so', async () => {
    const secure = await openHouse({ SECURE_COOKIES: 'yes' });
    try {
      const plant = await aPlant(secure);
      const person = await aPerson(secure, plant.siteId);
      const fields = { proof: 'password', code: person.code, password: person.password };
      const answer = await request(secure.app.getHttpServer()).post('/api/sessions').send(fields);
      expect(String(answer.headers['set-cookie'])).toContain('; Secure');
    } finally {
      await secure.close();
    }
  });
});
