import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { aPackWeigher, packsWeighed, type TestWeigher } from '../../test/support/a-pack-weigher.js';
import { aPlant, type Plant } from '../../test/support/a-plant.js';
import { aPackScale, aRun, packsCounted } from '../../test/support/a-run.js';
import { asking, openHouse, type TestHouse } from '../../test/support/house.js';
import { CloseRun } from '../packing/close-run.js';
import { shifted } from '../platform/clock.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { UnitOfWork } from '../platform/database/unit-of-work.js';
import { CorrectTare } from './kept/correct-tare.js';
import { rebuildSummaries } from './kept/rebuild-summaries.js';
import { WithdrawTareCorrection } from './kept/withdraw-tare-correction.js';
import { meanNetOf, meanNetsOf } from './mean-nets.js';
import { WeighHandSample } from './weigh-hand-sample.js';

let house: TestHouse;
let from: ReadFrom;
let plant: Plant;
let lineId: string;
let weigher: TestWeigher;
let siteCount = 0;

beforeAll(async () => {
  house = await openHouse();
  from = house.app.get<ReadFrom>(READER, { strict: false });
});
afterAll(() => house.close());

/** A run of packs of 2 kg on a line with a weigher that may be off by 0.5 g, an hour ago. */
async function aWeighedRun(): Promise<{ runId: string; number: string; startedAt: string }> {
  siteCount += 1;
  plant = await aPlant(house, { siteCode: `S${siteCount}` });
  lineId = plant.lineIds[0];
  weigher = await aPackWeigher(house, plant, { lineId });
  const startedAt = new Date(Math.ceil(Date.parse(house.clock.now()) / 60_000) * 60_000).toISOString();
  const { runId, number } = await aRun(house, plant, { lineId });
  house.clock.pass(60);
  return { runId, number, startedAt };
}

const same = (netGrams: number, packs: number): number[] => Array.from({ length: packs }, () => netGrams);

describe('the mean net of a run whose packs are weighed one by one', () => {
  it('comes from the weights of all, with limits that every minute of it keeps', async () => {
    const { runId, number, startedAt } = await aWeighedRun();
    const netGrams = [...same(2001, 60), ...same(2003, 60)];
    await packsWeighed(house, weigher, { run: number, fromAt: startedAt, netGrams });
    await packsCounted(house, plant, runId, 120);
    expect(await meanNetOf(from, runId)).toEqual({
      ...{ meanMilligrams: 2_002_000, lowerMilligrams: 2_000_500, upperMilligrams: 2_003_500 },
      ...{ basis: 'measured', samplePackCount: 0, weighedAt: null, weighedPackCount: 120, unweighedPackCount: 0 },
      weigher: { id: weigher.weigherId, maximumPermissibleErrorMilligrams: 500 },
    });
  });

  it('takes packs that were counted and not weighed as assumed, or as the hand sample has it', async () => {
    const { runId, number, startedAt } = await aWeighedRun();
    await packsWeighed(house, weigher, { run: number, fromAt: startedAt, netGrams: same(2002, 120) });
    await packsCounted(house, plant, runId, 180);
    expect(await meanNetOf(from, runId)).toMatchObject({
      ...{ meanMilligrams: 2_001_333, lowerMilligrams: 1_990_000, upperMilligrams: 2_020_000 },
      ...{ basis: 'measured', weighedPackCount: 120, unweighedPackCount: 60 },
    });
    const scaleId = await aPackScale(house, plant);
    const sampled = { run: runId, scaleId, netDecigrams: [20_020, 20_020, 20_020] };
    await house.get(WeighHandSample).execute(asking(plant.actor), sampled);
    // All three packs of the sample weigh the same, so it is as sure as its scale, which may be off by 1 g.
    expect(await meanNetOf(from, runId)).toMatchObject({
      ...{ meanMilligrams: 2_002_000, lowerMilligrams: 2_001_000, upperMilligrams: 2_003_000, samplePackCount: 3 },
    });
    await packsCounted(house, plant, runId, 900);
    expect(await meanNetOf(from, runId)).toMatchObject({ basis: 'measured', unweighedPackCount: 780 });
  });

  it('is still called assumed where hardly a pack was weighed', async () => {
    const { runId, number, startedAt } = await aWeighedRun();
    await packsWeighed(house, weigher, { run: number, fromAt: startedAt, netGrams: same(2002, 10) });
    await packsCounted(house, plant, runId, 200);
    expect(await meanNetOf(from, runId)).toMatchObject({ basis: 'assumed', weighedPackCount: 10 });
  });

  it('leaves out what the weigher pushed out', async () => {
    const { runId, number, startedAt } = await aWeighedRun();
    await packsWeighed(house, weigher, { run: number, fromAt: startedAt, netGrams: same(2002, 60) });
    const payload = JSON.stringify({ sequence: 61, at: startedAt, netGrams: 1900, run: number, rejected: true });
    await house.app
      .getHttpAdapter()
      .getInstance()
      .inject({
        ...{ method: 'POST', url: '/api/fill-weights?series=1', payload },
        headers: { authorization: `Bearer ${weigher.token}`, 'content-type': 'application/x-ndjson' },
      });
    await packsCounted(house, plant, runId, 60);
    expect(await meanNetOf(from, runId)).toMatchObject({ meanMilligrams: 2_002_000, weighedPackCount: 60 });
  });

  it('counts a minute once that two weighers weighed, and the minutes of one that took over', async () => {
    const { runId, number, startedAt } = await aWeighedRun();
    const second = await aPackWeigher(house, plant, { lineId, maximumPermissibleErrorMilligrams: 2000 });
    await packsWeighed(house, weigher, { run: number, fromAt: startedAt, netGrams: same(2002, 120) });
    const behind = shifted(startedAt, 60_000);
    await packsWeighed(house, second, {
      run: number,
      fromAt: behind,
      netGrams: [...same(2004, 59), ...same(2002, 61)],
    });
    await packsCounted(house, plant, runId, 180);
    expect(await meanNetOf(from, runId)).toMatchObject({
      // The second counts for the third minute alone, by its own error.
      ...{ meanMilligrams: 2_002_000, lowerMilligrams: 2_000_000, upperMilligrams: 2_004_000 },
      ...{ weighedPackCount: 180, unweighedPackCount: 0, weigher: { id: weigher.weigherId } },
    });
  });

  it('follows a tare correction, and its withdrawal', async () => {
    const { runId, number, startedAt } = await aWeighedRun();
    await packsWeighed(house, weigher, { run: number, fromAt: startedAt, netGrams: same(2002, 120) });
    await packsCounted(house, plant, runId, 120);
    const before = await meanNetOf(from, runId);
    const range = { weigherId: weigher.weigherId, series: '1', fromSequence: 61, toSequence: 120 };
    const { id } = await house
      .get(CorrectTare)
      .execute(asking(plant.actor), { runId, ...range, addedMilligrams: -2000, reason: 'film of another lot' });
    expect(await meanNetOf(from, runId)).toMatchObject({
      ...{ meanMilligrams: 2_001_000, lowerMilligrams: 1_999_500, upperMilligrams: 2_002_500 },
    });
    await house.get(WithdrawTareCorrection).execute(asking(plant.actor), id, { reason: 'it was the same film' });
    expect(await meanNetOf(from, runId)).toEqual(before);
  });

  it('is the same in how many parts the weights came, and after all sums were worked out anew', async () => {
    const { runId, number, startedAt } = await aWeighedRun();
    const netGrams = Array.from({ length: 300 }, (_, place) => 2000 + ((place * 37) % 50) / 10);
    for (const part of [2, 0, 1]) {
      const fromAt = shifted(startedAt, part * 100_000);
      const own = netGrams.slice(part * 100, part * 100 + 100);
      await packsWeighed(house, weigher, { run: number, fromAt, netGrams: own, fromSequence: part * 100 + 1 });
    }
    await packsCounted(house, plant, runId, 300);
    const inParts = await meanNetOf(from, runId);
    expect(await house.get(UnitOfWork).run((tx) => rebuildSummaries(tx, runId))).toBe('as-stored');
    // Of sums that were kept before minutes were, nothing is known but that packs were weighed: as if they were not.
    await house.get(UnitOfWork).run((tx) => tx.sql`UPDATE "weight_hour" SET "accepted_minutes" = NULL`);
    expect(await meanNetOf(from, runId)).toMatchObject({ basis: 'assumed', unweighedPackCount: 300 });
    expect(await house.get(UnitOfWork).run((tx) => rebuildSummaries(tx, runId))).toBe('written-anew');
    expect(await meanNetOf(from, runId)).toEqual(inParts);
    expect((await meanNetsOf(from, [runId])).get(runId)).toEqual(inParts);
  });

  it('has holds and the hopper looked at again where weights come late, and not while the run goes on', async () => {
    const { runId, number } = await aWeighedRun();
    const jobs = (): Promise<unknown[]> => from.sql`SELECT "id" FROM "outbox_job" WHERE "kind" = 'look-at-reach'`;
    await house.get(UnitOfWork).run((tx) => tx.sql`DELETE FROM "outbox_job"`);
    const now = house.clock.now();
    await packsWeighed(house, weigher, { run: number, fromAt: shifted(now, -60_000), netGrams: same(2002, 60) });
    expect(await jobs()).toHaveLength(0);
    await packsWeighed(house, weigher, { run: number, fromAt: now, netGrams: same(2002, 2), fromSequence: 61 });
    await packsCounted(house, plant, runId, 100);
    await house.get(UnitOfWork).run((tx) => tx.sql`DELETE FROM "outbox_job"`);
    await house.get(CloseRun).execute(asking(plant.actor), runId, { packCount: 100, loosePackCount: 0 });
    await packsWeighed(house, weigher, { run: number, fromAt: now, netGrams: same(2002, 38), fromSequence: 63 });
    expect(await jobs()).toHaveLength(1);
  });
});
