import { afterEach, beforeEach, describe, expect, it } from '@jest/globals';
import request from 'supertest';
import { cookieFrom, withSession, type SignedInPerson } from '../../../test/support/a-person.js';
import { readerOf } from '../../../test/support/a-bag.js';
import { openHouse, type TestHouse } from '../../../test/support/house.js';
import { createFirstAdministrator } from '../../people/first-start.js';

type Fields = Readonly<Record<string, string>>;

/** The forms of the path with what a newcomer types or chooses; all else is prefilled on the page. */
const site = {
  name: 'Alder Quay',
  timeZone: 'Europe/Berlin',
  productionDayStart: '06:00',
  companyPrefix: '9520123',
  gln: '9520123000011',
};
const scale = { name: 'Bag scale', code: 'S1', intervalKilograms: '0,5', errorKilograms: '1', checkEveryHours: '24' };
const bagType = {
  ...{ name: 'Four loops', code: 'BAG1', usualTareGrams: '2', leastTareGrams: '1,8', mostTareGrams: '2.2' },
  safeLoadGrams: '1250',
};
const grade = {
  ...{ name: 'White sugar', code: 'WS2', tippingRule: 'released-only' },
  ...{ property1: 'moisture-percent', method1: 'GS2/1/3/9-15', maximum1: '0,06', property2: 'colour-iu' },
};
const format = {
  ...{ name: 'White sugar 1 kg', code: 'WS-1KG', gtin: '9520123000103', nominalGrams: '1000', lowerGrams: '995' },
  ...{ upperGrams: '1010.5', packTareGrams: '9', packsPerPallet: '840', palletTareGrams: '24' },
  codePattern: 'L{y}{ddd}{line}{shift} {HH}:{mm}',
};

describe('an empty system', () => {
  let house: TestHouse;
  let admin: SignedInPerson;

  beforeEach(async () => {
    house = await openHouse();
    const first = await createFirstAdministrator(house.app, {}, () => undefined);
    admin = await comeIn(first?.code ?? '', first?.password ?? '');
  });
  afterEach(async () => {
    await house.close();
  });

  /** Signs in by a one-time password, and takes a password of one's own. */
  async function comeIn(code: string, password: string): Promise<SignedInPerson> {
    const server = house.app.getHttpServer();
    const answer = await request(server).post('/api/sessions').send({ proof: 'password', code, password });
    const { csrfToken } = answer.body as { csrfToken: string };
    const before = withSession(house, cookieFrom(answer.headers, 'packthread-session'), csrfToken);
    const newPassword = 'seven grey herons';
    const changed = await before.send('/change-password', { oldPassword: password, newPassword });
    const cookie = cookieFrom(changed.headers, 'packthread-session');
    const page = await request(server).get('/me').set('Cookie', cookie).set('Accept', 'text/html');
    const [, csrf = ''] = /name="csrf" value="([^"]+)"/.exec(page.text) ?? [];
    return withSession(house, cookie, csrf);
  }

  async function take(step: string, fields: Fields): Promise<void> {
    const answer = await admin.send(`/set-up/${step}`, fields);
    if (answer.status !== 303)
      throw new Error(`${step}: ${answer.status} ${/role="alert".*?<\/div>/s.exec(answer.text)?.[0]}`);
  }

  async function idIn(table: string): Promise<string> {
    const rows = await readerOf(house).sql<{ id: string }>`SELECT "id" FROM ${() => `"${table}"`} LIMIT 1`;
    return rows[0]?.id ?? '';
  }

  async function setUpThePlant(): Promise<void> {
    await take('site', site);
    await take('shifts', { pattern: 'three-by-eight' });
    await take('scales', scale);
    await take('bag-types', bagType);
    await take('dryers', { name: 'Dryer 1', code: 'D1' });
    await take('hoppers', { name: 'Hopper 1', code: 'H1', capacityGrams: '4 000' });
    await take('lines', { name: 'Line 1', code: '1', hopperId: await idIn('hopper') });
    await take('grades', grade);
    await take('formats', { ...format, gradeIds: await idIn('grade') });
    await take('places', { code: 'LANE-1', kind: 'store' });
    await take('customers', { name: 'Fernhill Foods', code: 'K1', address: '1 Example Way', customerGln: '' });
    await take('rules/vehicle-check', { points: 'The floor is dry\nNo smell' });
  }

  async function admit(name: string, role: string): Promise<SignedInPerson> {
    const answer = await admin.send('/set-up/people', { name, role, language: 'en', personCode: '' });
    expect(answer.status).toBe(200);
    const [, code = ''] = /code ([\w.-]+) and this password/.exec(answer.text) ?? [];
    const [, password = ''] = /<p class="digits code">([^<]+)</.exec(answer.text) ?? [];
    return comeIn(code, password);
  }

  it('leads its administrator to what is missing first, and says the rest in sentences', async () => {
    expect((await admin.get('/')).text).toContain('href="/set-up"');
    const list = (await admin.get('/set-up')).text;
    expect(list).toContain('No shifts are set.');
    expect(list).toContain('There is no scale.');
    expect(list).toContain('Nobody is line lead.');
    expect(list).toContain('Next: Site and its numbers');
  });

  it('is set up entirely through the pages, and then a bag is filled, a run started and the bag tipped', async () => {
    await setUpThePlant();
    const ilka = await admit('Ilka Brandeis', 'dryer-operator');
    const nora = await admit('Nora Lindqvist', 'lab-analyst');
    const agnes = await admit('Agnes Tallow', 'quality-officer');
    const tomas = await admit('Tomas Weir', 'line-lead');
    const list = (await admin.get('/set-up')).text;
    expect(list).toContain('Scale S1 was never checked');
    expect(list).not.toContain('There is no');
    const [dryer, scaleId, bagTypeId] = [await idIn('dryer'), await idIn('scale'), await idIn('bag_type')];
    await ilka.send('/dryer/scales', { scaleId, knownGrams: '1000', shownGrams: '1000' });
    await ilka.send(`/dryer/${dryer}/runs`, { gradeId: await idIn('grade') });
    const [run] = await readerOf(house).sql<{ number: string }>`SELECT "number" FROM "dryer_run"`;
    await ilka.send(`/dryer/${dryer}/bags`, { run: run?.number ?? '', bagTypeId });
    const bag = await idIn('bulk_bag');
    const closed = await ilka.send(`/dryer/${dryer}/closes`, { bagId: bag, grossGrams: '1002,5', scaleId });
    expect(closed.status).toBe(303);
    const sample = await ilka.post('/api/samples', { standsFor: 'bag', bag });
    const figure = { property: 'moisture-percent', method: 'GS2/1/3/9-15', amount: '0,04' };
    const { number } = sample.body as { number: string };
    expect((await nora.post('/api/results', { sample: number, ...figure })).status).toBe(201);
    const release = { kind: 'bulk-bag', subject: bag, verdict: 'released' };
    expect((await agnes.post('/api/decisions', release)).status).toBe(201);
    const start = { lineId: await idIn('packing_line'), formatId: await idIn('pack_format') };
    expect(await tomas.post('/api/runs', start)).toMatchObject({ status: 201 });
    const tip = { hopperId: await idIn('hopper'), bag };
    expect(await tomas.post('/api/tips', tip)).toMatchObject({ status: 201 });
  });

  it('shows what was entered and what is wrong, and saves nothing', async () => {
    const wrong = await admin.send('/set-up/site', { ...site, name: 'Our <house>', gln: '9520123000012' });
    expect(wrong.status).toBe(409);
    expect(wrong.text).toContain('is not a GLN');
    expect(wrong.text).toContain('value="Our &lt;house>"');
    const early = await admin.send('/set-up/shifts', { pattern: 'own', own: 'M Morning 6' });
    expect([early.status, early.text.includes('Line 1 (“M Morning 6”)')]).toEqual([422, true]);
    const fine = await admin.send('/set-up/scales', { ...scale, intervalKilograms: '0,1234567' });
    expect([fine.status, fine.text.includes('At most 6 digits')]).toEqual([422, true]);
    const none = await admin.send('/set-up/grades', { ...grade, method1: '', maximum1: '' });
    expect(none.status).toBe(422);
    for (const table of ['site_revision', 'shift_pattern', 'scale', 'grade']) expect(await idIn(table)).toBe('');
  });

  it('takes shifts that begin with another production day, and shifts of one’s own', async () => {
    await take('site', { ...site, productionDayStart: '05:00' });
    await take('shifts', { pattern: 'two-by-twelve' });
    const [two] = await readerOf(house).sql<{ pattern: string }>`SELECT "pattern" FROM "shift_pattern"`;
    expect(two?.pattern).toContain('"startTime":"17:00"');
    house.clock.pass(1);
    await take('shifts', { pattern: 'own', own: 'E Early shift 05:00\r\n\r\nL Late shift 15:30\r\n' });
    expect((await admin.get('/set-up/shifts')).text).toContain('Late shift');
  });

  it('changes a type of bag, links another hopper, and lets quality alone change the rules', async () => {
    await setUpThePlant();
    const insteadOf = await idIn('bag_type');
    expect((await admin.get(`/set-up/bag-types?change=${insteadOf}`)).text).toContain('Change this type of bag');
    await take('bag-types', { ...bagType, usualTareGrams: '2,1', insteadOf });
    await take('hoppers', { name: 'Hopper 2', code: 'H2', capacityGrams: '3000' });
    const [, two] = await readerOf(house).sql<{ id: string }>`SELECT "id" FROM "hopper" ORDER BY "code"`;
    house.clock.pass(1);
    await take('lines/feeds', { lineId: await idIn('packing_line'), hopperId: two?.id ?? '' });
    await take('grades/usual-nets', { gradeId: await idIn('grade'), leastNetGrams: '980', mostNetGrams: '1020' });
    const again = await admin.send('/set-up/rules/vehicle-check', { points: 'Something else' });
    expect(again.status).toBe(409);
    expect((await admin.send('/set-up/rules/vehicle-check/later', { points: 'Something else' })).status).toBe(403);
  });

  it('gives badge and password once each, ends roles, and removes a name when its time is up', async () => {
    await admit('Tomas Weir', 'line-lead');
    const [person] = await readerOf(house).sql<{ id: string }>`SELECT "id" FROM "person" ORDER BY "id" DESC LIMIT 1`;
    const path = `/set-up/people/${person?.id}`;
    const badge = await admin.send(`${path}/badges`, {}, 'one-key-for-a-badge');
    expect(badge.text).toMatch(/<p class="code">[A-Z2-7]{26}</);
    expect(badge.text).toContain('<svg');
    const again = await admin.send(`${path}/badges`, {}, 'one-key-for-a-badge');
    expect(again.text).toContain('was shown already');
    expect((await admin.send(`${path}/passwords`, {})).text).toMatch(/(\w{4}-){3}\w{4}/);
    expect((await admin.send(`${path}/roles`, { role: 'loader' })).status).toBe(303);
    expect((await admin.send(`${path}/roles`, { role: 'loader' })).status).toBe(409);
    expect((await admin.send(`${path}/name-removals`, {})).status).toBe(409);
    for (const role of ['loader', 'line-lead'])
      expect((await admin.send(`${path}/role-ends`, { role })).status).toBe(303);
    expect((await admin.send(`${path}/name-removals`, {})).status).toBe(303);
    expect((await admin.get(path)).text).not.toContain('Tomas');
  });

  it('knows no other steps', async () => {
    expect((await admin.get('/set-up/moon')).status).toBe(404);
  });
});
