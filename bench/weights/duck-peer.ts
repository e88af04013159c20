import { join } from 'node:path';
import { BIGINT, DuckDBDataChunk, DuckDBInstance, INTEGER, type DuckDBConnection } from '@duckdb/node-api';
import type { MadeYear } from './made-year.js';

const chunkSize = 2048;

/** The same weights as rows in DuckDB, by time as they came, and summed up by hour in two tables of its own. */
export async function fillDuck(folder: string, year: MadeYear): Promise<DuckDBConnection> {
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
export async function hourOfDuck(connection: DuckDBConnection, begin: number): Promise<number> {
  const reader = await connection.runAndReadAll(
    `SELECT sequence, weighed_at, net FROM weight WHERE weighed_at >= ${begin} AND weighed_at < ${begin + 360_000}`,
  );
  return reader.getColumns()[0]?.length ?? 0;
}
