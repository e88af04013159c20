import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { aCheckPlan, failed, passed } from '../../../test/support/a-check-plan.js';
import { aPackWeigher } from '../../../test/support/a-pack-weigher.js';
import { aPerson, signedIn, type SignedInPerson } from '../../../test/support/a-person.js';
import { aPlant, type Plant } from '../../../test/support/a-plant.js';
import { aRun } from '../../../test/support/a-run.js';
import { aTippedBag } from '../../../test/support/a-tip.js';
import { asking, openHouse, type TestHouse } from '../../../test/support/house.js';
import { filledPacks, keepPacks } from '../../../test/support/kept-packs.js';
import { pageText } from '../../../test/support/page-text.js';
import { noHead } from '../../core/weight-blocks/weight-columns.js';
import { CloseRun } from '../../packing/close-run.js';
import { StopLine } from '../../packing/stop-line.js';
import { shifted } from '../../platform/clock.js';
import { UnitOfWork } from '../../platform/database/unit-of-work.js';
import { CorrectTare } from '../kept/correct-tare.js';
import { SealWeights } from '../kept/seal-weights.js';
import type { RunWeightsApi } from './run-weights.api.js';

type RunWeightsJson = Awaited<ReturnType<RunWeightsApi['ofRun']>>;

const startedAt = '2026-03-12T06:00:00.000Z';
const nominalMilligrams = 2_000_000;
/** Four hours, a pack every three seconds. */
const shift = { packCount: 4800, firstAt: startedAt, everyMilliseconds: 3000 };

describe('the charts of a run’s fill weights', () => {
  let house: TestHouse;
  let plant: Plant;
  let auditor: SignedInPerson;
  let spaniard: SignedInPerson;
  let weigherId: string;

  beforeAll(async () => {
    house = await openHouse();
    house.clock.set(startedAt);
    plant = await aPlant(house);
    auditor = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['auditor'] }));
    spaniard = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['loader'], language: 'es' }));
    ({ weigherId } = await aPackWeigher(house, plant, { headCount: 6 }));
  });
  afterAll(() => house.close());

  const page = async (runId: string, by = auditor): Promise<string> => {
    const answer = await by.get(`/runs/${runId}/weights`);
    expect(answer.status).toBe(200);
    expect(answer.text).not.toMatch(/style=|undefined|NaN|(run-weights|fill|weights|chart-rule)-[a-z]+(-|<)/);
    return pageText(answer.text);
  };
  const json = async (runId: string): Promise<RunWeightsJson> =>
    (await auditor.get(`/api/runs/${runId}/weights`)).body as RunWeightsJson;

  it('find a shift, name its rule, and say what happened beneath it; a head that fills less is named', async () => {
    const { runId, number } = await aRun(house, plant, { startedAt });
    const columns = filledPacks({
      ...{ ...shift, heads: 6, deviationMilligrams: 3000 },
      meanOf: (place, head) => 2_004_000 + (place < 2400 ? 0 : 2_500) - (head === 4 ? 1800 : 0),
    });
    await keepPacks(house, { runId, weigherId, nominalMilligrams }, columns);
    const plan = await aCheckPlan(house, plant);
    house.clock.set(shifted(startedAt, 3_600_000));
    await passed(house, plant, plan);
    house.clock.set(shifted(startedAt, 7_200_000));
    await failed(house, plant, plan);
    const stop = { run: number, stopReason: 'weigher' } as const;
    await house.get(StopLine).execute(asking(plant.actor), stop);
    house.clock.set(shifted(startedAt, 9_000_000));
    const { bag } = await aTippedBag(house, plant);
    house.clock.set(shifted(startedAt, 14_400_000));

    const said = await page(runId);
    // Four hours in 48 intervals: one every five minutes, of all six heads.
    expect(said).toContain('the first 6 accepted packs in a row of every 5 min;');
    expect(said).toContain('each of the 6 heads has its turn');
    expect(said).toMatch(/(Western Electric [1-4])\)\. Ask what changed/);
    expect(said).toMatch(/Cumulative sum \(k 0.5, h 5\): seen at .*, the mean has been (higher|lower)/);
    expect(said).toContain('Check passed: Weigher');
    expect(said).toContain('Check failed: Weigher');
    expect(said).toContain('Stop: weigher');
    expect(said).toContain(`Tipped: ${bag.number}`);
    expect(said).toMatch(/Head 4 fills 1\.[6-9]\d? g less than the others\./);
    expect(said.match(/Head \d fills/g)).toHaveLength(1);
    const found = await json(runId);
    expect(found.heads.map(({ head, packCount, isOff }) => [head, packCount, isOff])).toEqual(
      [1, 2, 3, 4, 5, 6].map((head) => [head, 800, head === 4]),
    );
    expect(found.charted).toMatchObject({ weigherId, everyMinutes: 5, size: 6 });
    expect(found.charted?.subgroups).toHaveLength(48);
    expect(found.charted?.subgroups[0]?.at).toBe(startedAt);
    const first = [...columns.netMilligrams.subarray(0, 6)].reduce((sum, net) => sum + net, 0) / 6;
    expect(found.charted?.subgroups[0]?.meanMilligrams).toBeCloseTo(first, 6);
    expect(found.events.map(({ text }) => text)).toEqual([
      'Check passed: Weigher',
      expect.stringContaining(':'),
      expect.stringContaining(':'),
      `Tipped: ${bag.number}`,
    ]);
    const spanish = await page(runId, spaniard);
    expect(spanish).toMatch(/El cabezal 4 llena 1\.[6-9]\d? g menos que los demás\./);
    expect(spanish).toContain('Control no superado: Weigher');
    await house.get(CloseRun).execute(asking(plant.actor), runId, { packCount: 4800, loosePackCount: 0 });
  });

  it('say of a quiet run that it is quiet, and where a tare was corrected', async () => {
    const lineId = plant.lineIds[1];
    const { runId } = await aRun(house, plant, { lineId, startedAt });
    const columns = filledPacks({
      ...{ ...shift, heads: 1, deviationMilligrams: 3000, seed: 11 },
      meanOf: () => 2_004_000,
    });
    const own = await aPackWeigher(house, plant, { lineId, headCount: null });
    await keepPacks(house, { runId, weigherId: own.weigherId, nominalMilligrams }, columns);
    const before = await page(runId);
    expect(before).toContain('the first 5 accepted packs in a row');
    expect(before).toContain('Cumulative sum (k 0.5, h 5): no lasting shift.');
    expect(before).not.toContain('Head');
    const range = { weigherId: own.weigherId, series: '1', fromSequence: 2401, toSequence: 4800 };
    const corrected = { runId, ...range, addedMilligrams: -2400, reason: 'Heavier pouches from noon' };
    await house.get(CorrectTare).execute(asking(plant.actor), corrected);
    const after = await page(runId);
    expect(after).toContain('Tare corrected from here on: −2.40 g on each net');
    expect(after).toMatch(/the mean has been (higher|lower) since/);
    expect((await json(runId)).events.filter(({ text }) => !text.startsWith('Tipped'))).toEqual([
      { at: shifted(startedAt, 2400 * 3000), text: 'Tare corrected from here on: −2.40 g on each net' },
    ]);
  });

  it('name a damaged block, and are drawn from the rest', async () => {
    const other = await aPlant(house, { siteCode: 'DAMAGED' });
    const reader = await signedIn(house, await aPerson(house, other.siteId, { roles: ['auditor'] }));
    const { runId } = await aRun(house, other, { startedAt });
    const own = await aPackWeigher(house, other);
    const columns = filledPacks({
      ...{ ...shift, packCount: 9000, heads: 2, deviationMilligrams: 3000 },
      meanOf: () => 2_004_000,
    });
    await keepPacks(house, { runId, weigherId: own.weigherId, nominalMilligrams }, columns);
    await house.get(CloseRun).execute(asking(other.actor), runId, { packCount: 9000, loosePackCount: 0 });
    await house.get(SealWeights).look();
    const [block] = await house.get(UnitOfWork).run(async (tx) => {
      const [first] = await tx.sql<{ id: string; count: number }>`
        SELECT "id", "weight_count" AS "count" FROM "weight_block" WHERE "run_id" = ${runId}
        ORDER BY "first_sequence" LIMIT 1`;
      await tx.sql`UPDATE "weight_block" SET "weights" = ${Buffer.from('not what was written')} WHERE "id" = ${first?.id}`;
      return [first];
    });
    const answer = await reader.get(`/runs/${runId}/weights`);
    const said = pageText(answer.text);
    expect(said).toContain(`${String(block?.count).replace(/(\d{3})$/, ' $1')} single weights are damaged.`);
    expect(said).toContain(block?.id);
    expect(said).toContain('The sums above still hold them.');
    expect(said).toContain('Weighed packs 9 000');
    const found = (await reader.get(`/api/runs/${runId}/weights`)).body as RunWeightsJson;
    expect(found.unreadable).toMatchObject([{ id: block?.id, kind: 'block' }]);
    expect(found.heads.reduce((sum, { packCount }) => sum + packCount, 0)).toBe(9000 - Number(block?.count));
    await house
      .get(UnitOfWork)
      .run((tx) => tx.sql`UPDATE "weight_block" SET "weights" = NULL WHERE "run_id" = ${runId}`);
    const dropped = pageText((await reader.get(`/runs/${runId}/weights`)).text);
    expect(dropped).toContain('9 000 single weights were dropped after their time, by order.');
    expect(dropped).not.toContain('Control chart');
    expect(dropped).toContain('Means by the hour');
  });

  it('compare no packs of which no head was told, and a head 0 that was', async () => {
    const other = await aPlant(house, { siteCode: 'HEADS' });
    const reader = await signedIn(house, await aPerson(house, other.siteId, { roles: ['auditor'] }));
    const { runId } = await aRun(house, other, { startedAt });
    const columns = filledPacks({
      ...{ ...shift, packCount: 1200, heads: 4, deviationMilligrams: 3000 },
      meanOf: (place) => (place % 10 === 0 ? 2_050_000 : 2_004_000),
    });
    const heads = columns.heads?.map((head, place) => (place % 10 === 0 ? noHead : head - 1)) ?? null;
    const own = await aPackWeigher(house, other);
    await keepPacks(house, { runId, weigherId: own.weigherId, nominalMilligrams }, { ...columns, heads });
    const spanish = await signedIn(house, await aPerson(house, other.siteId, { roles: ['loader'], language: 'es' }));
    for (const isSealed of [false, true]) {
      const found = (await reader.get(`/api/runs/${runId}/weights`)).body as RunWeightsJson;
      expect(found.heads.map(({ head, isOff }) => [head, isOff])).toEqual([0, 1, 2, 3].map((head) => [head, false]));
      expect(found).toMatchObject({ noHeadPackCount: 120, zeroOrNoHeadPackCount: 0 });
      expect(found.heads.reduce((sum, { packCount }) => sum + packCount, 0)).toBe(1080);
      const said = await page(runId, reader);
      expect(said).toContain('Of 120 packs the weigher told no head: they stand in no row.');
      expect(said).not.toMatch(/Head \d fills|kept when head 0/);
      expect(await page(runId, spanish)).toContain('De 120 paquetes la pesadora no dijo el cabezal');
      if (isSealed) continue;
      await house.get(CloseRun).execute(asking(other.actor), runId, { packCount: 1200, loosePackCount: 0 });
      await house.get(SealWeights).look();
    }
  });
});
