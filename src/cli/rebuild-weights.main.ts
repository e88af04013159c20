import 'reflect-metadata';
import { monthsWithWeights, rebuildMonth } from '../fill-weight/kept/rebuild-months.js';
import { rebuildSummaries, type RebuildOutcome } from '../fill-weight/kept/rebuild-summaries.js';
import { rebuildReceived, seriesReceived } from '../fill-weight/rebuild-received.js';
import { readConfig } from '../platform/config.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { UnitOfWork } from '../platform/database/unit-of-work.js';
import { openGround } from '../start-house.js';

/**
 * `npm run weights:rebuild`: works the sums over weights of every run, those of months, and what was received of every
 * counter out anew, and writes them where they are not what the weights say. Runs whose single weights were dropped or
 * are damaged keep what is stored, and are named. On SQLite the server must stand still meanwhile.
 */
async function main(): Promise<void> {
  const databases = await openGround(readConfig(process.env));
  try {
    const work = new UnitOfWork(databases);
    const found: Record<RebuildOutcome, number> = { 'as-stored': 0, 'written-anew': 0, unreadable: 0 };
    const runs = await databases.reader.manager.sql<{ id: string; number: string }[]>`
      SELECT "id", "number" FROM "packing_run" ORDER BY "id"`;
    for (const { id, number } of runs) {
      const outcome = await work.run((tx) => rebuildSummaries(tx, id));
      found[outcome] += 1;
      if (outcome === 'unreadable')
        process.stdout.write(`${number}: weights dropped or damaged, sums left as stored\n`);
    }
    process.stdout.write(
      `${found['as-stored']} runs as stored, ${found['written-anew']} written anew, ${found.unreadable} not readable\n`,
    );
    const reader: ReadFrom = { sql: (strings, ...values) => databases.reader.manager.sql(strings, ...values) };
    const months = await monthsWithWeights(reader);
    let anew = 0;
    for (const month of months) if (await work.run((tx) => rebuildMonth(tx, month))) anew += 1;
    process.stdout.write(`${months.length - anew} months as stored, ${anew} written anew\n`);
    const counters = await seriesReceived(reader);
    anew = 0;
    for (const key of counters) {
      if ((await work.run((tx) => rebuildReceived(tx, key))) === 'written-anew') anew += 1;
    }
    process.stdout.write(`${counters.length - anew} counters as stored, ${anew} written anew\n`);
  } finally {
    await databases.close();
  }
}

await main().catch((error: unknown) => {
  process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
  process.exitCode = 2;
});
