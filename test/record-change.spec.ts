import { setImmediate } from 'node:timers';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { Asked } from '../src/journal/entry-draft.js';
import { journalPage } from '../src/journal/journal-entries.js';
import { RecordChange } from '../src/journal/record-change.js';
import { lastSequenceOf } from '../src/journal/stale-page.js';
import { verifyJournal } from '../src/journal/verify-journal.js';
import { leaveJob } from '../src/platform/jobs/outbox.js';
import { JobRunner } from '../src/platform/jobs/job-runner.js';
import { Refusal } from '../src/platform/refusal.js';
import { anActor, asking, openHouse, type TestHouse } from './support/house.js';

const siteId = 'site-1';
const actor = anActor(siteId, 'line-lead');
const bag = { kind: 'bulk-bag', id: 'bag-1' };

describe('the one door for changes', () => {
  let house: TestHouse;
  let changes: RecordChange;
  let runs = 0;

  beforeAll(async () => {
    house = await openHouse();
    changes = house.get(RecordChange);
  });
  afterAll(async () => {
    await house.close();
  });

  const change = (asked: Asked, content: object, answer: unknown = { done: true }): Promise<unknown> =>
    changes.run(asked, content, async () => {
      runs += 1;
      return {
        answer,
        entry: { action: 'fill-bag', subject: bag, touches: [{ kind: 'hopper', id: 'hopper-1' }, bag] },
      };
    });
  const entries = async (): Promise<number> =>
    (await journalPage(house.databases.reader.manager, siteId, { before: null, limit: 200 })).length;

  it('gives the same key with the same content the first answer, and runs the command once', async () => {
    const before = runs;
    const first = await change(asking(actor, 'key-same-1'), { a: 1, b: 'x' }, { number: 7 });
    const second = await change(asking(actor, 'key-same-1'), { b: 'x', a: 1 }, { number: 8 });
    expect([first, second]).toEqual([{ number: 7 }, { number: 7 }]);
    expect(runs - before).toBe(1);
  });

  it('refuses the same key with other content, in its own words', async () => {
    await change(asking(actor, 'key-other-1'), { a: 1 });
    await expect(change(asking(actor, 'key-other-1'), { a: 2 })).rejects.toMatchObject({
      code: 'key-used-for-other-content',
    });
  });

  it('lets the same key belong to another person or another route', async () => {
    const before = runs;
    const other = { ...actor, personId: '00000000-0000-7000-8000-000000000002' };
    await change(asking(actor, 'key-mine-1'), { a: 1 });
    await change(asking(other, 'key-mine-1'), { a: 2 });
    await change({ ...asking(actor, 'key-mine-1'), route: 'OTHER' }, { a: 3 });
    expect(runs - before).toBe(3);
  });

  it('does not use a key up by a refusal', async () => {
    const refused = changes.run(asking(actor, 'key-refused'), {}, async () => {
      throw new Refusal('already-corrected');
    });
    await expect(refused).rejects.toMatchObject({ code: 'already-corrected' });
    expect(await change(asking(actor, 'key-refused'), {}, { now: 'done' })).toEqual({ now: 'done' });
  });

  it('runs the command once when the same request comes twenty times at once', async () => {
    const [before, written] = [runs, await entries()];
    const answers = await Promise.all(Array.from({ length: 20 }, () => change(asking(actor, 'key-at-once'), { a: 1 })));
    expect(new Set(answers.map((answer) => JSON.stringify(answer))).size).toBe(1);
    expect(runs - before).toBe(1);
    expect((await entries()) - written).toBe(1);
  });

  it('leaves nothing of a change that failed: no row, no entry, no key, no job', async () => {
    const written = await entries();
    const failed = changes.run(asking(actor, 'key-failed'), {}, async (tx, { recordedAt }) => {
      await leaveJob(tx, { id: 'job-of-nobody', kind: 'nothing', payload: {}, at: recordedAt });
      throw new Error('broken in the middle');
    });
    await expect(failed).rejects.toThrow('broken in the middle');
    expect(await entries()).toBe(written);
    expect(await house.databases.reader.sql`SELECT "id" FROM "outbox_job" WHERE "id" = ${'job-of-nobody'}`).toEqual([]);
  });

  it('tells a stale page what moved on', async () => {
    const sequence = await lastSequenceOf(house.databases.reader.manager, bag);
    await change(asking(actor), { a: 9 });
    const stale = { ...asking(actor), seen: { subject: bag, sequence } };
    await expect(change(stale, {})).rejects.toMatchObject({
      code: 'page-is-stale',
      facts: { lastSequence: sequence + 1 },
    });
    const fresh = { ...asking(actor), seen: { subject: bag, sequence: sequence + 1 } };
    expect(await change(fresh, {})).toEqual({ done: true });
  });

  it('keeps one chain that verifies, with a given head too, and no other head', async () => {
    const reader = house.databases.reader.manager;
    const whole = await verifyJournal(reader, siteId, null);
    expect(whole).toMatchObject({ misfit: null, entries: await entries() });
    const third = (await journalPage(reader, siteId, { before: 4, limit: 1 }))[0];
    expect((await verifyJournal(reader, siteId, third!.hash)).misfit).toBeNull();
    expect((await verifyJournal(reader, siteId, 'f'.repeat(64))).misfit).toMatchObject({ why: 'given-head-not-found' });
  });

  it('does a job after the commit, at least once, and again after a failure', async () => {
    const jobs = house.get(JobRunner);
    const done: unknown[] = [];
    let fails = 1;
    jobs.handle('test-job', async (payload) => {
      fails -= 1;
      if (fails === 0) throw new Error('the printer is out of paper');
      done.push(payload);
    });
    await changes.run(asking(actor), {}, async (tx, { recordedAt }) => {
      await leaveJob(tx, { id: 'job-1', kind: 'test-job', payload: { page: 1 }, at: recordedAt });
      return { answer: null, entry: { action: 'fill-bag', subject: bag } };
    });
    await jobs.drain();
    expect(done).toEqual([]);
    house.clock.pass(5);
    await jobs.drain();
    await jobs.drain();
    expect(done).toEqual([{ page: 1 }]);
  });
});

describe('two jobs', () => {
  it('leave whoever asks a turn between them', async () => {
    const house = await openHouse();
    const jobs = house.get(JobRunner);
    const order: unknown[] = [];
    jobs.handle('test-turns', (payload) => {
      if (order.length === 0) setImmediate(() => order.push('whoever asks'));
      order.push(payload);
      return Promise.resolve();
    });
    await house.get(RecordChange).run(asking(actor), {}, async (tx, { recordedAt: at }) => {
      await leaveJob(tx, { id: 'turn-1', kind: 'test-turns', payload: 1, at });
      await leaveJob(tx, { id: 'turn-2', kind: 'test-turns', payload: 2, at });
      return { answer: null, entry: { action: 'fill-bag', subject: bag } };
    });
    await jobs.drain();
    expect(order).toEqual([1, 'whoever asks', 2]);
    await house.close();
  });
});

describe('a journal row changed by hand past its triggers', () => {
  it.each([
    [
      'after',
      `UPDATE "journal_entry" SET "after" = '{"grams":1}' WHERE "sequence" = 2`,
      { sequence: 2, why: 'own-hash' },
    ],
    ['a deleted row', `DELETE FROM "journal_entry" WHERE "sequence" = 2`, { sequence: 3, why: 'sequence-gap' }],
    ['a cut tail', `DELETE FROM "journal_entry" WHERE "sequence" = 3`, { sequence: 2, why: 'head' }],
    [
      'a lost subject',
      `DELETE FROM "journal_subject" WHERE "sequence" = 2 AND "kind" = 'hopper'`,
      { sequence: 2, why: 'subjects' },
    ],
  ])('is named: %s', async (_, tampering, misfit) => {
    const house = await openHouse();
    try {
      for (const grams of [1000, 2000, 3000]) {
        await house.get(RecordChange).run(asking(actor), {}, async () => ({
          answer: null,
          entry: { action: 'fill-bag', subject: bag, touches: [{ kind: 'hopper', id: 'hopper-1' }], after: { grams } },
        }));
      }
      const { kind, writer } = house.databases;
      for (const table of ['journal_entry', 'journal_subject']) {
        for (const trigger of ['no_update', 'no_delete']) {
          await writer.query(`DROP TRIGGER "${table}_${trigger}"${kind === 'postgres' ? ` ON "${table}"` : ''}`);
        }
      }
      await writer.query(tampering);
      expect((await verifyJournal(house.databases.reader.manager, siteId, null)).misfit).toEqual(misfit);
    } finally {
      await house.close();
    }
  });
});
