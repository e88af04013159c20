import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { aPackWeigher } from '../../../test/support/a-pack-weigher.js';
import { aPerson, signedIn, type SignedInPerson } from '../../../test/support/a-person.js';
import { aPlant, type Plant } from '../../../test/support/a-plant.js';
import { aPackScale, aRun, type RunOpened } from '../../../test/support/a-run.js';
import { asking, openHouse, type TestHouse } from '../../../test/support/house.js';
import { pageText } from '../../../test/support/page-text.js';
import { SetHandPlan } from '../../fill-weight/hand-plan/set-hand-plan.js';
import { handPlansOf } from '../../fill-weight/hand-plan/hand-plans.js';
import { handSamplesOf } from '../../fill-weight/mean-nets.js';
import { watchedWeighers } from '../../fill-weight/silence/silence-settings.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';

let house: TestHouse;
let plant: Plant;
let from: ReadFrom;
let lead: SignedInPerson;
let quality: SignedInPerson;
let auditor: SignedInPerson;
let run: RunOpened;
let scaleId: string;

beforeAll(async () => {
  house = await openHouse();
  from = house.app.get<ReadFrom>(READER);
  plant = await aPlant(house);
  lead = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['line-lead'] }));
  quality = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['quality-officer'] }));
  auditor = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['auditor'] }));
  run = await aRun(house, plant);
  scaleId = await aPackScale(house, plant);
  house.clock.pass(10);
});
afterAll(() => house.close());

const path = () => `/line/${plant.lineIds[0]}/hand-samples`;
const nets = (...grams: string[]) =>
  Object.fromEntries([['packs', String(grams.length)], ...grams.map((text, place) => [`net${place}`, text])]) as Record<
    string,
    string
  >;
const weigh = (...grams: string[]) => lead.send(path(), { ...nets(...grams), scaleId });
const samples = () => handSamplesOf(from, run.runId);

describe('the page of a hand sample', () => {
  it('asks for as many packs as are planned, else five, or as many as are asked for', async () => {
    const fields = (text: string) => text.match(/name="net\d+"/g)?.length;
    expect(fields((await lead.get(path())).text)).toBe(5);
    expect(fields((await lead.get(`${path()}?packs=3`)).text)).toBe(3);
    expect((await lead.get(`${path()}?packs=21`)).status).toBe(422);
    const plan = { lineId: plant.lineIds[0], everyMinutes: 30, packCount: 4, graceMinutes: 10 };
    await house.get(SetHandPlan).execute(asking(plant.actor), plan);
    const page = await lead.get(path());
    expect(fields(page.text)).toBe(4);
    const text = pageText(page.text);
    expect(text).toContain('A sample of 4 packs is due now');
    expect(text).toContain('Nominal 2 000 g · T1 1 970.0 g · T2 1 940.0 g.');
    expect(pageText((await lead.get(`/line/${plant.lineIds[0]}`)).text)).toContain('A hand sample of 4 packs is due.');
    expect(pageText((await lead.get(`/line/${plant.lineIds[1]}/hand-samples`)).text)).toContain('No run is open');
    expect((await auditor.get(path())).status).toBe(403);
  });

  it('takes grams with comma or point, and says the mean, the range, s and what to do', async () => {
    const sent = await weigh('2001,0', '2003.0', '1999', '2001');
    expect(sent.status).toBe(303);
    const page = await auditor.get(sent.headers['location'] as string);
    const text = pageText(page.text);
    expect(text).toContain('IN ORDER: the mean is 1.00 g above nominal. Nothing to do.');
    expect(text).toContain('Mean (g) 2 001.00 Off nominal (g)');
    expect(text).toContain('Range (g) 4.0');
    expect(text).toContain('s (g) 1.63');
    // The label says the unit; the figure does not say it again.
    expect(text).not.toContain('4.0 g');
    expect(text).not.toContain('Correct or withdraw it');
    expect((await samples()).at(-1)).toMatchObject({ netDecigrams: [20_010, 20_030, 19_990, 20_010], scaleId });
    expect(pageText((await lead.get(path())).text)).toContain('The next sample of 4 packs is due in 30 min.');
  });

  it.each([
    [['1939.9', '2060'], 'STOP: 1 of 2 packs is beyond T2.'],
    [['1969.9', '1969', '2060'], 'STOP: 2 of 3 packs are beyond T1'],
    [['1969.9', '2040'], 'WEIGH AGAIN: one of 2 packs is beyond T1.'],
    [['1998', '1998'], 'RAISE: the mean is 2.00 g below nominal.'],
    [['1999.9', '2000'], 'WEIGH AGAIN: the mean is 0.05 g below nominal'],
  ])('says of %j what to do', async (grams, says) => {
    house.clock.pass(1);
    const sent = await weigh(...grams);
    expect(pageText((await lead.get(sent.headers['location'] as string)).text)).toContain(says);
  });

  it('is shown again with what was entered where a weight is missing, is none, or looks like kilograms', async () => {
    const before = (await samples()).length;
    const missing = await lead.send(path(), { ...nets('2001'), packs: '2', scaleId });
    expect(missing.status).toBe(422);
    expect(missing.text).toContain('value="2001"');
    expect(missing.text).toMatch(/name="net1"[^>]*autofocus|autofocus[^>]*name="net1"/);
    expect((await weigh('2001', 'heavy')).status).toBe(422);
    expect((await weigh('2001', '0')).status).toBe(422);
    const kilograms = await weigh('2.001', '2.003');
    expect(kilograms.status).toBe(409);
    expect(pageText(kilograms.text)).toContain('they look like kilograms. Enter grams.');
    const far = await weigh('2001', '1200');
    expect(pageText(far.text)).toContain('Pack 2 of the sample weighs 1200.0 g');
    expect((await lead.send(path(), nets('2001', '2002'))).status).toBe(422);
    expect(await samples()).toHaveLength(before);
  });

  it('counts a sample once that is sent twice', async () => {
    const before = (await samples()).length;
    const form = { ...nets('2001', '2002'), scaleId };
    const key = randomUUID();
    const [one, two] = [await lead.send(path(), form, key), await lead.send(path(), form, key)];
    expect(one.status).toBe(303);
    expect(one.headers['location']).toBe(two.headers['location']);
    expect(await samples()).toHaveLength(before + 1);
  });

  it('takes a sample that was weighed earlier for the run of then, with a reason', async () => {
    const none = await lead.send(path(), { ...nets('2001', '2002'), scaleId, weighedAt: '2026-03-01T07:00' });
    expect(none.status).toBe(409);
    expect((await lead.get(`/runs/${run.runId}/hand-samples`)).text).toContain('/hand-samples/');
  });
});

describe('a hand sample that was wrong', () => {
  it('is corrected or withdrawn on a page, and says so', async () => {
    house.clock.pass(1);
    const sent = await weigh('2010', '2012');
    const at = sent.headers['location'] as string;
    expect((await lead.get(at)).text).toContain(`${at}/correct`);
    expect(pageText((await lead.get(`${at}/correct`)).text)).toContain('Pack 1 (was 2 010.0 g)');
    const why = { why: 'incorrect-data', reason: 'typed wrongly' };
    expect((await lead.send(`${at}/correct`, why)).status).toBe(422);
    expect((await auditor.send(`${at}/correct`, why)).status).toBe(403);
    const right = await lead.send(`${at}/correct`, { ...why, net1: '2002' });
    expect(right.status).toBe(303);
    expect((await samples()).at(-1)?.netDecigrams).toEqual([20_100, 20_020]);
    expect(pageText((await lead.get(at)).text)).toContain('This sample was taken back.');
    const again = right.headers['location'] as string;
    const gone = await lead.send(`${again}/correct`, { why: 'did-not-occur', reason: 'other line' });
    expect(gone.headers['location']).toBe(`/runs/${run.runId}/hand-samples`);
    expect((await lead.send(`${again}/correct`, { why: 'did-not-occur', reason: 'twice' })).status).toBe(409);
    expect((await lead.get(`/hand-samples/${run.runId}`)).status).toBe(404);
  });
});

describe('the set-up of hand samples and silences', () => {
  it('is for quality: a plan is set and ended, a weigher waited for or not', async () => {
    const at = '/set-up/weighing';
    expect((await lead.get(at)).status).toBe(403);
    const plan = { lineId: plant.lineIds[1], everyMinutes: '60', packCount: '5', graceMinutes: '10' };
    expect((await quality.send(`${at}/plan`, { ...plan, formatId: plant.formatId })).status).toBe(303);
    const wrong = await quality.send(`${at}/plan`, { ...plan, packCount: '50' });
    expect(wrong.status).toBe(422);
    expect(wrong.text).toContain('value="50"');
    const page = pageText((await quality.get(at)).text);
    expect(page).toContain('No pack weigher is set up.');
    const ending = { plan: `${plant.lineIds[1]}/${plant.formatId}`, reason: 'it has a weigher now' };
    expect((await quality.send(`${at}/end`, { ...ending, plan: plant.lineIds[1] })).status).toBe(409);
    expect((await quality.send(`${at}/end`, { ...ending, plan: 'nonsense' })).status).toBe(404);
    expect((await quality.send(`${at}/end`, ending)).status).toBe(303);
    expect((await handPlansOf(from, plant.siteId)).map(({ lineId }) => lineId)).toEqual([plant.lineIds[0]]);
    const { weigherId } = await aPackWeigher(house, plant);
    expect((await quality.send(`${at}/silence`, { weigherId, silentAfterMinutes: '1' })).status).toBe(422);
    expect((await quality.send(`${at}/silence`, { weigherId, silentAfterMinutes: '15' })).status).toBe(303);
    expect(await watchedWeighers(from, plant.siteId)).toMatchObject([{ silentAfterMinutes: 15 }]);
    expect(pageText((await quality.get(at)).text)).toContain('15 min');
    expect((await quality.send(`${at}/silence`, { weigherId })).status).toBe(303);
    expect(pageText((await quality.get(at)).text)).toContain('not waited for');
  });
});
