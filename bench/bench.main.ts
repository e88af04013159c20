import 'reflect-metadata';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { clearFolder } from '../src/demo/demo-folder.js';
import { makeDemo } from '../src/demo/make-demo.js';
import { progressBar } from '../src/demo/progress-bar.js';
import { readTruth, type DemoTruth } from '../src/demo/truth.js';
import { readConfig } from '../src/platform/config.js';
import { benchPages } from './bench-pages.js';
import { benchPreviews } from './bench-previews.js';
import { benchThreads } from './bench-threads.js';
import { benchWrites } from './bench-writes.js';
import { fsyncMilliseconds } from './floor.js';

/** `npm run bench -- [--days N] [--count N]`: measures against floors of the same run; prints a table and writes JSON. */
const { values } = parseArgs({ options: { days: { type: 'string' }, count: { type: 'string' } } });
const days = Number(values.days ?? 365);
const count = Number(values.count ?? 200);
const results = 'bench/results';
const plant = join(results, `plant-${days}-days`);

async function plantOf(): Promise<DemoTruth> {
  mkdirSync(plant, { recursive: true });
  const known = readTruth(plant);
  if (known !== null) return known;
  clearFolder(plant);
  const config = readConfig({ DATA_FOLDER: plant, LOG_LEVEL: 'error' });
  return makeDemo(config, { days, seed: 1, size: 'usual' }, progressBar(`plant of ${days} days`));
}

const truth = await plantOf();
const fsync = fsyncMilliseconds(results);
const threads = await benchThreads(plant, truth, Math.min(count, 60));
const writes = await benchWrites(plant, truth, count);
const preview = await benchPreviews(plant, truth, Math.min(count, 15));
const pages = await benchPages(plant, truth, Math.min(count, 15));

const round = (number: number): number => Math.round(number * 100) / 100;
console.log(`One fsync here: ${round(fsync)} ms. Node ${process.version}. Plant of ${days} days.`);
console.table(
  writes.map((one) => ({
    write: one.name,
    count: one.count,
    'per second': Math.round(one.perSecond),
    'bare driver per second': Math.round(one.floorPerSecond),
    'times the floor': round(one.ratio),
  })),
);
console.table(
  threads.map((one) => ({
    thread: one.name,
    count: one.count,
    'median ms': round(one.medianMilliseconds),
    'p95 ms': round(one.p95Milliseconds),
    'bare driver median ms': round(one.floorMedianMilliseconds),
    'times the floor': round(one.ratio),
  })),
);
console.table([
  {
    preview: preview.name,
    count: preview.count,
    pallets: preview.pallets,
    'median ms': round(preview.medianMilliseconds),
    'bare driver median ms': round(preview.floorMedianMilliseconds),
    'CPU median ms': round(preview.cpuMedianMilliseconds),
    'bare driver CPU ms': round(preview.floorCpuMedianMilliseconds),
    'times the floor, CPU': round(preview.ratio),
    'longest unit, median ms': round(preview.heldMedianMilliseconds),
    'longest unit, CPU ms': round(preview.heldCpuMedianMilliseconds),
    'longest unit, most ms': round(preview.heldMostMilliseconds),
    'another writer waits, median ms': round(preview.waitMedianMilliseconds),
    'waits, most ms': round(preview.waitMostMilliseconds),
    'alone, median ms': round(preview.aloneMedianMilliseconds),
  },
]);
console.table(
  pages.map((one) => ({
    page: one.pattern,
    role: one.role,
    'median ms': round(one.medianMilliseconds),
    'p95 ms': round(one.p95Milliseconds),
    'times the smallest page': round(one.ratio),
    'kB with style and script': round(one.kilobytes),
  })),
);
const at = new Date().toISOString();
writeFileSync(
  join(results, 'latest.json'),
  `${JSON.stringify({ at, days, fsync, writes, threads, preview, pages }, null, 2)}\n`,
);
