import 'reflect-metadata';
import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { cpus, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { fsyncMilliseconds, quantile } from '../floor.js';
import { ownDatabase } from '../own-database.js';
import { bareFloor } from './bare-floor.js';
import { measureBeside } from './beside.js';
import { profileShares } from './profile-shares.js';
import { weigherPlant } from './weigher-plant.js';
import { readyBatches } from './weight-batches.js';
import { WeightsServer } from './weights-server.js';

/**
 * `npm run bench:weights-in -- [--batches N] [--lines N] [--stream N] [--postgres URL]`: weights over HTTP, checked and
 * on disk, from ready-made batches on the same machine; beside it the floor: the same lines and the same bytes without
 * the house. Then a stream of many weights, sealing and the live page, with what other requests wait meanwhile. On
 * PostgreSQL in databases of its own on the server that the address names.
 */
const { values } = parseArgs({
  options: {
    batches: { type: 'string' },
    lines: { type: 'string' },
    stream: { type: 'string' },
    postgres: { type: 'string' },
  },
});
const batchesEach = Number(values.batches ?? 25);
const linesEach = Number(values.lines ?? 20_000);
const streamed = Number(values.stream ?? 10_000_000);
const serverUrl = values.postgres ?? null;
const inHand = 2;

/**
 * A profile counts what the clock shows. Where the plant's records are in memory, it does not count waiting for a disk as
 * work of the processor.
 */
const inMemory = existsSync('/dev/shm') ? '/dev/shm' : tmpdir();

async function measure(type: 'ndjson' | 'csv', isProfiled: boolean) {
  const folder = mkdtempSync(join(isProfiled ? inMemory : tmpdir(), 'packthread-weights-'));
  const database = await ownDatabase(serverUrl, type);
  const place = { dataFolder: folder, databaseUrl: database.url };
  try {
    const weighers = await weigherPlant(place, ['1', '2']);
    const batches = readyBatches(weighers, { batchesEach, linesEach, type });
    const server = await WeightsServer.start(place, isProfiled);
    const waiting = [...batches];
    const cpuBefore = server.cpuSeconds();
    const begun = performance.now();
    const sender = async (): Promise<void> => {
      for (let batch = waiting.shift(); batch !== undefined; batch = waiting.shift()) await server.send(batch, type);
    };
    await Promise.all(Array.from({ length: inHand }, sender));
    const seconds = (performance.now() - begun) / 1000;
    const cpuSeconds = server.cpuSeconds() - cpuBefore;
    const profile = await server.stop();
    const count = batches.reduce((sum, { lineCount }) => sum + lineCount, 0);
    const bytes = batches.reduce((sum, { body }) => sum + body.length, 0);
    return {
      count,
      bytesPerLine: bytes / count,
      seconds,
      cpuSeconds,
      floor: await bareFloor(place, batches, type),
      shares: profile === null ? {} : profileShares(profile, seconds),
      fsync: fsyncMilliseconds(folder),
    };
  } finally {
    await database.drop();
    rmSync(folder, { recursive: true });
  }
}

const round = (number: number, digits = 2): number => Number(number.toFixed(digits));
const results: Record<string, unknown> = {};
console.log(
  `${serverUrl === null ? 'SQLite' : 'PostgreSQL'}. Load ${loadavg()
    .map((load) => round(load, 1))
    .join(', ')} on ${cpus().length} cores.`,
);
for (const type of ['ndjson', 'csv'] as const) {
  const { count, bytesPerLine, seconds, cpuSeconds, floor, fsync } = await measure(type, false);
  const { shares } = await measure(type, true);
  const floorSeconds = floor.parseSeconds + floor.insertSeconds;
  const row = {
    weights: count,
    'B a line': round(bytesPerLine, 0),
    'weights/s': Math.round(count / seconds),
    'weights/s of processor': Math.round(count / cpuSeconds),
    'floor, weights/s of processor': Math.round(count / floorSeconds),
    'times the floor': round(cpuSeconds / floorSeconds),
    'fsync ms': round(fsync),
  };
  console.table({ [type]: row });
  console.table(
    Object.fromEntries(Object.entries(shares).map(([part, share]) => [part, `${round(share * 100, 1)} %`])),
  );
  results[type] = { row, shares };
}
if (streamed > 0) {
  const beside = await measureBeside(serverUrl, streamed);
  const { phases, memory, pageCpuMilliseconds, pageMilliseconds, reportMilliseconds } = beside;
  console.table(
    Object.fromEntries(
      phases.map(({ what, times, seconds }) => [
        what,
        {
          seconds: round(seconds, 1),
          requests: times.length,
          'median ms': round(quantile(times, 0.5)),
          '99 % below': round(quantile(times, 0.99)),
          'worst ms': round(quantile(times, 1)),
        },
      ]),
    ),
  );
  console.log('resident, MB:', memory.map(({ millions, megabytes }) => `${millions} M ${megabytes}`).join(', '));
  console.log(
    `live page: ${round(pageCpuMilliseconds)} ms of processor, median ${round(quantile(pageMilliseconds, 0.5))} ms`,
  );
  console.log(`report of 80 000 weights, issued and drawn: median ${round(quantile(reportMilliseconds, 0.5))} ms`);
  Object.assign(results, beside);
}
const load = loadavg();
console.log(`Load at the end ${load.map((one) => round(one, 1)).join(', ')}.`);
mkdirSync('bench/results', { recursive: true });
const name = `weights-in-${serverUrl === null ? 'sqlite' : 'postgres'}.json`;
writeFileSync(
  join('bench/results', name),
  `${JSON.stringify({ at: new Date().toISOString(), load, ...results }, null, 2)}\n`,
);
