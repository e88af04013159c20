import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { ownDatabase } from '../own-database.js';
import { signInWalkers } from '../walkers.js';
import { makeJobsDue, untilSealed } from './bench-records.js';
import { FastRequests } from './fast-requests.js';
import { weigherPlant } from './weigher-plant.js';
import { batchOf } from './weight-batches.js';
import { WeightsServer } from './weights-server.js';

const linesEach = 20_000;
const inHand = 2;
const pageCount = 40;

/** What went on, and how long requests waited beside it, in milliseconds. */
export interface Beside {
  readonly what: string;
  readonly times: readonly number[];
  /** Seconds that it took. */
  readonly seconds: number;
}

export interface BesideFigures {
  readonly phases: readonly Beside[];
  /** Resident memory of the server by millions of weights received, in megabytes. */
  readonly memory: readonly { readonly millions: number; readonly megabytes: number }[];
  /** Milliseconds of the server's processor for the page of the run's weights, as an open one asks for it again. */
  readonly pageCpuMilliseconds: number;
  readonly pageMilliseconds: readonly number[];
}

/** Streams many weights in, has them sealed, and asks for the live page meanwhile; measures what others wait. */
export async function measureBeside(serverUrl: string | null, weightCount: number): Promise<BesideFigures> {
  const folder = mkdtempSync(join(tmpdir(), 'packthread-weights-'));
  const database = await ownDatabase(serverUrl, 'beside');
  const place = { dataFolder: folder, databaseUrl: database.url };
  try {
    const weighers = await weigherPlant(place);
    const phases: Beside[] = [];
    const beside = async <Answer>(
      what: string,
      server: WeightsServer,
      work: () => Promise<Answer>,
    ): Promise<Answer> => {
      const fast = new FastRequests(server.port);
      const begun = performance.now();
      const answer = await work();
      phases.push({ what, times: await fast.end(), seconds: (performance.now() - begun) / 1000 });
      return answer;
    };
    let server = await WeightsServer.start(place, false);
    const memory: { millions: number; megabytes: number }[] = [];
    await beside('nothing', server, () => pause(3000));
    await beside('weights stream in', server, async () => {
      let [next, sent] = [0, 0];
      const sender = async (): Promise<void> => {
        while (next * linesEach < weightCount) {
          const batch = batchOf(weighers, { number: next, linesEach, type: 'ndjson' });
          next += 1;
          await server.send(batch, 'ndjson');
          sent += linesEach;
          if (sent % 1_000_000 === 0) memory.push({ millions: sent / 1e6, megabytes: server.residentMegabytes() });
        }
      };
      await Promise.all(Array.from({ length: inHand }, sender));
    });
    const [walker] = await signInWalkers(server.address);
    const cookie = walker?.cookie ?? '';
    const runId = weighers[0]?.runId ?? '';
    const page = () => server.page(`/runs/${runId}/weights`, cookie);
    // The first ones read the weights, and have the compiler at work.
    await pageCpu(server, page);
    const pageCpuMilliseconds = await pageCpu(server, page);
    const pageMilliseconds: number[] = [];
    await beside('the live page, asked for again and again', server, async () => {
      for (let turn = 0; turn < pageCount; turn += 1) pageMilliseconds.push(await page());
    });
    await server.stop();
    // Sealing comes again every ten minutes.
    await makeJobsDue(place);
    server = await WeightsServer.start(place, false);
    await beside('blocks are sealed', server, () => untilSealed(place));
    await server.stop();
    return { phases, memory, pageCpuMilliseconds, pageMilliseconds };
  } finally {
    await database.drop();
    if (existsSync(folder)) rmSync(folder, { recursive: true });
  }
}

/** What one page takes of the server's processor, with nothing beside it. */
async function pageCpu(server: WeightsServer, page: () => Promise<number>): Promise<number> {
  const before = server.cpuSeconds();
  for (let turn = 0; turn < pageCount; turn += 1) await page();
  return (1000 * (server.cpuSeconds() - before)) / pageCount;
}
