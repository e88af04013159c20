import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { afterEach, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import { aBroker, type TestBroker } from '../../../test/support/a-broker.js';
import { anAuthority, type TestAuthority } from '../../../test/support/a-certificate.js';
import { aPackWeigher, weightLine } from '../../../test/support/a-pack-weigher.js';
import { aPlant } from '../../../test/support/a-plant.js';
import { aRun } from '../../../test/support/a-run.js';
import { asking, freshPlace, openHouseAt, type Place, type TestHouse } from '../../../test/support/house.js';
import { openPointsOf } from '../../open-points/open-points.js';
import { readConfig } from '../../platform/config.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { SetWeigherWay } from '../set-weigher-way.js';
import { MqttLine } from './mqtt-line.js';

let authority: TestAuthority;
let broker: TestBroker;
let place: Place;
let house: TestHouse;

beforeAll(() => {
  authority = anAuthority();
});
beforeEach(async () => {
  broker = await aBroker(authority.certify());
  place = await freshPlace();
});
afterEach(async () => {
  await house.close();
  await broker.close();
  await place.remove();
});

function fileWith(certificate: string): string {
  const file = join(place.dataFolder, 'authority.pem');
  writeFileSync(file, certificate);
  return file;
}

async function open(settings: Readonly<Record<string, string>>): Promise<void> {
  house = await openHouseAt(place, { settings: { MQTT_URL: broker.url, MQTT_VERSION: '3.1.1', ...settings } });
}

async function until(isSo: () => boolean | Promise<boolean>): Promise<void> {
  for (let attempt = 0; attempt < 400; attempt += 1) {
    if (await isSo()) return;
    await wait(25);
  }
  throw new Error('it did not become so');
}

const reader = (): ReadFrom => house.app.get<ReadFrom>(READER, { strict: false });
const standing = () => house.get(MqttLine).standing;

describe('weights by MQTT over TLS', () => {
  it('come in where the broker’s certificate is signed by the authority that the settings name', async () => {
    await open({ MQTT_CA_FILE: fileWith(authority.certificate) });
    const plant = await aPlant(house);
    const { number: run } = await aRun(house, plant);
    house.clock.pass(60);
    const { weigherId } = await aPackWeigher(house, plant, { code: 'T1' });
    await house.get(SetWeigherWay).execute(asking(plant.actor), weigherId, { takesMqtt: true });
    house.get(MqttLine).start();
    await until(() => standing().isConnected);
    await wait(100);
    const sender = await broker.aSender();
    const told: string[] = [];
    sender.on('message', (_, payload) => told.push(payload.toString()));
    await sender.subscribeAsync('packthread/T1/answers', { qos: 1 });
    await sender.publishAsync('packthread/T1/weights', `${weightLine(house, 1, { run })}\n`, { qos: 1 });
    await until(() => told.length > 0);
    expect(JSON.parse(told[0] ?? '')).toMatchObject({ acceptedCount: 1 });
  });

  it.each([
    ['another authority', () => ({ MQTT_CA_FILE: fileWith(anAuthority('Somebody else').certificate) })],
    ['nobody whom the machine trusts', () => ({})],
  ])(
    'do not where it is signed by %s: nothing is said to such a broker, and somebody is asked to look',
    async (_, by) => {
      await open(by());
      await aPlant(house);
      let greeted = 0;
      broker.broker.on('client', () => (greeted += 1));
      house.get(MqttLine).start(200);
      await until(async () => (await brokerPoints()).length === 1);
      expect([standing().isConnected, greeted]).toEqual([false, 0]);
    },
  );

  it('do not from a broker that speaks no MQTT 5, where the settings ask for it: somebody is asked to look', async () => {
    await open({ MQTT_CA_FILE: fileWith(authority.certificate), MQTT_VERSION: '5' });
    await aPlant(house);
    house.get(MqttLine).start(200);
    await until(async () => (await brokerPoints()).length === 1);
    expect(standing().isConnected).toBe(false);
  });

  async function brokerPoints(): Promise<readonly string[]> {
    const [site] = await reader().sql<{ id: string }>`SELECT "id" FROM "site" LIMIT 1`;
    const points = await openPointsOf(reader(), site?.id ?? '', { state: 'open', limit: 50 });
    return points.map(({ cause }) => cause).filter((cause) => cause.includes('broker'));
  }
});

describe('the file with the authority', () => {
  beforeEach(() => open({}));

  it.each([
    ['is not there', () => join(place.dataFolder, 'nowhere.pem')],
    ['holds no certificate', () => fileWith('-----BEGIN NOTHING-----')],
  ])('is refused at the start where it %s', (_, file) => {
    const settings = { MQTT_URL: broker.url, MQTT_CA_FILE: file() };
    expect(() => readConfig(settings)).toThrow(/MQTT_CA_FILE is ".*"; it takes a file with a certificate \(PEM\)/);
  });
});
