import { getPriority } from 'node:os';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { openHouse, type TestHouse } from '../../../test/support/house.js';
import { HeavyReads } from './heavy-reads.js';
import type { HeavyQuestion } from './heavy-question.js';

let house: TestHouse;
let heavy: HeavyReads;

beforeAll(async () => {
  house = await openHouse();
  heavy = house.get(HeavyReads);
});
afterAll(async () => {
  await house.close();
});

/** A question of a module that is written here; the thread loads it by its address. */
function questionOf<Asked>(answer: string): HeavyQuestion<Asked> {
  const program = `export const question = { answer: async (from, asked) => { ${answer} } };`;
  return {
    url: `data:text/javascript,${encodeURIComponent(program)}`,
    answer: () => Promise.reject(new Error('not asked in the server itself')),
  };
}

/** Keeps its thread until it is let go. */
const held = questionOf<Int32Array>(`Atomics.wait(asked, 0, 0, 20_000); return 'held';`);
const quick = questionOf<null>(`return 'quick';`);
/** Reads twice; answers how many milliseconds that took. */
const timed = questionOf<null>(`
  const begun = performance.now();
  for (let read = 0; read < 2; read += 1) await from.sql\`SELECT 1 AS "one"\`;
  return String(performance.now() - begun);`);

function aGate(): { readonly asked: Int32Array; readonly open: () => void } {
  const asked = new Int32Array(new SharedArrayBuffer(4));
  return {
    asked,
    open: () => {
      Atomics.store(asked, 0, 1);
      Atomics.notify(asked, 0);
    },
  };
}

describe('reads beside the server', () => {
  it('lets nobody who waits stand behind a report', async () => {
    const { asked, open } = aGate();
    const done: string[] = [];
    const reports = [heavy.report(held, asked), heavy.report(quick, null)];
    for (const report of reports) void report.then((text) => done.push(text));
    expect(await heavy.ask(quick, null)).toBe('quick');
    expect(done).toEqual([]);
    open();
    await Promise.all(reports);
    expect(done).toEqual(['held', 'quick']);
  });

  it('has a report give way to what somebody waits for, for a while', async () => {
    const long = aGate();
    const waiting = heavy.ask(held, long.asked);
    const given = Number(await heavy.report(timed, null));
    expect(given).toBeGreaterThan(240);
    const done: string[] = [];
    const report = heavy.report(timed, null).then(() => done.push('report'));
    long.open();
    await Promise.all([waiting.then((text) => done.push(text)), report]);
    expect(done).toEqual(['held', 'report']);
    expect(Number(await heavy.report(timed, null))).toBeLessThan(240);
  });

  it('has what somebody waits for give way to nothing, in whichever thread', async () => {
    const { asked, open } = aGate();
    const long = heavy.ask(held, asked);
    expect(Number(await heavy.ask(timed, null))).toBeLessThan(240);
    open();
    await long;
  });

  it('answers two who wait at once where there is no report', async () => {
    const { asked, open } = aGate();
    const long = heavy.ask(held, asked);
    expect(await heavy.ask(quick, null)).toBe('quick');
    open();
    expect(await long).toBe('held');
  });

  it('keeps answers that are to be sent as they are until they are given back, however many and however long', async () => {
    const written = questionOf<{ readonly letter: string; readonly count: number }>(
      `return asked.letter.repeat(asked.count);`,
    );
    const letters = ['a', 'ß', '€', 'd', 'e', 'f', 'g'];
    const asked = letters.map((letter, place) => ({ letter, count: place === 1 ? 5_000_000 : 1000 + place }));
    const answers = [];
    for (const own of asked) answers.push(await heavy.askHeld(written, own));
    const said = answers.map(({ bytes }) => bytes.toString());
    expect(said).toEqual(asked.map(({ letter, count }) => letter.repeat(count)));
    // Four lie in memory that threads share, the rest and what is too long for it do not.
    const isShared = answers.map(({ bytes }) => bytes.buffer instanceof SharedArrayBuffer);
    expect(isShared).toEqual([true, false, true, true, true, false, false]);
    for (const { giveBack } of answers) giveBack();
    answers[0]?.giveBack();
    const after = [];
    for (const letter of ['v', 'w', 'x', 'y', 'z']) after.push(await heavy.reportHeld(written, { letter, count: 3 }));
    expect(after.map(({ bytes }) => bytes.toString())).toEqual(['vvv', 'www', 'xxx', 'yyy', 'zzz']);
    expect(after.filter(({ bytes }) => bytes.buffer instanceof SharedArrayBuffer)).toHaveLength(4);
    for (const { giveBack } of after) giveBack();
  });

  it('gives back the place of a question that fails', async () => {
    const failing = questionOf<null>(`throw new Error('not to be answered');`);
    for (let time = 0; time < 5; time += 1) {
      await expect(heavy.askHeld(failing, null)).rejects.toThrow('not to be answered');
    }
    const { bytes, giveBack } = await heavy.askHeld(quick, null);
    expect(bytes.buffer).toBeInstanceOf(SharedArrayBuffer);
    expect(bytes.toString()).toBe('quick');
    giveBack();
  });

  // Other systems have no priority of a single thread: there is nothing to see.
  (process.platform === 'linux' ? it : it.skip)(
    'has the system put reports behind what somebody waits for',
    async () => {
      const priority = questionOf<null>(`
      const { getPriority } = await import('node:os');
      const { readlinkSync } = await import('node:fs');
      return String(getPriority(Number(readlinkSync('/proc/thread-self').split('/').at(-1))));`);
      const usual = getPriority();
      expect(await heavy.ask(priority, null)).toBe(String(usual));
      expect(await heavy.report(priority, null)).toBe('19');
    },
  );
});
