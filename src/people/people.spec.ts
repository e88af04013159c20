import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import type { Response } from 'supertest';
import { aPerson, signedIn, type SignedInPerson, type TestPerson } from '../../test/support/a-person.js';
import { aPlant } from '../../test/support/a-plant.js';
import { anActor, asking, openHouse, type TestHouse } from '../../test/support/house.js';
import { EndRole } from './end-role.js';
import { GiveRole } from './give-role.js';
import { namesOf } from './people.js';

const unknownId = '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10';

describe('keeping people and devices', () => {
  let house: TestHouse;
  let siteId: string;
  let otherSiteId: string;
  let keeper: TestPerson;
  let me: SignedInPerson;
  beforeAll(async () => {
    house = await openHouse();
    ({ siteId } = await aPlant(house));
    ({ siteId: otherSiteId } = await aPlant(house, { siteCode: 'OTHER' }));
    keeper = await aPerson(house, siteId, { code: 'keeper', roles: ['administrator'] });
  });
  beforeEach(async () => {
    me = await signedIn(house, keeper);
  });
  afterAll(async () => {
    await house.close();
  });

  const kindOf = (answer: Response): string => `${answer.status} ${(answer.body as { type?: string }).type ?? ''}`;
  const add = async (code: string): Promise<string> => {
    const answer = await me.post('/api/people', { code, name: `Name of ${code}` });
    return (answer.body as { id: string }).id;
  };
  const entriesOf = (id: string) => house.databases.reader.sql<
    { action: string; before: string | null; after: string | null; personId: string | null }[]
  >`
    SELECT e."action" AS "action", e."before" AS "before", e."after" AS "after", e."person_id" AS "personId"
    FROM "journal_entry" e WHERE e."subject_id" = ${id} ORDER BY e."sequence"`;

  it('adds a person once for one key, under a code that is theirs alone', async () => {
    const fields = { code: 'J.Moor', name: 'Jo Moor' };
    const first = await me.post('/api/people', fields, 'add-jo-moor');
    const again = await me.post('/api/people', fields, 'add-jo-moor');
    expect(first.status).toBe(201);
    expect(first.body).toMatchObject({ code: 'j.moor' });
    expect(again.body).toEqual(first.body);
    expect(kindOf(await me.post('/api/people', { code: 'j.moor', name: 'Jay Moor' }))).toBe(
      '409 problem:person-code-taken',
    );
    const other = await signedIn(house, await aPerson(house, otherSiteId, { roles: ['administrator'] }));
    expect(kindOf(await other.post('/api/people', { code: 'j.moor', name: 'Jay Moor' }))).toBe(
      '409 problem:person-code-taken',
    );
  });

  it('refuses what is no code and no name', async () => {
    const answer = await me.post('/api/people', { code: 'jo moor', language: 'xx' });
    const { fields } = answer.body as { fields: { field: string; type: string }[] };
    expect(answer.status).toBe(422);
    expect(fields.map(({ field, type }) => `${field} ${type}`).sort()).toEqual([
      'code problem:field-not-pattern',
      'language problem:field-not-choice',
      'name problem:field-missing',
    ]);
  });

  it('gives a role once and ends it once, and the journal holds both', async () => {
    const id = await add('role-taker');
    expect((await me.post(`/api/people/${id}/roles`, { role: 'loader' })).status).toBe(201);
    expect(kindOf(await me.post(`/api/people/${id}/roles`, { role: 'loader' }))).toBe('409 problem:role-already-held');
    expect((await me.get(`/api/people/${id}`)).body).toMatchObject({ roles: ['loader'] });
    expect((await me.delete(`/api/people/${id}/roles/loader`)).status).toBe(200);
    expect(kindOf(await me.delete(`/api/people/${id}/roles/loader`))).toBe('409 problem:role-not-held');
    expect((await me.post(`/api/people/${id}/roles`, { role: 'loader' })).status).toBe(201);
    expect(await entriesOf(id)).toEqual([
      { action: 'add-person', before: null, after: '{"code":"role-taker"}', personId: keeper.personId },
      { action: 'give-role', before: null, after: '{"role":"loader"}', personId: keeper.personId },
      { action: 'end-role', before: '{"role":"loader"}', after: null, personId: keeper.personId },
      { action: 'give-role', before: null, after: '{"role":"loader"}', personId: keeper.personId },
    ]);
  });

  it('gives no person the role of a machine, nor one that is none', async () => {
    const id = await add('no-machine');
    for (const role of ['device', 'king']) {
      expect(kindOf(await me.post(`/api/people/${id}/roles`, { role }))).toBe('422 problem:bad-form');
      expect(kindOf(await me.delete(`/api/people/${id}/roles/${role}`))).toBe('422 problem:bad-form');
    }
  });

  it('gives and ends a role once where two do it at once', async () => {
    const id = await add('raced');
    const by = anActor(siteId, 'administrator');
    const give = () => house.get(GiveRole).execute(asking(by), id, { role: 'auditor' });
    const end = () => house.get(EndRole).execute(asking(by), id, { role: 'auditor' });
    for (const [race, refused] of [
      [give, /role-already-held/],
      [end, /role-not-held|already-corrected/],
    ] as const) {
      const settled = await Promise.allSettled<unknown>([race(), race()]);
      expect(settled.filter((one) => one.status === 'fulfilled')).toHaveLength(1);
      const [lost] = settled.filter((one) => one.status === 'rejected');
      expect(String(lost?.reason)).toMatch(refused);
    }
  });

  it('keeps the last administrator', async () => {
    expect(kindOf(await me.delete(`/api/people/${keeper.personId}/roles/administrator`))).toBe(
      '409 problem:last-administrator',
    );
    const second = await aPerson(house, siteId, { roles: ['administrator'] });
    expect((await me.delete(`/api/people/${second.personId}/roles/administrator`)).status).toBe(200);
  });

  it('answers a one-time password and a badge once, and keeps neither anywhere', async () => {
    const id = await add('secret-taker');
    for (const [path, field] of [
      ['password', 'password'],
      ['badge', 'badge'],
    ] as const) {
      const first = await me.post(`/api/people/${id}/${path}`, {}, `once-${path}`);
      const again = await me.post(`/api/people/${id}/${path}`, {}, `once-${path}`);
      const secret = (first.body as Record<string, string>)[field] ?? '';
      expect(secret.length).toBeGreaterThan(18);
      expect(again.body).toEqual({ personId: id, [field]: null });
      const kept = await house.databases.reader.sql<object[]>`
        SELECT "answer" AS "text" FROM "idempotency_key" UNION ALL SELECT "secret_hash" AS "text" FROM "credential"
        UNION ALL SELECT COALESCE("after", '') AS "text" FROM "journal_entry"`;
      expect(JSON.stringify(kept)).not.toContain(secret);
    }
    expect((await me.get(`/api/people/${id}`)).body).toMatchObject({ proofs: ['badge', 'password'] });
  });

  it('sets a PIN only for oneself, by the password, and no easy one', async () => {
    const self = await aPerson(house, siteId, { roles: ['auditor'], code: '4711' });
    const mine = await signedIn(house, self);
    const set = (fields: object): Promise<string> => mine.post('/api/sessions/me/pin', fields).then(kindOf);
    expect(await set({ password: 'wrong', pin: '4093' })).toBe('409 problem:password-wrong');
    expect(await set({ password: self.password, pin: '4711' })).toBe('409 problem:pin-too-easy');
    expect(await set({ password: self.password, pin: '12a4' })).toBe('422 problem:bad-form');
    expect(await set({ password: self.password, pin: '123' })).toBe('422 problem:bad-form');
    expect(await set({ password: self.password, pin: '4093' })).toBe('201 ');
    const entries = await entriesOf(self.personId);
    expect(entries).toEqual([{ action: 'set-pin', before: null, after: null, personId: self.personId }]);
  });

  it('changes a password by JSON, refusing each bad one, and goes on in a new session', async () => {
    const self = await aPerson(house, siteId, { code: 'changer' });
    const mine = await signedIn(house, self);
    const change = (oldPassword: string, newPassword: string) =>
      mine.post('/api/sessions/me/password', { oldPassword, newPassword });
    expect(kindOf(await change('wrong', 'nine red foxes'))).toBe('409 problem:password-wrong');
    expect(kindOf(await change(self.password, self.password))).toBe('409 problem:password-not-new');
    expect(kindOf(await change(self.password, 'red fox'))).toBe('409 problem:password-too-short');
    expect(kindOf(await change(self.password, 'the changer of it'))).toBe('409 problem:password-has-code');
    expect(kindOf(await change(self.password, 'aaaaaaaaaaaaaaa'))).toBe('409 problem:password-too-easy');
    const changed = await change(self.password, 'nine red foxes');
    expect(changed.status).toBe(201);
    expect(changed.body).toMatchObject({ person: { code: 'changer' }, mustChangePassword: false });
    expect((await mine.get('/api/sessions/me')).status).toBe(401);
    await expect(signedIn(house, self)).rejects.toThrow('sign-in-failed');
    await signedIn(house, { ...self, password: 'nine red foxes' });
  });

  it('lets one of two changes of a password at once win', async () => {
    const self = await aPerson(house, siteId);
    const mine = await signedIn(house, self);
    const answers = await Promise.all(
      ['nine red foxes', 'five blue whales'].map((newPassword) =>
        mine.post('/api/sessions/me/password', { oldPassword: self.password, newPassword }),
      ),
    );
    const kinds = answers.map(kindOf).sort();
    expect(kinds[0]).toBe('201 ');
    // The slower one finds the password changed while it looked, is too late to be signed in, or types an old one.
    expect(kinds[1]).toMatch(/password-changed-meanwhile|not-signed-in|password-wrong|sign-in-failed/);
  });

  it('renames a person, and the journal holds that but no name', async () => {
    const id = await add('renamed');
    expect((await me.put(`/api/people/${id}/name`, { name: 'Robin Reed' })).status).toBe(200);
    expect((await me.get(`/api/people/${id}`)).body).toMatchObject({ name: 'Robin Reed', language: 'en' });
    expect(JSON.stringify(await entriesOf(id))).not.toMatch(/Robin|Name of/);
  });

  it('removes the name of somebody who has left, and all by which they came in; code and id stay', async () => {
    const leaver = await aPerson(house, siteId, { code: 'leaver', name: 'Lee Aver', roles: ['loader'] });
    const path = `/api/people/${leaver.personId}`;
    expect(kindOf(await me.delete(`${path}/name`))).toBe('409 problem:person-holds-role');
    await me.delete(`${path}/roles/loader`);
    expect((await me.delete(`${path}/name`)).status).toBe(200);
    expect((await me.get(path)).body).toMatchObject({ code: 'leaver', name: null, roles: [], proofs: [] });
    expect((await me.get(`/people/${leaver.personId}`)).text).toContain('name removed');
    expect(kindOf(await me.delete(`${path}/name`))).toBe('409 problem:name-was-removed');
    expect(kindOf(await me.put(`${path}/name`, { name: 'Lee Aver' }))).toBe('409 problem:name-was-removed');
    expect(await namesOf(house.databases.reader.manager, [leaver.personId])).toEqual(
      new Map([[leaver.personId, 'leaver']]),
    );
  });

  it('does not know a person or device of another site, nor one that is none', async () => {
    const stranger = await aPerson(house, otherSiteId);
    for (const id of [stranger.personId, unknownId]) {
      const answers = [
        await me.get(`/api/people/${id}`),
        await me.put(`/api/people/${id}/name`, { name: 'Nobody' }),
        await me.delete(`/api/people/${id}/name`),
        await me.post(`/api/people/${id}/roles`, { role: 'loader' }),
        await me.delete(`/api/people/${id}/roles/line-lead`),
        await me.post(`/api/people/${id}/password`),
        await me.post(`/api/people/${id}/badge`),
        await me.post(`/api/devices/${id}/token`),
        await me.delete(`/api/devices/${id}/token`),
      ];
      expect(answers.map(kindOf)).toEqual(Array(9).fill('404 problem:not-found'));
    }
    expect((await me.get('/api/people/nonsense')).status).toBe(400);
  });

  it('lists people and devices by pages, newest first', async () => {
    const first = await me.get('/api/people?limit=2');
    const { items, next } = first.body as { items: { id: string }[]; next: string };
    expect(items).toHaveLength(2);
    expect(next).toBe(items[1]?.id);
    const second = await me.get(`/api/people?limit=200&before=${next}`);
    const rest = second.body as { items: { id: string }[]; next: null };
    expect(rest.next).toBeNull();
    expect(rest.items.every((item) => item.id < next)).toBe(true);
    expect((await me.get('/people?limit=1')).text).toContain('/people?before=');
  });

  it('enrols devices and adds machines under codes of their own, renews and withdraws their tokens', async () => {
    const enrolled = await me.post('/api/devices', { code: 'Dock-1', kind: 'handheld' }, 'enrol-dock-1');
    const again = await me.post('/api/devices', { code: 'Dock-1', kind: 'handheld' }, 'enrol-dock-1');
    const { id, token } = enrolled.body as { id: string; token: string };
    expect(token).toHaveLength(43);
    expect(again.body).toEqual({ id, code: 'dock-1', token: null });
    expect(kindOf(await me.post('/api/devices', { code: 'dock-1', kind: 'desk' }))).toBe(
      '409 problem:device-code-taken',
    );
    expect(kindOf(await me.post('/api/devices/machines', { code: 'dock-1' }))).toBe('409 problem:device-code-taken');
    expect(kindOf(await me.post('/api/devices', { code: 'dock-2', kind: 'machine' }))).toBe('422 problem:bad-form');
    const renewed = await me.post(`/api/devices/${id}/token`);
    expect((renewed.body as { token: string }).token).not.toBe(token);
    expect((await me.delete(`/api/devices/${id}/token`)).status).toBe(200);
    expect(kindOf(await me.delete(`/api/devices/${id}/token`))).toBe('409 problem:device-not-known-any-more');
    const { items } = (await me.get('/api/devices')).body as { items: object[] };
    expect(items).toEqual([{ id, code: 'dock-1', kind: 'handheld', tokenSetAt: null }]);
    expect((await entriesOf(id)).map((entry) => entry.action)).toEqual([
      'enrol-device',
      'renew-device-token',
      'withdraw-device',
    ]);
    expect((await me.get('/devices')).text).toContain('withdrawn');
  });

  it('shows people and devices to an auditor, without anything to change', async () => {
    const auditor = await signedIn(house, await aPerson(house, siteId, { roles: ['auditor'] }));
    const people = await auditor.get('/people');
    const devices = await auditor.get('/devices');
    expect([people.status, devices.status]).toEqual([200, 200]);
    expect(people.text).toContain('<caption>');
    expect(devices.text).not.toContain('action="/devices"');
    expect((await auditor.send('/devices', { code: 'mine', kind: 'desk' })).status).toBe(403);
    expect(kindOf(await auditor.post('/api/people', { code: 'mine', name: 'Mine' }))).toBe('403 problem:not-permitted');
  });
});
