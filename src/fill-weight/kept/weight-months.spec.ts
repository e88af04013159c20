import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { weightMonths } from '../../../migrations/0023-weight-months.js';
import { aPackWeigher } from '../../../test/support/a-pack-weigher.js';
import { aPlant } from '../../../test/support/a-plant.js';
import { aRun } from '../../../test/support/a-run.js';
import { openHouse, type TestHouse } from '../../../test/support/house.js';
import { pickWeights, sliceWeights, type WeightColumns } from '../../core/weight-blocks/weight-columns.js';
import { summariseWeights, type WeightSummary } from '../../core/weight-blocks/weight-summary.js';
import { someWeights } from '../../core/weight-blocks/weights.examples.js';
import { DATABASES, type Databases } from '../../platform/database/databases.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { UnitOfWork, type Tx } from '../../platform/database/unit-of-work.js';
import { addToSummaries } from './add-to-summaries.js';
import { monthsWithWeights, rebuildMonth } from './rebuild-months.js';
import { WeightMonth } from './weight-month.entity.js';
import { histogramsOfLine, summariesOfLine } from './weight-questions.js';
import { yardstickFor } from './yardsticks.js';

const nominalMilligrams = 2_000_000;

describe('the months of weights', () => {
  let house: TestHouse;
  let reader: ReadFrom;
  let lineId: string;
  let weigherId: string;
  /** 24 000 packs, so far apart that they reach from the middle of one month into the third one after it. */
  let all: WeightColumns;

  const inUnit = <Answer>(work: (tx: Tx) => Promise<Answer>): Promise<Answer> => house.get(UnitOfWork).run(work);
  const stored = (): Promise<WeightMonth[]> => inUnit((tx) => tx.find(WeightMonth, { weigherId }));

  beforeAll(async () => {
    house = await openHouse();
    reader = house.app.get<ReadFrom>(READER, { strict: false });
    const plant = await aPlant(house);
    [lineId] = plant.lineIds;
    ({ weigherId } = await aPackWeigher(house, plant, { lineId }));
    const { runId } = await aRun(house, plant, { lineId });
    const firstAt = Date.UTC(2026, 2, 20, 7, 13) / 10;
    const made = someWeights({ count: 24_000, seed: 5, meanMilligrams: 2_004_000, rejectedShare: 0.02 });
    all = { ...made, atCentiseconds: made.atCentiseconds.map((_, place) => firstAt + place * 30_000) };
    for (const [from, to] of [
      [9000, 24_000],
      [0, 5000],
      [5000, 9000],
    ] as const) {
      const columns = sliceWeights(all, from, to);
      await inUnit((tx) =>
        addToSummaries(tx, [
          { runId, weigherId, series: 'A', nominalMilligrams, columns: sliceWeights(columns, 0, 2000) },
          { runId, weigherId, series: 'A', nominalMilligrams, columns: sliceWeights(columns, 2000, columns.count) },
        ]),
      );
    }
  });
  afterAll(() => house.close());

  function truthBetween(fromAt: string, toAt: string): WeightSummary {
    const [from, to] = [Date.parse(fromAt) / 10, Date.parse(toAt) / 10];
    const places = Array.from(all.atCentiseconds.keys()).filter((place) => {
      const at = all.atCentiseconds[place] ?? 0;
      return at >= from && at < to;
    });
    return summariseWeights(pickWeights(all, Uint32Array.from(places)), yardstickFor(nominalMilligrams));
  }

  it('hold what was weighed in each, whatever the batches', async () => {
    const months = await stored();
    expect(months.map(({ monthAt }) => monthAt.slice(0, 7)).sort()).toEqual([
      '2026-03',
      '2026-04',
      '2026-05',
      '2026-06',
    ]);
    const april = months.find(({ monthAt }) => monthAt === '2026-04-01T00:00:00.000Z');
    const truth = truthBetween('2026-04-01T00:00:00.000Z', '2026-05-01T00:00:00.000Z');
    expect(april).toMatchObject({
      accepted: { packCount: truth.accepted.packCount, errorSumMilligrams: truth.accepted.errorSumMilligrams },
      rejected: { packCount: truth.rejected.packCount, smallestMilligrams: truth.rejected.smallestMilligrams },
    });
  });

  it.each([
    ['full months', '2026-04-01T00:00:00.000Z', '2026-06-01T00:00:00.000Z'],
    ['one month', '2026-05-01T00:00:00.000Z', '2026-06-01T00:00:00.000Z'],
    ['months and hours before and after them', '2026-03-22T05:00:00.000Z', '2026-06-03T17:00:00.000Z'],
    ['hours before months', '2026-03-31T23:00:00.000Z', '2026-05-01T00:00:00.000Z'],
    ['hours after months', '2026-04-01T00:00:00.000Z', '2026-05-01T01:00:00.000Z'],
    ['less than a month across its edge', '2026-03-31T20:00:00.000Z', '2026-04-02T03:00:00.000Z'],
    ['a year', '2026-01-01T00:00:00.000Z', '2027-01-01T00:00:00.000Z'],
  ])('answer for %s what the weights say', async (_, fromAt, toAt) => {
    const truth = truthBetween(fromAt, toAt);
    expect(truth.accepted.packCount).toBeGreaterThan(100);
    const stretch = { lineId, fromAt, toAt };
    const [found, ...others] = await summariesOfLine(reader, stretch);
    const [bins] = await histogramsOfLine(reader, stretch);
    expect(others).toEqual([]);
    expect(found?.yardstick).toEqual(yardstickFor(nominalMilligrams));
    expect({ ...found?.summary.accepted, histogram: bins?.accepted }).toEqual(truth.accepted);
    expect({ ...found?.summary.rejected, histogram: bins?.rejected }).toEqual(truth.rejected);
  });

  it('are set anew where they are not the sum of their hours, and only there', async () => {
    const before = await stored();
    await inUnit(async (tx) => {
      await tx.sql`UPDATE "weight_month" SET "accepted_pack_count" = 7 WHERE "month_at" < '2026-04'`;
      await tx.sql`DELETE FROM "weight_month" WHERE "month_at" LIKE '2026-05%'`;
      await tx.sql`UPDATE "weight_month" SET "measured_by" = 'nothing' WHERE "month_at" LIKE '2026-06%'`;
    });
    const outcomes: boolean[] = [];
    for (const month of await monthsWithWeights(reader)) outcomes.push(await inUnit((tx) => rebuildMonth(tx, month)));
    expect(outcomes).toEqual([true, false, true, true]);
    expect(new Set(await stored())).toEqual(new Set(before));
  });

  it('of what was weighed before there were months are summed up when they are brought in', async () => {
    const before = await stored();
    const runner = house.app.get<Databases>(DATABASES, { strict: false }).writer.createQueryRunner();
    await runner.query('DROP TABLE "weight_month"');
    await new weightMonths().up(runner);
    expect(new Set(await stored())).toEqual(new Set(before));
    for (const month of await monthsWithWeights(reader)) {
      expect(await inUnit((tx) => rebuildMonth(tx, month))).toBe(false);
    }
  });
});
