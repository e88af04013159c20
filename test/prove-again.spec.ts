import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import request, { type Response } from 'supertest';
import {
  aPerson,
  cookieFrom,
  signedIn,
  withSession,
  type SignedInPerson,
  type TestPerson,
} from './support/a-person.js';
import { aPlant } from './support/a-plant.js';
import { anActor, asking, openHouse, type TestHouse } from './support/house.js';
import { PlaceHold } from '../src/tracing/place-hold.js';
import { aBag } from './support/a-bag.js';
import type { Plant } from './support/a-plant.js';
import { EnrolDevice } from '../src/people/enrol-device.js';
import { GiveBadge } from '../src/people/give-badge.js';

describe('proving once more who one is, before a hold is lifted', () => {
  let house: TestHouse;
  let plant: Plant;
  let agnes: TestPerson;
  let badge: string;
  let otherBadge: string;
  beforeAll(async () => {
    house = await openHouse({ ATTEMPTS_PER_QUARTER_HOUR: '3' });
    plant = await aPlant(house);
    agnes = await aPerson(house, plant.siteId, { roles: ['quality-officer'] });
    const other = await aPerson(house, plant.siteId, { roles: ['quality-officer'] });
    const desk = await signedIn(house, agnes);
    await desk.post('/api/sessions/me/pin', { password: agnes.password, pin: '4093' });
    badge = (await house.get(GiveBadge).execute(administrator(), agnes.personId)).badge ?? '';
    otherBadge = (await house.get(GiveBadge).execute(administrator(), other.personId)).badge ?? '';
  });
  afterAll(async () => {
    await house.close();
  });

  const administrator = (): ReturnType<typeof asking> => asking(anActor(plant.siteId, 'administrator'));
  const typeOf = (answer: Response): string => (answer.body as { type: string }).type;
  const aHold = async (): Promise<string> => {
    const bag = await aBag(house, plant);
    const hold = { kind: 'bulk-bag', id: bag.id, reason: 'torn sieve' } as const;
    return (await house.get(PlaceHold).execute(asking(plant.actor), hold)).number;
  };
  const onTablet = async (kind: 'shared-tablet' | 'handheld' | 'desk', code: string): Promise<SignedInPerson> => {
    const { token } = await house.get(EnrolDevice).execute(administrator(), { code, kind });
    const fields = { proof: 'password', code: agnes.code, password: agnes.password };
    const answer = await request(house.app.getHttpServer())
      .post('/api/sessions')
      .set('Cookie', `packthread-device=${token ?? ''}`)
      .send(fields);
    const { csrfToken } = answer.body as { csrfToken: string };
    return withSession(house, cookieFrom(answer.headers, 'packthread-session'), csrfToken);
  };
  const lift = (who: SignedInPerson, hold: string, proof: object, key?: string) =>
    who.post('/api/hold-lifts', { hold, reason: 'nothing was found', ...proof }, key);

  it('asks at a desk for the password, and takes the right one', async () => {
    const desk = await signedIn(house, agnes);
    const hold = await aHold();
    expect(typeOf(await lift(desk, hold, {}))).toBe('problem:proof-needed');
    expect(typeOf(await lift(desk, hold, { badge, pin: '4093' }))).toBe('problem:proof-needed');
    expect(typeOf(await lift(desk, hold, { password: 'seven grey heron' }))).toBe('problem:proof-failed');
    const lifted = await lift(desk, hold, { password: agnes.password });
    expect([lifted.status, lifted.body]).toMatchObject([201, { number: hold }]);
    house.clock.pass(15);
  });

  it.each(['shared-tablet', 'handheld'] as const)(
    'asks on a %s for badge and PIN: neither alone, no password, and nobody else’s badge',
    async (kind) => {
      const tablet = await onTablet(kind, `${kind}-lift`);
      const hold = await aHold();
      for (const proof of [{}, { badge }, { pin: '4093' }, { password: agnes.password }, { badge, pin: '' }]) {
        expect(typeOf(await lift(tablet, hold, proof))).toBe('problem:proof-needed');
      }
      for (const proof of [
        { badge, pin: '4094' },
        { badge: otherBadge, pin: '4093' },
      ]) {
        expect(typeOf(await lift(tablet, hold, proof))).toBe('problem:proof-failed');
      }
      expect((await lift(tablet, hold, { badge, pin: '4093' })).status).toBe(201);
      house.clock.pass(15);
    },
  );

  it('asks at an enrolled desk for the password', async () => {
    const desk = await onTablet('desk', 'desk-lift');
    expect((await lift(desk, await aHold(), { password: agnes.password })).status).toBe(201);
  });

  it('looks at no further attempt after three in vain, and tells how long to wait', async () => {
    const desk = await signedIn(house, agnes);
    const hold = await aHold();
    for (let attempt = 1; attempt <= 3; attempt += 1) {
      expect(typeOf(await lift(desk, hold, { password: 'wrong' }))).toBe('problem:proof-failed');
    }
    const refused = await lift(desk, hold, { password: agnes.password });
    expect(typeOf(refused)).toBe('problem:too-many-attempts');
    expect(refused.headers['retry-after']).toBe('900');
    house.clock.pass(15);
    expect((await lift(desk, hold, { password: agnes.password })).status).toBe(201);
  });

  it('gives the first answer to the same key, whatever the proof was, and keeps no proof anywhere', async () => {
    const desk = await signedIn(house, agnes);
    const hold = await aHold();
    const first = await lift(desk, hold, { password: agnes.password }, 'lift-once-0001');
    const again = await lift(desk, hold, { password: ` ${agnes.password} ` }, 'lift-once-0001');
    expect(again.body).toEqual(first.body);
    const kept = [
      await house.databases.reader.query('SELECT * FROM "idempotency_key"'),
      await house.databases.reader.query('SELECT * FROM "journal_entry"'),
    ];
    expect(JSON.stringify(kept)).toContain('lift-once-0001');
    expect(JSON.stringify(kept)).not.toContain(agnes.password);
  });
});
