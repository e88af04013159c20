import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import { aPackWeigher, weightLine, type TestWeigher } from '../../../test/support/a-pack-weigher.js';
import { aPerson, signedIn } from '../../../test/support/a-person.js';
import { aPlant, type Plant } from '../../../test/support/a-plant.js';
import { aRun, packsCounted, type RunOpened } from '../../../test/support/a-run.js';
import { asking, openHouse, type TestHouse } from '../../../test/support/house.js';
import { pageText } from '../../../test/support/page-text.js';
import { ExplainPoint } from '../../open-points/explain-point.js';
import { openPointsOf, type PointRow } from '../../open-points/open-points.js';
import { CloseRun } from '../../packing/close-run.js';
import { findRun } from '../../packing/packing-runs.js';
import { RemoveSugar } from '../../packing/remove-sugar.js';
import { shifted } from '../../platform/clock.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { JobRunner } from '../../platform/jobs/job-runner.js';
import { readRunWeights } from '../run-weights/run-weights.js';
import { WithdrawPackWeigher } from '../withdraw-pack-weigher.js';
import { SetSilence } from './set-silence.js';
import { silencesOfRun } from './silences.js';

const start = '2026-03-12T06:00:00.000Z';
const packsPerMinute = 30;

let house: TestHouse;
let from: ReadFrom;
let plant: Plant;
let weigher: TestWeigher;
let run: RunOpened;
let siteCount = 0;
let minute = 0;
let startedAt = start;

beforeAll(async () => {
  house = await openHouse();
  from = house.app.get<ReadFrom>(READER, { strict: false });
});
afterAll(() => house.close());
beforeEach(async () => {
  siteCount += 1;
  house.clock.set(shifted(start, siteCount * 86_400_000));
  plant = await aPlant(house, { siteCode: `WS${siteCount}` });
  weigher = await aPackWeigher(house, plant);
  run = await aRun(house, plant);
  minute = 0;
  startedAt = house.clock.now();
});

/** The weights of minutes of the run, each minute's packs two seconds apart. */
function weights(
  fromMinute: number,
  toMinute: number,
  { slowSeconds = 0, ...wishes }: { rejected?: boolean; slowSeconds?: number } = {},
): string {
  const lines: string[] = [];
  for (let pack = fromMinute * packsPerMinute; pack < toMinute * packsPerMinute; pack += 1) {
    const at = shifted(startedAt, pack * 2000 + 1000 - slowSeconds * 1000);
    lines.push(weightLine(house, pack + 1, { run: run.number, at, ...wishes }));
  }
  return lines.join('\n');
}

async function send(payload: string): Promise<void> {
  const answer = await house.app
    .getHttpAdapter()
    .getInstance()
    .inject({
      method: 'POST',
      url: '/api/fill-weights',
      headers: { authorization: `Bearer ${weigher.token}`, 'content-type': 'application/x-ndjson' },
      payload,
    });
  expect(answer.statusCode).toBe(201);
}

/** The line packs for so many minutes and its counter is read each minute; weights come too, unless it is silent. */
async function packFor(minutes: number, sends: 'sends' | 'silent'): Promise<void> {
  for (let passed = 0; passed < minutes; passed += 1) {
    house.clock.pass(1);
    minute += 1;
    await packsCounted(house, plant, run.runId, minute * packsPerMinute);
    if (sends === 'sends') await send(weights(minute - 1, minute));
    await house.get(JobRunner).drain();
  }
}

const points = async (): Promise<readonly PointRow[]> =>
  (await openPointsOf(from, plant.siteId, { state: 'open', limit: 50 })).filter(
    ({ cause }) => cause === 'weigher-silent',
  );

describe('a pack weigher that sends nothing while packs are counted', () => {
  it('is a point for the lead once its minutes are over, which names line, run, since when and how many packs', async () => {
    await packFor(3, 'sends');
    const lastAt = shifted(house.clock.now(), -1000);
    await packFor(10, 'silent');
    expect(await points()).toEqual([]);
    await packFor(1, 'silent');
    expect(await points()).toMatchObject([
      {
        role: 'line-lead',
        subjectKind: 'weigher-silence',
        facts: { line: '1', run: run.number, at: lastAt, count: 11 * packsPerMinute },
      },
    ]);
    await packFor(5, 'silent');
    expect(await points()).toHaveLength(1);
    expect(await silencesOfRun(from, run.runId)).toMatchObject([
      { sinceAt: lastAt, untilAt: null, unverifiedPackCount: 16 * packsPerMinute },
    ]);
  });

  it('stays a point when weights flow again, goes down by what comes late, and closes by itself once all has come', async () => {
    await packFor(3, 'sends');
    await packFor(12, 'silent');
    await packFor(2, 'sends');
    const [silence] = await silencesOfRun(from, run.runId);
    expect(silence).toMatchObject({ unverifiedPackCount: 12 * packsPerMinute, isVerified: false });
    expect(silence?.untilAt).not.toBeNull();
    await send(weights(3, 8));
    await packFor(1, 'sends');
    expect(await points()).toHaveLength(1);
    expect(await silencesOfRun(from, run.runId)).toMatchObject([{ unverifiedPackCount: 7 * packsPerMinute }]);
    await send(weights(8, 15));
    await packFor(1, 'sends');
    expect(await points()).toEqual([]);
    expect(await silencesOfRun(from, run.runId)).toMatchObject([{ unverifiedPackCount: 0, isVerified: true }]);
  });

  it('is told apart from the next one of the same run, each with its own packs', async () => {
    await packFor(3, 'sends');
    await packFor(12, 'silent');
    await packFor(15, 'sends');
    await packFor(12, 'silent');
    expect(await silencesOfRun(from, run.runId)).toMatchObject([
      { unverifiedPackCount: 12 * packsPerMinute },
      { unverifiedPackCount: 12 * packsPerMinute, untilAt: null },
    ]);
    expect(await points()).toHaveLength(2);
  });

  it('is no point while the line stands, nor where the weights of rejected packs come', async () => {
    await packFor(3, 'sends');
    house.clock.pass(45);
    minute += 45;
    await packsCounted(house, plant, run.runId, 3 * packsPerMinute);
    await house.get(JobRunner).drain();
    expect(await points()).toEqual([]);
    const at = shifted(house.clock.now(), -2000);
    await send(weightLine(house, 50_000, { run: run.number, at, rejected: true }));
    await house.get(JobRunner).drain();
    expect(await points()).toEqual([]);
  });

  it('is no point where the weigher weighed all packs of the run, and its clock is half a minute slow', async () => {
    for (let passed = 0; passed < 3; passed += 1) {
      house.clock.pass(1);
      minute += 1;
      await packsCounted(house, plant, run.runId, minute * packsPerMinute);
      await send(weights(minute - 1, minute, { slowSeconds: 30 }));
    }
    house.clock.pass(30);
    await house.get(JobRunner).drain();
    expect(await points()).toEqual([]);
    await packFor(15, 'silent');
    expect(await points()).toHaveLength(1);
  });

  it('of a run without one weight is counted from its start, and ends with the run', async () => {
    await packFor(12, 'silent');
    expect(await points()).toHaveLength(1);
    await house.get(CloseRun).execute(asking(plant.actor), run.runId, {
      packCount: 12 * packsPerMinute,
      loosePackCount: 0,
    });
    house.clock.pass(1);
    await house.get(JobRunner).drain();
    const { closedAt } = await findRun(from, plant.siteId, run.runId);
    expect(await silencesOfRun(from, run.runId)).toMatchObject([
      { untilAt: closedAt, unverifiedPackCount: 12 * packsPerMinute },
    ]);
    expect(await points()).toHaveLength(1);
    await send(weights(0, 12));
    house.clock.pass(1);
    await house.get(JobRunner).drain();
    expect(await points()).toEqual([]);
  });

  it('is closed by a person too, and does not come again for the same silence', async () => {
    await packFor(12, 'silent');
    const [point] = await points();
    const form = { explanation: 'Hand samples were weighed' };
    await house.get(ExplainPoint).execute(asking(plant.actor), point?.id ?? '', form);
    await packFor(5, 'silent');
    expect(await points()).toEqual([]);
    expect(await silencesOfRun(from, run.runId)).toMatchObject([{ unverifiedPackCount: 17 * packsPerMinute }]);
  });

  it('is waited for as long as is set, or not at all', async () => {
    const set = house.get(SetSilence);
    await set.execute(asking(plant.actor), weigher.weigherId, { silentAfterMinutes: 3 });
    await packFor(3, 'silent');
    expect(await points()).toEqual([]);
    await packFor(1, 'silent');
    expect(await points()).toHaveLength(1);
    await set.execute(asking(plant.actor), weigher.weigherId, {});
    await packFor(2, 'silent');
    expect(await silencesOfRun(from, run.runId)).toMatchObject([{ untilAt: expect.any(String) }]);
    await packFor(20, 'silent');
    expect(await points()).toHaveLength(1);
  });

  it('is set for a weigher that is set up here, by quality', async () => {
    const set = house.get(SetSilence);
    const other = await aPlant(house, { siteCode: `WT${siteCount}` });
    await expect(set.execute(asking(other.actor), weigher.weigherId, {})).rejects.toMatchObject({
      kind: 'pack-weigher',
    });
    const path = `/api/pack-weighers/${weigher.weigherId}/silence`;
    const lead = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['line-lead'] }));
    expect((await lead.send(path, { silentAfterMinutes: '5' })).status).toBe(403);
    const quality = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['quality-officer'] }));
    expect((await quality.send(path, { silentAfterMinutes: '1' })).status).toBe(422);
    expect((await quality.send(path, { silentAfterMinutes: '5' })).status).toBe(201);
    await house.get(WithdrawPackWeigher).execute(asking(plant.actor), weigher.weigherId, { reason: 'moved' });
    await expect(set.execute(asking(plant.actor), weigher.weigherId, {})).rejects.toMatchObject({
      kind: 'pack-weigher',
    });
  });
});

describe('the weights of a run', () => {
  it('say how many counted packs are verified, when no weights came, and what may be more', async () => {
    await packFor(3, 'sends');
    await packFor(12, 'silent');
    const row = await findRun(from, plant.siteId, run.runId);
    expect(await readRunWeights(from, row)).toMatchObject({ verifiedPackCount: 90, unweighedPackCount: 360 });
    const auditor = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['auditor'] }));
    const [silence] = await silencesOfRun(from, run.runId);
    const led = await auditor.get(`/weigher-silences/${silence?.id ?? ''}`);
    expect([led.status, led.headers['location']]).toEqual([303, `/runs/${run.runId}/weights#unverified`]);
    expect((await auditor.get(`/weigher-silences/${run.runId}`)).status).toBe(404);
    const text = pageText((await auditor.get(`/runs/${run.runId}/weights`)).text);
    expect(text).toContain('Of 450 counted packs, 90 are verified by weight and 360 are unverified.');
    expect(text).toContain('still silent');
    expect(text).not.toContain('taken out by hand');
    await house.get(RemoveSugar).execute(asking(plant.actor), {
      ...{ kind: 'reject', lineId: plant.lineIds[0], packCount: 5, removalReason: 'seal', fate: 'waste' },
    });
    expect(pageText((await auditor.get(`/runs/${run.runId}/weights`)).text)).toContain(
      '5 packs were taken out by hand.',
    );
    const json = JSON.parse((await auditor.get(`/api/runs/${run.runId}/weights`)).text) as object;
    expect(json).toMatchObject({ verifiedPackCount: 90, takenOutPackCount: 5, silences: [{ untilAt: null }] });
  });

  it('do not take rejected packs for verified ones', async () => {
    house.clock.pass(1);
    minute = 1;
    await packsCounted(house, plant, run.runId, packsPerMinute);
    await send(weights(0, 1, { rejected: true }));
    const row = await findRun(from, plant.siteId, run.runId);
    expect(await readRunWeights(from, row)).toMatchObject({ verifiedPackCount: 0, unweighedPackCount: 30 });
  });
});
