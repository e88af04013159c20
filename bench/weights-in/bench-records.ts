import Database from 'better-sqlite3';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { askOnce } from '../own-database.js';
import type { BenchPlace } from './weights-server.js';

/** Rows of the house's records, past the house. */
export async function recordsOf<Row extends Record<string, unknown>>(
  { dataFolder, databaseUrl }: BenchPlace,
  statement: string,
): Promise<Row[]> {
  if (databaseUrl !== null) return askOnce<Row>(databaseUrl, statement);
  const database = new Database(join(dataFolder, 'packthread.sqlite'));
  try {
    const prepared = database.prepare<[], Row>(statement);
    if (prepared.reader) return prepared.all();
    prepared.run();
    return [];
  } finally {
    database.close();
  }
}

/** Has all jobs done by the next server that starts. */
export async function makeJobsDue(place: BenchPlace): Promise<void> {
  await recordsOf(
    place,
    `UPDATE "outbox_job" SET "run_after" = '2000-01-01T00:00:00.000Z' WHERE "finished_at" IS NULL`,
  );
}

/** Waits until so few batches wait to be sealed that none of them is sealed before more come. */
export async function untilSealed(place: BenchPlace): Promise<void> {
  for (;;) {
    const [row] = await recordsOf<{ count: number | string }>(place, 'SELECT COUNT(*) AS "count" FROM "weight_batch"');
    if (Number(row?.count) === 0) return;
    await pause(200);
  }
}
