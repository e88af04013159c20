import { randomUUID } from 'node:crypto';
import request, { type Test } from 'supertest';
import type { Role } from '../../src/platform/actor.js';
import { UnitOfWork } from '../../src/platform/database/unit-of-work.js';
import { SystemIds } from '../../src/platform/ids.js';
import type { Language } from '../../src/platform/sentences/language.js';
import { Credential } from '../../src/people/credential.entity.js';
import { hashSecret } from '../../src/people/password-hash.js';
import { Person } from '../../src/people/person.entity.js';
import { PersonName } from '../../src/people/person-name.entity.js';
import { RoleHolding } from '../../src/people/role-holding.entity.js';
import type { TestHouse } from './house.js';

/** Somebody who works here, with a password of their own. */
export interface TestPerson {
  readonly siteId: string;
  readonly personId: string;
  readonly code: string;
  readonly name: string;
  readonly password: string;
}

/** What a test may want otherwise. */
export interface PersonWishes {
  readonly roles?: readonly Role[];
  readonly code?: string;
  readonly name?: string;
  readonly language?: Language;
}

const ids = new SystemIds();
const password = 'seven grey herons';
let passwordHash: Promise<string> | null = null;
let personCount = 0;

/** Writes a person with roles and a password; a line lead unless asked otherwise. */
export async function aPerson(house: TestHouse, siteId: string, wishes: PersonWishes = {}): Promise<TestPerson> {
  personCount += 1;
  const person = { id: ids.next(), siteId, code: wishes.code ?? `person-${personCount}` };
  const name = wishes.name ?? `Person ${personCount}`;
  const now = house.clock.now();
  // Hashing takes a tenth of a second: one hash serves everybody.
  const secretHash = await (passwordHash ??= hashSecret(password));
  await house.get(UnitOfWork).run(async (tx) => {
    await tx.insert(Person, person);
    await tx.insert(PersonName, { personId: person.id, name, language: wishes.language ?? 'en' });
    const credential = { id: ids.next(), personId: person.id, kind: 'password', secretHash } as const;
    await tx.insert(Credential, { ...credential, mustChange: false, setAt: now });
    const held = wishes.roles ?? ['line-lead'];
    await tx.insert(
      RoleHolding,
      held.map((role) => ({ id: ids.next(), personId: person.id, role, heldFrom: now, voidedBy: null })),
    );
  });
  return { siteId, personId: person.id, code: person.code, name, password };
}

/** Somebody signed in: each call carries the session's cookie and, where it changes something, its token and a key. */
export interface SignedInPerson {
  readonly cookie: string;
  readonly csrf: string;
  /** A page where the path is one, JSON under /api. */
  get(path: string): Test;
  post(path: string, body?: object, key?: string): Test;
  put(path: string, body?: object, key?: string): Test;
  delete(path: string, key?: string): Test;
  /** A plain form, as a browser without script sends it. */
  send(path: string, fields: Readonly<Record<string, string>>, key?: string): Test;
}

/** Signs a person in by code and password. */
export async function signedIn(house: TestHouse, person: TestPerson): Promise<SignedInPerson> {
  const answer = await request(house.app.getHttpServer())
    .post('/api/sessions')
    .send({ proof: 'password', code: person.code, password: person.password });
  if (answer.status !== 201) throw new Error(`signing in failed: ${answer.text}`);
  const { csrfToken } = answer.body as { csrfToken: string };
  return withSession(house, cookieFrom(answer.headers, 'packthread-session'), csrfToken);
}

/** The calls of somebody who holds this session. */
export function withSession(house: TestHouse, cookie: string, csrf: string): SignedInPerson {
  const server = (): ReturnType<typeof request> => request(house.app.getHttpServer());
  const changing = (call: Test, key: string = randomUUID()): Test =>
    call.set('Cookie', cookie).set('x-csrf-token', csrf).set('Idempotency-Key', key);
  return {
    cookie,
    csrf,
    get: (path) => {
      const call = server().get(path).set('Cookie', cookie);
      return path.startsWith('/api') ? call : call.set('Accept', 'text/html');
    },
    post: (path, body, key) => changing(server().post(path), key).send(body),
    put: (path, body, key) => changing(server().put(path), key).send(body),
    delete: (path, key) => changing(server().delete(path), key),
    send: (path, fields, key = randomUUID()) =>
      server()
        .post(path)
        .set('Cookie', cookie)
        .set('Accept', 'text/html')
        .type('form')
        .send({ ...fields, csrf, formKey: key }),
  };
}

/** The `name=value` that an answer sets, as a browser sends it back; fails where there is none. */
export function cookieFrom(headers: Readonly<Record<string, unknown>>, name: string): string {
  const set = headers['set-cookie'] as readonly string[] | undefined;
  const cookie = set?.find((one) => one.startsWith(`${name}=`))?.split(';')[0];
  if (cookie === undefined) throw new Error(`no cookie ${name} was set`);
  return cookie;
}
