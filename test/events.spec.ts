import { afterAll, afterEach, beforeAll, describe, expect, it, jest } from '@jest/globals';
import type { Asked } from '../src/journal/entry-draft.js';
import { AddMachine } from '../src/people/add-machine.js';
import { EndRole } from '../src/people/end-role.js';
import { GiveBadge } from '../src/people/give-badge.js';
import { WithdrawDevice } from '../src/people/withdraw-device.js';
import { AddStorePlace } from '../src/plant/add-store-place.js';
import { shifted } from '../src/platform/clock.js';
import { READER, type ReadFrom } from '../src/platform/database/reading.js';
import { PlaceHold } from '../src/tracing/place-hold.js';
import { aBag } from './support/a-bag.js';
import { aPerson, signedIn, type SignedInPerson, type TestPerson } from './support/a-person.js';
import { aPlant, type Plant } from './support/a-plant.js';
import { anActor, asking, freshPlace, openHouse, type Place, type TestHouse } from './support/house.js';
import { listenTo, type Listener } from './support/listener.js';
import { startServer, type RunningServer } from './support/server.js';
import { settingsOf, signInFirst } from './support/first-sign-in.js';

const listeners: Listener[] = [];

async function listening(address: string, cookie: string, query = '', lastId?: number): Promise<Listener> {
  const header = lastId === undefined ? {} : { 'Last-Event-ID': String(lastId) };
  const listener = await listenTo(address, { Cookie: cookie, ...header }, query);
  listeners.push(listener);
  return listener;
}

afterEach(async () => {
  for (const listener of listeners.splice(0)) {
    listener.stop();
    await listener.over;
  }
});

describe('somebody who listens to the journal', () => {
  let house: TestHouse;
  let plant: Plant;
  let person: SignedInPerson;
  let address: string;
  let places = 0;

  beforeAll(async () => {
    house = await openHouse();
    plant = await aPlant(house);
    person = await signedIn(house, await aPerson(house, plant.siteId));
    await house.app.listen(0, '127.0.0.1');
    address = await house.app.getUrl();
  });
  afterAll(async () => {
    await house.close();
  });

  async function addPlace(): Promise<string> {
    places += 1;
    const form = { code: `NEWS-${places}`, kind: 'store' } as const;
    return (await house.get(AddStorePlace).execute(asking(plant.actor), form)).id;
  }

  it('hears of a hold within two seconds: what was done to what, by ids, and no name', async () => {
    const bag = await aBag(house, plant);
    const listener = await listening(address, person.cookie);
    const begun = Date.now();
    const hold = await house.get(PlaceHold).execute(asking(plant.actor), {
      kind: 'bulk-bag',
      id: bag.id,
      reason: 'Torn at the seam',
    });
    const [event] = await listener.until(1);
    expect(Date.now() - begun).toBeLessThan(2000);
    expect(event?.action).toBe('place-hold');
    const about = [event?.subject, ...(event?.touches ?? [])];
    expect(about).toContainEqual({ kind: 'hold', id: hold.id });
    expect(about).toContainEqual({ kind: 'bulk-bag', id: bag.id });
    expect(Object.keys(event ?? {}).sort()).toEqual(['action', 'id', 'subject', 'touches']);
  });

  it('hears first what it missed since the page was made, and everything once, in order', async () => {
    const first = await listening(address, person.cookie);
    await addPlace();
    const since = (await first.until(1))[0]?.id ?? 0;
    const ids = [await addPlace(), await addPlace(), await addPlace()];
    const later = await listening(address, person.cookie, `?since=${since}`);
    ids.push(await addPlace());
    const heard = await later.until(4);
    expect(heard.map(({ subject }) => subject.id)).toEqual(ids);
    expect(heard.map(({ id }) => id)).toEqual([since + 1, since + 2, since + 3, since + 4]);
  });

  it('goes on after the last event that it heard', async () => {
    const first = await listening(address, person.cookie);
    await addPlace();
    const last = (await first.until(1))[0]?.id ?? 0;
    first.stop();
    const missed = await addPlace();
    const again = await listening(address, person.cookie, '?since=1', last);
    expect((await again.until(1))[0]?.subject.id).toBe(missed);
  });

  it('hears what is recorded once it is told that it is heard, however slow the journal is to read', async () => {
    const reader = house.app.get<ReadFrom>(READER, { strict: false });
    const read: ReadFrom['sql'] = reader.sql.bind(reader);
    const reads = jest.spyOn(reader, 'sql').mockImplementation(async (texts, ...values) => {
      if (texts.join('').includes('journal_head')) await new Promise((resolve) => setTimeout(resolve, 300));
      return read(texts, ...values);
    });
    const listener = await listening(address, person.cookie);
    const place = await addPlace();
    expect((await listener.until(1))[0]?.subject.id).toBe(place);
    expect(reads.mock.calls.some(([texts]) => texts.join('').includes('journal_head'))).toBe(true);
    reads.mockRestore();
  });

  it('gets hundreds of missed entries without a gap', async () => {
    const first = await listening(address, person.cookie);
    await addPlace();
    const since = (await first.until(1))[0]?.id ?? 0;
    await Promise.all(Array.from({ length: 260 }, addPlace));
    const later = await listening(address, person.cookie, `?since=${since}`);
    const heard = await later.until(260, 20_000);
    expect(heard.map(({ id }) => id)).toEqual(Array.from({ length: 260 }, (_, place) => since + 1 + place));
    expect((await first.until(261, 20_000)).length).toBe(261);
  }, 60_000);

  it('hears nothing of another site', async () => {
    const other = await aPlant(house, { siteCode: 'EL' });
    const stranger = await signedIn(house, await aPerson(house, other.siteId));
    const listener = await listening(address, stranger.cookie);
    await addPlace();
    const form = { code: 'THEIRS', kind: 'store' } as const;
    const { id } = await house.get(AddStorePlace).execute(asking(other.actor), form);
    expect((await listener.until(1)).map(({ subject }) => subject.id)).toEqual([id]);
  });

  it('begins now when it says a number that is none, or one from before a backup was put back', async () => {
    const odd = await listening(address, person.cookie, '?since=;DROP');
    const ahead = await listening(address, person.cookie, '?since=999999999');
    const id = await addPlace();
    expect((await odd.until(1))[0]?.subject.id).toBe(id);
    expect((await ahead.until(1))[0]?.subject.id).toBe(id);
  });

  it('must be signed in, and may have twelve streams at once', async () => {
    expect((await fetch(`${address}/events`)).status).toBe(401);
    const one = await signedIn(house, await aPerson(house, plant.siteId));
    for (let count = 0; count < 12; count += 1) await listening(address, one.cookie);
    expect((await fetch(`${address}/events`, { headers: { Cookie: one.cookie } })).status).toBe(429);
    listeners.at(-1)?.stop();
    await listeners.at(-1)?.over;
    await new Promise((resolve) => setTimeout(resolve, 100));
    await listening(address, one.cookie);
  });

  it('hears no more once the session or token is over, at the next heartbeat, and is told so', async () => {
    const now = house.clock.now();
    const people: TestPerson[] = [];
    const sessions: SignedInPerson[] = [];
    for (const who of ['out', 'badge', 'role', 'late', 'stays']) {
      const person = await aPerson(house, plant.siteId, { code: `listener-${who}` });
      // Whoever came fourteen hours ago, but for a minute, is soon signed out by the time alone.
      house.clock.set(who === 'late' ? shifted(now, -(14 * 60 - 1) * 60_000) : now);
      people.push(person);
      sessions.push(await signedIn(house, person));
    }
    house.clock.set(now);
    const byAdmin = (): Asked => asking(anActor(plant.siteId, 'administrator'));
    const machine = await house.get(AddMachine).execute(byAdmin(), { code: 'counter-that-goes' });
    const counter = await listenTo(address, { Authorization: `Bearer ${machine.token ?? ''}` });
    listeners.push(counter);
    const [out, badge, role, late, stays] = await Promise.all(sessions.map(({ cookie }) => listening(address, cookie)));
    expect((await sessions[0]!.delete('/api/sessions')).status).toBe(204);
    await house.get(GiveBadge).execute(byAdmin(), people[1]!.personId);
    await house.get(EndRole).execute(byAdmin(), people[2]!.personId, { role: 'line-lead' });
    await house.get(WithdrawDevice).execute(byAdmin(), machine.id);
    house.clock.pass(2);
    const gone = [out!, badge!, role!, late!, counter];
    await Promise.all(gone.map(({ over }) => over));
    const id = await addPlace();
    const heard = async (): Promise<readonly string[]> => (await stays!.until(1)).map(({ subject }) => subject.id);
    for (let look = 0; look < 100 && !(await heard()).includes(id); look += 1) {
      await new Promise((resolve) => setTimeout(resolve, 20));
    }
    expect(await heard()).toContain(id);
    expect(stays!.raw()).not.toContain('event: over');
    for (const one of gone) {
      expect(one.raw()).toMatch(/event: over\ndata: \{\}\n\n$/);
      expect(one.heard.map(({ subject }) => subject.id)).not.toContain(id);
    }
  }, 40_000);

  it('is told to come back soon, and that the line is not to be stored', async () => {
    const answer = await fetch(`${address}/events`, { headers: { Cookie: person.cookie, 'Accept-Encoding': 'br' } });
    expect(answer.headers.get('content-encoding')).toBeNull();
    expect(answer.headers.get('cache-control')).toBe('no-store');
    const { value } = (await answer.body?.getReader().read()) ?? {};
    expect(Buffer.from(value ?? []).toString()).toContain('retry: 1000');
  });
});

describe('a listener whose server goes away', () => {
  let place: Place | null = null;
  let server: RunningServer | null = null;
  let second: RunningServer | null = null;

  afterEach(async () => {
    await server?.kill();
    await second?.kill();
    await place?.remove();
    [place, server, second] = [null, null, null];
  });

  it('misses nothing over a kill and a new start', async () => {
    place = await freshPlace();
    server = await startServer(settingsOf(place));
    const session = await signInFirst(server);
    const listener = await listening(server.address, session.cookie);
    await session.post(server.address, '/api/plant/places', { code: 'BEFORE', kind: 'store' });
    const [before] = await listener.until(1);
    listener.stop();
    await session.post(server.address, '/api/plant/places', { code: 'MISSED', kind: 'store' });
    await server.kill();
    server = await startServer(settingsOf(place));
    const again = await listening(server.address, session.cookie, '', before?.id);
    await session.post(server.address, '/api/plant/places', { code: 'AFTER', kind: 'store' });
    const heard = await again.until(2);
    expect(heard.map(({ id, action }) => [id, action])).toEqual([
      [(before?.id ?? 0) + 1, 'add-store-place'],
      [(before?.id ?? 0) + 2, 'add-store-place'],
    ]);
    const stopping = server.stop();
    await again.over;
    expect(await stopping).toBe(0);
  }, 120_000);

  it('hears from one process what another recorded', async () => {
    place = await freshPlace();
    // One SQLite file has one server; two processes share a database on PostgreSQL only.
    if (place.databaseUrl === null) return;
    server = await startServer(settingsOf(place));
    second = await startServer(settingsOf(place));
    const session = await signInFirst(server);
    const listener = await listening(second.address, session.cookie);
    const begun = Date.now();
    await session.post(server.address, '/api/plant/places', { code: 'ELSEWHERE', kind: 'store' });
    await listener.until(1);
    expect(Date.now() - begun).toBeLessThan(2000);
  }, 120_000);
});
