import 'reflect-metadata';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { fsyncMilliseconds } from '../floor.js';
import { bareFloor } from './bare-floor.js';
import { profileShares } from './profile-shares.js';
import { weigherPlant } from './weigher-plant.js';
import { readyBatches } from './weight-batches.js';
import { WeightsServer } from './weights-server.js';

/**
 * `npm run bench:weights-in -- [--batches N] [--lines N]`: weights over HTTP, checked and on disk, from ready-made
 * batches on the same machine; beside it the floor: the same lines and the same bytes without the house.
 */
const { values } = parseArgs({ options: { batches: { type: 'string' }, lines: { type: 'string' } } });
const batchesEach = Number(values.batches ?? 25);
const linesEach = Number(values.lines ?? 20_000);
const inHand = 2;

async function measure(type: 'ndjson' | 'csv', isProfiled: boolean) {
  const folder = mkdtempSync(join(tmpdir(), 'packthread-weights-'));
  try {
    const weighers = await weigherPlant(folder);
    const batches = readyBatches(weighers, { batchesEach, linesEach, type });
    const server = await WeightsServer.start(folder, isProfiled);
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
      floor: bareFloor(folder, batches, type),
      shares: profile === null ? {} : profileShares(profile, seconds),
      fsync: fsyncMilliseconds(folder),
    };
  } finally {
    rmSync(folder, { recursive: true });
  }
}

const round = (number: number, digits = 2): number => Number(number.toFixed(digits));
for (const type of ['ndjson', 'csv'] as const) {
  const { count, bytesPerLine, seconds, cpuSeconds, floor, fsync } = await measure(type, false);
  const { shares } = await measure(type, true);
  const floorSeconds = floor.parseSeconds + floor.insertSeconds;
  console.table({
    [type]: {
      weights: count,
      'B a line': round(bytesPerLine, 0),
      'weights/s': Math.round(count / seconds),
      'weights/s of processor': Math.round(count / cpuSeconds),
      'floor, weights/s of processor': Math.round(count / floorSeconds),
      'times the floor': round(cpuSeconds / floorSeconds),
      'fsync ms': round(fsync),
    },
  });
  console.table(
    Object.fromEntries(Object.entries(shares).map(([part, share]) => [part, `${round(share * 100, 1)} %`])),
  );
}
