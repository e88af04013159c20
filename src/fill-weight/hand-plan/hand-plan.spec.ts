import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import { aPlant, type Plant } from '../../../test/support/a-plant.js';
import { aPackScale, aRun } from '../../../test/support/a-run.js';
import { asking, openHouse, type TestHouse } from '../../../test/support/house.js';
import { openPointsOf } from '../../open-points/open-points.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { JobRunner } from '../../platform/jobs/job-runner.js';
import { WeighHandSample } from '../weigh-hand-sample.js';
import { dueHandSample } from './due-hand-sample.js';
import { EndHandPlan } from './end-hand-plan.js';
import { handPlansOf } from './hand-plans.js';
import { SetHandPlan } from './set-hand-plan.js';

let house: TestHouse;
let from: ReadFrom;
let plant: Plant;
let siteCount = 0;

beforeAll(async () => {
  house = await openHouse();
  from = house.app.get<ReadFrom>(READER, { strict: false });
});
afterAll(() => house.close());
beforeEach(async () => {
  siteCount += 1;
  // A day each: the one job of the house looks again later than it looked last.
  house.clock.set(`2026-03-${12 + siteCount}T06:00:00.000Z`);
  plant = await aPlant(house, { siteCode: `HP${siteCount}` });
});

const line = () => plant.lineIds[0];
const due = () => dueHandSample(from, line(), house.clock.now());
const set = (wishes: object = {}) =>
  house.get(SetHandPlan).execute(asking(plant.actor), {
    ...{ lineId: line(), everyMinutes: 30, packCount: 5, graceMinutes: 10 },
    ...wishes,
  });
const points = async () =>
  (await openPointsOf(from, plant.siteId, { state: 'open', limit: 50 })).filter(
    ({ cause }) => cause === 'hand-sample-overdue',
  );
const weigh = async (run: string) => {
  const scaleId = await aPackScale(house, plant, `P${siteCount}`);
  const form = { run, scaleId, netDecigrams: [20_010, 20_030] };
  return house.get(WeighHandSample).execute(asking(plant.actor), form);
};

describe('a plan of hand samples', () => {
  it('is that of the format where it has its own, else that of all formats; what was set last holds', async () => {
    expect(await due()).toBeNull();
    await set();
    await set({ everyMinutes: 60 });
    await set({ formatId: plant.otherFormatId, packCount: 3 });
    expect(await handPlansOf(from, plant.siteId)).toHaveLength(2);
    expect(await due()).toBeNull();
    await aRun(house, plant);
    expect(await due()).toMatchObject({ plan: { everyMinutes: 60, packCount: 5 }, word: 'due' });
    await set({ formatId: plant.formatId, packCount: 4 });
    expect(await due()).toMatchObject({ plan: { packCount: 4 } });
  });

  it('is due as the run begins, then its minutes after each sample, and overdue after its grace', async () => {
    await set();
    const { runId } = await aRun(house, plant);
    house.clock.pass(9);
    expect(await due()).toMatchObject({ word: 'due', minutesLeft: -9, lastAt: null });
    house.clock.pass(1);
    expect(await due()).toMatchObject({ word: 'overdue' });
    await weigh(runId);
    expect(await due()).toMatchObject({ word: 'later', minutesLeft: 30 });
    house.clock.pass(30);
    expect(await due()).toMatchObject({ word: 'due', minutesLeft: 0 });
  });

  it('that is overdue is a point for the lead, once, and goes with the sample', async () => {
    await set();
    const { runId } = await aRun(house, plant);
    await house.get(JobRunner).drain();
    expect(await points()).toEqual([]);
    house.clock.pass(10);
    await house.get(JobRunner).drain();
    house.clock.pass(5);
    await house.get(JobRunner).drain();
    expect(await points()).toMatchObject([
      {
        role: 'line-lead',
        subjectId: line(),
        facts: { line: '1', count: 5, at: expect.stringContaining('T06:00:00.000Z') },
      },
    ]);
    await weigh(runId);
    expect(await points()).toEqual([]);
  });

  it('ends with a reason, and its point with it', async () => {
    await set();
    await aRun(house, plant);
    house.clock.pass(10);
    await house.get(JobRunner).drain();
    expect(await points()).toHaveLength(1);
    const end = (wishes: object = {}) =>
      house
        .get(EndHandPlan)
        .execute(asking(plant.actor), { lineId: line(), reason: 'it has a weigher now', ...wishes });
    await expect(end({ formatId: plant.formatId })).rejects.toMatchObject({ code: 'no-hand-sample-plan' });
    await end();
    expect(await points()).toEqual([]);
    expect(await due()).toBeNull();
    await expect(end()).rejects.toMatchObject({ code: 'no-hand-sample-plan' });
  });

  it('is for a line and a format of its own site', async () => {
    const other = await aPlant(house, { siteCode: `HQ${siteCount}` });
    await expect(set({ lineId: other.lineIds[0] })).rejects.toMatchObject({ kind: 'packing-line' });
    await expect(set({ formatId: other.formatId })).rejects.toMatchObject({ kind: 'pack-format' });
    const ended = { lineId: other.lineIds[0], reason: 'x' };
    await expect(house.get(EndHandPlan).execute(asking(plant.actor), ended)).rejects.toMatchObject({
      kind: 'packing-line',
    });
  });
});
