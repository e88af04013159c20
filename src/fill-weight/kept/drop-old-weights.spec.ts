import { afterEach, describe, expect, it } from '@jest/globals';
import { aPackWeigher } from '../../../test/support/a-pack-weigher.js';
import { aPlant } from '../../../test/support/a-plant.js';
import { aRun } from '../../../test/support/a-run.js';
import { asking, openHouse, type TestHouse } from '../../../test/support/house.js';
import { encodeWeights } from '../../core/weight-blocks/encode-weights.js';
import { summariseWeights } from '../../core/weight-blocks/weight-summary.js';
import { someWeights } from '../../core/weight-blocks/weights.examples.js';
import { shifted } from '../../platform/clock.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { UnitOfWork } from '../../platform/database/unit-of-work.js';
import { SystemIds } from '../../platform/ids.js';
import { DropOldWeights } from './drop-old-weights.js';
import { DropWeights } from './drop-weights.js';
import { extentOf } from './instants-of-weights.js';
import { sumColumnsOf } from './summed-rows.js';
import { WeightBlock } from './weight-block.entity.js';
import { yardstickFor } from './yardsticks.js';

const ids = new SystemIds();
const dayMilliseconds = 86_400_000;
const yearOfLongestMonths = 12 * 31;

describe('single weights whose time is up', () => {
  let house: TestHouse;
  afterEach(() => house.close());

  /** So many blocks, one a minute, the last of them so many days ago. */
  async function blocks(count: number, daysAgo: number): Promise<void> {
    const plant = await aPlant(house, { siteCode: `S${daysAgo}` });
    const [lineId] = plant.lineIds;
    const { weigherId } = await aPackWeigher(house, plant, { lineId });
    const { runId } = await aRun(house, plant, { lineId });
    const columns = someWeights({ count: 20, seed: 3 });
    const { accepted, rejected } = summariseWeights(columns, yardstickFor(1_000_000));
    const sums = { accepted: sumColumnsOf(accepted), rejected: sumColumnsOf(rejected) };
    const rows = Array.from({ length: count }, (_, place) => {
      const at = shifted(house.clock.now(), -daysAgo * dayMilliseconds - place * 60_000);
      const stands = { id: ids.next(), weigherId, runId, series: '1', sealedAt: at };
      const weights = Buffer.from(encodeWeights(columns));
      return { ...stands, ...extentOf(columns), firstAt: at, lastAt: at, ...sums, weights };
    });
    await house.get(UnitOfWork).run((tx) => tx.insert(WeightBlock, rows));
  }

  const reader = (): ReadFrom => house.app.get<ReadFrom>(READER, { strict: false });

  async function left(): Promise<number> {
    const rows = await reader().sql`SELECT "id" FROM "weight_block" WHERE "weights" IS NOT NULL`;
    return rows.length;
  }

  const entries = () =>
    reader().sql<{ person: string | null; reason: string | null }>`
      SELECT "person_id" AS "person", "reason" FROM "journal_entry" WHERE "action" = 'drop-weights'`;

  it('go by themselves where the settings ask for it, some at once, and the young ones stay', async () => {
    house = await openHouse({ DROP_WEIGHTS: 'yes', WEIGHT_MONTHS: '12' });
    await blocks(230, yearOfLongestMonths + 1);
    await blocks(30, yearOfLongestMonths - 1);
    await house.get(DropOldWeights).look();
    expect(await left()).toBe(30);
    expect(await entries()).toEqual([
      { person: null, reason: null },
      { person: null, reason: null },
    ]);
    await house.get(DropOldWeights).look();
    expect(await entries()).toHaveLength(2);
    house.clock.set(shifted(house.clock.now(), 2 * dayMilliseconds));
    await house.get(DropOldWeights).look();
    expect(await left()).toBe(0);
  });

  it('stay where the settings do not ask for it', async () => {
    house = await openHouse({ WEIGHT_MONTHS: '12' });
    await blocks(3, 4000);
    await house.get(DropOldWeights).look();
    expect([await left(), await entries()]).toEqual([3, []]);
  });

  it('are dropped by hand at their own site alone', async () => {
    house = await openHouse({ WEIGHT_MONTHS: '12' });
    await blocks(2, 4000);
    const other = await aPlant(house, { siteCode: 'OTHER' });
    const form = { before: shifted(house.clock.now(), -3000 * dayMilliseconds), reason: 'old' };
    expect(await house.get(DropWeights).execute(asking(other.actor), form)).toMatchObject({ blockCount: 0 });
    expect(await left()).toBe(2);
  });
});
