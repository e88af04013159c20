import { setTimeout as pause } from 'node:timers/promises';
import type { ReadFrom } from '../../src/platform/database/reading.js';
import { quantile } from '../floor.js';
import { Asker } from './asker.js';
import { changing, type Headers } from './sign-in.js';

const tipsWanted = 10;

/** What was done besides. */
export interface LoadFigures {
  readonly tipsPerSecond: number;
  readonly tipP99: number;
  readonly reportCount: number;
  readonly reportMedian: number;
}

interface Others {
  readonly from: ReadFrom;
  readonly address: string;
  readonly headers: Headers;
}

/** Until it is over, somebody asks. */
interface Load {
  readonly isOver: boolean;
  readonly asker: Asker;
}

/** Does `work` while ten bags a second are tipped and one long report after the other is asked for. */
export async function underLoad<Answer>(
  others: Others,
  report: { readonly url: string; readonly headers: Headers },
  work: () => Promise<Answer>,
): Promise<LoadFigures & { readonly answer: Answer }> {
  const state = { isOver: false, asker: Asker.start() };
  const begun = performance.now();
  const tips = tipOn(others, state);
  const reports = reportOn(report, state);
  const answer = await work();
  state.isOver = true;
  const [tipTimes, reportTimes] = [await tips, await reports];
  const seconds = (performance.now() - begun) / 1000;
  await state.asker.stop();
  return {
    answer,
    ...{ tipsPerSecond: tipTimes.length / seconds, tipP99: quantile(tipTimes, 0.99) },
    ...{ reportCount: reportTimes.length, reportMedian: quantile(reportTimes, 0.5) },
  };
}

/** Full bags of the store into the hoppers by turns, as happened: no rule of the house stands in the way. */
async function tipOn({ from, address, headers }: Others, state: Load): Promise<number[]> {
  const bags = await from.sql<{ number: string }>`
    SELECT b."number" FROM "bag_state" s JOIN "bulk_bag" b ON b."id" = s."bag_id" WHERE s."status" = 'full' ORDER BY b."id"`;
  const hoppers = await from.sql<{ id: string }>`SELECT "id" FROM "hopper" ORDER BY "id"`;
  const times: number[] = [];
  const under: Promise<void>[] = [];
  const begun = performance.now();
  for (const [place, { number }] of bags.entries()) {
    if (state.isOver) break;
    const body = { bag: number, hopperId: hoppers[place % hoppers.length]?.id, isOff: true, happened: true };
    under.push(
      state.asker
        .ask(`${address}/api/tips`, changing(headers), body)
        .then((told) => void times.push(told.milliseconds)),
    );
    await pause(Math.max(0, begun + ((place + 1) * 1000) / tipsWanted - performance.now()));
  }
  await Promise.all(under);
  return times;
}

async function reportOn(
  { url, headers }: { readonly url: string; readonly headers: Headers },
  state: Load,
): Promise<number[]> {
  const times: number[] = [];
  // Packed, as a browser asks for it.
  const packed = { ...headers, 'accept-encoding': 'br' };
  while (!state.isOver) times.push((await state.asker.ask(url, packed)).milliseconds);
  return times;
}
