import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import { Housekeeping } from '../journal/housekeeping.js';
import type { Config } from '../platform/config.js';
import type { Databases } from '../platform/database/databases.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { JobRunner } from '../platform/jobs/job-runner.js';
import { buildHouse, openGround } from '../start-house.js';
import { clockAfter } from './demo-clock.js';
import { DemoEntrance } from './entrance/demo-entrance.js';
import type { DemoTruth } from './truth.js';
import { codesToShow, welcomeText } from './welcome.js';

/** A demo's plant that is served. */
export interface ServedDemo {
  readonly house: NestFastifyApplication;
  close(): Promise<void>;
}

/** Serves the demo's plant, and says where and how to come in. */
export async function serveDemo(config: Config, truth: DemoTruth): Promise<ServedDemo> {
  const databases = await openGround(config);
  await refuseOtherPlant(databases, truth);
  const clock = clockAfter(await lastRecordedAt(databases, truth));
  const annexe = DemoEntrance.to(truth.devices ?? []);
  const house = await buildHouse(config, databases, { clock, annexe });
  const codes = await codesToShow(house.get<ReadFrom>(READER, { strict: false }), truth);
  house.get(JobRunner, { strict: false }).start();
  house.get(Housekeeping, { strict: false }).start();
  await house.listen(config.port, config.host);
  process.stdout.write(
    welcomeText((await house.getUrl()).replace('[::1]', 'localhost'), codes, truth.devices ?? [], clock.now()),
  );
  return {
    house,
    close: async () => {
      await house.close();
      await databases.close();
    },
  };
}

/** A folder of the demo beside the database of a plant: what the demo tells everybody has no place there. */
async function refuseOtherPlant(databases: Databases, { siteId }: DemoTruth): Promise<void> {
  const sites: { id: string }[] = await databases.reader.query('SELECT "id" FROM "site"');
  if (sites.length === 1 && sites[0]?.id === siteId) return;
  await databases.close();
  throw new Error('The database holds a plant that is not the demo of this folder. Name another with DATABASE_URL.');
}

/** Time must not go back behind what the journal holds. */
async function lastRecordedAt(databases: Databases, { endsAt }: DemoTruth): Promise<string> {
  const rows: { last: string | null }[] = await databases.reader.query(
    'SELECT MAX("recorded_at") AS "last" FROM "journal_entry"',
  );
  const last = rows[0]?.last ?? endsAt;
  return last > endsAt ? last : endsAt;
}
