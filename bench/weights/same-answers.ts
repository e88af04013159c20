import type { DuckDBConnection } from '@duckdb/node-api';
import { instantOf } from '../../src/fill-weight/kept/instants-of-weights.js';
import { weightsOfHour } from '../../src/fill-weight/kept/kept-weights.js';
import { histogramsOfLine, summariesOfLine, type LineStretch } from '../../src/fill-weight/kept/weight-questions.js';
import type { ReadFrom } from '../../src/platform/database/reading.js';
import { duckQuestions, hourOfDuck } from './duck-peer.js';
import { weigherId } from './house-of-weights.js';
import { histogramOfRows, hourOfRows, sumsOfRows, type RowPeer } from './row-peer.js';

const hourCentiseconds = 360_000;

/** Who is asked the same. */
export interface Asked {
  readonly from: ReadFrom;
  readonly stretch: LineStretch;
  readonly duck: DuckDBConnection;
  readonly rows: RowPeer | null;
  /** The begin of an hour with weights. */
  readonly hourAt: number;
}

/** A comparison is worth nothing where the answers differ. @throws {Error} there */
export async function assertSameAnswers({ from, stretch, duck, rows, hourAt }: Asked): Promise<void> {
  const [ours] = await summariesOfLine(from, stretch);
  const sums = ours?.summary.accepted;
  const found = [
    sums?.packCount,
    sums?.errorSumMilligrams,
    sums?.errorSquareSum,
    sums?.beyondT1Count,
    sums?.beyondT2Count,
  ].join();
  const [bins] = await histogramsOfLine(from, stretch);
  const own = Array.from(bins?.accepted ?? []).flatMap((n, bin) => (n === 0 ? [] : [`${bin + 500} ${n}`]));
  const hour = await weightsOfHour(from, { weigherId, hourAt: instantOf(hourAt) });
  const count = hour.parts.reduce((sum, { columns }) => sum + columns.count, 0);

  const rowsOf = async (sql: string) => (await duck.runAndReadAll(sql)).getRows();
  for (const sql of [duckQuestions.sumsOfRows, duckQuestions.sumsOfHours]) {
    assertSame('sums', found, ((await rowsOf(sql))[0] ?? []).map(String).join());
  }
  for (const sql of [duckQuestions.histogramOfRows, duckQuestions.histogramOfHours]) {
    assertSame('histograms', own.join(), (await rowsOf(sql)).map((row) => row.join(' ')).join());
  }
  assertSame('hours', String(count), String(await hourOfDuck(duck, hourAt)));
  if (rows === null) return;
  assertSame('sums', found, Object.values((await rows.ask(sumsOfRows))[0] ?? {}).join());
  const bare = await rows.ask(histogramOfRows);
  assertSame('histograms', own.join(), bare.map((row) => `${row['bin']} ${row['n']}`).join());
  const between = await rows.ask(hourOfRows, [hourAt, hourAt + hourCentiseconds]);
  assertSame('hours', String(count), String(between.length));
}

function assertSame(what: string, ours: string, theirs: string): void {
  if (ours !== theirs) throw new Error(`${what} differ: ${ours.slice(0, 300)} and ${theirs.slice(0, 300)}`);
}
