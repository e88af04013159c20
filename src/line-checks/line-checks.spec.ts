import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import { aBag } from '../../test/support/a-bag.js';
import { aCheckPlan, failed, passed } from '../../test/support/a-check-plan.js';
import { aPerson } from '../../test/support/a-person.js';
import { aPlant, type Plant } from '../../test/support/a-plant.js';
import { aRun, packsCounted } from '../../test/support/a-run.js';
import { asking, openHouse, type TestHouse } from '../../test/support/house.js';
import { openPointsOf } from '../open-points/open-points.js';
import { ChangeCode } from '../packing/change-code.js';
import { JobRunner } from '../platform/jobs/job-runner.js';
import { BadForm, NotFound } from '../platform/refusal.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { AddCheckPlan } from './add-check-plan.js';
import { ChangeCheckPlan } from './change-check-plan.js';
import { CheckLine } from './check-line.js';
import { plansOfLine } from './check-plans.js';
import { CorrectLineCheck } from './correct-line-check.js';
import { dueChecks } from './due-checks.js';
import { EndCheckPlan } from './end-check-plan.js';
import { lineCheckOf, lineChecksOf } from './line-checks.js';

let house: TestHouse;
let plant: Plant;
let from: ReadFrom;
let siteCount = 0;
const start = '2026-03-12T06:00:00.000Z';

beforeAll(async () => {
  house = await openHouse();
  from = house.app.get<ReadFrom>(READER);
});
afterAll(() => house.close());
beforeEach(async () => {
  house.clock.set(start);
  siteCount += 1;
  plant = await aPlant(house, { siteCode: `LC${siteCount}` });
});

const line = () => plant.lineIds[0];
const due = () => dueChecks(from, line(), house.clock.now());
const openCauses = async () =>
  (await openPointsOf(from, plant.siteId, { state: 'open', limit: 50 }))
    .map(({ cause }) => cause)
    .filter((cause) => cause.startsWith('line-check') || cause === 'torn-bag-found');

describe('a plan of checks', () => {
  const metal = {
    kind: 'metal-detection' as const,
    station: 'Detector',
    testPieces: [{ code: 'fe', says: 'Ferrous', material: 'ferrous' as const, sphereMicrometres: 2000 }],
  };

  it('keeps the test pieces as the plant entered them', async () => {
    await aCheckPlan(house, plant, metal);
    expect(await plansOfLine(from, line(), house.clock.now())).toMatchObject([
      { station: 'Detector', testPieces: [{ code: 'fe', sphereMicrometres: 2000, knownMilligrams: null }] },
    ]);
  });

  it.each([
    ['check-plan-never-due', { everyMinutes: null, events: [] }],
    ['test-pieces-needed', { testPieces: [] }],
    ['test-pieces-needed', { kind: 'rejecter' as const, testPieces: [] }],
    ['test-piece-incomplete', { testPieces: [{ code: 'a', says: 'A', knownMilligrams: 1 }] }],
    ['test-piece-incomplete', { ...metal, testPieces: [{ code: 'a', says: 'A', material: 'ferrous' as const }] }],
    ['test-piece-twice', { testPieces: [1, 2].map(() => ({ code: 'a', says: 'A', knownMilligrams: 1 })) }],
  ])('is refused as %s', async (code, wishes) => {
    await expect(aCheckPlan(house, plant, wishes)).rejects.toMatchObject({ code });
  });

  it('stands once for one thing; another format, or another thing, has its own', async () => {
    await aCheckPlan(house, plant);
    await expect(aCheckPlan(house, plant, { station: 'weigher' })).rejects.toMatchObject({
      code: 'check-plan-there-already',
    });
    await aCheckPlan(house, plant, { formatId: plant.formatId });
    await aCheckPlan(house, plant, { station: 'Second weigher' });
    expect(await plansOfLine(from, line(), house.clock.now())).toHaveLength(3);
  });

  it('is for a line and a format of its own site', async () => {
    const other = await aPlant(house, { siteCode: `OT${siteCount}` });
    await expect(aCheckPlan(house, plant, { lineId: other.lineIds[0] })).rejects.toThrow(NotFound);
    await expect(aCheckPlan(house, plant, { formatId: other.formatId })).rejects.toThrow(NotFound);
  });

  it('is changed from now on, never backwards, and the earlier version stays for what was checked by it', async () => {
    const planId = await aCheckPlan(house, plant);
    house.clock.pass(30);
    const testPieces = [{ code: 'one', says: 'Test pack 1 kg', knownMilligrams: 1_000_000, allowedMilligrams: 1000 }];
    const form = { station: 'Weigher', everyMinutes: 120, graceMinutes: 5, testPieces };
    const change = house.get(ChangeCheckPlan);
    await expect(
      change.execute(asking(plant.actor), planId, { ...form, validFrom: '2026-03-12T06:10:00.000Z' }),
    ).rejects.toMatchObject({ code: 'valid-from-in-the-past' });
    await change.execute(asking(plant.actor), planId, form);
    const now = house.clock.now();
    expect(await plansOfLine(from, line(), now)).toMatchObject([{ planId, everyMinutes: 120, firstValidFrom: start }]);
    expect(await plansOfLine(from, line(), start)).toMatchObject([{ planId, everyMinutes: 60 }]);
  });

  it('is ended once, and then nobody checks by it or changes it', async () => {
    const planId = await aCheckPlan(house, plant);
    house.clock.pass(1);
    const end = () => house.get(EndCheckPlan).execute(asking(plant.actor), planId, { reason: 'taken out' });
    await end();
    expect(await plansOfLine(from, line(), house.clock.now())).toEqual([]);
    await expect(end()).rejects.toMatchObject({ code: 'check-plan-ended' });
    await expect(passed(house, plant, planId)).rejects.toMatchObject({ code: 'check-plan-ended' });
    const form = { station: 'Weigher', everyMinutes: 60, graceMinutes: 5, testPieces: [] };
    await expect(house.get(ChangeCheckPlan).execute(asking(plant.actor), planId, form)).rejects.toMatchObject({
      code: 'check-plan-ended',
    });
  });

  it('is not changed, ended or checked by from another site', async () => {
    const planId = await aCheckPlan(house, plant);
    const other = await aPlant(house, { siteCode: `OT${siteCount}` });
    await expect(passed(house, other, planId)).rejects.toThrow(NotFound);
    const end = house.get(EndCheckPlan).execute(asking(other.actor), planId, { reason: 'x' });
    await expect(end).rejects.toThrow(NotFound);
    const form = { station: 'W', everyMinutes: 60, graceMinutes: 5 };
    await expect(house.get(ChangeCheckPlan).execute(asking(other.actor), planId, form)).rejects.toThrow(NotFound);
  });

  it('is set up once when it is sent twice', async () => {
    const form = { lineId: line(), kind: 'sieve' as const, station: 'Sieve', everyMinutes: 480, graceMinutes: 30 };
    const add = () => house.get(AddCheckPlan).execute(asking(plant.actor, `plan-${siteCount}-key`), form);
    expect(await add()).toEqual(await add());
  });
});

describe('a check', () => {
  it('is due an hour after the last, and says when the next is', async () => {
    const planId = await aCheckPlan(house, plant);
    await aRun(house, plant, { packCount: 0 });
    expect(await due()).toMatchObject([{ word: 'due', minutesLeft: 0, last: null }]);
    expect(await passed(house, plant, planId)).toMatchObject({ passed: true, dueAt: '2026-03-12T07:00:00.000Z' });
    house.clock.pass(47);
    expect(await due()).toMatchObject([{ word: 'later', minutesLeft: 13 }]);
  });

  it('is judged by the reading where one was taken, exactly at what is allowed it passes', async () => {
    const planId = await aCheckPlan(house, plant);
    const reading = (measuredMilligrams: number) =>
      passed(house, plant, planId, {
        results: [{ code: 'two', passed: true, measuredMilligrams }],
        action: 'adjusted',
      });
    expect(await reading(2_002_000)).toMatchObject({ passed: true });
    house.clock.pass(5);
    expect(await reading(2_002_001)).toMatchObject({ passed: false });
  });

  it.each([
    ['a piece without a result', []],
    [
      'a result of no piece',
      [
        { code: 'two', passed: true },
        { code: 'three', passed: true },
      ],
    ],
    ['a result that says nothing', [{ code: 'two' }]],
  ])('is not taken with %s', async (_, results) => {
    const planId = await aCheckPlan(house, plant);
    await expect(passed(house, plant, planId, { results })).rejects.toThrow(BadForm);
  });

  it('that failed says what was done at once, opens a point for quality, and stays due until a good one', async () => {
    const planId = await aCheckPlan(house, plant);
    await aRun(house, plant, { packCount: 0 });
    await expect(failed(house, plant, planId, { action: null })).rejects.toMatchObject({ code: 'check-needs-action' });
    await failed(house, plant, planId);
    expect(await due()).toMatchObject([{ word: 'failed' }]);
    expect(await openCauses()).toEqual(['line-check-failed']);
    house.clock.pass(10);
    await passed(house, plant, planId);
    expect(await due()).toMatchObject([{ word: 'later', minutesLeft: 60 }]);
    expect(await openCauses()).toEqual([]);
  });

  it('entered late as good does not hide a failed one after it', async () => {
    const planId = await aCheckPlan(house, plant);
    await aRun(house, plant, { packCount: 0 });
    house.clock.pass(30);
    await failed(house, plant, planId);
    house.clock.pass(5);
    await passed(house, plant, planId, { checkedAt: '2026-03-12T06:10:00.000Z' });
    expect(await due()).toMatchObject([{ word: 'failed' }]);
    expect(await openCauses()).toEqual(['line-check-failed']);
  });

  it('asks for a second person where the plan does: somebody else, and known here', async () => {
    const planId = await aCheckPlan(house, plant, { needsSecondPerson: true });
    await expect(passed(house, plant, planId)).rejects.toMatchObject({ code: 'check-needs-second-person' });
    const secondPersonId = plant.actor.personId;
    await expect(passed(house, plant, planId, { secondPersonId })).rejects.toMatchObject({
      code: 'second-person-same',
    });
    const stranger = '00000000-0000-7000-8000-00000000000f';
    await expect(passed(house, plant, planId, { secondPersonId: stranger })).rejects.toThrow(NotFound);
    const other = await aPerson(house, plant.siteId);
    const { id } = await passed(house, plant, planId, { secondPersonId: other.personId });
    expect(await lineCheckOf(from, plant.siteId, id)).toMatchObject({ secondPersonId: other.personId });
  });

  it('compares a printed code with what the run should print then', async () => {
    const planId = await aCheckPlan(house, plant, { kind: 'printed-code', station: 'Coder', testPieces: [] });
    const read = (readCode: string | null, results = [] as { code: string; passed: boolean }[]) =>
      passed(house, plant, planId, { readCode, results, action: 'line-stopped' });
    await expect(read('L6071A1')).rejects.toMatchObject({ code: 'no-run-to-read-code-of' });
    const { runId } = await aRun(house, plant, { packCount: 0 });
    await house.get(ChangeCode).execute(asking(plant.actor), runId, { code: 'L60711M', packCount: 0 });
    await expect(read(null)).rejects.toThrow(BadForm);
    const wrong = await read('L5071 1M 07:00');
    expect(wrong.passed).toBe(false);
    const right = (await lineCheckOf(from, plant.siteId, wrong.id)).intendedCode;
    expect(await read(right)).toMatchObject({ passed: true });
  });

  it('of a torn bag names the bag, and opens a point on it', async () => {
    const planId = await aCheckPlan(house, plant, {
      kind: 'torn-bag',
      station: 'Tip',
      everyMinutes: null,
      testPieces: [],
    });
    const torn = { results: [{ code: 'all', passed: false }], action: 'bag-set-aside' as const };
    await expect(failed(house, plant, planId, torn)).rejects.toThrow(BadForm);
    const bag = await aBag(house, plant);
    const { id } = await failed(house, plant, planId, { ...torn, bag: bag.number });
    expect(await lineCheckOf(from, plant.siteId, id)).toMatchObject({ bagId: bag.id, bagNumber: bag.number });
    expect(await openCauses()).toEqual(['torn-bag-found']);
  });

  it('is taken once when it is sent twice, and once when two people enter it at once', async () => {
    const planId = await aCheckPlan(house, plant);
    const key = `check-${siteCount}-key`;
    const form = { results: [{ code: 'two', passed: true }] };
    const send = () => house.get(CheckLine).execute(asking(plant.actor, key), planId, form);
    expect(await send()).toEqual(await send());
    house.clock.pass(30);
    const outcomes = await Promise.allSettled([passed(house, plant, planId), passed(house, plant, planId)]);
    expect(outcomes.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected']);
    const refused = outcomes.find((outcome) => outcome.status === 'rejected') as PromiseRejectedResult;
    expect(refused.reason).toMatchObject({ code: 'check-there-already' });
    expect(await lineChecksOf(from, plant.siteId, { limit: 50 })).toHaveLength(2);
  });

  it('that failed is taken beside a good one of the same moment', async () => {
    const planId = await aCheckPlan(house, plant);
    await Promise.all([passed(house, plant, planId), failed(house, plant, planId)]);
    expect(await lineChecksOf(from, plant.siteId, { result: 'failed', limit: 50 })).toHaveLength(1);
  });

  it('kept on a device is taken whatever it breaks, and a person looks at what it broke', async () => {
    const planId = await aCheckPlan(house, plant, { needsSecondPerson: true });
    const { runId } = await aRun(house, plant, { packCount: 0 });
    house.clock.pass(10);
    await packsCounted(house, plant, runId, 200);
    house.clock.pass(10);
    const happening = { how: 'queued' as const, at: house.clock.now(), sheet: null, row: null, writtenBy: null };
    house.clock.pass(300);
    const form = { results: [{ code: 'two', passed: false }], packCount: 100 };
    const answer = await house.get(CheckLine).execute({ ...asking(plant.actor), happening }, planId, form);
    expect(await lineCheckOf(from, plant.siteId, answer.id)).toMatchObject({ occurredAt: happening.at, action: null });
    const points = await openPointsOf(from, plant.siteId, { state: 'open', limit: 50 });
    expect(points.find(({ cause }) => cause === 'check-happened-against-rule')?.facts).toMatchObject({
      rule: 'check-needs-second-person, check-needs-action, count-goes-back',
    });
  });

  it('reads the counter with it, where that was read', async () => {
    const planId = await aCheckPlan(house, plant);
    const { runId } = await aRun(house, plant, { packCount: 0 });
    house.clock.pass(10);
    await packsCounted(house, plant, runId, 200);
    house.clock.pass(10);
    await expect(passed(house, plant, planId, { packCount: 100 })).rejects.toMatchObject({ code: 'count-goes-back' });
    await passed(house, plant, planId, { packCount: 400 });
    const [row] = await from.sql<{ packCount: number }>`
      SELECT "pack_count" AS "packCount" FROM "packing_run_state" WHERE "run_id" = ${runId}`;
    expect(row?.packCount).toBe(400);
  });
});

describe('a check that nobody made', () => {
  it('becomes a point for the lead once it is overdue, once, and goes with the check or the run', async () => {
    const planId = await aCheckPlan(house, plant);
    await aRun(house, plant, { packCount: 0 });
    await passed(house, plant, planId);
    const jobs = house.get(JobRunner);
    house.clock.pass(69);
    await jobs.drain();
    expect(await openCauses()).toEqual([]);
    house.clock.pass(1);
    await jobs.drain();
    expect(await openCauses()).toEqual(['line-check-overdue']);
    house.clock.pass(15);
    await jobs.drain();
    expect(await openCauses()).toEqual(['line-check-overdue']);
    await passed(house, plant, planId);
    expect(await openCauses()).toEqual([]);
  });
});

describe('the correction of a check', () => {
  const correct = (checkId: string, form: object, actor = plant.actor) =>
    house.get(CorrectLineCheck).execute(asking(actor), checkId, { reason: 'the other line', ...form } as never);

  it('takes a check away that was not made, once', async () => {
    const planId = await aCheckPlan(house, plant);
    await aRun(house, plant, { packCount: 0 });
    const { id } = await passed(house, plant, planId);
    await correct(id, { why: 'did-not-occur' });
    expect(await due()).toMatchObject([{ word: 'due', last: null }]);
    await expect(correct(id, { why: 'did-not-occur' })).rejects.toMatchObject({ code: 'already-corrected' });
    expect((await lineCheckOf(from, plant.siteId, id)).isVoid).toBe(true);
  });

  it('puts the right results in the place of wrong ones, at the same time', async () => {
    const planId = await aCheckPlan(house, plant);
    await aRun(house, plant, { packCount: 0 });
    const { id } = await passed(house, plant, planId);
    const wrong = { why: 'incorrect-data', results: [{ code: 'two', passed: false }] };
    await expect(correct(id, wrong)).rejects.toMatchObject({ code: 'check-needs-action' });
    expect(await correct(id, { ...wrong, action: 'adjusted' })).toMatchObject({ passed: false });
    expect(await due()).toMatchObject([{ word: 'failed', dueAt: start }]);
    expect(await openCauses()).toEqual(['line-check-failed']);
  });

  it('of a failed check is for quality', async () => {
    const planId = await aCheckPlan(house, plant);
    const { id } = await failed(house, plant, planId);
    const lead = plant.actorWith('line-lead');
    await expect(correct(id, { why: 'did-not-occur' }, lead)).rejects.toMatchObject({
      code: 'failed-check-is-for-quality',
    });
    await correct(id, { why: 'did-not-occur' });
    expect(await openCauses()).toEqual([]);
  });

  it('finds no check of another site', async () => {
    const planId = await aCheckPlan(house, plant);
    const { id } = await passed(house, plant, planId);
    const other = await aPlant(house, { siteCode: `OT${siteCount}` });
    await expect(correct(id, { why: 'did-not-occur' }, other.actor)).rejects.toThrow(NotFound);
  });
});
