import { afterEach, describe, expect, it } from '@jest/globals';
import { chainedSites, verifyJournal } from '../src/journal/verify-journal.js';
import { openToLook } from '../src/cli/open-to-look.js';
import { readConfig } from '../src/platform/config.js';
import { freshPlace, type Place } from './support/house.js';
import { startServer, type RunningServer } from './support/server.js';

interface Session {
  readonly cookie: string;
  readonly csrf: string;
}

let place: Place | null = null;
let server: RunningServer | null = null;

afterEach(async () => {
  await server?.kill();
  await place?.remove();
  [place, server] = [null, null];
});

function settingsOf({ dataFolder, databaseUrl }: Place): Record<string, string> {
  return { DATA_FOLDER: dataFolder, ...(databaseUrl === null ? {} : { DATABASE_URL: databaseUrl }) };
}

/** The administrator signs in with the one-time password that the first start printed, and chooses another. */
async function signIn(running: RunningServer): Promise<Session> {
  const [, code, password] = /Sign in as “([\w-]+)” with the one-time password ([\w-]+)/.exec(running.output()) ?? [];
  if (code === undefined || password === undefined) throw new Error(`no password in: ${running.output()}`);
  const first = await post(running, null, '/api/sessions', { proof: 'password', code, password });
  const begun = await sessionOf(first);
  const changed = await post(running, begun, '/api/sessions/me/password', {
    oldPassword: password,
    newPassword: 'nine quiet lanterns',
  });
  return sessionOf(changed);
}

async function sessionOf(answer: Response): Promise<Session> {
  expect(answer.status).toBe(201);
  const cookie = answer.headers
    .getSetCookie()
    .map((one) => one.split(';')[0] ?? '')
    .join('; ');
  return { cookie, csrf: ((await answer.json()) as { csrfToken: string }).csrfToken };
}

let keys = 0;

function post(running: RunningServer, session: Session | null, path: string, body: object): Promise<Response> {
  keys += 1;
  return fetch(running.address + path, {
    method: 'POST',
    headers: {
      'Content-Type': 'application/json',
      'Idempotency-Key': `power-cut-${keys}`,
      ...(session === null ? {} : { Cookie: session.cookie, 'X-CSRF-Token': session.csrf }),
    },
    body: JSON.stringify(body),
  });
}

describe('the plug pulled in between', () => {
  it('loses no answered write of 200 and keeps the journal whole', async () => {
    place = await freshPlace();
    const settings = settingsOf(place);
    server = await startServer(settings);
    const session = await signIn(server);
    const running = server;
    const answered: string[] = [];
    const writes = Array.from({ length: 200 }, async (_, number) => {
      const code = `LANE-${number}`;
      const answer = await post(running, session, '/api/plant/places', { code, kind: 'store' });
      if (answer.status === 201) answered.push(code);
      if (answered.length === 80) await running.kill();
    });
    await Promise.allSettled(writes);
    expect(answered.length).toBeGreaterThanOrEqual(80);
    expect(answered.length).toBeLessThan(200);

    server = await startServer(settings);
    await server.stop();
    const look = await openToLook(readConfig(settings));
    try {
      const rows = await look.from.sql<{ code: string }>`SELECT "code" FROM "store_place"`;
      const kept = new Set(rows.map((row) => row.code));
      expect(answered.filter((code) => !kept.has(code))).toEqual([]);
      const [siteId = ''] = await chainedSites(look.from);
      const found = await verifyJournal(look.from, siteId, null);
      expect(found.misfit).toBeNull();
      const entries = await look.from.sql<{ id: string }>`
        SELECT "subject_id" AS "id" FROM "journal_entry" WHERE "subject_kind" = 'store-place'`;
      expect(entries.length).toBe(rows.length);
    } finally {
      await look.close();
    }
  }, 120_000);

  it('stops gracefully with an event stream open', async () => {
    place = await freshPlace();
    server = await startServer(settingsOf(place));
    const session = await signIn(server);
    const stream = await fetch(`${server.address}/events`, { headers: { Cookie: session.cookie } });
    expect(stream.headers.get('content-type')).toContain('text/event-stream');
    const begun = Date.now();
    expect(await server.stop()).toBe(0);
    expect(Date.now() - begun).toBeLessThan(5000);
    await stream.text();
  }, 120_000);
});
