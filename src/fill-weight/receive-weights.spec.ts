import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { gzipSync } from 'node:zlib';
import { aPackWeigher, weightLine, type TestWeigher } from '../../test/support/a-pack-weigher.js';
import { aPlant, type Plant } from '../../test/support/a-plant.js';
import { aRun } from '../../test/support/a-run.js';
import { openHouse, type TestHouse } from '../../test/support/house.js';
import { encodeWeights } from '../core/weight-blocks/encode-weights.js';
import { noHead, zeroOrNoHead } from '../core/weight-blocks/weight-columns.js';
import { shifted } from '../platform/clock.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { UnitOfWork } from '../platform/database/unit-of-work.js';
import { rebuildReceived, seriesReceived } from './rebuild-received.js';
import { storedWeights } from './stored-weights.js';
import { WeightBatch } from './weight-batch.entity.js';

interface Answer {
  readonly type?: string;
  readonly acceptedCount: number;
  readonly repeatedCount: number;
  readonly refusedCount: number;
  readonly problems: readonly { line: number; field: string; type: string; detail: string }[];
  readonly fields: Answer['problems'];
}

describe('weights that a pack weigher sends', () => {
  let house: TestHouse;
  let plant: Plant;
  let reader: ReadFrom;
  let run: string;
  let weigher: TestWeigher;
  let otherRun: string;

  beforeAll(async () => {
    house = await openHouse();
    plant = await aPlant(house);
    reader = house.app.get<ReadFrom>(READER, { strict: false });
    run = (await aRun(house, plant)).number;
    otherRun = (await aRun(house, plant, { lineId: plant.lineIds[1] })).number;
    house.clock.pass(60);
  });
  afterAll(async () => {
    await house.close();
  });

  const fresh = async (): Promise<void> => {
    weigher = await aPackWeigher(house, plant);
  };

  async function send(
    payload: string | Buffer,
    { query = '', type = 'application/x-ndjson', headers = {} } = {},
  ): Promise<{ status: number; body: Answer }> {
    const answer = await house.app
      .getHttpAdapter()
      .getInstance()
      .inject({
        method: 'POST',
        url: `/api/fill-weights?${query}`,
        headers: { authorization: `Bearer ${weigher.token}`, 'content-type': type, ...headers },
        payload,
      });
    return { status: answer.statusCode, body: JSON.parse(answer.body) as Answer };
  }

  const lines = (from: number, to: number, wishes: object = {}): string =>
    Array.from({ length: to - from + 1 }, (_, place) => weightLine(house, from + place, { run, ...wishes })).join('\n');

  async function kept(series = '1'): Promise<{ sequence: number; net: number; run: string }[]> {
    const found: { sequence: number; net: number; run: string }[] = [];
    const key = { deviceId: weigher.deviceId, series };
    for await (const { runId, columns } of storedWeights(reader, key, { from: 0, to: Number.MAX_SAFE_INTEGER })) {
      columns.sequences.forEach((sequence, place) =>
        found.push({ sequence, net: columns.netMilligrams[place] ?? 0, run: runId }),
      );
    }
    return found.sort((one, other) => one.sequence - other.sequence);
  }

  async function headsKept(series: string): Promise<readonly (number | null)[]> {
    const found: (number | null)[] = [];
    const key = { deviceId: weigher.deviceId, series };
    for await (const { columns } of storedWeights(reader, key, { from: 0, to: 99 })) {
      columns.sequences.forEach((_, place) => found.push(columns.heads?.[place] ?? null));
    }
    return found;
  }

  async function ranges(): Promise<unknown> {
    const rows = await reader.sql<{ a: number | string; b: number | string }>`
      SELECT "from_sequence" AS a, "to_sequence" AS b FROM "weight_range" WHERE "device_id" = ${weigher.deviceId}
      ORDER BY "series", "from_sequence"`;
    return rows.map(({ a, b }) => [Number(a), Number(b)]);
  }

  const entries = async (): Promise<number> => {
    const rows = await reader.sql`SELECT "id" FROM "journal_entry" WHERE "subject_id" = ${weigher.weigherId}
      AND "action" = 'receive-weights'`;
    return rows.length;
  };

  it('are kept with one entry in the journal, and a batch that is repeated or overlaps counts once', async () => {
    await fresh();
    expect(await send(lines(1, 100))).toMatchObject({ status: 201, body: { acceptedCount: 100, repeatedCount: 0 } });
    expect(await send(lines(1, 100))).toMatchObject({ status: 201, body: { acceptedCount: 0, repeatedCount: 100 } });
    expect(await entries()).toBe(1);
    expect(await send(lines(91, 120))).toMatchObject({ body: { acceptedCount: 20, repeatedCount: 10 } });
    const weights = await kept();
    expect(weights.map(({ sequence }) => sequence)).toEqual(Array.from({ length: 120 }, (_, place) => place + 1));
    expect(await ranges()).toEqual([[1, 120]]);
    expect(await entries()).toBe(2);
    const [row] = await reader.sql<{ after: string }>`SELECT "after" FROM "journal_entry"
      WHERE "subject_id" = ${weigher.weigherId} AND "action" = 'receive-weights' ORDER BY "sequence" LIMIT 1`;
    const said = JSON.parse(row?.after ?? '') as { batches: { digest: string }[] };
    expect(said).toMatchObject({ weightCount: 100, firstSequence: 1, lastSequence: 100, batches: [{ run }] });
    const digests = await reader.sql<{ digest: string }>`SELECT "digest" FROM "weight_batch"
      WHERE "weigher_id" = ${weigher.weigherId} ORDER BY "first_sequence"`;
    expect(said.batches[0]?.digest).toBe(digests[0]?.digest);
  });

  it('say themselves what was received, where that was lost, but for what was dropped', async () => {
    await fresh();
    await send(lines(1, 40));
    house.clock.pass(60);
    await send([lines(51, 60), lines(70, 90)].join('\n'));
    await send(lines(1, 5), { query: 'series=2' });
    const known = () => reader.sql`
      SELECT * FROM "weight_series" WHERE "device_id" = ${weigher.deviceId} ORDER BY "series"`;
    const before = [await ranges(), await known()];
    const rebuild = (series: string) =>
      house.get(UnitOfWork).run((tx) => rebuildReceived(tx, { deviceId: weigher.deviceId, series }));
    expect(await rebuild('1')).toBe('as-stored');
    const counters = await seriesReceived(reader);
    expect(counters.filter(({ deviceId }) => deviceId === weigher.deviceId).map(({ series }) => series)).toEqual([
      '1',
      '2',
    ]);
    await house.get(UnitOfWork).run(async (tx) => {
      await tx.sql`DELETE FROM "weight_series" WHERE "device_id" = ${weigher.deviceId}`;
      await tx.sql`DELETE FROM "weight_range" WHERE "device_id" = ${weigher.deviceId} AND "from_sequence" < 60`;
    });
    expect([await rebuild('1'), await rebuild('2')]).toEqual(['written-anew', 'written-anew']);
    expect([await ranges(), await known()]).toEqual(before);
    // What is not there to be read any more is believed as it is stored.
    await house.get(UnitOfWork).run(async (tx) => {
      await tx.sql`UPDATE "weight_batch" SET "weights" = ${Buffer.from('no weights')}
        WHERE "weigher_id" = ${weigher.weigherId} AND "first_sequence" = 51`;
      await tx.sql`UPDATE "weight_range" SET "to_sequence" = 39
        WHERE "device_id" = ${weigher.deviceId} AND "series" = '1' AND "from_sequence" = 1`;
    });
    expect(await rebuild('1')).toBe('written-anew');
    expect([await ranges(), await known()]).toEqual(before);
    expect(await rebuild('1')).toBe('as-stored');
  });

  it('come late, in any order and with gaps, and their ranges grow together', async () => {
    await fresh();
    await send(lines(50, 60));
    await send(lines(10, 20));
    expect(await ranges()).toEqual([
      [10, 20],
      [50, 60],
    ]);
    const mixed = [...lines(21, 49).split('\n'), ...lines(5, 8).split('\n')].reverse().join('\n');
    expect(await send(mixed)).toMatchObject({ body: { acceptedCount: 33 } });
    expect(await ranges()).toEqual([
      [5, 8],
      [10, 60],
    ]);
    expect((await kept()).map(({ sequence }) => sequence)).toHaveLength(55);
  });

  it('keep apart a head 0 from none, also in what comes again, and where a head was kept as 0 or none both are a repeat', async () => {
    await fresh();
    const told = (sequence: number, head?: number): string => weightLine(house, sequence, { run, head });
    const batch = [told(1, 0), told(2), told(3, 3)].join('\n');
    expect((await send(batch, { query: 'series=heads' })).body).toMatchObject({ acceptedCount: 3 });
    expect(await headsKept('heads')).toEqual([0, noHead, 3]);
    expect((await send(batch, { query: 'series=heads' })).body).toMatchObject({ repeatedCount: 3 });
    for (const other of [told(1), told(2, 0)]) {
      const answer = await send(other, { query: 'series=heads' });
      expect([answer.status, answer.body.fields[0]?.type]).toEqual([422, 'problem:weight-sequence-of-other']);
    }
    await send(told(9), { query: 'series=none' });
    expect(await headsKept('none')).toEqual([null]);
    await send([told(1, 0), told(2)].join('\n'), { query: 'series=old' });
    await house.get(UnitOfWork).run(async (tx) => {
      const key = { deviceId: weigher.deviceId, series: 'old' };
      for await (const { columns } of storedWeights(tx, key, { from: 0, to: 9 })) {
        const weights = Buffer.from(encodeWeights({ ...columns, heads: Int16Array.of(zeroOrNoHead, zeroOrNoHead) }));
        await tx.update(WeightBatch, { weigherId: weigher.weigherId, series: 'old' }, { weights });
      }
    });
    const again = await send([told(1), told(2, 0)].join('\n'), { query: 'series=old' });
    expect(again.body).toMatchObject({ repeatedCount: 2, refusedCount: 0 });
  });

  it('are refused where a sequence comes again with another weight, until another series says that it began anew', async () => {
    await fresh();
    await send(lines(1, 10));
    const other = weightLine(house, 5, { run, netGrams: 1999 });
    const refused = await send(`${lines(11, 12)}\n${other}`);
    expect(refused).toMatchObject({ status: 422, body: { type: 'problem:weights-in-error' } });
    expect(refused.body.fields).toMatchObject([{ line: 3, type: 'problem:weight-sequence-of-other' }]);
    expect(await ranges()).toEqual([[1, 10]]);
    expect(await send(`${lines(11, 12)}\n${other}`, { query: 'lines=skip' })).toMatchObject({
      status: 201,
      body: { acceptedCount: 2, refusedCount: 1, problems: [{ line: 3 }] },
    });
    expect(await send(other, { query: 'series=B' })).toMatchObject({ status: 201, body: { acceptedCount: 1 } });
    const twice = `${weightLine(house, 20, { run })}\n${weightLine(house, 20, { run, netGrams: 1999 })}`;
    expect((await send(twice)).body.fields).toMatchObject([{ line: 2, type: 'problem:weight-sequence-twice' }]);
  });

  it('name each line in error with its reason, and nothing of the batch is kept unless the rest is asked for', async () => {
    await fresh();
    const late = shifted(house.clock.now(), 6 * 60_000);
    const early = '2026-03-12T05:54:00.000Z';
    const bad = [
      [weightLine(house, 1, { run, netGrams: 2.0 }), 'none'],
      [weightLine(house, 2, { run, netGrams: -0.4 }), 'weight-below-zero'],
      [weightLine(house, 3, { run, netGrams: 2_000_400 }), 'weight-absurd'],
      [weightLine(house, 4, { run: otherRun }), 'weight-run-of-other-line'],
      [weightLine(house, 5, { run: 'PR-2026-999999' }), 'weight-run-unknown'],
      [weightLine(house, 6, { run, line: '2' }), 'weight-of-other-line'],
      [weightLine(house, 7, { run, at: late }), 'weight-ahead-of-clock'],
      [weightLine(house, 8, { run, at: early }), 'weight-before-run'],
      [weightLine(house, 9, { at: early }), 'weight-without-run'],
      ['rubbish', 'weight-line-not-json'],
    ] as const;
    const batch = `${lines(100, 120)}\n${bad.map(([line]) => line).join('\n')}`;
    const refused = await send(batch);
    expect(refused.status).toBe(422);
    expect(refused.body.fields.map(({ line, type }) => [line, type])).toEqual(
      bad.flatMap(([, code], place) => (code === 'none' ? [] : [[22 + place, `problem:${code}`]])),
    );
    expect(refused.body.fields.every(({ detail }) => !/[{}]/.test(detail.replace(/\{"seq.*\}/, '')))).toBe(true);
    expect(await kept()).toEqual([]);
    expect(await entries()).toBe(0);
    const taken = await send(batch, { query: 'lines=skip' });
    expect(taken).toMatchObject({ status: 201, body: { acceptedCount: 22, refusedCount: 9 } });
  });

  it('are told by their size when kilograms or milligrams stand where grams are meant', async () => {
    await fresh();
    const inKilograms = Array.from({ length: 20 }, (_, place) => weightLine(house, place, { run, netGrams: 2.004 }));
    expect((await send(inKilograms.join('\n'))).body.fields[0]).toMatchObject({ type: 'problem:weight-in-kilograms' });
    const inMilligrams = Array.from({ length: 20 }, (_, place) =>
      weightLine(house, place, { run, netGrams: 2_004_000 }),
    );
    const refused = (await send(inMilligrams.join('\n'))).body.fields;
    expect(refused).toHaveLength(20);
    expect(refused[0]).toMatchObject({ type: 'problem:weight-in-milligrams' });
    // One empty pack among full ones is no mistake of the unit.
    expect(await send(`${lines(1, 5)}\n${weightLine(house, 6, { run, netGrams: 2.004 })}`)).toMatchObject({
      status: 201,
    });
  });

  it('find their run by their time where they name none, and take line, run and series from the query', async () => {
    await fresh();
    expect(await send(weightLine(house, 1, {}))).toMatchObject({ status: 201 });
    expect(await send(weightLine(house, 2, {}), { query: `run=${run}&line=1&series=B` })).toMatchObject({
      status: 201,
    });
    const [one] = await kept();
    const [two] = await kept('B');
    expect(one?.run).toBe(two?.run);
    expect((await send(weightLine(house, 3, {}), { query: 'line=2' })).body.fields).toMatchObject([{ field: 'line' }]);
    expect((await send(weightLine(house, 3, {}), { query: `run=${otherRun}` })).body.fields).toMatchObject([
      { type: 'problem:weight-run-of-other-line' },
    ]);
  });

  it('have their times made the house’s where the weigher says how its clock stands', async () => {
    await fresh();
    const ahead = (minutes: number): string => shifted(house.clock.now(), minutes * 60_000);
    const line = weightLine(house, 1, { run, at: ahead(20) });
    expect(await send(line)).toMatchObject({ status: 422 });
    expect(await send(line, { headers: { 'device-time': ahead(21) } })).toMatchObject({ status: 201 });
    const [row] = await reader.sql<{ firstAt: string }>`SELECT "first_at" AS "firstAt" FROM "weight_batch"
      WHERE "weigher_id" = ${weigher.weigherId}`;
    expect(row?.firstAt).toBe(ahead(-1));
  });

  it('come as CSV and packed, and are not kept at all when they were cut off', async () => {
    await fresh();
    const table = `sequence;at;netGrams;head;rejected\r\n1;${house.clock.now()};2001,4;3;0\r\n2;${house.clock.now()};1930;4;1\r\n`;
    expect(await send(table, { type: 'text/csv' })).toMatchObject({ status: 201, body: { acceptedCount: 2 } });
    expect((await kept()).map(({ net }) => net)).toEqual([2_001_400, 1_930_000]);
    const packed = gzipSync(lines(3, 500));
    const gzip = { headers: { 'content-encoding': 'gzip' } };
    expect(await send(packed.subarray(0, packed.length - 9), gzip)).toMatchObject({
      status: 400,
      body: { type: 'problem:body-cut-off' },
    });
    expect(await send(packed, gzip)).toMatchObject({ status: 201, body: { acceptedCount: 498 } });
    const rest = lines(501, 510);
    expect((await send(rest, { query: 'count=11' })).body.type).toBe('problem:weights-not-as-announced');
    expect((await send(rest, { query: 'ends=newline' })).body.type).toBe('problem:body-cut-off');
    expect(await ranges()).toEqual([[1, 500]]);
    expect(await send(`${rest}\n`, { query: 'ends=newline&count=10' })).toMatchObject({ status: 201 });
  });

  it('are refused plainly: rubbish, bombs, other types, and machines that weigh nothing', async () => {
    await fresh();
    const bomb = gzipSync(Buffer.alloc(400_000_000, 0x20));
    expect(await send(bomb, { headers: { 'content-encoding': 'gzip' } })).toMatchObject({
      status: 413,
      body: { type: 'problem:body-too-large' },
    });
    expect(await send(Buffer.from([0, 255, 254, 10, 1, 2]))).toMatchObject({ status: 422 });
    expect(await send(Buffer.from([1, 2]), { headers: { 'content-encoding': 'gzip' } })).toMatchObject({ status: 400 });
    expect(await send('x', { headers: { 'content-encoding': 'br' } })).toMatchObject({ status: 415 });
    expect(await send('{}', { type: 'application/json' })).toMatchObject({ status: 415 });
    expect(await send('x', { type: 'application/octet-stream' })).toMatchObject({ status: 415 });
    expect(await send('colour;size\n1;2\n', { type: 'text/csv' })).toMatchObject({ status: 422 });
    expect(await send('', {})).toMatchObject({ status: 201, body: { acceptedCount: 0 } });
    expect(await send(weightLine(house, 1, { run }), { query: 'lines=perhaps' })).toMatchObject({ status: 422 });
    const gappy = Array.from({ length: 10_001 }, (_, place) => weightLine(house, place * 2, { run })).join('\n');
    expect(await send(gappy)).toMatchObject({ status: 409, body: { type: 'problem:too-many-gaps' } });
    weigher = { ...weigher, token: 'nobody' };
    expect(await send('x')).toMatchObject({ status: 401 });
  }, 60_000);

  it('count once when the same batch comes four times at once, and a fifth is asked to come again', async () => {
    await fresh();
    const batch = lines(1, 2000);
    const answers = await Promise.all(Array.from({ length: 12 }, () => send(batch)));
    const statuses = answers.map(({ status }) => status);
    expect(new Set(statuses)).toEqual(new Set([201, 429]));
    const accepted = answers.reduce((sum, { body }) => sum + (body.type === undefined ? body.acceptedCount : 0), 0);
    expect(accepted).toBe(2000);
    expect(await ranges()).toEqual([[1, 2000]]);
    expect(await entries()).toBe(1);
    expect(await kept()).toHaveLength(2000);
  });
});
