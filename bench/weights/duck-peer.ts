import { join } from 'node:path';
import type { MadeYear } from './made-year.js';

const chunkSize = 2048;

/** What is used of DuckDB's client. It takes 70 MB, so it is no dependency: `npm run bench:weights` says how to get it. */
interface Duck {
  readonly DuckDBInstance: { create(path: string): Promise<{ connect(): Promise<DuckConnection> }> };
  readonly DuckDBDataChunk: { create(types: readonly unknown[]): { setColumns(columns: readonly unknown[][]): void } };
  readonly INTEGER: unknown;
  readonly BIGINT: unknown;
}

export interface DuckConnection {
  run(sql: string): Promise<unknown>;
  runAndReadAll(sql: string): Promise<{ getRows(): unknown[][]; getColumns(): unknown[][] }>;
  createAppender(table: string): Promise<{ appendDataChunk(chunk: unknown): void; closeSync(): void }>;
  closeSync(): void;
}

/** Null where it is not installed. */
async function loadDuck(): Promise<Duck | null> {
  const name = '@duckdb/node-api';
  return import(name).then(
    (duck: Duck) => duck,
    () => null,
  );
}

/**
 * The same weights as rows in DuckDB, by time as they came, and summed up by hour in two tables of its own; null where
 * DuckDB is not installed.
 */
export async function fillDuck(folder: string, year: MadeYear): Promise<DuckConnection | null> {
  const duck = await loadDuck();
  if (duck === null) return null;
  const { DuckDBInstance, DuckDBDataChunk, INTEGER, BIGINT } = duck;
  const instance = await DuckDBInstance.create(join(folder, 'weights.duckdb'));
  const connection = await instance.connect();
  await connection.run('CREATE TABLE weight (sequence BIGINT, weighed_at BIGINT, net INTEGER)');
  const appender = await connection.createAppender('weight');
  for (const { columns } of year.batches()) {
    for (let from = 0; from < columns.count; from += chunkSize) {
      const chunk = DuckDBDataChunk.create([BIGINT, BIGINT, INTEGER]);
      chunk.setColumns([
        Array.from(columns.sequences.subarray(from, from + chunkSize), BigInt),
        Array.from(columns.atCentiseconds.subarray(from, from + chunkSize), BigInt),
        Array.from(columns.netMilligrams.subarray(from, from + chunkSize)),
      ]);
      appender.appendDataChunk(chunk);
    }
  }
  appender.closeSync();
  await connection.run(`
    CREATE TABLE hourly AS SELECT weighed_at // 360000 AS hour, COUNT(*) AS n, SUM(net - 1000000) AS sum,
      SUM((net - 1000000)::BIGINT * (net - 1000000)) AS squares, MIN(net) AS smallest, MAX(net) AS largest,
      COUNT(*) FILTER (net < 985000) AS t1, COUNT(*) FILTER (net < 970000) AS t2 FROM weight GROUP BY hour ORDER BY hour`);
  await connection.run(`
    CREATE TABLE hourly_bin AS SELECT weighed_at // 360000 AS hour, net // 1000 AS bin, COUNT(*) AS n FROM weight
      GROUP BY hour, bin ORDER BY hour, bin`);
  await connection.run('CHECKPOINT');
  return connection;
}

export const duckQuestions = {
  sumsOfRows: `SELECT COUNT(*) AS n, SUM(net - 1000000) AS sum, SUM((net - 1000000)::BIGINT * (net - 1000000)) AS squares,
    COUNT(*) FILTER (net < 985000) AS t1, COUNT(*) FILTER (net < 970000) AS t2 FROM weight`,
  sumsOfHours: 'SELECT SUM(n) AS n, SUM(sum) AS sum, SUM(squares) AS squares, SUM(t1) AS t1, SUM(t2) AS t2 FROM hourly',
  histogramOfRows: 'SELECT net // 1000 AS bin, COUNT(*) AS n FROM weight GROUP BY bin ORDER BY bin',
  histogramOfHours: 'SELECT bin, SUM(n) AS n FROM hourly_bin GROUP BY bin ORDER BY bin',
} as const;

/** The weights of one hour in columns, as ours are read. */
export async function hourOfDuck(connection: DuckConnection, begin: number): Promise<number> {
  const reader = await connection.runAndReadAll(
    `SELECT sequence, weighed_at, net FROM weight WHERE weighed_at >= ${begin} AND weighed_at < ${begin + 360_000}`,
  );
  return reader.getColumns()[0]?.length ?? 0;
}
