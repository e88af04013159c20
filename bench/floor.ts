import { closeSync, fsyncSync, openSync, rmSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import type { Statement } from './statement-log.js';

/** Milliseconds that the bare driver takes for these statements, on a copy of the same file with the same settings. */
export function replay(file: string, statements: readonly Statement[]): number {
  const database = new Database(file);
  database.pragma('journal_mode = WAL');
  database.pragma('synchronous = FULL');
  database.pragma('foreign_keys = ON');
  database.pragma('recursive_triggers = ON');
  const prepared = new Map<string, Database.Statement>();
  const begun = performance.now();
  for (const { sql, parameters } of statements) {
    let statement = prepared.get(sql);
    if (statement === undefined) {
      statement = database.prepare(sql);
      prepared.set(sql, statement);
    }
    if (statement.reader) statement.all(...parameters);
    else statement.run(...parameters);
  }
  const taken = performance.now() - begun;
  database.close();
  return taken;
}

/** Milliseconds of one fsync of a small write here: the price of "done means on disk". Median of 101. */
export function fsyncMilliseconds(folder: string): number {
  const path = join(folder, 'fsync-probe');
  const file = openSync(path, 'w');
  const times = Array.from({ length: 101 }, () => {
    writeSync(file, Buffer.alloc(4096, 1));
    const begun = performance.now();
    fsyncSync(file);
    return performance.now() - begun;
  });
  closeSync(file);
  rmSync(path);
  return quantile(times, 0.5);
}

/** The value below which this share of the numbers lies. */
export function quantile(numbers: readonly number[], share: number): number {
  const sorted = [...numbers].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? Number.NaN;
}
