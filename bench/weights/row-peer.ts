import { join } from 'node:path';
import Database from 'better-sqlite3';
import type { MadeYear } from './made-year.js';

const rowsAtOnce = 100_000;

/** The same weights as one row each in a bare SQLite table: what one would write without thinking. */
export function fillRows(folder: string, year: MadeYear): Database.Database {
  const database = new Database(join(folder, 'rows.sqlite'));
  database.pragma('journal_mode = WAL');
  database.pragma('synchronous = OFF');
  database.exec(
    'CREATE TABLE weight (sequence INTEGER PRIMARY KEY, weighed_at INTEGER NOT NULL, net INTEGER NOT NULL)',
  );
  const insert = database.prepare('INSERT INTO weight VALUES (?, ?, ?)');
  let open = 0;
  database.exec('BEGIN');
  for (const { columns } of year.batches()) {
    for (let place = 0; place < columns.count; place += 1) {
      insert.run(columns.sequences[place], columns.atCentiseconds[place], columns.netMilligrams[place]);
    }
    open += columns.count;
    if (open < rowsAtOnce) continue;
    database.exec('COMMIT; BEGIN');
    open = 0;
  }
  database.exec('COMMIT; CREATE INDEX ix_weight_at ON weight (weighed_at)');
  return database;
}

export const sumsOfRows = `
  SELECT COUNT(*) AS n, SUM(net - 1000000) AS sum, SUM((net - 1000000) * (net - 1000000)) AS squares,
    SUM(net < 985000) AS t1, SUM(net < 970000) AS t2 FROM weight`;
export const histogramOfRows = 'SELECT net / 1000 AS bin, COUNT(*) AS n FROM weight GROUP BY bin';
export const hourOfRows = 'SELECT sequence, weighed_at, net FROM weight WHERE weighed_at >= ? AND weighed_at < ?';
export const weightOfRows = 'SELECT sequence, weighed_at, net FROM weight WHERE sequence = ?';
