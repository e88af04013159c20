import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { aCheckPlan, failed } from '../../../test/support/a-check-plan.js';
import { aBag } from '../../../test/support/a-bag.js';
import { aPallet } from '../../../test/support/a-pallet.js';
import { aPerson, signedIn, type SignedInPerson } from '../../../test/support/a-person.js';
import { aDevice, aQueue } from '../../../test/support/a-queue.js';
import { aPlant, type Plant } from '../../../test/support/a-plant.js';
import { aRun, packsCounted } from '../../../test/support/a-run.js';
import { asking, openHouse, type TestHouse } from '../../../test/support/house.js';
import { pageText } from '../../../test/support/page-text.js';
import { plansOfLine } from '../../line-checks/check-plans.js';
import { lineChecksOf } from '../../line-checks/line-checks.js';
import { ChangeCode } from '../../packing/change-code.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';

let house: TestHouse;
let plant: Plant;
let from: ReadFrom;
let lead: SignedInPerson;
let quality: SignedInPerson;
let auditor: SignedInPerson;
let weigher: string;
let runId: string;

beforeAll(async () => {
  house = await openHouse();
  from = house.app.get<ReadFrom>(READER);
  plant = await aPlant(house);
  lead = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['line-lead'], name: 'Ruth Ansel' }));
  quality = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['quality-officer'] }));
  auditor = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['auditor'] }));
  weigher = await aCheckPlan(house, plant);
  runId = (await aRun(house, plant, { packCount: 0 })).runId;
  await house.get(ChangeCode).execute(asking(plant.actor), runId, { code: 'L6071A1', packCount: 0 });
});
afterAll(() => house.close());

const line = () => plant.lineIds[0];
const checkPath = (planId: string) => `/line/${line()}/checks/${planId}`;
const last = async () => (await lineChecksOf(from, plant.siteId, { limit: 1 }))[0];

describe('the page of what is due', () => {
  it('shows a lead what to check now, and an auditor the same without a way to do it', async () => {
    const page = await lead.get(`/line/${line()}/checks`);
    expect(page.status).toBe(200);
    expect(page.text).toContain('Weigher');
    expect(page.text).toContain('due, 0 min ago');
    expect(page.text).toContain(`href="${checkPath(weigher)}"`);
    expect((await auditor.get(`/line/${line()}/checks`)).status).toBe(200);
    expect((await auditor.get(checkPath(weigher))).status).toBe(403);
  });

  it('says where nothing is planned, and what is not there', async () => {
    expect((await lead.get(`/line/${plant.lineIds[1]}/checks`)).text).toContain('No checks are planned');
    expect((await lead.get(`/line/${weigher}/checks`)).status).toBe(404);
    expect((await lead.get(`/line/${plant.lineIds[1]}/checks/${weigher}`)).status).toBe(404);
  });
});

describe('a check on its page', () => {
  it('of a weigher takes its readings, and one press that signs what they come to', async () => {
    const page = await lead.get(checkPath(weigher));
    expect(page.text).not.toContain('name="all"');
    expect(page.text).toMatch(/name="reading0"[^>]*data-known="2000000" data-allowed="2000"/);
    const sent = await lead.send(checkPath(weigher), { reading0: '2001,9', signedAs: 'passed' });
    expect([sent.status, sent.headers['location']]).toEqual([303, `/line/${line()}/checks`]);
    expect(await last()).toMatchObject({
      passed: true,
      personId: expect.any(String),
      results: [{ code: 'two', passed: true, measuredMilligrams: 2_001_900 }],
    });
    expect((await lead.get(`/line/${line()}/checks`)).text).toContain('in 60 min');
  });

  it('of a weigher shows what the readings come to before anything is recorded, where no script has', async () => {
    house.clock.pass(20);
    const before = await last();
    const seen = await lead.send(checkPath(weigher), { reading0: '2002.001' });
    expect(seen.status).toBe(409);
    expect(seen.text).toContain('Nothing is recorded yet');
    expect(seen.text).toContain('+2.001 g, beyond ± 2 g: FAILED');
    expect(seen.text).toContain('name="signedAs" value="failed"');
    expect(seen.text).toContain('SIGN: FAILED');
    // Another reading than the one that was shown is shown first, too.
    expect((await lead.send(checkPath(weigher), { reading0: '2002', signedAs: 'failed' })).status).toBe(409);
    expect(await last()).toEqual(before);
  });

  it('of a weigher is shown again with what was entered where something is missing or contradicts', async () => {
    const both = await lead.send(checkPath(weigher), { reading0: '2000', piece0: 'failed', signedAs: 'failed' });
    expect(both.status).toBe(422);
    expect(both.text).toContain('Either a reading');
    const nothing = await lead.send(checkPath(weigher), { all: 'passed', note: 'jammed' });
    expect(nothing.status).toBe(422);
    expect(nothing.text).toContain('No reading of Test pack 2 kg');
    expect(nothing.text).toContain('value="jammed"');
    const idle = await lead.send(checkPath(weigher), { piece0: 'failed', signedAs: 'failed' });
    expect(idle.status).toBe(409);
    expect(idle.text).toContain('Say what was done at once');
    expect(idle.text).not.toContain('data-if-failed="" hidden');
  });

  it.each([
    ['2,0004', 'kilograms where grams are expected'],
    ['2.000', 'a comma between thousands'],
    ['2000400', 'milligrams where grams are expected'],
    ['-2', 'the zero and the tare'],
    ['20000.4', 'more than 3 times'],
    ['NaN', 'This takes a'],
    ['1e3', 'This takes a'],
  ])('refuses a reading of %s with the likely reason', async (reading0, says) => {
    const before = await last();
    const refused = await lead.send(checkPath(weigher), { reading0, signedAs: 'passed' });
    expect(refused.status).toBe(422);
    expect(refused.text).toContain(says);
    expect(refused.text).toContain(`value="${reading0}"`);
    expect(await last()).toEqual(before);
  });

  it('of a weigher that a device kept is judged as it comes, whatever its page had said of it', async () => {
    const tablet = await aDevice(house, plant.siteId);
    const queue = await aQueue(house, await aPerson(house, plant.siteId, { roles: ['line-lead'] }), tablet);
    const planId = await aCheckPlan(house, plant, { station: 'Second weigher' });
    const sent = await queue.send(checkPath(planId), { reading0: '2003', signedAs: 'passed', action: 'adjusted' });
    expect(sent.status).toBe(200);
    expect(await last()).toMatchObject({ planId, passed: false, results: [{ measuredMilligrams: 2_003_000 }] });
    await queue.send(checkPath(planId), { reading0: '2,003', signedAs: 'passed' });
    expect(await lineChecksOf(from, plant.siteId, { planId, limit: 50 })).toHaveLength(1);
  });

  it('refuses the same over JSON, and where a check is corrected', async () => {
    const results = [{ code: 'two', measuredMilligrams: 2000 }];
    const route = await lead.post(`/api/check-plans/${weigher}/checks`, { results });
    expect(route.status).toBe(422);
    expect(route.body).toMatchObject({
      fields: [{ field: 'results.0.measuredMilligrams', type: 'problem:reading-is-thousandth' }],
    });
    const id = (await last())?.id ?? '';
    const form = { why: 'incorrect-data', reason: 'misread', results };
    expect((await quality.post(`/api/line-checks/${id}/correction`, form)).status).toBe(422);
    expect((await last())?.id).toBe(id);
  });

  it('of a code takes the press that the pack says the same, or what it says', async () => {
    const coder = await aCheckPlan(house, plant, { kind: 'printed-code', station: 'Coder', testPieces: [] });
    const page = await lead.get(checkPath(coder));
    const code = /name="sameCode" value="([^"]+)"/.exec(page.text)?.[1] ?? '';
    expect(code).toMatch(/^L\w+/);
    await lead.send(checkPath(coder), { sameCode: code });
    expect(await last()).toMatchObject({ passed: true, readCode: code });
    house.clock.pass(5);
    const sent = await lead.send(checkPath(coder), { readCode: 'L50001X', action: 'line-stopped' });
    expect(sent.headers['location']).toMatch(/^\/checks\//);
    expect(await last()).toMatchObject({ passed: false, intendedCode: code });
  });

  it('asks who saw it too where the plan does', async () => {
    const sieve = await aCheckPlan(house, plant, {
      kind: 'sieve',
      station: 'Sieve',
      testPieces: [],
      needsSecondPerson: true,
    });
    expect((await lead.get(checkPath(sieve))).text).toContain('Who saw it too');
    expect((await lead.send(checkPath(sieve), { all: 'passed' })).status).toBe(409);
  });
});

describe('a check that failed', () => {
  it('shows what it makes suspect with one press to hold it, and none once all is held', async () => {
    house.clock.pass(40);
    await packsCounted(house, plant, runId, 700);
    const pallet = await aPallet(house, plant, { run: runId, placeId: plant.placeIds.store });
    const sent = await lead.send(checkPath(weigher), {
      ...{ piece0: 'failed', signedAs: 'failed', action: 'line-stopped' },
    });
    const path = sent.headers['location'] as string;
    const page = await lead.get(path);
    expect(pageText(page.text)).toContain('Hold these 700 packs: 1 400.0 kg');
    expect(pageText(page.text)).toMatch(/In store 480 960\.0 .*On no pallet[^0-9]*220 440\.0 .*All of it 700 1 400\.0/);
    expect(page.text).toContain(pallet.sscc);
    expect(page.text).toContain('LANE-1');
    expect((await auditor.get(path)).text).not.toContain('Hold these');
    expect((await auditor.send(`${path}/hold`, {})).status).toBe(403);
    const held = await lead.send(`${path}/hold`, {});
    expect([held.status, held.headers['location']]).toEqual([303, path]);
    const after = await lead.get(path);
    expect(after.text).toContain('Nothing is left to hold');
    expect(pageText(after.text)).toMatch(/All of it 700 1 400\.0 0 0\.0/);
    expect(after.text).not.toContain('Hold these');
    expect((await lead.send(`${path}/hold`, {})).status).toBe(409);
  });

  it('is where its open point leads quality', async () => {
    const point = await quality.get(`/checks/plans/${weigher}`);
    expect([point.status, point.headers['location']]).toEqual([303, `/checks/${(await last())?.id ?? ''}`]);
    expect((await quality.get('/open-points')).text).toContain('class="banner stop"');
  });

  it('is taken back by quality only', async () => {
    const id = (await last())?.id ?? '';
    expect((await lead.get(`/checks/${id}`)).text).not.toContain('This check was not made');
    const form = { why: 'did-not-occur', reason: 'the other line' };
    expect((await lead.send(`/checks/${id}/correction`, form)).status).toBe(409);
    expect((await quality.send(`/checks/${id}/correction`, { why: 'did-not-occur' })).status).toBe(422);
    expect((await quality.send(`/checks/${id}/correction`, form)).status).toBe(303);
    expect((await quality.get(`/checks/${id}`)).text).toContain('was taken back');
  });

  it('of a torn bag offers the bag', async () => {
    const tip = await aCheckPlan(house, plant, {
      kind: 'torn-bag',
      station: 'Tip',
      everyMinutes: null,
      testPieces: [],
    });
    const bag = await aBag(house, plant);
    expect((await lead.get(`${checkPath(tip)}?bag=${bag.number}`)).text).toContain(`value="${bag.number}"`);
    const torn = { bag: bag.number, piece0: 'failed', action: 'bag-set-aside' };
    const sent = await lead.send(checkPath(tip), torn);
    const page = await lead.get(sent.headers['location'] as string);
    expect(page.text).toContain(`Hold bag ${bag.number}`);
    expect((await lead.send(`${sent.headers['location'] ?? ''}/hold`, {})).status).toBe(303);
  });
});

describe('the log of checks', () => {
  it('is read by line, kind and result', async () => {
    await failed(house, plant, weigher);
    const failures = await auditor.get(`/checks?result=failed&kind=weigher&lineId=${line()}`);
    expect(failures.status).toBe(200);
    expect(failures.text).toContain('Line stopped');
    expect((await auditor.get('/checks?kind=sieve&result=failed')).text).toContain('none');
    expect((await auditor.get('/checks?kind=nonsense')).status).toBe(422);
    expect((await auditor.get(`/checks/${runId}`)).status).toBe(404);
  });
});

describe('the set-up of plans', () => {
  it('is for quality: a new plan, its change and its end', async () => {
    expect((await lead.get('/set-up/checks')).status).toBe(403);
    expect((await quality.get('/set-up/checks')).text).toContain('Weigher');
    const path = `/set-up/checks/new?line=${line()}&kind=metal-detection`;
    expect((await quality.get(path)).text).toContain('lock it out');
    const form = {
      lineId: line(),
      kind: 'metal-detection',
      station: 'Detector',
      everyMinutes: '60',
      graceMinutes: '10',
    };
    const piece = { says0: 'Ferrous, card 4', material0: 'ferrous' };
    const incomplete = await quality.send(path, { ...form, ...piece });
    expect(incomplete.status).toBe(409);
    expect(incomplete.text).toContain('value="Ferrous, card 4"');
    expect((await quality.send(path, { ...form, ...piece, sphere0: '2,5', events: 'run-start' })).status).toBe(303);
    const plan = (await plansOfLine(from, line(), house.clock.now())).find(({ kind }) => kind === 'metal-detection');
    expect(plan).toMatchObject({ events: ['run-start'], testPieces: [{ code: 'p1', sphereMicrometres: 2500 }] });
    house.clock.pass(1);
    const at = `/set-up/checks/${plan?.planId ?? ''}`;
    expect((await quality.get(at)).text).toContain('value="2.5"');
    const changed = { station: 'Detector', graceMinutes: '5', everyMinutes: '30', ...piece, sphere0: '2.0' };
    expect((await quality.send(at, changed)).status).toBe(303);
    expect((await quality.send(at, { ...changed, graceMinutes: 'soon' })).status).toBe(422);
    house.clock.pass(1);
    expect((await quality.send(`${at}/end`, {})).status).toBe(422);
    expect((await quality.send(`${at}/end`, { reason: 'taken out' })).status).toBe(303);
    expect((await quality.get('/set-up/checks')).text).not.toContain('Detector');
  });
});
