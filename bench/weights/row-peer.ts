import { statSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import pg from 'pg';
import type { MadeYear } from './made-year.js';

/** The same weights as one row each in a bare table: what one would write without thinking. */
export interface RowPeer {
  /** Rows of a statement with `?` for its parameters. */
  ask(statement: string, parameters?: readonly number[]): Promise<readonly Record<string, number | string>[]>;
  bytes(): Promise<number>;
  close(): Promise<void>;
}

const table = 'CREATE TABLE weight (sequence BIGINT PRIMARY KEY, weighed_at BIGINT NOT NULL, net INTEGER NOT NULL)';
const index = 'CREATE INDEX ix_weight_at ON weight (weighed_at)';
const rowsAtOnce = 100_000;

/** @param databaseUrl a PostgreSQL database; null: a file of SQLite in the folder */
export function fillRows(folder: string, databaseUrl: string | null, year: MadeYear): Promise<RowPeer> {
  return databaseUrl === null ? rowsOfSqlite(join(folder, 'rows.sqlite'), year) : rowsOfPostgres(databaseUrl, year);
}

async function rowsOfSqlite(file: string, year: MadeYear): Promise<RowPeer> {
  const database = new Database(file);
  database.pragma('journal_mode = WAL');
  database.pragma('synchronous = OFF');
  database.exec(table.replace('BIGINT PRIMARY KEY', 'INTEGER PRIMARY KEY'));
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
  database.exec(`COMMIT; ${index}`);
  return {
    ask: (statement, parameters = []) =>
      Promise.resolve(database.prepare<unknown[], Record<string, number>>(statement).all(...parameters)),
    bytes: () => Promise.resolve(statSync(file).size),
    close: () => Promise.resolve(database.close()).then(() => undefined),
  };
}

async function rowsOfPostgres(url: string, year: MadeYear): Promise<RowPeer> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  await client.query('SET synchronous_commit = off');
  await client.query(table);
  for (const { columns } of year.batches()) {
    await client.query('INSERT INTO weight SELECT * FROM unnest($1::bigint[], $2::bigint[], $3::integer[])', [
      Array.from(columns.sequences),
      Array.from(columns.atCentiseconds),
      Array.from(columns.netMilligrams),
    ]);
  }
  await client.query(index);
  await client.query('VACUUM ANALYZE weight');
  const ask: RowPeer['ask'] = async (statement, parameters = []) => {
    let number = 0;
    const numbered = statement.replaceAll('?', () => `$${(number += 1)}`);
    return (await client.query<Record<string, number | string>>(numbered, [...parameters])).rows;
  };
  return {
    ask,
    bytes: async () => Number((await ask(`SELECT pg_total_relation_size('weight') AS bytes`))[0]?.['bytes']),
    close: () => client.end(),
  };
}

export const sumsOfRows = `
  SELECT COUNT(*) AS n, SUM(net - 1000000) AS sum,
    SUM(CAST(net - 1000000 AS BIGINT) * (net - 1000000)) AS squares,
    COUNT(*) FILTER (WHERE net < 985000) AS t1, COUNT(*) FILTER (WHERE net < 970000) AS t2 FROM weight`;
export const histogramOfRows = 'SELECT net / 1000 AS bin, COUNT(*) AS n FROM weight GROUP BY net / 1000 ORDER BY 1';
export const hourOfRows = 'SELECT sequence, weighed_at, net FROM weight WHERE weighed_at >= ? AND weighed_at < ?';
export const weightOfRows = 'SELECT sequence, weighed_at, net FROM weight WHERE sequence = ?';
