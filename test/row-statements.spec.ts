import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { openHouse, type TestHouse } from './support/house.js';
import { OutboxJob } from '../src/platform/jobs/outbox-job.entity.js';
import { WeightRun } from '../src/fill-weight/kept/weight-run.entity.js';
import { deleteStatement, insertStatements, updateStatement } from '../src/platform/database/row-statements.js';
import { UnitOfWork } from '../src/platform/database/unit-of-work.js';

describe('statements that write rows', () => {
  let house: TestHouse;

  beforeAll(async () => {
    house = await openHouse();
  });
  afterAll(async () => {
    await house.close();
  });

  const writer = () => house.databases.writer;
  const at = '2026-03-12T07:41:03.000Z';
  const job = (id: string, attempts: number) => ({
    ...{ id, kind: 'nobody-does-this', payload: '{}', createdAt: at, runAfter: '2999-01-01T00:00:00.000Z' },
    ...{ leasedUntil: null, attempts, finishedAt: null, lastError: null },
  });

  it('are the same text whatever is written, so that they are prepared once', () => {
    const texts = [1, 2].map((attempts) => [
      insertStatements(writer(), OutboxJob, [job('a', attempts)])[0]?.text,
      updateStatement(writer(), OutboxJob, { where: { attempts }, set: { attempts: attempts + 1 } }).text,
      deleteStatement(writer(), OutboxJob, { attempts }).text,
    ]);
    expect(texts[0]).toEqual(texts[1]);
    expect(texts[0]?.join()).not.toMatch(/[^$]\d/);
  });

  it('write many rows in as many statements as their values need', async () => {
    const jobs = Array.from({ length: 8000 }, (_, place) => job(`many-${place}`, place));
    expect(insertStatements(writer(), OutboxJob, jobs)).toHaveLength(3);
    const units = house.get(UnitOfWork);
    await units.run((tx) => tx.insert(OutboxJob, jobs));
    const rows = await units.run(async (tx) => {
      const found = await tx.sql<{ count: number | string; sum: number | string }>`
        SELECT COUNT(*) AS "count", SUM("attempts") AS "sum" FROM "outbox_job" WHERE "kind" = ${'nobody-does-this'}`;
      expect(await tx.update(OutboxJob, { kind: 'nobody-does-this', leasedUntil: null }, { leasedUntil: at })).toBe(
        8000,
      );
      expect(await tx.update(OutboxJob, { kind: 'nobody-does-this', leasedUntil: null }, { leasedUntil: at })).toBe(0);
      expect(await tx.findOne(OutboxJob, { id: 'many-7' })).toEqual({ ...job('many-7', 7), leasedUntil: at });
      expect(await tx.remove(OutboxJob, { kind: 'nobody-does-this' })).toBe(8000);
      return found;
    });
    expect(rows.map(({ count, sum }) => [Number(count), Number(sum)])).toEqual([[8000, (8000 * 7999) / 2]]);
  });

  it('set a part of the columns that belong together, and leave the others', () => {
    const set = { accepted: { packCount: 2 ** 40 } } as Partial<WeightRun>;
    const { text, values } = updateStatement(writer(), WeightRun, { where: { runId: 'r' }, set });
    expect(text.replace(/\$\d/g, '?')).toBe('UPDATE "weight_run" SET "accepted_pack_count" = ? WHERE "run_id" = ?');
    expect(values).toEqual([2 ** 40, 'r']);
  });

  it('refuse what is no column, no instant, and a where that finds all', () => {
    const update = (where: object, set: object) => () => updateStatement(writer(), OutboxJob, { where, set });
    expect(update({ id: 'a' }, { attempt: 1 })).toThrow('attempt is no column of outbox_job');
    expect(update({ name: 'a' }, { attempts: 1 })).toThrow('name is no column of outbox_job');
    expect(update({ id: 'a' }, { runAfter: 'tomorrow' })).toThrow('not an instant: tomorrow');
    expect(update({ id: 'a' }, {})).toThrow('an update that sets nothing');
    expect(update({}, { attempts: 1 })).toThrow('a where without any condition');
    expect(() => deleteStatement(writer(), OutboxJob, { id: undefined })).toThrow('a where without any condition');
  });
});
