import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import { aPackWeigher, type TestWeigher } from '../../../test/support/a-pack-weigher.js';
import { aPerson, signedIn, type SignedInPerson } from '../../../test/support/a-person.js';
import { aPlant, type Plant } from '../../../test/support/a-plant.js';
import { aRun } from '../../../test/support/a-run.js';
import { openHouse, type TestHouse } from '../../../test/support/house.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import type { FileLayoutForm } from './file-layout.form.js';

interface Answer {
  readonly id: string;
  readonly type?: string;
  readonly lineCount: number;
  readonly acceptedCount: number;
  readonly repeatedCount: number;
  readonly refusedCount: number;
  readonly problems: readonly { line: number; field: string; type: string; detail: string }[];
  readonly fields: readonly { field: string; type: string; detail: string }[];
  readonly runs: readonly { run: string; weightCount: number }[];
  readonly first: readonly { line: number; sequence: number; at: string; netGrams: number; head: number | null }[];
}

describe('a file that a weigher wrote', () => {
  let house: TestHouse;
  let plant: Plant;
  let manager: SignedInPerson;
  let run: string;
  let weigher: TestWeigher;

  beforeAll(async () => {
    house = await openHouse();
    plant = await aPlant(house);
    run = (await aRun(house, plant)).number;
    house.clock.pass(60);
    manager = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['plant-manager'] }));
  });
  beforeEach(async () => {
    weigher = await aPackWeigher(house, plant);
  });
  afterAll(async () => {
    await house.close();
  });

  const usual: FileLayoutForm = {
    ...{ separator: 'semicolon', decimal: 'comma', headerLines: 1, sequenceColumn: 'Nr', timeColumn: 'Zeit' },
    ...{ dayColumn: 'Datum', timeOrder: 'dmy', timeZone: 'Europe/Berlin', netColumn: 'Netto', unit: 'g' },
    ...{ headColumn: 'Kopf', rejectColumn: 'Status', rejectWord: 'NG', acceptWord: 'OK' },
  };
  const layout = (wishes: Partial<FileLayoutForm> = {}) =>
    manager.put(`/api/pack-weighers/${weigher.weigherId}/file-layout`, { ...usual, ...wishes });

  const bring = async (payload: string | Buffer): Promise<{ status: number; body: Answer }> => {
    const answer = await house.app
      .getHttpAdapter()
      .getInstance()
      .inject({
        method: 'POST',
        url: `/api/pack-weighers/${weigher.weigherId}/files?name=export.csv`,
        headers: { cookie: manager.cookie, 'x-csrf-token': manager.csrf, 'content-type': 'text/csv' },
        payload,
      });
    return { status: answer.statusCode, body: JSON.parse(answer.body) as Answer };
  };
  const store = async (id: string, form: object = {}): Promise<{ status: number; body: Answer }> => {
    const answer = await manager.post(`/api/weight-files/${id}/storing`, form);
    return { status: answer.status, body: answer.body as Answer };
  };
  const keptCount = async (): Promise<number> => {
    const [row] = await house.app.get<ReadFrom>(READER, { strict: false }).sql<{ count: number | string | null }>`
      SELECT SUM("weight_count") AS "count" FROM "weight_batch" WHERE "weigher_id" = ${weigher.weigherId}`;
    return Number(row?.count ?? 0);
  };

  const heading = 'Nr;Datum;Zeit;Netto;Kopf;Status\r\n';
  /** One pack a second from 07:30 by the clocks of Berlin, which is half an hour after the run began. */
  const clock = (second: number): string =>
    `07:${String(30 + Math.floor(second / 60)).padStart(2, '0')}:${String(second % 60).padStart(2, '0')}`;
  const line = (number: number, net = `200${number % 10},5`): string =>
    `${number};12.03.2026;${clock(number)};${net};${number % 14};${number % 9 === 0 ? 'NG' : 'OK'}\r\n`;
  const lines = (from: number, to: number): string =>
    Array.from({ length: to - from + 1 }, (_, step) => line(from + step)).join('');

  it('is shown before anything is stored, then stored by one act, and known when it comes again', async () => {
    expect((await layout()).status).toBe(200);
    const shown = await bring(`\uFEFF${heading}${lines(1, 100)}`);
    expect(shown.status).toBe(201);
    expect(shown.body).toMatchObject({ lineCount: 100, acceptedCount: 100, repeatedCount: 0, refusedCount: 0 });
    expect(shown.body.runs).toEqual([{ run, weightCount: 100 }]);
    expect(shown.body.first[0]).toEqual({
      ...{ line: 2, sequence: 1, at: '2026-03-12T06:30:01.000Z', netGrams: 2001.5, head: 1, rejected: false },
    });
    expect(await keptCount()).toBe(0);
    expect(await store(shown.body.id)).toMatchObject({ status: 201, body: { acceptedCount: 100 } });
    expect(await keptCount()).toBe(100);
    expect(await store(shown.body.id)).toMatchObject({ body: { acceptedCount: 0, repeatedCount: 100 } });
    const longer = await bring(`${heading}${lines(90, 120)}`);
    expect(longer.body).toMatchObject({ acceptedCount: 20, repeatedCount: 11 });
  });

  it('names its lines in error with why, and stores the rest where that is asked for', async () => {
    await layout();
    const bad = [
      ['NaN', 'weight-not-number'],
      ['2.001,5', 'weight-not-number'],
      ['2001.5', 'weight-not-number'],
      ['-3,0', 'weight-below-zero'],
    ] as const;
    const wrong = bad.map(([net], place) => line(200 + place, net)).join('');
    const others = `205;31.02.2026;07:31:00;2001,5;1;OK\r\n206;12.03.2026;07:61:00;2001,5;1;OK\r\n207;12.03.2026;07:31:07;2001,5;1;??\r\nSumme;;;40031,5;;\r\n`;
    const long = `208;12.03.2026;07:31:08;2001,5;${'9'.repeat(10_000_000)};OK\r\n`;
    const shown = await bring(`${heading}${lines(1, 20)}${wrong}${others}${long}${line(30)}`);
    expect(shown.body.problems.map((one) => [one.line, one.type.replace('problem:', '')])).toEqual([
      ...bad.map(([, code], place) => [22 + place, code]),
      [26, 'weight-time-not-read'],
      [27, 'weight-time-not-read'],
      [28, 'field-not-flag'],
      [29, 'field-not-whole'],
      [30, 'weight-line-too-long'],
    ]);
    expect(shown.body).toMatchObject({ acceptedCount: 21, refusedCount: 9 });
    expect(await store(shown.body.id)).toMatchObject({ status: 422, body: { type: 'problem:weights-in-error' } });
    expect(await keptCount()).toBe(0);
    expect(await store(shown.body.id, { skipsFaults: true })).toMatchObject({ body: { acceptedCount: 21 } });
  });

  it('without a counter is harmless however often and in whatever parts it comes', async () => {
    await layout({ sequenceColumn: null });
    const first = `${heading}${lines(1, 60)}${line(60)}`;
    const one = await bring(first);
    expect(one.body).toMatchObject({ acceptedCount: 61 });
    expect(one.body.first[0]).toMatchObject({ line: 2, sequence: 2 });
    await store(one.body.id);
    expect((await bring(first)).body).toMatchObject({ acceptedCount: 0, repeatedCount: 61 });
    // The same day exported again an hour later: other bytes, the same packs and more. Two packs of one time and weight
    // stay two, and a third is new.
    const grown = await bring(`${heading}${lines(1, 60)}${line(60)}${line(60)}${lines(61, 80)}`);
    expect(grown.body).toMatchObject({ acceptedCount: 21, repeatedCount: 61 });
    await store(grown.body.id);
    expect(await keptCount()).toBe(82);
    expect((await bring(`${heading}${lines(40, 80)}`)).body).toMatchObject({ acceptedCount: 0, repeatedCount: 41 });
  });

  it('is told from kilograms in a column of grams, and read as kilograms where that was said', async () => {
    await layout();
    const inKilograms = Array.from({ length: 20 }, (_, place) => line(place + 1, '2,0015')).join('');
    const mistaken = await bring(`${heading}${inKilograms}`);
    expect(mistaken.body).toMatchObject({ acceptedCount: 0, refusedCount: 20 });
    expect(mistaken.body.problems[0]).toMatchObject({ type: 'problem:weight-in-kilograms' });
    await layout({ unit: 'kg' });
    expect((await bring(`${heading}${inKilograms}`)).body.first[0]).toMatchObject({ netGrams: 2001.5 });
  });

  it('has columns by number or by heading; one that is missing or named twice is said at once', async () => {
    await layout({
      ...{
        separator: 'comma',
        decimal: 'point',
        headerLines: 0,
        sequenceColumn: '1',
        timeColumn: '2',
        dayColumn: null,
      },
      ...{
        timeOrder: 'offset',
        netColumn: '3',
        headColumn: null,
        rejectColumn: null,
        rejectWord: null,
        acceptWord: null,
      },
    });
    const plain = await bring(`1,2026-03-12T06:31:00Z,2001.5,x\n2,2026-03-12T07:31:01+01:00,"1998.0",y\n`);
    expect(plain.body).toMatchObject({ acceptedCount: 2, refusedCount: 0 });
    await layout({ netColumn: 'Gewicht' });
    const missing = await bring(`${heading}${lines(1, 3)}`);
    expect(missing).toMatchObject({ status: 422, body: { fields: [{ field: 'netColumn' }] } });
    expect(missing.body.fields[0]?.type).toBe('problem:file-column-missing');
    await layout({ netColumn: 'Nr' });
    expect((await bring(`${heading}${lines(1, 3)}`)).body.fields[0]?.type).toBe('problem:file-column-twice');
  });

  it('is refused plainly where it is no text, empty, or nobody said what its columns mean', async () => {
    expect(await bring(heading)).toMatchObject({ status: 409, body: { type: 'problem:file-layout-missing' } });
    await layout();
    expect(await bring('')).toMatchObject({ status: 400, body: { type: 'problem:file-empty' } });
    for (const bytes of [Buffer.from(`\uFEFF${heading}`, 'utf16le'), Buffer.from([0x50, 0x4b, 3, 4, 20, 0])]) {
      expect(await bring(bytes)).toMatchObject({ status: 409, body: { type: 'problem:file-is-no-text' } });
    }
    expect((await bring(heading)).body).toMatchObject({ lineCount: 0, acceptedCount: 0 });
    const latin = Buffer.from(`Nr;Datum;Zeit;Netto;Kopf;Status;Gerät\r\n${line(1).trim()};A\r\n`, 'latin1');
    expect((await bring(latin)).body).toMatchObject({ acceptedCount: 1 });
    expect((await layout({ timeZone: 'Mars/Olympus' })).body).toMatchObject({ fields: [{ field: 'timeZone' }] });
    expect((await layout({ timeOrder: 'offset' })).body).toMatchObject({ fields: [{ field: 'dayColumn' }] });
    expect((await layout({ rejectWord: null })).body).toMatchObject({ fields: [{ field: 'rejectWord' }] });
  });

  it('of a million lines is taken, and of more refused', async () => {
    await layout({ sequenceColumn: 'Nr', headColumn: null, rejectColumn: null, rejectWord: null, acceptWord: null });
    const many = Array.from({ length: 1_000_000 }, (_, place) => `${place};12.03.2026;07:31:00;2001,5;1;OK\n`).join('');
    expect((await bring(`${heading}${many}`)).body).toMatchObject({ lineCount: 1_000_000, acceptedCount: 1_000_000 });
    const more = await bring(`${heading}${many}1000000;12.03.2026;07:31:00;2001,5;1;OK\n`);
    expect(more).toMatchObject({ status: 413, body: { type: 'problem:too-many-weights' } });
  }, 120_000);

  it('comes by the page without script, is looked at there and stored by its button', async () => {
    await layout();
    const at = `/set-up/pack-weighers/${weigher.weigherId}/files`;
    const form = (file: string | null, csrf = manager.csrf): string =>
      [
        `--edge\r\nContent-Disposition: form-data; name="csrf"\r\n\r\n${csrf}\r\n`,
        `--edge\r\nContent-Disposition: form-data; name="formKey"\r\n\r\nfile-key-${weigher.weigherId}\r\n`,
        file === null
          ? ''
          : `--edge\r\nContent-Disposition: form-data; name="file"; filename="day.csv"\r\nContent-Type: text/csv\r\n\r\n${file}\r\n`,
        '--edge--\r\n',
      ].join('');
    const post = (payload: string, url = at) =>
      house.app
        .getHttpAdapter()
        .getInstance()
        .inject({
          method: 'POST',
          url,
          headers: {
            cookie: manager.cookie,
            accept: 'text/html',
            'content-type': 'multipart/form-data; boundary=edge',
          },
          payload,
        });
    const sent = await post(form(`${heading}${lines(1, 40)}`));
    expect(sent.statusCode).toBe(303);
    const shown = await manager.get(String(sent.headers.location));
    expect(shown.text).toContain('40 new, 0 known already, 0 in error');
    expect(shown.text).toContain('2026-03-12 07:30:01.00');
    const stored = await manager.send(String(sent.headers.location), {});
    expect(stored.status).toBe(303);
    expect(await keptCount()).toBe(40);
    expect((await manager.get(String(sent.headers.location))).text).toContain('nothing new to store');
    const bad = await post(form('a;b\n1;2\n'));
    expect(bad.statusCode).toBe(422);
    expect(bad.body).toContain('The file has no column Nr');
    expect((await post(form(`${heading}${lines(1, 2)}`, 'not-ours'))).statusCode).toBe(403);
    expect((await post(form(null))).statusCode).toBe(400);
    expect((await post(form(heading).slice(0, -30))).statusCode).toBe(409);
    expect((await post('nothing of the kind')).statusCode).toBe(400);
    expect((await post(form(heading), '/set-up/pack-weighers')).statusCode).toBe(415);
  });

  it('is forgotten after two days', async () => {
    await layout();
    const { body } = await bring(`${heading}${lines(1, 3)}`);
    expect((await manager.get(`/api/weight-files/${body.id}`)).status).toBe(200);
    house.clock.pass(2 * 24 * 60 + 1);
    const later = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['plant-manager'] }));
    expect((await later.get(`/api/weight-files/${body.id}`)).status).toBe(404);
  });
});
