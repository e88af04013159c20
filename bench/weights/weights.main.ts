import 'reflect-metadata';
import { mkdirSync, mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { cpus, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { instantOf } from '../../src/fill-weight/kept/instants-of-weights.js';
import { weightOfSequence, weightsOfHour } from '../../src/fill-weight/kept/kept-weights.js';
import { histogramsOfLine, summariesOfLine } from '../../src/fill-weight/kept/weight-questions.js';
import { readingFrom } from '../../src/platform/database/statement.js';
import { duckQuestions, fillDuck, hourOfDuck } from './duck-peer.js';
import { ownDatabase } from '../own-database.js';
import { fillHouse, lineId, series, weigherId } from './house-of-weights.js';
import { entropyBits, madeYear } from './made-year.js';
import { timesOf } from './measure.js';
import type { Spread } from '../spread.js';
import { regularClock } from './regular-clock.js';
import { fillRows, histogramOfRows, hourOfRows, sumsOfRows, weightOfRows } from './row-peer.js';
import { assertSameAnswers } from './same-answers.js';

/**
 * `npm run bench:weights -- [--weights N] [--without-rows] [--postgres URL]`: writes a year of one line's weights
 * (20 million) into the house, into a bare table of rows and into DuckDB, all with the same answers, and measures
 * questions side by side. On PostgreSQL house and rows are in a database of their own on the server at that address.
 */
const { values } = parseArgs({
  options: { weights: { type: 'string' }, 'without-rows': { type: 'boolean' }, postgres: { type: 'string' } },
});
const year = madeYear(Number(values.weights ?? 20_000_000));
const folder = mkdtempSync(join(tmpdir(), 'packthread-weights-'));
const database = await ownDatabase(values.postgres ?? null, 'weights');
const hourCentiseconds = 360_000;
const round = (value: number): number => Number(value.toPrecision(3));
const figuresOf = ({ median, mostBelow }: Spread, house: Spread) => ({
  'median ms': round(median),
  '95 % below': round(mostBelow),
  'times ours': round(median / house.median),
});

try {
  const { databases, costs } = await fillHouse(folder, database.url, year);
  console.log('written into the house');
  const rows = values['without-rows'] === true ? null : await fillRows(folder, database.url, year);
  if (rows !== null) console.log('written into rows');
  const duck = await fillDuck(folder, year);
  console.log('written into DuckDB');
  const from = readingFrom(databases.reader);
  const hours = Math.floor((year.weightCount * 157.89) / hourCentiseconds);
  const fromAt = instantOf(year.firstAtCentiseconds);
  const stretch = { lineId, fromAt, toAt: instantOf(year.firstAtCentiseconds + (hours + 2) * hourCentiseconds) };
  // From the middle of a month to the middle of another.
  const part = {
    lineId,
    fromAt: instantOf(year.firstAtCentiseconds + Math.floor(hours / 25) * hourCentiseconds),
    toAt: instantOf(year.firstAtCentiseconds + Math.floor((hours * 24) / 25) * hourCentiseconds),
  };
  // Any hours in any order, the same ones for all.
  const hourAt = (turn: number): number =>
    year.firstAtCentiseconds + ((turn * 7919) % Math.max(1, hours)) * hourCentiseconds;

  const sequenceAt = (turn: number): number => 1 + ((turn * 104_729) % year.weightCount);
  const askRows = async (count: number, sql: string, parameters: (turn: number) => readonly number[] = () => []) =>
    rows === null ? null : timesOf(count, (turn) => rows.ask(sql, parameters(turn)));
  await assertSameAnswers({ from, stretch, duck, rows, hourAt: hourAt(1) });
  const ask = (count: number, sql: string): Promise<Spread> =>
    timesOf(count, async () => (await duck.runAndReadAll(sql)).getRows());
  const table = {
    'year: n, mean, s, beyond T1, T2': {
      house: await timesOf(100, () => summariesOfLine(from, stretch)),
      'DuckDB, its hours': await ask(100, duckQuestions.sumsOfHours),
      'DuckDB, rows': await ask(15, duckQuestions.sumsOfRows),
      'bare SQL, rows': await askRows(3, sumsOfRows),
    },
    'year: histogram': {
      house: await timesOf(100, () => histogramsOfLine(from, stretch)),
      'DuckDB, its hours': await ask(100, duckQuestions.histogramOfHours),
      'DuckDB, rows': await ask(15, duckQuestions.histogramOfRows),
      'bare SQL, rows': await askRows(1, histogramOfRows),
    },
    'most of a year, not by full months: histogram': {
      house: await timesOf(100, () => histogramsOfLine(from, part)),
    },
    'an hour: every weight': {
      house: await timesOf(200, (turn) => weightsOfHour(from, { weigherId, hourAt: instantOf(hourAt(turn)) })),
      'DuckDB, rows': await timesOf(100, (turn) => hourOfDuck(duck, hourAt(turn))),
      'bare SQL, rows': await askRows(100, hourOfRows, (turn) => [hourAt(turn), hourAt(turn) + hourCentiseconds]),
    },
    'one weight by its sequence': {
      house: await timesOf(200, (turn) => weightOfSequence(from, { weigherId, series, sequence: sequenceAt(turn) })),
      'bare SQL, rows': await askRows(200, weightOfRows, (turn) => [sequenceAt(turn)]),
    },
  };
  const perSecond = (seconds: number): number => round(year.weightCount / seconds / 1e6);
  const regular = regularClock();
  const rates = {
    'encode, M weights/s': perSecond(costs.encodeSeconds),
    'decode, M weights/s': perSecond(costs.decodeSeconds),
    'store a batch of 4 096 with its sums, M weights/s': perSecond(costs.storeSeconds),
    'seal, M weights/s': perSecond(costs.sealSeconds),
    'encode and store of 200 000 weights/s, share of a core': round(
      ((costs.encodeSeconds + costs.storeSeconds) * 200_000) / year.weightCount,
    ),
    'entropy, bytes a weight': round(entropyBits / 8),
    'blocks, bytes a weight': round(costs.blockBytes / year.weightCount),
    'regular clock: entropy, bytes a weight': round(regular.entropyBytes),
    'regular clock: blocks, bytes a weight': round(regular.bytes),
    'house with sums and indexes, bytes a weight': round(costs.allBytes / year.weightCount),
    'DuckDB rows and hours, bytes a weight': round(statSync(join(folder, 'weights.duckdb')).size / year.weightCount),
    'bare rows, bytes a weight': rows === null ? null : round((await rows.bytes()) / year.weightCount),
  };
  console.log(
    `${year.weightCount} weights, ${databases.kind}. Load ${loadavg().map(round).join(', ')} on ${cpus().length} cores.`,
  );
  console.table(rates);
  for (const [question, answers] of Object.entries(table)) {
    console.log(question);
    console.table(
      Object.fromEntries(
        Object.entries(answers).flatMap(([who, spread]: [string, Spread | null]) =>
          spread === null ? [] : [[who, figuresOf(spread, answers.house)]],
        ),
      ),
    );
  }
  mkdirSync('bench/results', { recursive: true });
  const result = { at: new Date().toISOString(), load: loadavg(), weightCount: year.weightCount, rates, table };
  writeFileSync(`bench/results/weights-${databases.kind}.json`, `${JSON.stringify(result, null, 2)}\n`);
  await rows?.close();
  duck.closeSync();
  await databases.close();
} finally {
  await database.drop();
  rmSync(folder, { recursive: true, force: true });
}
