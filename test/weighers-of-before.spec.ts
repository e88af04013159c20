import { afterEach, describe, expect, it } from '@jest/globals';
import { waysIn } from '../migrations/0019-ways-in.js';
import { migrations } from '../migrations/index.js';
import { lookAtWeighingJob } from '../src/fill-weight/look-job.js';
import { sealWeightsJob } from '../src/fill-weight/kept/seal-job.js';
import { openPointsOf } from '../src/open-points/open-points.js';
import { readConfig } from '../src/platform/config.js';
import { openDatabases } from '../src/platform/database/databases.js';
import { migrate } from '../src/platform/database/migrate.js';
import { READER, type ReadFrom } from '../src/platform/database/reading.js';
import { UnitOfWork } from '../src/platform/database/unit-of-work.js';
import { JobRunner } from '../src/platform/jobs/job-runner.js';
import { aPackWeigher } from './support/a-pack-weigher.js';
import { aPlant } from './support/a-plant.js';
import { aRun, packsCounted } from './support/a-run.js';
import { barePlace, freshPlace, openHouseAt, type Place, type TestHouse } from './support/house.js';

let place: Place | null = null;
let house: TestHouse | null = null;

afterEach(async () => {
  await house?.close();
  await place?.remove();
  [house, place] = [null, null];
});

const waiting = async ({ app }: TestHouse) =>
  (
    await app.get<ReadFrom>(READER, { strict: false }).sql<{
      kind: string;
      runAfter: string;
      lastError: string | null;
    }>`
      SELECT "kind", "run_after" AS "runAfter", "last_error" AS "lastError" FROM "outbox_job"
      WHERE "finished_at" IS NULL ORDER BY "kind"`
  ).filter(({ kind }) => kind === lookAtWeighingJob || kind === sealWeightsJob);

/** A database as it was before weighers were watched, with a weigher in it. */
async function aPlaceOfBefore(): Promise<Place> {
  const bare = await barePlace();
  const before = migrations.slice(0, migrations.indexOf(waysIn) + 1);
  const config = readConfig({
    DATA_FOLDER: bare.dataFolder,
    LOG_LEVEL: 'silent',
    ...(bare.databaseUrl === null ? {} : { DATABASE_URL: bare.databaseUrl }),
  });
  const old = await openDatabases({ ...config, entities: [], migrations: before });
  await migrate(old);
  const runner = old.writer.createQueryRunner();
  await runner.query(old.kind === 'sqlite' ? 'PRAGMA foreign_keys = OFF' : 'SET session_replication_role = replica');
  await runner.query(`INSERT INTO "pack_weigher" ("id", "site_id", "device_id", "line_id", "code", "step_milligrams",
    "maximum_permissible_error_milligrams", "head_count", "counts_packs", "rejects_packs", "set_up_at", "voided_by")
    VALUES ('w', 's', 'd', 'l', 'W1', 200, 500, NULL, true, true, '2026-01-01T00:00:00.000Z', NULL)`);
  await runner.release();
  await old.close();
  return bare;
}

describe('a pack weigher that an earlier release set up', () => {
  it('has its jobs from the first start on, and once each however often the house is started', async () => {
    place = await aPlaceOfBefore();
    for (let start = 1; start <= 2; start += 1) {
      house = await openHouseAt(place, {});
      expect((await waiting(house)).map(({ kind }) => kind)).toEqual([lookAtWeighingJob, sealWeightsJob]);
      await house.get(JobRunner).drain();
      for (const job of await waiting(house)) {
        expect(job.lastError).toBeNull();
        expect(job.runAfter > house.clock.now()).toBe(true);
      }
      await house.close();
    }
    house = null;
  });

  it('is watched for silence though nothing is set again', async () => {
    place = await freshPlace();
    house = await openHouseAt(place, {});
    const plant = await aPlant(house);
    await aPackWeigher(house, plant);
    // As the earlier release left it.
    await house.get(UnitOfWork).run((tx) => tx.sql`DELETE FROM "outbox_job"`);
    await house.close();

    house = await openHouseAt(place, {});
    const { runId } = await aRun(house, plant);
    for (let minute = 1; minute <= 12; minute += 1) {
      house.clock.pass(1);
      await packsCounted(house, plant, runId, minute * 30);
      await house.get(JobRunner).drain();
    }
    const from = house.app.get<ReadFrom>(READER, { strict: false });
    const open = await openPointsOf(from, plant.siteId, { state: 'open', limit: 50 });
    expect(open.map(({ cause }) => cause)).toContain('weigher-silent');
  });

  it('is all that leaves them: a plant without a weigher has no such job', async () => {
    place = await freshPlace();
    house = await openHouseAt(place, {});
    expect(await waiting(house)).toEqual([]);
  });
});
