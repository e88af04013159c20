import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { ownDatabase } from '../own-database.js';
import { signInRoles } from '../ten-years/sign-in.js';
import { signInWalkers } from '../walkers.js';
import { makeJobsDue, untilSealed } from './bench-records.js';
import { FastRequests } from './fast-requests.js';
import { issueReport } from './issue-report.js';
import { weigherPlant, type BenchWeigher } from './weigher-plant.js';
import { batchOf } from './weight-batches.js';
import { WeightsServer } from './weights-server.js';

const linesEach = 20_000;
const inHand = 2;
const pageCount = 40;
/** A big run of a day. */
const reportedBatches = 4;
const reportCount = 20;

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
  /** Until a report of 80 000 weights was issued and its PDF there. */
  readonly reportMilliseconds: readonly number[];
}

/** Streams many weights in, has reports written and them sealed, and asks for the live page; measures what others wait. */
export async function measureBeside(serverUrl: string | null, weightCount: number): Promise<BesideFigures> {
  const folder = mkdtempSync(join(tmpdir(), 'packthread-weights-'));
  const database = await ownDatabase(serverUrl, 'beside');
  const place = { dataFolder: folder, databaseUrl: database.url };
  try {
    const [first, second, reported] = await weigherPlant(place, ['1', '2', '3']);
    if (first === undefined || second === undefined || reported === undefined) throw new Error('three weighers');
    const phases: Beside[] = [];
    let server = await WeightsServer.start(place, false);
    await beside(phases, 'nothing', server, () => pause(3000));
    const memory = await stream(phases, server, { weighers: [first, second], weightCount });
    for (let number = 0; number < reportedBatches; number += 1) {
      await server.send(batchOf([reported], { number, linesEach, type: 'ndjson' }), 'ndjson');
    }
    const pages = await askForPages(phases, server, first.runId);
    const reportMilliseconds = await askForReports(phases, server, { many: reported.runId, biggest: first.runId });
    await server.stop();
    // Sealing comes again every ten minutes.
    await makeJobsDue(place);
    server = await WeightsServer.start(place, false);
    await beside(phases, 'blocks are sealed', server, () => untilSealed(place));
    await server.stop();
    return { phases, memory, ...pages, reportMilliseconds };
  } finally {
    await database.drop();
    if (existsSync(folder)) rmSync(folder, { recursive: true });
  }
}

/** Does something, and writes down what requests waited meanwhile that need hardly any work. */
async function beside<Answer>(
  phases: Beside[],
  what: string,
  server: WeightsServer,
  work: () => Promise<Answer>,
): Promise<Answer> {
  const fast = new FastRequests(server.port);
  const begun = performance.now();
  const answer = await work();
  phases.push({ what, times: await fast.end(), seconds: (performance.now() - begun) / 1000 });
  return answer;
}

async function stream(
  phases: Beside[],
  server: WeightsServer,
  { weighers, weightCount }: { readonly weighers: readonly BenchWeigher[]; readonly weightCount: number },
): Promise<BesideFigures['memory']> {
  const memory: { millions: number; megabytes: number }[] = [];
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
  await beside(phases, 'weights stream in', server, () => Promise.all(Array.from({ length: inHand }, sender)));
  return memory;
}

async function askForPages(
  phases: Beside[],
  server: WeightsServer,
  runId: string,
): Promise<Pick<BesideFigures, 'pageCpuMilliseconds' | 'pageMilliseconds'>> {
  const [walker] = await signInWalkers(server.address);
  const page = () => server.page(`/runs/${runId}/weights`, walker?.cookie ?? '');
  // The first ones read the weights, and have the compiler at work.
  await pageCpu(server, page);
  const pageCpuMilliseconds = await pageCpu(server, page);
  const pageMilliseconds: number[] = [];
  await beside(phases, 'the live page, asked for again and again', server, async () => {
    for (let turn = 0; turn < pageCount; turn += 1) pageMilliseconds.push(await page());
  });
  return { pageCpuMilliseconds, pageMilliseconds };
}

/** Milliseconds of the reports that are asked for again and again. */
async function askForReports(
  phases: Beside[],
  server: WeightsServer,
  { many, biggest }: { readonly many: string; readonly biggest: string },
): Promise<readonly number[]> {
  const [officer] = await signInRoles(server.address, 'quality-officer');
  if (officer === undefined) throw new Error('no quality officer');
  const report = (runId: string) => issueReport(server.address, officer, runId);
  await beside(phases, 'the first report since the start, of 80 000 weights', server, () => report(many));
  const milliseconds: number[] = [];
  await beside(phases, 'reports of 80 000 weights, again and again', server, async () => {
    for (let turn = 0; turn < reportCount; turn += 1) milliseconds.push(await report(many));
  });
  await beside(phases, 'a report of the biggest run', server, () => report(biggest));
  return milliseconds;
}

/** What one page takes of the server's processor, with nothing beside it. */
async function pageCpu(server: WeightsServer, page: () => Promise<number>): Promise<number> {
  const before = server.cpuSeconds();
  for (let turn = 0; turn < pageCount; turn += 1) await page();
  return (1000 * (server.cpuSeconds() - before)) / pageCount;
}
