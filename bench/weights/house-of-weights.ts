import { statSync } from 'node:fs';
import { encodeWeights } from '../../src/core/weight-blocks/encode-weights.js';
import { decodeWeights } from '../../src/core/weight-blocks/decode-weights.js';
import { addToSummaries } from '../../src/fill-weight/kept/add-to-summaries.js';
import { extentOf } from '../../src/fill-weight/kept/instants-of-weights.js';
import { SealWeights } from '../../src/fill-weight/kept/seal-weights.js';
import { WeightBatch } from '../../src/fill-weight/weight-batch.entity.js';
import { SystemClock } from '../../src/platform/clock.js';
import { readConfig } from '../../src/platform/config.js';
import type { Databases } from '../../src/platform/database/databases.js';
import type { ReadFrom } from '../../src/platform/database/reading.js';
import { UnitOfWork } from '../../src/platform/database/unit-of-work.js';
import { SystemIds } from '../../src/platform/ids.js';
import { JobRunner } from '../../src/platform/jobs/job-runner.js';
import { openGround } from '../../src/start-house.js';
import { cpuSeconds } from './measure.js';
import type { MadeYear } from './made-year.js';

export const lineId = '0197-line';
export const weigherId = '0197-weigher';
export const series = '1';

/** What the house took, in seconds of processor time. */
export interface HouseCosts {
  readonly encodeSeconds: number;
  readonly decodeSeconds: number;
  readonly storeSeconds: number;
  readonly sealSeconds: number;
  readonly blockBytes: number;
  readonly fileBytes: number;
}

/** Writes a year of weights the way they come in and are sealed, on SQLite without the rows that they hang on. */
export async function fillHouse(
  folder: string,
  year: MadeYear,
): Promise<{ readonly databases: Databases; readonly costs: HouseCosts }> {
  const databases = await openGround(readConfig({ DATA_FOLDER: folder }));
  const empty = sizeOf(databases);
  await databases.writer.query('PRAGMA foreign_keys = OFF');
  await databases.writer.query(
    `INSERT INTO "pack_weigher" VALUES ('${weigherId}', '', '', '${lineId}', 'W1', 100, 500, NULL, 1, 0, '', NULL)`,
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
  const reader = databases.reader.manager as unknown as ReadFrom;
  await new SealWeights(reader, units, clock, ids, new JobRunner(units, clock)).look();
  const sealSeconds = cpuSeconds() - begun;
  await databases.writer.query('VACUUM');
  const [bytes] = await reader.sql<{ sum: number }>`SELECT SUM(LENGTH("weights")) AS "sum" FROM "weight_block"`;
  const costs = { encodeSeconds, decodeSeconds, storeSeconds, sealSeconds, blockBytes: bytes?.sum ?? 0 };
  return { databases, costs: { ...costs, fileBytes: sizeOf(databases) - empty } };
}

function sizeOf({ file }: Databases): number {
  return file === null ? 0 : statSync(file).size;
}
