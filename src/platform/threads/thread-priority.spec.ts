import { execFileSync } from 'node:child_process';
import { getPriority } from 'node:os';
import { describe, expect, it } from '@jest/globals';
import { builtUrl } from './built-url.js';

/** What a process says of each of its threads after it worked hard: nice level and nanoseconds of processor time. */
interface ThreadOfProcess {
  readonly id: number;
  readonly level: number;
  readonly nanoseconds: number;
}

/** Drops much and compiles much, so that the engine's own threads have work, then tells. */
function threadsAfterWork(...flags: string[]): { readonly own: number; readonly threads: readonly ThreadOfProcess[] } {
  const program = `
    import { readdirSync, readFileSync } from 'node:fs';
    import { getPriority } from 'node:os';
    const { letEngineGoBehind } = await import(${JSON.stringify(builtUrl(new URL('./thread-priority.ts', import.meta.url).href))});
    letEngineGoBehind();
    let kept = [];
    for (let round = 0; round < 300; round += 1) {
      kept = kept.concat(Array.from({ length: 2000 }, (_, place) => ({ place, round }))).slice(-200000);
      new Function('list', 'let sum = ' + round + '; for (const { place } of list) sum += place; return sum;')(kept);
    }
    const threads = readdirSync('/proc/self/task').map((id) => ({
      id: Number(id),
      level: getPriority(Number(id)),
      nanoseconds: Number(readFileSync('/proc/self/task/' + id + '/schedstat', 'utf8').split(' ')[0]),
    }));
    console.log(JSON.stringify({ own: process.pid, threads }));`;
  const text = execFileSync(process.execPath, [...flags, '--input-type=module', '--eval', program], {
    encoding: 'utf8',
  });
  return JSON.parse(text) as ReturnType<typeof threadsAfterWork>;
}

// Other systems have no priority of a single thread: there is nothing to see.
(process.platform === 'linux' ? describe : describe.skip)('threads of the engine', () => {
  const usual = getPriority();
  const behind = Math.min(19, usual + 10);

  it('go behind those of the server', () => {
    const { own, threads } = threadsAfterWork('--v8-pool-size=1');
    const back = threads.filter(({ level }) => level === behind);
    expect(back).toHaveLength(2);
    const [busiest] = threads.filter(({ id }) => id !== own).sort((one, other) => other.nanoseconds - one.nanoseconds);
    expect(busiest?.nanoseconds).toBeGreaterThan(1_000_000);
    expect(back).toContainEqual(busiest);
    expect(threads.filter(({ level }) => level !== behind).every(({ level }) => level === usual)).toBe(true);
    expect(threads.find(({ id }) => id === own)?.level).toBe(usual);
  });

  it('are one more than the engine is said to have', () => {
    const { threads } = threadsAfterWork();
    expect(threads.filter(({ level }) => level === behind)).toHaveLength(5);
  });
});
