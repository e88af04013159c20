import { statSync } from 'node:fs';
import { decodeWeights } from '../../src/core/weight-blocks/decode-weights.js';
import { encodeWeights } from '../../src/core/weight-blocks/encode-weights.js';
import { addToSummaries } from '../../src/fill-weight/kept/add-to-summaries.js';
import { extentOf } from '../../src/fill-weight/kept/instants-of-weights.js';
import { SealWeights } from '../../src/fill-weight/kept/seal-weights.js';
import { WeightBatch } from '../../src/fill-weight/weight-batch.entity.js';
import { SystemClock } from '../../src/platform/clock.js';
import { readConfig } from '../../src/platform/config.js';
import type { Databases } from '../../src/platform/database/databases.js';
import { readingFrom } from '../../src/platform/database/statement.js';
import { UnitOfWork } from '../../src/platform/database/unit-of-work.js';
import { SystemIds } from '../../src/platform/ids.js';
import { JobRunner } from '../../src/platform/jobs/job-runner.js';
import { openGround } from '../../src/start-house.js';
import { askOnce } from '../own-database.js';
import { cpuSeconds } from './measure.js';
import type { MadeYear } from './made-year.js';

export const lineId = '0197-line';
export const weigherId = '0197-weigher';
export const series = '1';

/** What the house took, in seconds of processor time (of this process: on PostgreSQL the server's own comes on top). */
export interface HouseCosts {
  readonly encodeSeconds: number;
  readonly decodeSeconds: number;
  readonly storeSeconds: number;
  readonly sealSeconds: number;
  readonly blockBytes: number;
  /** Of all tables, with the indexes. */
  readonly allBytes: number;
}

/** Writes a year of weights the way they come in and are sealed, without the rows that they hang on. */
export async function fillHouse(
  folder: string,
  databaseUrl: string | null,
  year: MadeYear,
): Promise<{ readonly databases: Databases; readonly costs: HouseCosts }> {
  const environment = { DATA_FOLDER: folder, ...(databaseUrl === null ? {} : { DATABASE_URL: databaseUrl }) };
  if (databaseUrl !== null) await withoutForeignKeys(databaseUrl);
  const databases = await openGround(readConfig(environment));
  const empty = await sizeOf(databases);
  if (databases.kind === 'sqlite') await databases.writer.query('PRAGMA foreign_keys = OFF');
  await databases.writer.query(
    `INSERT INTO "pack_weigher" VALUES ('${weigherId}', '', '', '${lineId}', 'W1', 100, 500, NULL, TRUE, FALSE, '', NULL)`,
  );
  const units = new UnitOfWork(databases);
  const ids = new SystemIds();
  const clock = new SystemClock();
  let [encodeSeconds, decodeSeconds, storeSeconds] = [0, 0, 0];
  const runs = new Set<string>();
  for (const { run, columns } of year.batches()) {
    const runId = `run-${String(run).padStart(5, '0')}`;
    let begun = cpuSeconds();
    const weights = Buffer.from(encodeWeights(columns));
    encodeSeconds += cpuSeconds() - begun;
    begun = cpuSeconds();
    decodeWeights(weights);
    decodeSeconds += cpuSeconds() - begun;
    begun = cpuSeconds();
    await units.run(async (tx) => {
      await tx.insert(WeightBatch, {
        id: ids.next(),
        weigherId,
        runId,
        series,
        ...extentOf(columns),
        weights,
        digest: '',
        entryId: '',
        receivedAt: clock.now(),
      });
      await addToSummaries(tx, [{ runId, weigherId, series, nominalMilligrams: 1_000_000, columns }]);
      if (!runs.has(runId)) {
        await tx.sql`INSERT INTO "packing_run_close" VALUES (${`close-${runId}`}, ${runId}, 0, ${clock.now()}, NULL)`;
      }
    });
    runs.add(runId);
    storeSeconds += cpuSeconds() - begun;
  }
  const begun = cpuSeconds();
  const reader = readingFrom(databases.reader);
  await new SealWeights(reader, units, clock, ids, new JobRunner(units, clock, reader)).look();
  const sealSeconds = cpuSeconds() - begun;
  await databases.writer.query(databases.kind === 'sqlite' ? 'VACUUM' : 'VACUUM FULL ANALYZE');
  const [bytes] = await reader.sql<{
    sum: number | string;
  }>`SELECT SUM(LENGTH("weights")) AS "sum" FROM "weight_block"`;
  const costs = { encodeSeconds, decodeSeconds, storeSeconds, sealSeconds, blockBytes: Number(bytes?.sum ?? 0) };
  return { databases, costs: { ...costs, allBytes: (await sizeOf(databases)) - empty } };
}

/** For all connections that are opened from now on. */
async function withoutForeignKeys(databaseUrl: string): Promise<void> {
  const name = new URL(databaseUrl).pathname.slice(1);
  await askOnce(databaseUrl, `ALTER DATABASE "${name}" SET session_replication_role = 'replica'`);
}

async function sizeOf({ file, writer }: Databases): Promise<number> {
  if (file !== null) return statSync(file).size;
  const [row] = await writer.query<{ bytes: string }[]>('SELECT pg_database_size(current_database()) AS bytes');
  return Number(row?.bytes);
}
