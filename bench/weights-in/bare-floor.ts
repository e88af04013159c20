import Database from 'better-sqlite3';
import { join } from 'node:path';
import pg from 'pg';
import { recordsOf } from './bench-records.js';
import type { ReadyBatch } from './weight-batches.js';
import type { BenchPlace } from './weights-server.js';

/** Seconds of processor that the least work takes: each line by JSON.parse, each batch's stored bytes by the bare driver. */
export interface BareFloor {
  readonly parseSeconds: number;
  readonly insertSeconds: number;
}

async function cpuSecondsOf(work: () => Promise<void> | void): Promise<number> {
  const before = process.cpuUsage();
  await work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1e6;
}

/** The same batches without the house. Of CSV each line is only split. */
export async function bareFloor(
  place: BenchPlace,
  batches: readonly ReadyBatch[],
  type: 'ndjson' | 'csv',
): Promise<BareFloor> {
  let sum = 0;
  const parseSeconds = await cpuSecondsOf(() => {
    for (const { body } of batches) for (const line of body.toString('latin1').split('\n')) sum += netOf(line, type);
  });
  if (!(sum > 0)) throw new Error('the floor read nothing');
  const rows = await recordsOf<{ weights: Buffer }>(place, 'SELECT "weights" FROM "weight_batch"');
  const stored = rows.map(({ weights }) => weights);
  const { databaseUrl } = place;
  const insertSeconds = await (databaseUrl === null
    ? insertIntoSqlite(join(place.dataFolder, `floor-${type}.sqlite`), stored)
    : insertIntoPostgres(databaseUrl, stored));
  return { parseSeconds, insertSeconds };
}

function netOf(line: string, type: 'ndjson' | 'csv'): number {
  if (line === '') return 0;
  if (type === 'ndjson') return (JSON.parse(line) as { netGrams: number }).netGrams;
  return Number(line.split(',')[2]) || 0;
}

async function insertIntoSqlite(file: string, stored: readonly Buffer[]): Promise<number> {
  const database = new Database(file);
  database.pragma('journal_mode = WAL');
  database.pragma('synchronous = FULL');
  database.exec('CREATE TABLE "weights" ("id" integer PRIMARY KEY, "bytes" blob NOT NULL)');
  const insert = database.prepare('INSERT INTO "weights" ("bytes") VALUES (?)');
  const seconds = await cpuSecondsOf(() => {
    for (const bytes of stored) insert.run(bytes);
  });
  database.close();
  return seconds;
}

async function insertIntoPostgres(url: string, stored: readonly Buffer[]): Promise<number> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  await client.query('CREATE TABLE "floor_weights" ("id" serial PRIMARY KEY, "bytes" bytea NOT NULL)');
  const seconds = await cpuSecondsOf(async () => {
    for (const bytes of stored) await client.query('INSERT INTO "floor_weights" ("bytes") VALUES ($1)', [bytes]);
  });
  await client.query('DROP TABLE "floor_weights"');
  await client.end();
  return seconds;
}
