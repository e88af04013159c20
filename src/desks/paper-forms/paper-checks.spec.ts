import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { ChangeCheckPlan } from '../../line-checks/change-check-plan.js';
import { versionsOfPlan } from '../../line-checks/check-plans.js';
import { lineChecksOf } from '../../line-checks/line-checks.js';
import { openPointsOf } from '../../open-points/open-points.js';
import { Papers } from '../../platform/printing/papers.js';
import { readerOf } from '../../../test/support/a-bag.js';
import { aCheckPlan } from '../../../test/support/a-check-plan.js';
import { aPerson, signedIn, type SignedInPerson, type TestPerson } from '../../../test/support/a-person.js';
import { aPlant, type Plant } from '../../../test/support/a-plant.js';
import { aStartedRun, aTippedBag } from '../../../test/support/a-tip.js';
import { asking, openHouse, type TestHouse } from '../../../test/support/house.js';
import { pageCount, symbolsOf, textOf } from '../../../test/support/read-pdf.js';
import { rowCounts } from './form-kinds.js';
import { findPaperForm, paperFormPage, type PaperForm } from './paper-forms.js';

let house: TestHouse;
let plant: Plant;
let lead: TestPerson;
let writer: TestPerson;
let me: SignedInPerson;
let plans: { readonly weigher: string; readonly detector: string; readonly sieve: string };
let sheet: PaperForm;

const detector = {
  kind: 'metal-detection' as const,
  station: 'Detector',
  everyMinutes: 120,
  needsSecondPerson: true,
  testPieces: [
    { code: 'fe', says: 'Red card', material: 'ferrous' as const, sphereMicrometres: 2500 },
    { code: 'sus', says: 'Green card', material: 'stainless' as const, sphereMicrometres: 3500 },
  ],
};

async function printed(by: SignedInPerson, lineId: string = plant.lineIds[0]): Promise<PaperForm> {
  const answer = await by.send('/paper-forms', { lineId, kinds: 'checks' });
  expect(answer.status).toBe(303);
  const [form] = await paperFormPage(readerOf(house), plant.siteId, { before: null, limit: 1 });
  if (form?.facts.kind !== 'checks') throw new Error('no sheet of checks');
  return form;
}

const pdfOf = async (form: PaperForm): Promise<Buffer> => (await house.get(Papers).fileOf(form.id)).bytes;

function keyIn(row: number, fields: Readonly<Record<string, string>>) {
  const path = `/paper-forms/${sheet.facts.number}/rows/${row}/checks`;
  return me.send(path, { writtenBy: writer.personId, versionId: fields['planId'] ?? '', ...fields });
}

const checksOf = (planId: string) => lineChecksOf(readerOf(house), plant.siteId, { planId, before: null, limit: 20 });

const causes = async (): Promise<readonly string[]> =>
  (await openPointsOf(readerOf(house), plant.siteId, { state: 'open', limit: 50 })).map(({ cause }) => cause);

beforeAll(async () => {
  house = await openHouse();
  plant = await aPlant(house);
  lead = await aPerson(house, plant.siteId, { name: 'A. Lead' });
  writer = await aPerson(house, plant.siteId, { name: 'N. Writer' });
  house.clock.set('2026-03-12T20:00:00.000Z');
  await aTippedBag(house, plant, { netGrams: 1_000_000 });
  await aStartedRun(house, plant);
  me = await signedIn(house, lead);
});
afterAll(() => house.close());

describe('a sheet of line checks', () => {
  it('is refused for a line without plans, before any other sheet is printed', async () => {
    const answer = await me.send('/paper-forms', { lineId: plant.lineIds[0], kinds: 'checks' });
    expect([answer.status, answer.text]).toEqual([409, expect.stringContaining('has no checks to print')]);
    expect(answer.text).toMatch(/value="checks" checked/);
    expect((await me.get('/paper-forms')).text).not.toMatch(/value="checks" checked/);
  });

  it('names the checks of the line by letters, with when they are due and their numbered pieces, above blank rows', async () => {
    plans = {
      weigher: await aCheckPlan(house, plant),
      detector: await aCheckPlan(house, plant, detector),
      sieve: await aCheckPlan(house, plant, { kind: 'sieve', station: 'Sieve', everyMinutes: 480, testPieces: [] }),
    };
    expect((await me.get('/paper-forms')).text).toMatch(/value="checks" checked/);
    sheet = await printed(me);
    const pdf = await pdfOf(sheet);
    expect(pageCount(pdf)).toBe(1);
    expect((await symbolsOf(pdf)).map(({ text }) => text)).toEqual([sheet.facts.number]);
    const words = textOf(pdf);
    for (const part of [
      'LINE CHECKS',
      'Weigher (weigher) · every 60 min',
      '1: Test pack 2 kg',
      'Detector (metal detection) · every 120 min · two people',
      '1: Red card, ',
      '2: Green card, ',
      '2.5 mm',
      'Box 1: a tick or a cross.',
      'done at once',
      'CAUTION',
    ]) {
      expect(words).toContain(part);
    }
    for (let row = 1; row <= rowCounts.checks; row += 1) expect(words.split('\n')).toContain(String(row));
  });

  it('speaks the language of who had it printed, sizes too', async () => {
    const ana = await aPerson(house, plant.siteId, { language: 'es' });
    const words = textOf(await pdfOf(await printed(await signedIn(house, ana))));
    for (const part of ['CONTROLES DE LÍNEA', 'Detector (detección de metales)', '2,5 mm', 'dos personas']) {
      expect(words).toContain(part);
    }
  });

  it('takes the rows of a line of many checks onto a page of their own, high enough to write in', async () => {
    for (let place = 1; place <= 18; place += 1) {
      await aCheckPlan(house, plant, { ...detector, lineId: plant.lineIds[1], station: `Detector ${place}` });
    }
    const pdf = await pdfOf(await printed(me, plant.lineIds[1]));
    expect(pageCount(pdf)).toBe(2);
    expect(textOf(pdf)).toContain('Detector 18');
  });
});

describe('checks that were written on paper', () => {
  beforeAll(async () => {
    // The server is back at a quarter to seven in the morning, by the plant's clock.
    house.clock.set('2026-03-13T05:45:00.000Z');
    me = await signedIn(house, lead);
  });

  it('are keyed in by the letter that the row names, with the written time, by the command of the page', async () => {
    const page = `/paper-forms/${sheet.facts.number}`;
    const choice = (await me.get(`${page}?row=1`)).text;
    expect(choice).toContain(`href="${page}?row=1&amp;check=B#row"`);
    expect(choice).not.toContain('name="piece0"');
    expect((await me.get(`${page}?row=1&check=B`)).text).toContain(`name="planId" value="${plans.detector}"`);
    const seen = { planId: plans.detector, secondPersonId: lead.personId, time: '23:10' };
    const answer = await keyIn(1, { ...seen, all: 'passed', packCount: '' });
    expect([answer.status, answer.headers['location']]).toEqual([303, `${page}?row=2#row`]);
    const [check] = await checksOf(plans.detector);
    // The lead, who keys it in, saw it; the writer made it: two people, though the entry is the lead's.
    expect(check).toMatchObject({
      occurredAt: '2026-03-12T22:10:00.000Z',
      passed: true,
      secondPersonId: lead.personId,
    });
    expect(await causes()).not.toContain('check-happened-against-rule');
    const rows = (await me.get(page)).text;
    expect(rows).toContain('B · Detector (metal detection): passed');
    expect(rows).toContain('written by N. Writer, keyed in by A. Lead');
  });

  it('count a reading against the plan of then, and a failed one opens a point for quality', async () => {
    await house.get(ChangeCheckPlan).execute(asking(plant.actor), plans.weigher, {
      ...{ station: 'Weigher', everyMinutes: 60, graceMinutes: 10 },
      testPieces: [{ code: 'five', says: 'Test pack 5 kg', knownMilligrams: 5_000_000, allowedMilligrams: 2000 }],
    });
    const weighed = { planId: plans.weigher, time: '0:30', action: 'line-stopped', reading0: '2003,5' };
    // The page showed the plan of now; what it asked for at half past midnight is shown, and taken.
    const now = (await versionsOfPlan(readerOf(house), plans.weigher)).at(-1)?.id ?? '';
    const shown = await keyIn(2, { ...weighed, versionId: now });
    expect([shown.status, shown.text]).toEqual([409, expect.stringContaining('asked for other pieces')]);
    expect(shown.text).toContain('Test pack 2 kg');
    const kilograms = await keyIn(2, { ...weighed, reading0: '2,0035' });
    expect([kilograms.status, kilograms.text]).toEqual([
      422,
      expect.stringContaining('kilograms where grams are expected'),
    ]);
    expect((await keyIn(2, weighed)).status).toBe(303);
    expect((await checksOf(plans.weigher))[0]).toMatchObject({
      ...{ occurredAt: '2026-03-12T23:30:00.000Z', passed: false, action: 'line-stopped' },
      results: [{ code: 'two', passed: false, measuredMilligrams: 2_003_500 }],
    });
    expect(await causes()).toContain('line-check-failed');
    expect((await me.get(`/paper-forms/${sheet.facts.number}`)).text).toContain('A · Weigher (weigher): failed');
  });

  it('are asked for what is missing, with what was entered, and refused for a check that is not on the sheet', async () => {
    const missing = await keyIn(3, { planId: plans.sieve, time: '1:00' });
    expect([missing.status, missing.text]).toEqual([422, expect.stringContaining(`value="${plans.sieve}"`)]);
    const other = await aCheckPlan(house, plant, { kind: 'seal', station: 'Seal', testPieces: [] });
    const refused = await keyIn(3, { planId: other, time: '1:00', all: 'passed' });
    expect([refused.status, refused.text]).toEqual([409, expect.stringContaining('does not stand on sheet')]);
    const twice = await keyIn(1, { planId: plans.sieve, time: '1:00', all: 'passed' });
    expect([twice.status, twice.text]).toEqual([409, expect.stringContaining('keyed in')]);
    const found = await findPaperForm(readerOf(house), plant.siteId, sheet.facts.number);
    expect(found.rows.slice(0, 3).map(({ state }) => state)).toEqual(['keyed', 'keyed', 'blank']);
  });

  it('are keyed in by those who may check lines only', async () => {
    const clerk = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['dispatch-clerk'] }));
    const path = `/paper-forms/${sheet.facts.number}/rows/3/checks`;
    expect((await clerk.send(path, { planId: plans.sieve, time: '1:00', all: 'passed' })).status).toBe(403);
  });
});
