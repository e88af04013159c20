import 'reflect-metadata';
import { rebuildCourses } from '../packing/follow-course.js';
import { readConfig } from '../platform/config.js';
import { UnitOfWork } from '../platform/database/unit-of-work.js';
import { openGround } from '../start-house.js';

const runsAtOnce = 100;

/**
 * `npm run courses:rebuild`: writes the course of every closed run anew where it is not what its counts say, also of
 * runs that were closed before courses were kept. On SQLite the server must stand still meanwhile.
 */
async function main(): Promise<void> {
  const databases = await openGround(readConfig(process.env));
  try {
    const work = new UnitOfWork(databases);
    let [lookedAt, written, before] = [0, 0, ''];
    for (;;) {
      const rows = await databases.reader.manager.sql<{ id: string }[]>`
        SELECT "id" FROM "packing_run" WHERE "id" > ${before} ORDER BY "id" LIMIT ${runsAtOnce}`;
      const runIds = rows.map(({ id }) => id);
      const last = runIds.at(-1);
      if (last === undefined) break;
      written += await work.run((tx) => rebuildCourses(tx, runIds));
      lookedAt += runIds.length;
      before = last;
    }
    process.stdout.write(`${lookedAt} runs looked at, the courses of ${written} written anew\n`);
  } finally {
    await databases.close();
  }
}

await main().catch((error: unknown) => {
  process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
  process.exitCode = 2;
});
