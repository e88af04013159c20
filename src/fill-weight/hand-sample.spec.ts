import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { UnitOfWork } from '../platform/database/unit-of-work.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { shifted } from '../platform/clock.js';
import { SystemIds } from '../platform/ids.js';
import { hasSentence } from '../platform/sentences/sentences.js';
import { ScaleCheck } from '../plant/scale-check.entity.js';
import { aPlant, type Plant } from '../../test/support/a-plant.js';
import { aPackScale, aRun } from '../../test/support/a-run.js';
import { asking, openHouse, type TestHouse } from '../../test/support/house.js';
import { CorrectHandSample } from './correct-hand-sample.js';
import { handSamplesOf, meanNetOf, meanNetsOf } from './mean-nets.js';
import { WeighHandSample } from './weigh-hand-sample.js';

describe('the mean net of a run', () => {
  let house: TestHouse;
  let plant: Plant;
  let from: ReadFrom;
  let runId: string;
  let scaleId: string;

  beforeAll(async () => {
    house = await openHouse();
    plant = await aPlant(house);
    from = house.app.get<ReadFrom>(READER, { strict: false });
    ({ runId } = await aRun(house, plant));
    scaleId = await aPackScale(house, plant);
  });

  afterAll(() => house.close());

  const weigh = (form: Partial<Parameters<WeighHandSample['execute']>[1]>, key?: string) =>
    house
      .get(WeighHandSample)
      .execute(asking(plant.actor, key), { run: runId, scaleId, netDecigrams: [20_010, 20_030], ...form });

  it('is the nominal quantity with the limits of the format while nothing was weighed, and says so', async () => {
    expect(await meanNetOf(from, runId)).toEqual({
      meanMilligrams: 2_000_000,
      lowerMilligrams: 1_990_000,
      upperMilligrams: 2_020_000,
      basis: 'assumed',
      samplePackCount: 0,
      weighedAt: null,
      weighedPackCount: 0,
      unweighedPackCount: 0,
      weigher: null,
    });
    await expect(meanNetOf(from, plant.siteId)).rejects.toMatchObject({ kind: 'packing-run' });
  });

  it('comes from the latest hand sample, with hard limits that hold the error of the scale', async () => {
    house.clock.pass(10);
    const first = await weigh({ netDecigrams: [20_010, 20_030, 19_990, 20_010] });
    // 2001.0 g ± (12.924 × 0.8165 g + 1.0 g): t of 3 degrees of freedom at 0.9995 from any printed table.
    expect(first).toMatchObject({ meanMilligrams: 2_001_000, lowerMilligrams: 1_989_447, upperMilligrams: 2_012_553 });
    house.clock.pass(50);
    await weigh({ netDecigrams: [20_050, 20_070, 20_060], weighedAt: shifted(house.clock.now(), -3_300_000) });
    expect(await meanNetOf(from, runId)).toMatchObject({ meanMilligrams: 2_001_000, basis: 'measured' });
    const last = await weigh({ netDecigrams: [20_020, 20_040, 20_030] });
    const nets = await meanNetsOf(from, [runId]);
    expect(nets.get(runId)).toMatchObject({ meanMilligrams: last.meanMilligrams, samplePackCount: 3 });
    expect(await handSamplesOf(from, runId)).toHaveLength(3);
    expect(await meanNetsOf(from, [])).toEqual(new Map());
  });

  it('refuses a pack that cannot be of this format, a scale that failed, and packs older than the run', async () => {
    expect(hasSentence('net-far-from-nominal')).toBe(true);
    await expect(weigh({ netDecigrams: [20_000, 24_001] })).rejects.toMatchObject({
      code: 'net-far-from-nominal',
      facts: { pack: 2, grams: '2400.1' },
    });
    await expect(weigh({ netDecigrams: [16_000, 24_000] })).resolves.toMatchObject({ samplePackCount: 2 });
    await expect(weigh({ weighedAt: shifted(house.clock.now(), -65 * 60_000), reason: 'late' })).rejects.toMatchObject({
      code: 'before-run-start',
    });
    await expect(weigh({ run: 'PR-2026-000999' })).rejects.toMatchObject({ kind: 'packing-run' });
    const other = await aPlant(house, { siteCode: 'OTHER' });
    await expect(weigh({ scaleId: other.scaleId })).rejects.toMatchObject({ kind: 'scale' });
    await expect(weigh({ scaleId: runId })).rejects.toMatchObject({ kind: 'scale' });
    const broken = await aPackScale(house, plant, 'P9');
    await house.get(UnitOfWork).run((tx) =>
      tx.insert(ScaleCheck, {
        id: new SystemIds().next(),
        scaleId: broken,
        checkedAt: house.clock.now(),
        deviationMilligrams: 4000,
        passed: false,
        personId: null,
      }),
    );
    await expect(weigh({ scaleId: broken })).rejects.toMatchObject({ code: 'scale-has-failed' });
  });

  it('weighs the same sample sent twice once', async () => {
    const before = (await handSamplesOf(from, runId)).length;
    const [first, second] = await Promise.all([weigh({}, 'sample-twice'), weigh({}, 'sample-twice')]);
    expect(second).toEqual(first);
    expect(await handSamplesOf(from, runId)).toHaveLength(before + 1);
  });

  it('falls back to the sample before when the last one did not occur, and to its right values when it was wrong', async () => {
    const { runId: other } = await aRun(house, plant, { lineId: plant.lineIds[1] });
    const correct = house.get(CorrectHandSample);
    const first = await weigh({ run: other, netDecigrams: [20_000, 20_000] });
    house.clock.pass(5);
    const second = await weigh({ run: other, netDecigrams: [20_200, 20_200] });
    const form = { why: 'incorrect-data' as const, reason: 'Read with the tare' };
    await expect(correct.execute(asking(plant.actor), second.id, form)).rejects.toMatchObject({ name: 'BadForm' });
    const { sample } = await correct.execute(asking(plant.actor), second.id, {
      ...form,
      netDecigrams: [20_100, 20_100],
    });
    expect(await meanNetOf(from, other)).toMatchObject({ meanMilligrams: 2_010_000, weighedAt: second.weighedAt });
    const gone = { why: 'did-not-occur' as const, reason: 'Packs of the other line' };
    await expect(correct.execute(asking(plant.actor), second.id, gone)).rejects.toMatchObject({
      code: 'already-corrected',
    });
    await correct.execute(asking(plant.actor), sample!.id, gone);
    expect(await meanNetOf(from, other)).toMatchObject({ meanMilligrams: first.meanMilligrams });
    await correct.execute(asking(plant.actor), first.id, gone);
    expect(await meanNetOf(from, other)).toMatchObject({ basis: 'assumed' });
    await expect(correct.execute(asking(plant.actor), runId, gone)).rejects.toMatchObject({ kind: 'hand-sample' });
  });
});
