import { afterAll, afterEach, beforeAll, describe, expect, it, jest } from '@jest/globals';
import { setTimeout as wait } from 'node:timers/promises';
import type { MqttClient } from 'mqtt';
import { aBroker, type TestBroker } from '../../../test/support/a-broker.js';
import { aCheckPlan } from '../../../test/support/a-check-plan.js';
import { aPackWeigher, weightLine, type TestWeigher } from '../../../test/support/a-pack-weigher.js';
import { aPlant, type Plant } from '../../../test/support/a-plant.js';
import { aRun } from '../../../test/support/a-run.js';
import { asking, freshPlace, openHouseAt, type Place, type TestHouse } from '../../../test/support/house.js';
import { lineChecksOf } from '../../line-checks/line-checks.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { ReceiveWeights } from '../receive-weights.js';
import { SetWeigherWay } from '../set-weigher-way.js';
import { MqttLine } from './mqtt-line.js';
import { mostMessageBytes } from './weight-message.js';

interface Told {
  readonly message: string | null;
  readonly sequence?: number;
  readonly type?: string;
  readonly acceptedCount?: number;
  readonly repeatedCount?: number;
  readonly fields?: readonly { readonly line?: number; readonly type: string; readonly detail: string }[];
  readonly detail?: string;
}

describe('weights by MQTT', () => {
  let broker: TestBroker;
  let place: Place;
  let house: TestHouse;
  let plant: Plant;
  let run: string;
  let sender: MqttClient;
  let weigher: TestWeigher & { readonly code: string };
  const told: { readonly weigher: string; readonly answer: Told }[] = [];

  const open = async (): Promise<void> => {
    const settings = { MQTT_URL: broker.url, MQTT_VERSION: '3.1.1', MQTT_TOPIC: 'quay/packing' };
    house = await openHouseAt(place, { settings });
    house.clock.pass(60);
  };

  beforeAll(async () => {
    broker = await aBroker();
    place = await freshPlace();
    await open();
    plant = await aPlant(house);
    house.clock.set('2026-03-12T06:00:00.000Z');
    run = (await aRun(house, plant)).number;
    house.clock.pass(60);
    await listening();
    sender = await broker.aSender();
    await sender.subscribeAsync('quay/packing/+/answers', { qos: 1 });
    sender.on('message', (topic, payload) => {
      told.push({ weigher: topic.split('/')[2] ?? '', answer: JSON.parse(payload.toString()) as Told });
    });
  });
  afterEach(() => {
    jest.restoreAllMocks();
  });
  afterAll(async () => {
    await house.close();
    await broker.close();
    await place.remove();
  });

  async function until(isSo: () => boolean | Promise<boolean>): Promise<void> {
    for (let attempt = 0; attempt < 400; attempt += 1) {
      if (await isSo()) return;
      await wait(25);
    }
    throw new Error('it did not become so');
  }

  async function listening(patience?: number): Promise<void> {
    house.get(MqttLine).start(patience);
    await until(() => house.get(MqttLine).standing.isConnected);
    await wait(100);
  }

  const reader = (): ReadFrom => house.app.get<ReadFrom>(READER, { strict: false });

  async function aSendingWeigher(): Promise<void> {
    const made = await aPackWeigher(house, plant);
    const [row] = await reader().sql<{
      code: string;
    }>`SELECT "code" FROM "pack_weigher" WHERE "id" = ${made.weigherId}`;
    weigher = { ...made, code: row?.code ?? '' };
    await house.get(SetWeigherWay).execute(asking(plant.actor), made.weigherId, { takesMqtt: true });
    told.length = 0;
  }

  const lines = (from: number, to: number): string =>
    Array.from({ length: to - from + 1 }, (_, step) => `${weightLine(house, from + step, { run })}\n`).join('');

  const publish = (
    payload: string | Buffer,
    wishes: { weigher?: string; retain?: boolean; about?: 'checks' } = {},
  ): Promise<unknown> =>
    sender.publishAsync(`quay/packing/${wishes.weigher ?? weigher.code}/${wishes.about ?? 'weights'}`, payload, {
      qos: 1,
      retain: wishes.retain ?? false,
    });

  async function answers(count: number): Promise<Told[]> {
    await until(() => told.length >= count);
    return told.map(({ answer }) => answer);
  }

  async function keptCount(): Promise<number> {
    const [row] = await reader().sql<{ count: number | string | null }>`
      SELECT SUM("weight_count") AS "count" FROM "weight_batch" WHERE "weigher_id" = ${weigher.weigherId}`;
    return Number(row?.count ?? 0);
  }

  async function openCauses(): Promise<string[]> {
    const rows = await reader().sql<{ cause: string }>`SELECT "cause" FROM "open_point_state"
      WHERE "subject_id" IN (${weigher.weigherId}, ${plant.siteId}) ORDER BY "cause"`;
    return rows.map(({ cause }) => cause);
  }

  it('are kept and answered, and a message that comes again is known by its id or by its weights', async () => {
    await aSendingWeigher();
    const message = `{"message":"m-1"}\n${lines(1, 50)}`;
    await publish(message);
    expect((await answers(1))[0]).toMatchObject({ message: 'm-1', acceptedCount: 50, repeatedCount: 0 });
    const receive = jest.spyOn(house.get(ReceiveWeights), 'execute');
    await publish(message);
    expect((await answers(2))[1]).toMatchObject({ message: 'm-1', acceptedCount: 0, repeatedCount: 50 });
    // Known by its id, so its weights were not looked at.
    expect(receive).not.toHaveBeenCalled();
    await publish(`{"message":"m-2"}\n${lines(41, 60)}`);
    expect((await answers(3))[2]).toMatchObject({ acceptedCount: 10, repeatedCount: 10 });
    await publish(lines(55, 70));
    expect((await answers(4))[3]).toMatchObject({ message: null, acceptedCount: 10, repeatedCount: 6 });
    await publish(`{"message":"m-1"}\n${lines(70, 80)}`);
    expect((await answers(5))[4]).toMatchObject({ message: 'm-1', type: 'problem:key-used-for-other-content' });
    expect(await keptCount()).toBe(70);
  });

  it('come as CSV too, with what goes for all lines in the first one', async () => {
    await aSendingWeigher();
    const head = JSON.stringify({ message: 'c-1', series: 'B', sentAt: house.clock.now(), count: 2 });
    const table = `sequence;at;netGrams\n1;${house.clock.now()};2001,4\n2;${house.clock.now()};1998,0\n`;
    await publish(`${head}\n${table}`);
    expect((await answers(1))[0]).toMatchObject({ acceptedCount: 2 });
    const [row] = await reader().sql<{ series: string }>`
      SELECT "series" FROM "weight_batch" WHERE "weigher_id" = ${weigher.weigherId}`;
    expect(row?.series).toBe('B');
  });

  it('are acknowledged to the broker only once they are on disk', async () => {
    await aSendingWeigher();
    const keptAtAck: number[] = [];
    const looks: Promise<void>[] = [];
    const seeAck = (packet: unknown): void => {
      if ((packet as { topic?: string } | undefined)?.topic?.includes(weigher.code) !== true) return;
      looks.push(keptCount().then((count) => void keptAtAck.push(count)));
    };
    broker.broker.on('ack', seeAck);
    const receive = house.get(ReceiveWeights);
    // The disk is full, once.
    jest.spyOn(receive, 'execute').mockRejectedValueOnce(new Error('disk full'));
    await publish(lines(1, 20));
    expect((await answers(1))[0]).toMatchObject({ acceptedCount: 20 });
    await until(() => looks.length > 0);
    await Promise.all(looks);
    broker.broker.off('ack', seeAck);
    expect(keptAtAck[0]).toBe(20);
  });

  it('wait with the broker while the server is down, and none is lost or doubled', async () => {
    await aSendingWeigher();
    await publish(lines(1, 10));
    await answers(1);
    const at = house.clock.now();
    await house.close();
    for (let part = 0; part < 5; part += 1) await publish(lines(11 + part * 10, 20 + part * 10));
    await open();
    house.clock.set(at);
    await listening();
    await until(async () => (await keptCount()) === 60);
    expect(await answers(6)).toHaveLength(6);
  });

  it('are handed over again where the line was cut before they were done', async () => {
    await aSendingWeigher();
    const receive = house.get(ReceiveWeights);
    const execute = receive.execute.bind(receive);
    jest.spyOn(receive, 'execute').mockImplementationOnce(async (asked, batch) => {
      const answer = await execute(asked, batch);
      broker.cut('packthread');
      await until(() => !house.get(MqttLine).standing.isConnected);
      return answer;
    });
    await publish(lines(1, 30));
    expect((await answers(1))[0]).toMatchObject({ acceptedCount: 30 });
    // The acknowledgement could not go out, so the broker sends it again and it counts for nothing.
    await until(() => told.some(({ answer }) => answer.repeatedCount === 30));
    expect(await keptCount()).toBe(30);
  });

  it('that cannot be taken are answered line by line, and a person sees that they are missing', async () => {
    await aSendingWeigher();
    await publish(`{"message":"bad"}\n${lines(1, 3)}rubbish\n`);
    const [refused] = await answers(1);
    expect(refused).toMatchObject({ message: 'bad', type: 'problem:weights-in-error', status: 422 });
    expect(refused?.fields).toMatchObject([{ line: 5, type: 'problem:weight-line-not-json' }]);
    expect(await openCauses()).toEqual(['weight-message-refused']);
    expect(await keptCount()).toBe(0);
    await publish(`{"message":"good","lines":"skip"}\n${lines(1, 3)}rubbish\n`);
    expect((await answers(2))[1]).toMatchObject({ acceptedCount: 3, refusedCount: 1 });
  });

  it('are refused plainly: garbage, nothing, too much, a head that cannot be meant, and what was cut off', async () => {
    await aSendingWeigher();
    const cut = lines(1, 5).slice(0, -20);
    const sent: [string | Buffer, string][] = [
      [Buffer.from([0, 255, 254, 10, 1, 2]), 'weights-in-error'],
      ['', 'message-empty'],
      ['\r\n \n', 'message-empty'],
      ['{"message":"only-a-head"}\n', 'message-empty'],
      [Buffer.alloc(mostMessageBytes + 1, 0x20), 'message-too-large'],
      [`{"message":"no good id"}\n${lines(1, 2)}`, 'bad-form'],
      [`{"message":"x","colour":"red"}\n${lines(1, 2)}`, 'bad-form'],
      [`{"message":"x","count":9}\n${lines(1, 2)}`, 'weights-not-as-announced'],
      [cut, 'body-cut-off'],
      [`sequence;at;netGrams\n1;${house.clock.now()};20`, 'body-cut-off'],
      [`sequence;at;netGrams\n`, 'message-empty'],
    ];
    for (const [payload] of sent) await publish(payload);
    const found = (await answers(sent.length)).map(({ type }) => type);
    expect(found).toEqual(sent.map(([, type]) => `problem:${type}`));
    expect(await openCauses()).toEqual(['weight-message-refused']);
    expect(await keptCount()).toBe(0);
  });

  it('of a weigher that nobody set up, or that may not send so, are not taken and a person is told', async () => {
    await aSendingWeigher();
    await publish(lines(1, 2), { weigher: 'NOBODY' });
    expect((await answers(1))[0]).toMatchObject({ type: 'problem:mqtt-weigher-unknown' });
    await house.get(SetWeigherWay).execute(asking(plant.actor), weigher.weigherId, {});
    await publish(lines(1, 2));
    expect((await answers(2))[1]).toMatchObject({ type: 'problem:mqtt-not-allowed' });
    expect(await openCauses()).toEqual(['mqtt-not-allowed', 'mqtt-weigher-unknown']);
    expect(await keptCount()).toBe(0);
    await house.get(SetWeigherWay).execute(asking(plant.actor), weigher.weigherId, { takesMqtt: true });
    const otherLine = `${weightLine(house, 1, { run, line: '2' })}\n`;
    await publish(otherLine);
    expect((await answers(3))[2]).toMatchObject({ fields: [{ type: 'problem:weight-of-other-line' }] });
  });

  it('stand beside checks that the weigher made itself: recorded once, and a refused one is seen by a person', async () => {
    await aSendingWeigher();
    const planId = await aCheckPlan(house, plant, { station: weigher.code });
    const check = (wishes: object = {}) =>
      JSON.stringify({
        ...{ sequence: 7, at: house.clock.now(), readings: [{ code: 'two', readingGrams: 2000.4 }] },
        ...wishes,
      });
    await publish(check({ sentAt: house.clock.now() }), { about: 'checks' });
    expect((await answers(1))[0]).toMatchObject({ sequence: 7, planId, passed: true, isRepeated: false });
    await publish(check({ sentAt: house.clock.now() }), { about: 'checks' });
    expect((await answers(2))[1]).toMatchObject({ sequence: 7, isRepeated: true });
    await publish(check({ sequence: 8, readings: [{ code: 'two', readingGrams: 2.0004 }] }), { about: 'checks' });
    expect((await answers(3))[2]).toMatchObject({ sequence: 8, fields: [{ type: 'problem:reading-is-thousandth' }] });
    for (const rubbish of ['{"sequence":9', '[]', '', lines(1, 1)]) await publish(rubbish, { about: 'checks' });
    expect((await answers(7)).slice(3).map(({ type }) => type)).toEqual([
      ...Array<string>(3).fill('problem:check-not-json'),
      'problem:bad-form',
    ]);
    expect(await openCauses()).toContain('check-message-refused');
    expect(await lineChecksOf(reader(), plant.siteId, { planId, limit: 50 })).toHaveLength(1);
  });

  it('that the broker kept count once, and the weigher’s setting is questioned', async () => {
    await aSendingWeigher();
    await publish(lines(1, 4), { retain: true });
    expect((await answers(1))[0]).toMatchObject({ acceptedCount: 4 });
    broker.cut('packthread');
    expect((await answers(2))[1]).toMatchObject({ acceptedCount: 0, repeatedCount: 4 });
    await until(async () => (await openCauses()).includes('weight-message-kept'));
    await publish('', { retain: true });
    expect(await keptCount()).toBe(4);
  });

  it('are missed out loud where the broker stays away, until it is there again', async () => {
    await aSendingWeigher();
    const at = house.clock.now();
    await house.close();
    await broker.goAway();
    await open();
    house.clock.set(at);
    house.get(MqttLine).start(200);
    await until(async () => (await openCauses()).includes('mqtt-broker-away'));
    await broker.comeBack();
    await until(async () => !(await openCauses()).includes('mqtt-broker-away'));
    expect(house.get(MqttLine).standing).toMatchObject({
      isConnected: true,
      topics: ['quay/packing/+/weights', 'quay/packing/+/checks'],
    });
  });
});
