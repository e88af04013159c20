import type { Config } from '../platform/config.js';
import type { Databases } from '../platform/database/databases.js';
import { buildHouse, openGround } from '../start-house.js';
import { DemoClock, DemoIds } from './demo-clock.js';
import { planDemo, type DemoOptions } from './life/demo-plan.js';
import { liveThrough } from './life/live-through.js';
import { instantOf } from './life/minutes.js';
import { playDays, type OnProgress } from './play/play-days.js';
import { truthOf, writeTruth, type DemoTruth } from './truth.js';

/** The plant and its people are set up the day before. */
const setUpMinutesBefore = 1440;

/**
 * Makes the demo in the database and data folder of the settings, which must be empty: lives through the days, then
 * records them by calling the commands of the house. Its truth is written last, beside the database.
 */
export async function makeDemo(config: Config, options: DemoOptions, onProgress?: OnProgress): Promise<DemoTruth> {
  const plan = planDemo(options);
  const lived = liveThrough(plan);
  const databases = await openGround(config);
  try {
    await refuseFullHouse(databases);
    await hurry(databases);
    const clock = new DemoClock(instantOf(plan.from - setUpMinutesBefore));
    const ids = new DemoIds(clock, options.seed);
    const house = await buildHouse(config, databases, { clock, ids });
    try {
      const hand = await playDays(house, clock, { plan, lived }, onProgress);
      const truth = truthOf(plan, lived, hand);
      writeTruth(config.dataFolder, truth);
      return truth;
    } finally {
      await house.close();
    }
  } finally {
    await databases.close();
  }
}

async function refuseFullHouse(databases: Databases): Promise<void> {
  const sites: unknown[] = await databases.reader.query('SELECT "id" FROM "site" LIMIT 1');
  if (sites.length > 0) throw new Error('The database holds a plant already; the demo wants an empty one.');
}

/** Only here: a demo that is broken off is thrown away, so nothing needs to be on disk before the next act. */
async function hurry(databases: Databases): Promise<void> {
  if (databases.kind === 'sqlite') await databases.writer.query('PRAGMA synchronous = OFF');
}
