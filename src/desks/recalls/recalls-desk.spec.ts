import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { aLotLoaded, lotLeaves } from '../../../test/support/a-loaded-lot.js';
import { aPerson, signedIn, type SignedInPerson, type TestPerson } from '../../../test/support/a-person.js';
import { aPlant, type Plant } from '../../../test/support/a-plant.js';
import { asking, openHouse, type TestHouse } from '../../../test/support/house.js';
import { openHolds } from '../../disposition/standings.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import type { RecallFigures } from '../../recalls/recall-figures.js';
import { recallPage } from '../../recalls/recalls.js';
import { PlaceHold } from '../../tracing/place-hold.js';

let house: TestHouse;
let plant: Plant;
let from: ReadFrom;
let person: TestPerson;
let quality: SignedInPerson;
let lotId: string;
let bag: { id: string; number: string };
let palletSscc: string;

beforeAll(async () => {
  house = await openHouse();
  from = house.app.get<ReadFrom>(READER);
  plant = await aPlant(house, { packsPerPallet: 100, capacityGrams: 30_000_000 });
  person = await aPerson(house, plant.siteId, { roles: ['quality-officer'] });
  quality = await signedIn(house, person);
  const lot = await aLotLoaded(house, plant);
  await lotLeaves(house, plant, lot.delivery);
  lotId = lot.run.lotId;
  bag = lot.bag;
  palletSscc = lot.pallets[0]?.sscc ?? '';
});
afterAll(() => house.close());

const told = { kind: 'exercise', hazard: 'safety', reason: 'Yearly exercise' };
const recallCount = async () => (await recallPage(from, plant.siteId, { before: null, limit: 200 })).length;
const typeOf = (answer: { body: unknown }): string => (answer.body as { type: string }).type;

/** Opens one from the page's own form, and follows to its page. */
async function opened(fields: Readonly<Record<string, string>> = {}): Promise<string> {
  const answer = await quality.send('/quality/recalls/new', { ...told, scopes: `lot:${lotId}`, ...fields });
  expect(answer.status).toBe(303);
  return (answer.headers['location'] ?? '').split('/').at(-1) ?? '';
}
const mark = (id: string, name: string) => quality.send(`/quality/recalls/${id}/marks`, { mark: name });
const keyIn = (id: string, fields: Readonly<Record<string, string>>) =>
  quality.send(`/quality/recalls/${id}/answers`, { customerId: plant.customerId, ...fields });

describe('starting a recall from the page', () => {
  it('offers the whole lot first, then its run and the bags likely in it, for the code of a pack', async () => {
    const page = await quality.get('/quality/recalls/new?code=L6071A1');
    expect(page.text).toContain(`value="lot:${lotId}" checked`);
    expect(page.text).toContain(`value="bulk-bag:${bag.id}"`);
    expect(page.text).not.toContain(`value="bulk-bag:${bag.id}" checked`);
  });

  it.each([
    ['a bag', () => bag.number, () => `value="bulk-bag:${bag.id}" checked`],
    ['a pallet', () => palletSscc, () => `value="lot:${lotId}" checked`],
  ])('takes %s', async (_, code, expected) => {
    expect((await quality.get(`/quality/recalls/new?code=${code()}`)).text).toContain(expected());
  });

  it('shows packs, kilograms, pallets and customers before anything is opened', async () => {
    const before = await recallCount();
    const page = await quality.get(`/quality/recalls/new?scopes=lot:${lotId}&look=yes`);
    expect(page.status).toBe(200);
    for (const text of [
      '503',
      'Customers that got some of it: 1',
      'In store: 2 units with 200 packs',
      'Open it and start',
    ]) {
      expect(page.text).toContain(text);
    }
    expect(await recallCount()).toBe(before);
  });

  it('says clearly that a scope is empty, that a time is missing or a code unknown, and opens nothing', async () => {
    const before = await recallCount();
    const line = `place=packing-shift:${plant.lineIds[1]}`;
    for (const [query, text] of [
      ['look=yes', 'Nothing falls under this recall'],
      [`look=yes&${line}&fromAt=2026-03-12T07:10`, 'Nothing falls under this recall'],
      [`look=yes&${line}`, 'The time is missing'],
      [`look=yes&${line}&fromAt=2026-03-29T02:30`, 'did not show this time'],
      ['code=X999999', 'X999999'],
    ] as const) {
      const page = await quality.get(`/quality/recalls/new?${query}`);
      expect([page.status, page.text.includes(text), query]).toEqual([200, true, query]);
    }
    const sent = await quality.send('/quality/recalls/new', told);
    expect([sent.status, sent.text.includes('Nothing falls under this recall')]).toEqual([409, true]);
    expect(await recallCount()).toBe(before);
  });

  it('begins with a hold and is named on its file', async () => {
    const hold = await house
      .get(PlaceHold)
      .execute(asking(plant.actor), { kind: 'lot', id: lotId, reason: 'complaint by telephone' });
    const page = await quality.get(`/quality/recalls/new?hold=${hold.id}`);
    expect(page.text).toContain(`value="lot:${lotId}" checked`);
    const id = await opened({ originKind: 'hold', originId: hold.id });
    expect((await quality.get(`/quality/holds/${hold.id}`)).text).toContain(`/quality/recalls/${id}`);
    expect((await quality.get(`/quality/recalls/${id}`)).text).toContain(hold.number);
  });

  it('is for quality alone; others read', async () => {
    const auditor = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['auditor'] }));
    const id = await opened();
    expect((await auditor.get('/quality/recalls/new')).status).toBe(403);
    expect((await auditor.send(`/quality/recalls/${id}/marks`, { mark: 'clock-stopped' })).status).toBe(403);
    const page = await auditor.get(`/quality/recalls/${id}`);
    expect([page.status, page.text.includes('sign-form')]).toEqual([200, false]);
    expect((await auditor.get('/quality/recalls')).status).toBe(200);
  });
});

describe('the page of a recall', () => {
  it('has the sums of the JSON, and keeps accounted, recovered and closed out apart', async () => {
    const id = await opened();
    await keyIn(id, { answer: 'returned', packCount: '60', remarks: 'Slip 1' });
    await keyIn(id, { answer: 'confirmed-sold', packCount: '150' });
    const { figures } = (await quality.get(`/api/recalls/${id}`)).body as { figures: RecallFigures };
    expect(figures.packs).toMatchObject({ produced: 503, inStore: 200, dispatched: 300, unaccounted: 0 });
    const { text } = await quality.get(`/quality/recalls/${id}`);
    const row = (head: string): string[] => cellsAfter(text, head);
    const kilograms = (milligrams: number): string => (Math.round(milligrams / 100_000) / 10).toFixed(1);
    for (const [head, part] of [
      ['In store', 'inStore'],
      ['Dispatched (with what came back since)', 'dispatched'],
      ['Used up: rejects', 'rejects'],
      ['Used up: retained samples', 'retained'],
      ['Unaccounted (the difference)', 'unaccounted'],
      ['Produced', 'produced'],
    ] as const) {
      expect([head, ...row(head)]).toEqual([head, String(figures.packs[part]), kilograms(figures.milligrams[part])]);
    }
    expect(text).toContain('100.00 % of the packs produced');
    expect(text).toContain('20.00 % of the packs dispatched');
    expect(text).toContain('70.00 % of the packs dispatched');
    expect(text).toContain('Slip 1');
  });

  it('shows the form again with what was keyed in, and says that answers contradict what was sent', async () => {
    const id = await opened();
    const wrong = await keyIn(id, { answer: 'returned', remarks: 'Slip 7' });
    expect([wrong.status, wrong.text.includes('Slip 7')]).toEqual([422, true]);
    await keyIn(id, { answer: 'returned', packCount: '301' });
    const page = await quality.get(`/quality/recalls/${id}`);
    expect(page.text).toContain('Customers answered for more than was sent to them');
    const answers = /answers\/([0-9a-f-]{36})\/withdrawal/.exec(page.text)?.[1] ?? '';
    const back = { why: 'incorrect-data', reason: 'mistyped' };
    await quality.send(`/quality/recalls/${id}/answers/${answers}/withdrawal`, back);
    expect((await quality.get(`/quality/recalls/${id}`)).text).not.toContain('for more than was sent');
  });

  it('places the holds of a recall, never of an exercise, and prints the notice to a customer', async () => {
    const exercise = await opened({ scopes: `bulk-bag:${bag.id}` });
    expect((await quality.get(`/quality/recalls/${exercise}`)).text).not.toContain('holds-form');
    const refused = await quality.send(`/quality/recalls/${exercise}/holds`, {});
    expect(refused.status).toBe(409);
    const id = await opened({ kind: 'recall', scopes: `bulk-bag:${bag.id}` });
    expect((await quality.send(`/quality/recalls/${id}/holds`, {})).status).toBe(303);
    const [hold] = await openHolds(from, [{ kind: 'bulk-bag', id: bag.id }]);
    expect((await quality.get(`/quality/recalls/${id}`)).text).toContain(hold?.number);
    const notice = await quality.get(`/quality/recalls/${id}/notices/${plant.customerId}`);
    for (const text of ['please act at once', '300 packs', 'L6071A1']) expect(notice.text).toContain(text);
  });

  it('is found by its number in the search box, typed anyhow', async () => {
    const id = await opened();
    const { number } = (await quality.get(`/api/recalls/${id}`)).body as { number: string };
    const typed = number.toLowerCase().replaceAll('-', ' ');
    const found = await quality.get(`/thread?code=${encodeURIComponent(typed)}`);
    expect([found.status, found.headers['location']]).toEqual([303, `/quality/recalls/${id}`]);
    expect((await quality.get(`/api/thread?code=${number}`)).body).toMatchObject({ recall: { id } });
    expect((await quality.get('/quality/recalls')).text).toContain(number);
  });
});

describe('signing a recall over HTTP', () => {
  it('asks for the clock first, then for the proof, takes the right one once, and gives report and figures', async () => {
    const id = await opened();
    const sign = (proof: object) => quality.post(`/api/recalls/${id}/signing`, proof);
    expect(typeOf(await sign({ password: person.password }))).toBe('problem:recall-clock-running');
    expect((await mark(id, 'clock-stopped')).status).toBe(303);
    expect(typeOf(await sign({}))).toBe('problem:proof-needed');
    expect(typeOf(await sign({ password: 'seven grey heron' }))).toBe('problem:proof-failed');
    expect((await quality.get(`/api/recalls/${id}/signing`)).status).toBe(404);
    const signed = await sign({ password: person.password });
    expect([signed.status, signed.body]).toMatchObject([201, { id, packs: { produced: 503 } }]);
    expect(typeOf(await sign({ password: person.password }))).toBe('problem:recall-signed');
    const { paperId } = signed.body as { paperId: string };
    const kept = (await quality.get(`/api/recalls/${id}/signing`)).body as { figures: object; paperId: string };
    expect(kept).toMatchObject({ paperId, figures: { packs: { produced: 503, accountedPercent: '100.00' } } });
    const file = await quality.get(`/papers/${paperId}/file`);
    expect([file.status, file.headers['content-type']]).toEqual([200, 'application/pdf']);
    const journal = await quality.get('/api/journal');
    expect(journal.text).not.toContain(person.password);
  });

  it('shows the page again where the proof does not hold, keeps the words and never the password', async () => {
    const id = await opened();
    await mark(id, 'clock-stopped');
    const fields = { explanation: 'Thirty packs lie on the table', password: 'wrong words' };
    const again = await quality.send(`/quality/recalls/${id}/signing`, fields);
    expect([again.status, again.text.includes('Thirty packs lie')]).toEqual([409, true]);
    expect(again.text).not.toContain('wrong words');
    const signed = await quality.send(`/quality/recalls/${id}/signing`, { ...fields, password: person.password });
    expect(signed.status).toBe(303);
    const page = await quality.get(`/quality/recalls/${id}`);
    expect(page.text).toContain('Signed by');
    expect(page.text).toContain('/papers/');
    expect(page.text).not.toContain('answer-form');
  });
});

/** The cells of the row that a head names, as text. */
function cellsAfter(html: string, head: string): string[] {
  const row = html.split('<tr').find((one) => one.includes(`>${head}</th>`)) ?? '';
  return [...row.matchAll(/<td[^>]*>([^<]*)<\/td>/g)].map(([, text]) => (text ?? '').replaceAll(/[\u2009\u202f]/g, ''));
}
