import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { aPerson, signedIn, type SignedInPerson } from '../../test/support/a-person.js';
import { aPlant, type Plant } from '../../test/support/a-plant.js';
import { openHouse, type TestHouse } from '../../test/support/house.js';
import { JobRunner } from '../platform/jobs/job-runner.js';

const nobody = '00000000-0000-7000-8000-00000000dead';

describe('the plant by its addresses', () => {
  let house: TestHouse;
  let plant: Plant;
  let manager: SignedInPerson;
  let quality: SignedInPerson;
  let auditor: SignedInPerson;
  beforeAll(async () => {
    house = await openHouse();
    plant = await aPlant(house);
    const signIn = async (...roles: Parameters<Plant['actorWith']>) =>
      signedIn(house, await aPerson(house, plant.siteId, { roles }));
    manager = await signIn('plant-manager');
    quality = await signIn('quality-officer');
    auditor = await signIn('auditor');
  });
  afterAll(async () => {
    await house.close();
  });

  it('shows one page with every kind of thing, the shift of now and the overdue scale', async () => {
    const { status, text } = await auditor.get('/plant');
    expect(status).toBe(200);
    for (const caption of [
      'Shifts',
      'Dryers',
      'Hoppers',
      'Packing lines',
      'Scales',
      'Grades',
      'Pack formats',
      'Places',
    ]) {
      expect(text).toContain(`<caption>${caption}</caption>`);
    }
    expect(text).toContain('production day 2026-03-12, shift M');
    expect(text).toContain('H1, since Thu, 1 Jan 2026');
    expect(text.match(/Overdue: what it weighs is doubtful/g)).toHaveLength(1);
    expect(text).toContain('4000 kg');
    expect(text).toMatch(/class="caution">Nobody stands or reaches under a hanging bag/);
    expect(text).not.toMatch(/ style=|<script(?! src=| type="module" src=)/);
  });

  it('shows a name as it was entered, never as markup', async () => {
    await manager.post('/api/plant/dryers', { code: 'D7', name: '<b>Dryer</b>' });
    const { text } = await manager.get('/plant');
    expect(text).toContain('&lt;b>Dryer');
    expect(text).not.toContain('<b>Dryer');
  });

  it('tells by JSON what is set up, and the true length of a night when the clocks change', async () => {
    const all = await auditor.get('/api/plant');
    expect(all.body).toMatchObject({
      site: { code: 'AQ' },
      shift: { shiftCode: 'M' },
      lines: [{ hopperCode: 'H1' }, {}],
    });
    const shift = await auditor.get('/api/plant/shift?at=2026-10-25T02:30:00%2B01:00');
    expect(shift.body).toMatchObject({ productionOn: '2026-10-24', shiftCode: 'N', lengthMinutes: 540 });
    const scales = await auditor.get('/api/plant/scales');
    expect(scales.body).toMatchObject({ items: [{ isOverdue: false }, { isOverdue: true }], next: null });
  });

  it('pages customers by key', async () => {
    await manager.post('/api/plant/customers', { code: 'K-002', name: 'Rowan', address: 'Rowan Way' }).expect(201);
    const first = await manager.get('/api/plant/customers?limit=1');
    const { items, next } = first.body as { items: { code: string }[]; next: string };
    expect(items.map((customer) => customer.code)).toEqual(['K-002']);
    const second = await manager.get(`/api/plant/customers?limit=1&before=${next}`);
    expect(second.body).toMatchObject({ items: [{ code: 'K-001' }] });
  });

  it('sets up machines, scales, grades, formats and places', async () => {
    const made = async (path: string, body: object, by = manager): Promise<string> => {
      const answer = await by.post(`/api/plant/${path}`, body);
      expect([path, answer.status, answer.text]).toEqual([path, 201, expect.stringContaining('"id"')]);
      return (answer.body as { id: string }).id;
    };
    const hopperId = await made('hoppers', { code: 'H2', name: 'Hopper 2', capacityGrams: 3_000_000 });
    const lineId = await made('lines', { code: '3', name: 'Line 3' });
    await made('hopper-lines', { lineId, hopperId });
    const coderId = await made('coders', { lineId, code: 'C3' });
    await made('coder-clocks', { coderId, offsetSeconds: -3600, uncertaintySeconds: 5 });
    const scale = { intervalMilligrams: 500_000, maximumPermissibleErrorMilligrams: 1_000_000, checkEveryHours: 24 };
    const scaleId = await made('scales', { code: 'S3', name: 'Scale 3', ...scale });
    await made('scale-checks', { scaleId, deviationMilligrams: -200_000 }, quality);
    const span = { verifiedOn: '2026-01-01', verifiedUntilOn: '2027-12-31' };
    await made('scale-verifications', { scaleId, ...span });
    const gradeId = await made('grades', { code: 'WS3', name: 'Coarse', tippingRule: 'tip-at-risk' });
    const line = { property: 'moisture-percent', method: 'GS2/1/3/9-15', required: true, maximum: '0,06' };
    await made('specifications', { gradeId, lines: [line] }, quality);
    await made('format-grades', { formatId: plant.formatId, gradeId });
    await made('places', { code: 'LANE-2', kind: 'store' });
    const shifts = [{ code: 'X', name: 'All day', startTime: '06:00' }];
    await made('shift-patterns', { validFrom: '2026-12-31T05:00:00Z', shifts });
    await made('rule-sets', { kind: 'vehicle-check', checkPoints: [{ code: 'dry', text: 'It is dry' }] }, quality);
    const all = await manager.get('/plant');
    expect(all.text).toContain('3600 s behind, within 5 s');
    expect(all.text).toContain('moisture-percent at most 0.06');
  });

  it('makes a format, and corrects and removes what is wrong', async () => {
    const format = {
      code: 'WS-500',
      name: 'White sugar 500 g',
      gtin: '9520123000400',
      nominalGrams: 500,
      assumedLowerMilligrams: 495_000,
      assumedUpperMilligrams: 505_000,
      packTareGrams: 5,
      packsPerPallet: 1000,
      palletTareGrams: 25_000,
      codePattern: 'L{y}{ddd}{line}',
      gradeIds: [plant.gradeId],
    };
    const wrong = await manager.post('/api/plant/formats', { ...format, gtin: '9520123000401' });
    expect([wrong.status, wrong.body]).toMatchObject([409, { type: 'problem:gtin-check-digit' }]);
    await manager.post('/api/plant/formats', { ...format, gtin: gtinOf('952012300040') }).expect(201);
    const linked = await manager.post('/api/plant/hopper-lines', { lineId: plant.lineIds[1], hopperId: null });
    const { id } = linked.body as { id: string };
    const correction = { kind: 'hopper-line', id, correctionReason: 'did-not-occur', reason: 'another line' };
    await manager.post('/api/plant/corrections', correction).expect(201);
    const contact = { customerId: plant.customerId, name: 'Alder', address: 'Alder Way' };
    await manager.put('/api/plant/customer-contacts', contact).expect(200);
    const administrator = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['administrator'] }));
    await administrator.delete(`/api/plant/customer-contacts/${plant.customerId}`).expect(200);
  });

  it('refuses what is missing, of the wrong type, out of range, unknown or not permitted, and changes nothing', async () => {
    const entriesBefore = await journalLength();
    const outcome = async (path: string, body: object, by = manager): Promise<unknown[]> => {
      const { status, body: answer } = (await by.post(`/api/plant/${path}`, body)) as { status: number; body: unknown };
      const { type, fields = [] } = answer as { type: string; fields?: { field: string }[] };
      return [status, type, fields.map((one) => one.field).sort()];
    };
    expect(await outcome('dryers', {})).toEqual([422, 'problem:bad-form', ['code', 'name']]);
    expect(await outcome('dryers', { code: 'd 1', name: 7 })).toEqual([422, 'problem:bad-form', ['code', 'name']]);
    expect(await outcome('dryers', { code: 'D5', name: 'x', x: 1 })).toEqual([422, 'problem:bad-form', ['x']]);
    expect(await outcome('hoppers', { code: 'H9', name: 'H', capacityGrams: 999 })).toEqual([
      422,
      'problem:bad-form',
      ['capacityGrams'],
    ]);
    expect(await outcome('coders', { code: 'C9', lineId: nobody })).toEqual([404, 'problem:not-found', []]);
    const notCrews = { shifts: [{ code: 'D', name: 'Day', startTime: '06:00' }], crews: [{ crew: 'R', cycle: 'D,D' }] };
    expect(await outcome('shift-patterns', notCrews)).toEqual([422, 'problem:bad-form', ['crews.0.cycle']]);
    const limits = { gradeId: plant.gradeId, lines: [{ property: 'm', method: 'x', required: true, maximum: 'many' }] };
    expect(await outcome('specifications', limits, quality)).toEqual([422, 'problem:bad-form', ['lines.0.maximum']]);
    expect(await outcome('dryers', { code: 'D5', name: 'x' }, auditor)).toEqual([403, 'problem:not-permitted', []]);
    expect(await outcome('corrections', { kind: 'site', id: nobody, correctionReason: 'x', reason: 'y' })).toEqual([
      422,
      'problem:bad-form',
      ['correctionReason', 'kind'],
    ]);
    expect((await manager.get('/api/plant/shift?at=yesterday')).status).toBe(422);
    expect((await manager.delete('/api/plant/customer-contacts/none')).status).toBeLessThan(500);
    expect(await journalLength()).toBe(entriesBefore);
  });

  it('lists open points on a page and by JSON, and takes an explanation', async () => {
    await house.get(JobRunner).drain();
    const page = await quality.get('/open-points?role=quality-officer');
    expect(page.text).toContain('<h1>Open points</h1>');
    expect(page.text).toContain('Scale S2 is overdue for its check');
    expect((await quality.get('/open-points?role=')).status).toBe(200);
    expect((await quality.get('/open-points?role=king')).status).toBe(422);
    const list = await quality.get('/api/open-points');
    const [point] = (list.body as { items: { id: string; cause: string; sentence: string }[] }).items;
    expect(point).toMatchObject({ cause: 'scale-check-overdue', sentence: expect.stringContaining('Scale S2') });
    const path = `/api/open-points/${point?.id ?? ''}/explanation`;
    expect((await auditor.post(path, { explanation: 'seen' })).status).toBe(403);
    expect((await quality.post(path, {})).status).toBe(422);
    await quality.post(path, { explanation: 'the weights <b>are</b> away' }).expect(201);
    expect((await quality.post(path, { explanation: 'once more' })).body).toMatchObject({
      type: 'problem:point-ended-already',
    });
    expect((await quality.get('/api/open-points')).body).toEqual({ items: [], next: null });
    expect((await quality.get('/api/open-points?state=ended')).body).toMatchObject({ items: [{ how: 'explained' }] });
    expect((await quality.get('/open-points')).text).toContain('the weights &lt;b>are');
    expect((await quality.post(`/api/open-points/${nobody}/explanation`, { explanation: 'none' })).status).toBe(404);
  });

  async function journalLength(): Promise<number> {
    const answer = await auditor.get('/api/journal?limit=1');
    return (answer.body as { items: { sequence: number }[] }).items[0]?.sequence ?? 0;
  }
});

/** A GTIN-13 from its first twelve digits; the check digit counted here anew, by weights 1 and 3 from the left. */
function gtinOf(digits: string): string {
  const sum = [...digits].reduce((total, digit, place) => total + Number(digit) * (place % 2 === 0 ? 1 : 3), 0);
  return digits + String((10 - (sum % 10)) % 10);
}
