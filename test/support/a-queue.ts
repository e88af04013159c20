import { randomUUID } from 'node:crypto';
import request, { type Test } from 'supertest';
import { EnrolDevice } from '../../src/people/enrol-device.js';
import { cookieFrom, withSession, type SignedInPerson, type TestPerson } from './a-person.js';
import { anActor, asking, type TestHouse } from './house.js';

/** A shared device of the floor, known by its cookie. */
export interface TestDevice {
  readonly id: string;
  readonly cookie: string;
}

let deviceCount = 0;

export async function aDevice(
  house: TestHouse,
  siteId: string,
  kind: 'shared-tablet' | 'handheld' | 'desk' = 'shared-tablet',
): Promise<TestDevice> {
  deviceCount += 1;
  const asked = asking(anActor(siteId, 'administrator'));
  const { id, token } = await house.get(EnrolDevice).execute(asked, { code: `${kind}-${deviceCount}`, kind });
  return { id, cookie: `packthread-device=${token ?? ''}` };
}

/** Signs a person in on a device. */
export async function signedInOn(house: TestHouse, person: TestPerson, device: TestDevice): Promise<SignedInPerson> {
  const answer = await request(house.app.getHttpServer())
    .post('/api/sessions')
    .set('Cookie', device.cookie)
    .send({ proof: 'password', code: person.code, password: person.password });
  const { csrfToken } = answer.body as { csrfToken: string };
  return withSession(house, cookieFrom(answer.headers, 'packthread-session'), csrfToken);
}

/** What waits on a device, sent as a browser's queue sends it: the form's body, with the proof in the place of a session. */
export interface TestQueue {
  readonly token: string;
  readonly device: TestDevice;
  send(path: string, fields: Readonly<Record<string, string>>, wait?: QueueWishes): Test;
}

export interface QueueWishes {
  readonly happenedAt?: string;
  readonly key?: string;
  readonly deviceTime?: string;
  readonly cookie?: string;
}

/** A person signed in on a device, with a proof for what they enter while the network is away. */
export async function aQueue(
  house: TestHouse,
  person: TestPerson,
  device: TestDevice,
): Promise<TestQueue & { readonly me: SignedInPerson }> {
  const me = await signedInOn(house, person, device);
  const issued = await me.post('/api/queue-proofs');
  const { token } = issued.body as { token: string };
  const send: TestQueue['send'] = (path, fields, wait = {}) =>
    request(house.app.getHttpServer())
      .post(path)
      .set('Cookie', wait.cookie ?? device.cookie)
      .set('Accept', 'application/json')
      .set('Queue-Proof', token)
      .set('Happened-At', wait.happenedAt ?? house.clock.now())
      .set('Device-Time', wait.deviceTime ?? house.clock.now())
      .type('form')
      .send({ ...fields, csrf: 'of a page long gone', formKey: wait.key ?? randomUUID() });
  return { token, device, send, me };
}

/** The number of the pallet that an answer tells of. */
export function ssccOf(answer: { readonly body: unknown }): string {
  return (answer.body as { sscc: string }).sscc;
}
