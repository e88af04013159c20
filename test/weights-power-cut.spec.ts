import { afterEach, describe, expect, it } from '@jest/globals';
import { openToLook } from '../src/cli/open-to-look.js';
import { storedWeights } from '../src/fill-weight/stored-weights.js';
import { readConfig } from '../src/platform/config.js';
import type { ReadFrom } from '../src/platform/database/reading.js';
import { chainedSites, verifyJournal } from '../src/journal/verify-journal.js';
import { aPackWeigher, type TestWeigher } from './support/a-pack-weigher.js';
import { aPlant } from './support/a-plant.js';
import { aRun } from './support/a-run.js';
import { settingsOf } from './support/first-sign-in.js';
import { freshPlace, openHouseAt, type Place } from './support/house.js';
import { startServer, type RunningServer } from './support/server.js';

const kills = 50;
const weightsPerBatch = 400;

let place: Place | null = null;
let server: RunningServer | null = null;

afterEach(async () => {
  await server?.kill();
  await place?.remove();
  [place, server] = [null, null];
});

/** A weigher that sends one batch after the other, and each again until it is answered. */
interface Sender {
  readonly weigher: TestWeigher;
  readonly run: string;
  /** Batches that were answered as done. */
  answered: number;
}

async function sendUntilCut(address: string, sender: Sender, onAnswer: () => void): Promise<void> {
  for (;;) {
    const answer = await fetch(`${address}/api/fill-weights?ends=newline`, {
      method: 'POST',
      headers: { Authorization: `Bearer ${sender.weigher.token}`, 'Content-Type': 'application/x-ndjson' },
      body: batchOf(sender, sender.answered),
    });
    if (answer.status !== 201) throw new Error(await answer.text());
    sender.answered += 1;
    onAnswer();
  }
}

function batchOf({ run }: Sender, batch: number): string {
  const at = new Date().toISOString();
  const lines = Array.from({ length: weightsPerBatch }, (_, line) => {
    const sequence = batch * weightsPerBatch + line;
    return `{"sequence":${sequence},"at":"${at}","netMilligrams":${2_000_000 + (sequence % 977) * 10},"run":"${run}"}\n`;
  });
  return lines.join('');
}

/**
 * From this batch on every sequence stands there once with its own weight, and as many as were answered, or one batch
 * more; what the house has noted as received is the same, from 0 on.
 */
async function expectEachOnce(from: ReadFrom, { weigher, answered }: Sender, batch: number): Promise<void> {
  const sequences: number[] = [];
  const key = { deviceId: weigher.deviceId, series: '1' };
  const first = batch * weightsPerBatch;
  let wrong = 0;
  for await (const { columns } of storedWeights(from, key, { from: first, to: Number.MAX_SAFE_INTEGER })) {
    sequences.push(...columns.sequences.filter((sequence) => sequence >= first));
    columns.netMilligrams.forEach((net, at) => {
      if (net !== 2_000_000 + ((columns.sequences[at] ?? 0) % 977) * 10) wrong += 1;
    });
  }
  sequences.sort((one, other) => one - other);
  expect(wrong).toBe(0);
  expect(sequences.findIndex((sequence, at) => sequence !== first + at)).toBe(-1);
  const batches = batch + sequences.length / weightsPerBatch;
  expect([answered, answered + 1]).toContain(batches);
  const ranges = await from.sql<{ first: number | string; last: number | string }>`
    SELECT "from_sequence" AS "first", "to_sequence" AS "last" FROM "weight_range"
    WHERE "device_id" = ${weigher.deviceId}`;
  expect(ranges.map(({ first: begin, last }) => [Number(begin), Number(last)])).toEqual(
    batches === 0 ? [] : [[0, batches * weightsPerBatch - 1]],
  );
}

describe('the plug pulled while two weighers send', () => {
  it(`leaves every batch that was answered there once, after each of ${kills} cuts`, async () => {
    place = await freshPlace();
    const settings = settingsOf(place);
    const house = await openHouseAt(place, { at: new Date(Date.now() - 60_000).toISOString() });
    const plant = await aPlant(house);
    const senders: Sender[] = [];
    for (const lineId of plant.lineIds) {
      const weigher = await aPackWeigher(house, plant, { lineId });
      senders.push({ weigher, run: (await aRun(house, plant, { lineId })).number, answered: 0 });
    }
    await house.close();
    const config = readConfig(settings);
    for (let cut = 0; cut < kills; cut += 1) {
      const before = senders.map(({ answered }) => answered);
      const running = await startServer(settings);
      server = running;
      let answers = 0;
      const onAnswer = (): void => {
        answers += 1;
        // Anywhere in the next batch: the two senders are never at the same place.
        if (answers === 3 + (cut % 4)) setTimeout(() => void running.kill(), cut % 7);
      };
      const ends = await Promise.allSettled(senders.map((sender) => sendUntilCut(running.address, sender, onAnswer)));
      await running.kill();
      const refused = ends
        .map((end) => String((end as PromiseRejectedResult).reason))
        .filter((end) => !end.includes('fetch failed'));
      expect(refused).toEqual([]);
      const look = await openToLook(config);
      // What was sent since the cut before, with the batch that was in doubt; the whole of it after the last.
      for (const [at, sender] of senders.entries()) await expectEachOnce(look.from, sender, before[at] ?? 0);
      await look.close();
    }
    const look = await openToLook(config);
    for (const sender of senders) await expectEachOnce(look.from, sender, 0);
    const [siteId = ''] = await chainedSites(look.from);
    expect((await verifyJournal(look.from, siteId, null)).misfit).toBeNull();
    await look.close();
    expect(senders.reduce((sum, { answered }) => sum + answered, 0)).toBeGreaterThan(kills * 3);
  }, 900_000);
});
