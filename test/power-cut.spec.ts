import { afterEach, describe, expect, it } from '@jest/globals';
import { chainedSites, verifyJournal } from '../src/journal/verify-journal.js';
import { openToLook } from '../src/cli/open-to-look.js';
import { readConfig } from '../src/platform/config.js';
import { freshPlace, type Place } from './support/house.js';
import { settingsOf, signInFirst } from './support/first-sign-in.js';
import { startServer, type RunningServer } from './support/server.js';

let place: Place | null = null;
let server: RunningServer | null = null;

afterEach(async () => {
  await server?.kill();
  await place?.remove();
  [place, server] = [null, null];
});

describe('the plug pulled in between', () => {
  it('loses no answered write of 200 and keeps the journal whole', async () => {
    place = await freshPlace();
    const settings = settingsOf(place);
    server = await startServer(settings);
    const session = await signInFirst(server);
    const running = server;
    const answered: string[] = [];
    const writes = Array.from({ length: 200 }, async (_, number) => {
      const code = `LANE-${number}`;
      const answer = await session.post(running.address, '/api/plant/places', { code, kind: 'store' });
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
    const session = await signInFirst(server);
    const stream = await fetch(`${server.address}/events`, { headers: { Cookie: session.cookie } });
    expect(stream.headers.get('content-type')).toContain('text/event-stream');
    const begun = Date.now();
    expect(await server.stop()).toBe(0);
    expect(Date.now() - begun).toBeLessThan(5000);
    await stream.text();
  }, 120_000);
});
