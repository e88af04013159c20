import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import type { InjectOptions } from 'fastify';
import { gzipSync } from 'node:zlib';
import { roles } from '../src/platform/actor.js';
import { apiDescription } from '../src/platform/web/describe-api.js';
import { pageRoutesOf } from '../src/platform/web/page-routes.js';
import { aPackWeigher } from './support/a-pack-weigher.js';
import { aPerson, signedIn, type SignedInPerson } from './support/a-person.js';
import { aPlant } from './support/a-plant.js';
import { factTables } from './support/facts.js';
import { openHouse, type TestHouse } from './support/house.js';

/** How many bad requests are made over all routes. */
const requestCount = 10_000;

interface Route {
  readonly method: 'GET' | 'POST' | 'PUT' | 'PATCH' | 'DELETE';
  readonly path: string;
  readonly fields: readonly string[];
}

/** What queries and forms of pages may carry, by name: enough to reach past the first check of most. */
const pageFields = [
  ...['code', 'before', 'limit', 'at', 'meant', 'scan', 'kind', 'id', 'bag', 'kilograms', 'netKilograms', 'packCount'],
  ...['reason', 'occurredAt', 'openedAt', 'lotId', 'hopperId', 'lineId', 'deliveryId', 'sscc', 'seen', 'next', 'text'],
];

/** Signing out is no bad request: it would only end the session that asks. A stream of events has no end. */
const leftOut = new Set(['POST /sign-out', 'GET /events']);

/** Pages that a person opens and the forms that they send, beside the JSON routes that the description lists. */
function pageRoutes(house: TestHouse): Route[] {
  return pageRoutesOf(house.app)
    .filter(({ method, path }) => !leftOut.has(`${method} ${path}`))
    .map(({ method, path }) => ({ method, path: path.replaceAll(/:(\w+)/g, '{$1}'), fields: pageFields }));
}

const garbage = fc.oneof(
  fc.constantFrom(
    null,
    true,
    -1,
    0,
    1.5,
    1e300,
    '',
    ' ',
    '\u0000',
    '\ud800',
    '0',
    '2026-02-30',
    '9'.repeat(400),
    '../..',
    "' OR 1=1 --",
  ),
  fc.string({ unit: 'binary', maxLength: 40 }),
  fc.integer(),
  fc.double(),
  fc.array(fc.string({ maxLength: 5 }), { maxLength: 3 }),
  fc.dictionary(fc.string({ maxLength: 5 }), fc.integer(), { maxKeys: 3 }),
  fc.constantFrom('0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10', '2026-03-12T06:00:00.000Z', '09520123000103', 'B0012344'),
);

const badPathPart = fc.oneof(
  fc.uuid(),
  fc.constantFrom('x', '0', '-1', '%00', '%F0%28', '..%2f..', '🜚', 'a'.repeat(300), "'"),
  fc.string({ maxLength: 12 }).map(encodeSafely),
);

function encodeSafely(text: string): string {
  try {
    return encodeURIComponent(text);
  } catch {
    return '%ED%A0%80';
  }
}

const broken = fc.constantFrom(
  '{',
  '[]',
  'null',
  '"text"',
  '{"a":',
  '\u0000',
  '{"__proto__":{"x":1}}',
  '[[[[[[',
  'a=b&a=c',
);

describe('ten thousand bad requests over all routes', () => {
  let house: TestHouse;
  let person: SignedInPerson;
  let routes: readonly Route[];

  beforeAll(async () => {
    house = await openHouse({ ATTEMPTS_PER_QUARTER_HOUR: '1000000' });
    const plant = await aPlant(house);
    const everything = roles.filter((role) => role !== 'device');
    person = await signedIn(house, await aPerson(house, plant.siteId, { roles: everything }));
    routes = [...pageRoutes(house), ...apiRoutes(house)];
  });
  afterAll(async () => {
    await house.close();
  });

  it('give no answer of 500 where a machine sends weights, whatever the bytes, and change nothing', async () => {
    const plant = await aPlant(house, { siteCode: 'BW' });
    const { token } = await aPackWeigher(house, plant);
    expect(routes.map(({ method, path }) => `${method} ${path}`)).toContain('POST /api/fill-weights');
    const before = await rowCounts(house);
    const server = house.app.getHttpAdapter().getInstance();
    const faults: string[] = [];
    const takenIn: string[] = [];
    for (const bad of fc.sample(badBatches, { numRuns: 3000, seed: 952 })) {
      const headers = { authorization: `Bearer ${token}`, ...bad.headers };
      const answer = await server.inject({ method: 'POST', url: bad.url, headers, payload: bad.payload });
      const name = `${answer.statusCode} ${bad.url} ${JSON.stringify(bad.headers)} ${bad.payload.toString('hex').slice(0, 200)}`;
      if (answer.statusCode >= 500) faults.push(name);
      if (answer.statusCode < 400 && (JSON.parse(answer.body) as { acceptedCount: number }).acceptedCount !== 0)
        takenIn.push(name);
    }
    expect(faults).toEqual([]);
    expect(takenIn).toEqual([]);
    expect(await rowCounts(house)).toEqual(before);
  }, 120_000);

  it('give no answer of 500 and change nothing in journal and facts', async () => {
    expect(routes.length).toBeGreaterThan(100);
    const before = await rowCounts(house);
    const server = house.app.getHttpAdapter().getInstance();
    const faults: string[] = [];
    const accepted: string[] = [];
    for (const bad of fc.sample(badRequests(routes, person), { numRuns: requestCount, seed: 952 })) {
      const answer = await server.inject(bad);
      const name = `${String(bad.method)} ${JSON.stringify(bad.url)} ${JSON.stringify(bad.payload ?? null).slice(0, 200)}`;
      if (answer.statusCode >= 500) faults.push(`${answer.statusCode} ${name}`);
      if (bad.method !== 'GET' && answer.statusCode < 400) accepted.push(`${answer.statusCode} ${name}`);
    }
    expect(faults).toEqual([]);
    expect(accepted).toEqual([]);
    expect(await rowCounts(house)).toEqual(before);
  }, 600_000);
});

/** Batches of weights without one that could be meant: no run is open anywhere. */
const badBatches = fc.record({
  url: fc
    .subarray(['line=1', 'run=PR-2026-000001', 'series=2', 'lines=skip', 'count=2', 'ends=newline', 'run=%00', 'x=1'])
    .map((query) => `/api/fill-weights?${query.join('&')}`),
  headers: fc.record(
    {
      'content-type': fc.constantFrom(
        'application/x-ndjson',
        'text/csv',
        'text/csv; charset=utf-8',
        'application/json',
        'x',
      ),
      'content-encoding': fc.constantFrom('gzip', 'identity', 'br'),
      'device-time': fc.constantFrom('2026-03-12T06:00:00Z', 'now', '9999-12-31T23:59:59Z'),
    },
    { requiredKeys: ['content-type'] },
  ),
  payload: fc.oneof(
    fc.uint8Array({ maxLength: 200 }).map((bytes) => Buffer.from(bytes)),
    fc.uint8Array({ maxLength: 200 }).map((bytes) => gzipSync(bytes)),
    fc
      .array(
        fc.jsonValue().map((value) => JSON.stringify(value)),
        { maxLength: 4 },
      )
      .map((all) => Buffer.from(all.join('\n'))),
    fc
      .array(
        fc.record(
          {
            sequence: garbage,
            at: garbage,
            netGrams: garbage,
            head: garbage,
            rejected: garbage,
            line: garbage,
            run: garbage,
          },
          { requiredKeys: [] },
        ),
        { maxLength: 4 },
      )
      .map((all) => Buffer.from(all.map((one) => JSON.stringify(one)).join('\n'))),
    fc
      .array(
        fc.array(
          fc.oneof(
            garbage.map((value) => JSON.stringify(value)),
            fc.constantFrom('1', '2026-03-12T06:00:00Z', '1e9', '2000,4'),
          ),
          {
            maxLength: 4,
          },
        ),
        { maxLength: 4 },
      )
      .map((rows) => Buffer.from(['sequence;at;netGrams', ...rows.map((row) => row.join(';'))].join('\n'))),
  ),
});

/** Each is bad in at least one way: an unknown thing, a field that no form has, or a body that is none. */
function badRequests(routes: readonly Route[], person: SignedInPerson): fc.Arbitrary<InjectOptions> {
  return fc.constantFrom(...routes).chain((route) =>
    fc
      .record({
        parts: fc.array(badPathPart, { minLength: 4, maxLength: 4 }),
        fields: fc.subarray([...route.fields]),
        values: fc.array(garbage, { minLength: 30, maxLength: 30 }),
        body: fc.oneof({ weight: 4, arbitrary: fc.constant(null) }, { weight: 1, arbitrary: broken }),
        key: fc.constantFrom(undefined, 'bad-request-key', 'x', 'k'.repeat(200)),
        type: fc.constantFrom(
          'application/json',
          'application/json',
          'application/x-www-form-urlencoded',
          'text/plain',
        ),
        accept: fc.constantFrom('application/json', 'text/html'),
      })
      .map(({ parts, fields, values, body, key, type, accept }): InjectOptions => {
        let part = 0;
        const path = route.path.replaceAll(/\{\w+\}/g, () => parts[part++ % parts.length] ?? 'x');
        const named = Object.fromEntries(fields.map((field, place) => [field, values[place % values.length]]));
        const headers = {
          cookie: person.cookie,
          'x-csrf-token': person.csrf,
          accept,
          ...(key === undefined ? {} : { 'idempotency-key': key }),
        };
        if (route.method === 'GET') return { method: 'GET', url: `${path}?${queryOf(named)}`, headers };
        const payload = body ?? JSON.stringify({ ...named, noFormHasThis: 1 });
        return { method: route.method, url: path, headers: { ...headers, 'content-type': type }, payload };
      }),
  );
}

function queryOf(fields: Readonly<Record<string, unknown>>): string {
  return Object.entries(fields)
    .map(([name, value]) => `${name}=${encodeSafely(typeof value === 'string' ? value : JSON.stringify(value))}`)
    .join('&');
}

function apiRoutes(house: TestHouse): Route[] {
  const { paths, components } = apiDescription(house.app);
  const schemas = (components?.schemas ?? {}) as Record<string, { properties?: object }>;
  return Object.entries(paths).flatMap(([path, methods]) =>
    Object.entries(methods as Record<string, Described>)
      // Signing out is no bad request: it would only end the session that asks.
      .filter(([method]) => !(path === '/api/sessions' && method === 'delete'))
      .map(([method, described]): Route => ({
        method: method.toUpperCase() as Route['method'],
        path,
        fields: fieldsOf(described, schemas),
      })),
  );
}

interface Described {
  readonly parameters?: readonly { readonly name: string; readonly in: string }[];
  readonly requestBody?: { readonly content?: Record<string, { readonly schema?: { readonly $ref?: string } }> };
}

function fieldsOf(described: Described, schemas: Readonly<Record<string, { properties?: object }>>): string[] {
  const query = (described.parameters ?? []).filter((one) => one.in === 'query').map((one) => one.name);
  const reference = described.requestBody?.content?.['application/json']?.schema?.$ref ?? '';
  const body = schemas[reference.replace('#/components/schemas/', '')]?.properties ?? {};
  return [...query, ...Object.keys(body)];
}

async function rowCounts(house: TestHouse): Promise<Record<string, number>> {
  const counts: Record<string, number> = {};
  for (const { table } of factTables(house.databases)) {
    const rows: { n: number | string }[] = await house.databases.reader.query(`SELECT COUNT(*) AS n FROM "${table}"`);
    counts[table] = Number(rows[0]?.n);
  }
  return counts;
}
