import 'reflect-metadata';
import { existsSync, mkdirSync, mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { cpus, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { measurePlant, type QuestionFigure } from './measure-plant.js';
import { writeHistory } from './write-history.js';

/**
 * `npm run bench:ten-years -- [--days N] [--count N] [--folder FOLDER] [--keep]`: writes the history of a plant of 400
 * bags a day, in a temporary folder or (with DATABASE_URL) an empty PostgreSQL database, and measures threads over it.
 * `--folder` takes one that was kept, or writes into it where it is empty. What is measured under load tips the bags that are
 * in store: to measure a plant again, measure a copy.
 */
const { values } = parseArgs({
  options: {
    days: { type: 'string' },
    count: { type: 'string' },
    folder: { type: 'string' },
    keep: { type: 'boolean' },
    written: { type: 'boolean' },
  },
});
const days = Number(values.days ?? 3650);
const folder = values.folder ?? mkdtempSync(join(tmpdir(), 'packthread-ten-years-'));
const settings = { dataFolder: folder, databaseUrl: process.env['DATABASE_URL'] ?? null };
const isWritten = values.written === true || existsSync(join(folder, 'packthread.sqlite'));

const round = (number: number | null): number | null => (number === null ? null : Math.round(number * 10) / 10);
const rowOf = ({ name, count, p50, p99, floorP50, ratio, cpu, floorCpu, kilobytes }: QuestionFigure) => ({
  question: name,
  count,
  'p50 ms': round(p50),
  'p99 ms': round(p99),
  'floor p50 ms': round(floorP50),
  'times the floor': round(ratio),
  'CPU ms': round(cpu),
  'floor CPU ms': round(floorCpu),
  kB: round(kilobytes),
});

try {
  const begun = performance.now();
  if (!isWritten) {
    await writeHistory(settings, days, (done) => {
      if (done % 365 === 0) console.log(`${done} days written, ${Math.round((performance.now() - begun) / 1000)} s`);
    });
  }
  const writtenSeconds = (performance.now() - begun) / 1000;
  const figures = await measurePlant(settings, Number(values.count ?? 100));
  const { alone, loaded, ...other } = figures;
  console.log(
    `Load of the machine: ${loadavg().map(round).join(', ')} on ${cpus().length} cores. Node ${process.version}.`,
  );
  console.log(other);
  console.log('alone');
  console.table(alone.map(rowOf));
  console.log('with ten tips a second and a long report');
  console.table(loaded.map(rowOf));
  const gigabytes = settings.databaseUrl === null ? statSync(join(folder, 'packthread.sqlite')).size / 1e9 : null;
  mkdirSync('bench/results', { recursive: true });
  const name = `ten-years-${days}-days-${settings.databaseUrl === null ? 'sqlite' : 'postgres'}.json`;
  const result = { at: new Date().toISOString(), load: loadavg(), writtenSeconds, gigabytes, ...figures };
  writeFileSync(join('bench/results', name), `${JSON.stringify(result, null, 2)}\n`);
} finally {
  if (values.keep !== true && values.folder === undefined) rmSync(folder, { recursive: true, force: true });
}
