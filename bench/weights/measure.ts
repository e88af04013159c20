import { cpuUsage } from 'node:process';
import { spreadOf, type Spread } from '../spread.js';

/** Processor time of this process, all its threads, in seconds. */
export function cpuSeconds(): number {
  const { user, system } = cpuUsage();
  return (user + system) / 1e6;
}

/** Milliseconds on the clock, the first try not counted. */
export async function timesOf(count: number, work: (turn: number) => Promise<unknown>): Promise<Spread> {
  await work(0);
  const times: number[] = [];
  for (let turn = 1; turn <= count; turn += 1) {
    const begun = performance.now();
    await work(turn);
    times.push(performance.now() - begun);
  }
  return spreadOf(times);
}
