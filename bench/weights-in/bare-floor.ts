import Database from 'better-sqlite3';
import { join } from 'node:path';
import type { ReadyBatch } from './weight-batches.js';

/** Seconds of processor that the least work takes: each line by JSON.parse, each batch's stored bytes by the bare driver. */
export interface BareFloor {
  readonly parseSeconds: number;
  readonly insertSeconds: number;
}

const cpuSecondsOf = (work: () => void): number => {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1e6;
};

/** The same batches without the house. Of CSV each line is only split. */
export function bareFloor(folder: string, batches: readonly ReadyBatch[], type: 'ndjson' | 'csv'): BareFloor {
  let sum = 0;
  const parseSeconds = cpuSecondsOf(() => {
    for (const { body } of batches) for (const line of body.toString('latin1').split('\n')) sum += netOf(line, type);
  });
  if (!(sum > 0)) throw new Error('the floor read nothing');
  const stored = storedBytes(folder);
  const database = new Database(join(folder, `floor-${type}.sqlite`));
  database.pragma('journal_mode = WAL');
  database.pragma('synchronous = FULL');
  database.exec('CREATE TABLE "weights" ("id" integer PRIMARY KEY, "bytes" blob NOT NULL)');
  const insert = database.prepare('INSERT INTO "weights" ("bytes") VALUES (?)');
  const insertSeconds = cpuSecondsOf(() => {
    for (const bytes of stored) insert.run(bytes);
  });
  database.close();
  return { parseSeconds, insertSeconds };
}

function netOf(line: string, type: 'ndjson' | 'csv'): number {
  if (line === '') return 0;
  if (type === 'ndjson') return (JSON.parse(line) as { netGrams: number }).netGrams;
  return Number(line.split(',')[2]) || 0;
}

function storedBytes(folder: string): Buffer[] {
  const database = new Database(join(folder, 'packthread.sqlite'), { readonly: true });
  const rows = database.prepare('SELECT "weights" FROM "weight_batch"').all() as { weights: Buffer }[];
  database.close();
  return rows.map(({ weights }) => weights);
}
