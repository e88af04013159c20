import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import { aCheckPlan, failed, passed } from '../../../test/support/a-check-plan.js';
import { aPackWeigher, type TestWeigher } from '../../../test/support/a-pack-weigher.js';
import { aPerson, signedIn } from '../../../test/support/a-person.js';
import { aPlant, type Plant } from '../../../test/support/a-plant.js';
import { aRun, packsCounted } from '../../../test/support/a-run.js';
import { asking, openHouse, type TestHouse } from '../../../test/support/house.js';
import { CorrectLineCheck } from '../../line-checks/correct-line-check.js';
import { dueChecks } from '../../line-checks/due-checks.js';
import { lineCheckOf, lineChecksOf } from '../../line-checks/line-checks.js';
import { openPointsOf } from '../../open-points/open-points.js';
import { AddMachine } from '../../people/add-machine.js';
import { canonicalText, sha256 } from '../../platform/canonical-text.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { HoldSinceLastGood } from '../../tracing/hold-since-last-good.js';
import { suspectsOfCheck } from '../../tracing/suspects-of-check.js';

interface Answered {
  readonly type?: string;
  readonly detail?: string;
  readonly fields?: readonly { readonly field: string; readonly type: string; readonly detail: string }[];
  readonly checkId: string;
  readonly passed: boolean;
  readonly action: string | null;
  readonly isRepeated: boolean;
  readonly results: readonly { readonly code: string; readonly readingMilligrams: number }[];
}

let house: TestHouse;
let from: ReadFrom;
let plant: Plant;
let weigher: TestWeigher;
let siteCount = 0;

beforeAll(async () => {
  house = await openHouse();
  from = house.app.get<ReadFrom>(READER, { strict: false });
});
afterAll(() => house.close());
beforeEach(async () => {
  house.clock.set('2026-03-12T06:00:00.000Z');
  siteCount += 1;
  plant = await aPlant(house, { siteCode: `WC${siteCount}` });
  weigher = await aPackWeigher(house, plant);
});

async function sendText(payload: string, token = weigher.token, headers: Record<string, string> = {}) {
  const answer = await house.app
    .getHttpAdapter()
    .getInstance()
    .inject({
      method: 'POST',
      url: '/api/weigher-checks',
      headers: { authorization: `Bearer ${token}`, 'content-type': 'application/json', ...headers },
      payload,
    });
  return { status: answer.statusCode, body: JSON.parse(answer.body) as Answered };
}

/** The check that the weigher made now: 2 kg, 0.4 g over, unless asked otherwise. */
const aCheck = (wishes: object = {}) => ({
  sequence: 1,
  at: house.clock.now(),
  readings: [{ code: 'two', readingGrams: 2000.4, expectedGrams: 2000 }],
  ...wishes,
});
const send = (wishes: object = {}, headers: Record<string, string> = {}) =>
  sendText(JSON.stringify(aCheck(wishes)), weigher.token, headers);
const reading = (readingGrams: unknown) => send({ readings: [{ code: 'two', readingGrams }] });
const checks = () => lineChecksOf(from, plant.siteId, { limit: 50 });
const openCauses = async () =>
  (await openPointsOf(from, plant.siteId, { state: 'open', limit: 50 })).map(({ cause }) => cause);

describe('a check that a weigher made itself', () => {
  it('is a line check like one that a person enters, by the limits of the plan', async () => {
    const planId = await aCheckPlan(house, plant);
    const { runId } = await aRun(house, plant, { packCount: 0 });
    house.clock.pass(5);
    const at = house.clock.now();
    house.clock.pass(5);
    const { status, body } = await send({ at });
    expect(status).toBe(201);
    expect(body).toMatchObject({ planId, station: 'Weigher', sequence: 1, passed: true, isRepeated: false });
    expect(await lineCheckOf(from, plant.siteId, body.checkId)).toMatchObject({
      ...{ planId, runId, occurredAt: at, passed: true, personId: null },
      results: [{ code: 'two', passed: true, measuredMilligrams: 2_000_400 }],
    });
    expect(await dueChecks(from, plant.lineIds[0], house.clock.now())).toMatchObject([
      { word: 'later', minutesLeft: 55 },
    ]);
  });

  it('passes exactly at what the plan allows and fails beyond it, whatever the machine thinks', async () => {
    await aCheckPlan(house, plant);
    expect((await reading(2002)).body).toMatchObject({ passed: true });
    const failed = await send({ sequence: 2, readings: [{ code: 'two', readingMilligrams: 2_002_001 }] });
    expect(failed.body).toMatchObject({ passed: false });
    expect(await openCauses()).toEqual(['line-check-failed']);
  });

  it('that failed makes suspect what one on the page would, and one act holds it', async () => {
    const planId = await aCheckPlan(house, plant);
    const { runId } = await aRun(house, plant, { packCount: 0 });
    house.clock.pass(20);
    await packsCounted(house, plant, runId, 400);
    await passed(house, plant, planId);
    house.clock.pass(30);
    await packsCounted(house, plant, runId, 1000);
    const { checkId } = (await reading(1990)).body;
    const check = await lineCheckOf(from, plant.siteId, checkId);
    expect(await suspectsOfCheck(from, check, house.clock.now())).toMatchObject({
      ranges: [{ runId, fromCount: 400, toCount: 1000 }],
      packCount: 600,
    });
    expect(await house.get(HoldSinceLastGood).execute(asking(plant.actor), { check: checkId })).toMatchObject({
      packCount: 600,
    });
  });

  it('counts once however often it comes, and another one under its sequence is refused', async () => {
    await aCheckPlan(house, plant);
    const first = await send();
    house.clock.pass(3);
    const again = aCheck({ at: '2026-03-12T06:00:00.000Z' });
    expect((await sendText(JSON.stringify(again))).body).toEqual({ ...first.body, isRepeated: true });
    const both = await Promise.all([send({ sequence: 2 }), send({ sequence: 2 })]);
    expect(both.map(({ body }) => body.isRepeated).sort()).toEqual([false, true]);
    expect(await checks()).toHaveLength(2);
    const other = await sendText(JSON.stringify({ ...again, readings: [{ code: 'two', readingGrams: 2001 }] }));
    expect([other.status, other.body.type]).toEqual([409, 'problem:weigher-check-of-other']);
    expect((await send({ series: '2' })).body).toMatchObject({ isRepeated: false });
    expect(await checks()).toHaveLength(3);
  });

  it('that quality took back does not come back with its repetition', async () => {
    await aCheckPlan(house, plant);
    const { checkId } = (await send()).body;
    const form = { why: 'did-not-occur' as const, reason: 'a test pack of the other line' };
    await house.get(CorrectLineCheck).execute(asking(plant.actor), checkId, form);
    expect((await send()).body).toMatchObject({ checkId, isRepeated: true });
    expect(await checks()).toEqual([]);
  });

  it('takes a test pack by code or name, weighed several times: the reading farthest off counts', async () => {
    await aCheckPlan(house, plant);
    const readings = [2000.1, 1997.9, 2001].map((readingGrams) => ({ code: 'TEST PACK 2 KG', readingGrams }));
    expect((await send({ readings })).body).toMatchObject({
      passed: false,
      results: [{ code: 'two', passed: false, readingMilligrams: 1_997_900 }],
    });
  });

  it('may say what was done at once, in the words of the page; said otherwise under its sequence it is refused', async () => {
    await aCheckPlan(house, plant);
    const failed = { readings: [{ code: 'two', readingGrams: 1990 }] };
    const stopped = { ...failed, action: 'line-stopped', note: 'Belt stopped by the weigher' };
    const { status, body } = await send(stopped);
    expect([status, body]).toMatchObject([201, { passed: false, action: 'line-stopped' }]);
    expect(await lineCheckOf(from, plant.siteId, body.checkId)).toMatchObject({
      ...{ action: 'line-stopped', note: 'Belt stopped by the weigher' },
    });
    expect(await openCauses()).toEqual(['line-check-failed']);
    expect((await send(stopped)).body).toMatchObject({ isRepeated: true, action: 'line-stopped' });
    expect((await send({ ...stopped, action: 'adjusted' })).body.type).toBe('problem:weigher-check-of-other');
    expect((await send({ ...failed, sequence: 2 })).body).toMatchObject({ passed: false, action: null });
    const unknown = await send({ ...failed, sequence: 3, action: 'shrugged' });
    expect([unknown.status, unknown.body.fields?.[0]?.field]).toEqual([422, 'action']);
    expect(await checks()).toHaveLength(2);
  });

  it('is known again where it was received before anything could be said of what was done', async () => {
    await aCheckPlan(house, plant);
    const { checkId } = (await send()).body;
    const [row] = await from.sql<{ digest: string }>`
      SELECT "digest" FROM "weigher_check" WHERE "check_id" = ${checkId}`;
    const content = {
      ...{ sequence: 1, at: house.clock.now(), station: null, series: '1' },
      readings: [{ code: 'two', milligrams: 2_000_400, expectedMilligrams: 2_000_000 }],
    };
    expect(row?.digest).toBe(sha256(canonicalText(content)));
  });

  it('asks nobody what was done, but says where a plan asks for somebody who saw it', async () => {
    await aCheckPlan(house, plant, { needsSecondPerson: true });
    expect((await reading(1990)).status).toBe(201);
    expect((await openCauses()).sort()).toEqual(['check-happened-against-rule', 'line-check-failed']);
    const points = await openPointsOf(from, plant.siteId, { state: 'open', limit: 50 });
    expect(points.find(({ cause }) => cause === 'check-happened-against-rule')?.facts).toMatchObject({
      rule: 'check-needs-second-person',
    });
  });

  it('goes by the machine’s clock made the house’s', async () => {
    await aCheckPlan(house, plant);
    house.clock.pass(30);
    const ahead = { at: '2026-03-12T07:20:00.000Z' };
    expect((await send(ahead)).body.fields).toMatchObject([{ field: 'at', type: 'problem:weight-ahead-of-clock' }]);
    const { checkId } = (await send(ahead, { 'device-time': '2026-03-12T07:30:00.000Z' })).body;
    expect(await lineCheckOf(from, plant.siteId, checkId)).toMatchObject({ occurredAt: '2026-03-12T06:20:00.000Z' });
  });
});

describe('a check of a weigher that cannot be meant', () => {
  it.each([
    [2.0004, 'reading-is-thousandth', 'kilograms where grams are expected'],
    [2_000.4 * 400, 'reading-is-absurd', 'more than 3 times'],
    [-3, 'reading-is-below-zero', 'zero and the tare'],
    ['2000,4', 'field-not-grams', 'plain number'],
    ['NaN', 'field-not-grams', 'plain number'],
    [true, 'field-not-grams', 'plain number'],
    [null, 'reading-missing', 'No reading of Test pack 2 kg'],
  ])('is refused with the likely reason: %p', async (value, code, says) => {
    await aCheckPlan(house, plant);
    const { status, body } = await reading(value);
    expect(status).toBe(422);
    expect(body.fields).toMatchObject([{ type: `problem:${code}` }]);
    expect(body.fields?.[0]?.detail).toContain(says);
    expect(await checks()).toEqual([]);
  });

  it('is refused where milligrams are grams, or grams milligrams', async () => {
    await aCheckPlan(house, plant);
    const grams = await send({ readings: [{ code: 'two', readingMilligrams: 2000 }] });
    expect(grams.body.fields).toMatchObject([{ type: 'problem:reading-is-thousandth' }]);
    const milligrams = await send({ readings: [{ code: 'two', readingMilligrams: 2_000_400_000 }] });
    expect(milligrams.status).toBe(422);
    expect(milligrams.body.fields).toMatchObject([{ type: 'problem:reading-is-thousandfold' }]);
  });

  it.each([
    ['no readings', { readings: [] }, 'field-not-list'],
    ['no test pack of the plan', { readings: [{ code: 'ten', readingGrams: 1 }] }, 'result-of-no-piece'],
    [
      'two weights of one reading',
      { readings: [{ code: 'two', readingGrams: 1, readingMilligrams: 1 }] },
      'weight-given-twice',
    ],
    [
      'another weight expected than the plan knows',
      { readings: [{ code: 'two', readingGrams: 2000, expectedGrams: 1000 }] },
      'reading-expected-otherwise',
    ],
    ['a field that nobody knows', { passed: true }, 'field-unknown'],
  ])('is refused with %s', async (_, wishes, code) => {
    await aCheckPlan(house, plant);
    const { status, body } = await send(wishes);
    expect([status, body.fields?.[0]?.type]).toEqual([422, `problem:${code}`]);
  });

  it('is refused where a test pack of the plan was not weighed', async () => {
    const pack = { knownMilligrams: 1_000_000, allowedMilligrams: 1000 };
    await aCheckPlan(house, plant, {
      testPieces: [
        { code: 'two', says: '2 kg', knownMilligrams: 2_000_000, allowedMilligrams: 2000 },
        { code: 'one', says: '1 kg', ...pack },
      ],
    });
    expect((await send()).body.fields).toMatchObject([{ type: 'problem:result-missing' }]);
  });

  it.each([
    '{"sequence":1',
    'NaN',
    '[]',
    '""',
    `{"sequence":1,"at":"x","readings":[{"code":"two","readingGrams":1e999}]}`,
  ])('is refused plainly as %p', async (payload) => {
    await aCheckPlan(house, plant);
    const { status } = await sendText(payload);
    expect([400, 422]).toContain(status);
    expect(await checks()).toEqual([]);
  });

  it('is refused from anybody but a pack weigher', async () => {
    const lead = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['line-lead'] }));
    expect((await lead.post('/api/weigher-checks', aCheck())).status).toBe(403);
    const machine = await house.get(AddMachine).execute(asking(plant.actor), { code: `no-weigher-${siteCount}` });
    const { status, body } = await sendText(JSON.stringify(aCheck()), machine.token ?? '');
    expect([status, body.type]).toEqual([409, 'problem:machine-weighs-nothing']);
  });
});

describe('the plan of a weigher’s own check', () => {
  it('must be there', async () => {
    const none = await send();
    expect([none.status, none.body.type]).toEqual([409, 'problem:weigher-check-not-planned']);
    await aCheckPlan(house, plant);
    const elsewhere = await send({ station: 'Detector' });
    expect(elsewhere.body.type).toBe('problem:weigher-check-not-planned');
    expect((await send({ station: 'weigher' })).status).toBe(201);
  });

  it('is never guessed where two weighers stand on the line: one vouches for nothing that the other weighed', async () => {
    const planId = await aCheckPlan(house, plant);
    const second = await aPackWeigher(house, plant, { code: `S${siteCount}` });
    const unclear = await send();
    expect([unclear.status, unclear.body.type]).toEqual([409, 'problem:weigher-check-which-plan']);
    expect((await send({ station: 'Weigher' })).body).toMatchObject({ planId });
    const own = await aCheckPlan(house, plant, { station: `S${siteCount}` });
    expect((await sendText(JSON.stringify(aCheck()), second.token)).body).toMatchObject({ planId: own });
  });

  it('is never that of the rejecter behind it: a right weight vouches for no pusher', async () => {
    const weights = await aCheckPlan(house, plant);
    const pushers = await aCheckPlan(house, plant, {
      ...{ kind: 'rejecter', station: 'Pusher' },
      testPieces: [{ code: 'light', says: 'Pack of 1930 g: must go out' }],
    });
    const { runId } = await aRun(house, plant, { packCount: 0 });
    const light = (isOut: boolean) => ({ results: [{ code: 'light', passed: isOut }] });
    await passed(house, plant, pushers, light(true));
    house.clock.pass(20);
    await packsCounted(house, plant, runId, 400);
    expect((await send()).body).toMatchObject({ planId: weights, passed: true });
    house.clock.pass(20);
    await packsCounted(house, plant, runId, 900);
    const { id } = await failed(house, plant, pushers, light(false));
    const check = await lineCheckOf(from, plant.siteId, id);
    expect(await suspectsOfCheck(from, check, house.clock.now())).toMatchObject({ packCount: 900 });
  });

  it('is that of the format which the line packs, before that of all formats', async () => {
    await aCheckPlan(house, plant);
    const own = await aCheckPlan(house, plant, { formatId: plant.formatId });
    await aRun(house, plant, { packCount: 0 });
    expect((await send()).body).toMatchObject({ planId: own });
  });
});
