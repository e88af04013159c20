import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { UnitOfWork } from '../platform/database/unit-of-work.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { shifted } from '../platform/clock.js';
import { aPlant, type Plant } from '../../test/support/a-plant.js';
import { aRun, packsCounted } from '../../test/support/a-run.js';
import { asking, openHouse, type TestHouse } from '../../test/support/house.js';
import { CountPacks } from './count-packs.js';
import { countsOf, findRun, openRunOfLine, runOf } from './packing-runs.js';
import { rebuildRunStates } from './run-states.js';
import { PackingRunState } from './packing-run-state.entity.js';

describe('counting the packs of a run', () => {
  let house: TestHouse;
  let plant: Plant;
  let from: ReadFrom;

  beforeAll(async () => {
    house = await openHouse();
    plant = await aPlant(house);
    from = house.app.get<ReadFrom>(READER, { strict: false });
  });

  afterAll(() => house.close());

  const count = (runId: string, form: Parameters<CountPacks['execute']>[2], key?: string) =>
    house.get(CountPacks).execute(asking(plant.actor, key), runId, form);

  it('opens a run with a number and a count of nothing, and finds it by what people type', async () => {
    const { runId, number } = await aRun(house, plant, { lineId: plant.lineIds[1] });
    expect(number).toBe('PR-2026-000001');
    expect(await findRun(from, plant.siteId, 'pr 2026 1')).toMatchObject({ id: runId, packCount: 0, closedAt: null });
    expect((await openRunOfLine(from, plant.lineIds[1]))?.id).toBe(runId);
    expect(await countsOf(from, [runId])).toMatchObject([{ packCount: 0, occasion: 'start' }]);
  });

  it('lets one of two starts on a line win, and says which run is open', async () => {
    const starts = await Promise.allSettled([aRun(house, plant), aRun(house, plant)]);
    expect(starts.filter((start) => start.status === 'fulfilled')).toHaveLength(1);
    const refused = starts.find((start) => start.status === 'rejected');
    expect(refused?.reason).toMatchObject({ code: 'line-has-open-run' });
  });

  it('takes counts that come late between those before and after them, and refuses what goes back', async () => {
    const run = await openRunOfLine(from, plant.lineIds[0]);
    const runId = run?.id ?? '';
    const startedAt = house.clock.now();
    house.clock.pass(10);
    await packsCounted(house, plant, runId, 500);
    house.clock.pass(10);
    await packsCounted(house, plant, runId, 900);
    await expect(count(runId, { packCount: 899 })).resolves.toMatchObject({ packCount: 900 });
    house.clock.pass(1);
    await expect(count(runId, { packCount: 899 })).rejects.toMatchObject({ code: 'count-goes-back' });
    const between = shifted(startedAt, 15 * 60_000);
    await expect(count(runId, { packCount: 901, countedAt: between })).rejects.toMatchObject({
      code: 'count-goes-back',
      facts: { earlierCount: 500, laterCount: 899 },
    });
    await expect(count(runId, { packCount: 499, countedAt: between })).rejects.toMatchObject({
      code: 'count-goes-back',
    });
    await count(runId, { packCount: 700, countedAt: between });
    expect((await countsOf(from, [runId])).map((row) => row.packCount)).toEqual([0, 500, 700, 899, 900]);
    expect(await runOf(from, runId)).toMatchObject({ packCount: 900 });
    await expect(count(runId, { packCount: 0, countedAt: shifted(startedAt, -60_000) })).rejects.toMatchObject({
      code: 'count-before-start',
    });
  });

  it('takes a device’s list of minutes at once, whole or not at all, and the same list sent twice once', async () => {
    const { runId } = await aRun(house, await aPlant(house, { siteCode: 'B1' }).then((other) => (plant = other)));
    const startedAt = house.clock.now();
    const minutes = [60, 118, 181].map((packCount, place) => ({
      packCount,
      countedAt: shifted(startedAt, (place + 1) * 60_000),
    }));
    house.clock.pass(4);
    const [first] = await Promise.all([
      count(runId, { counts: minutes }, 'minutes-of-device'),
      count(runId, { counts: minutes }, 'minutes-of-device'),
    ]);
    expect(first).toMatchObject({ packCount: 181 });
    expect(await countsOf(from, [runId])).toHaveLength(4);
    const broken = [
      { packCount: 240, countedAt: shifted(startedAt, 210_000) },
      { packCount: 239, countedAt: shifted(startedAt, 220_000) },
    ];
    await expect(count(runId, { counts: broken })).rejects.toMatchObject({ code: 'count-goes-back' });
    expect(await countsOf(from, [runId])).toHaveLength(4);
    await expect(count(runId, { packCount: 1, counts: minutes })).rejects.toMatchObject({ name: 'BadForm' });
    await expect(count(runId, {})).rejects.toMatchObject({ name: 'BadForm' });
    await expect(count('PR-2026-999999', { packCount: 1 })).rejects.toMatchObject({ name: 'NotFound' });
  });

  it('leaves one look at the hopper for many counts', async () => {
    const runId = (await openRunOfLine(from, plant.lineIds[0]))?.id ?? '';
    house.clock.pass(1);
    await packsCounted(house, plant, runId, 300);
    await packsCounted(house, plant, runId, 301);
    const jobs =
      await from.sql`SELECT "id" FROM "outbox_job" WHERE "kind" = 'packs-counted' AND "payload" LIKE ${`%${runId}%`}`;
    expect(jobs).toHaveLength(1);
  });

  it('rebuilds the state of every run from its facts alone', async () => {
    const units = house.get(UnitOfWork);
    expect(await units.run((tx) => rebuildRunStates(tx))).toBe(0);
    const runId = (await openRunOfLine(from, plant.lineIds[0]))?.id ?? '';
    await units.run(async (tx) => {
      await tx.update(PackingRunState, { runId }, { packCount: 7, openLineId: null });
    });
    expect(await units.run((tx) => rebuildRunStates(tx))).toBe(1);
    expect(await openRunOfLine(from, plant.lineIds[0])).toMatchObject({ id: runId, packCount: 301 });
  });
});
