import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import request, { type Response } from 'supertest';
import { CloseRun } from '../src/packing/close-run.js';
import { findRun } from '../src/packing/packing-runs.js';
import { EndRole } from '../src/people/end-role.js';
import { AddHopper } from '../src/plant/add-hopper.js';
import { LinkHopperToLine } from '../src/plant/link-hopper-to-line.js';
import { shifted } from '../src/platform/clock.js';
import { PlaceHold } from '../src/tracing/place-hold.js';
import { aReleasedBag } from './support/a-bag.js';
import { aPackedRun } from './support/a-pallet.js';
import { aPerson, signedIn, type TestPerson } from './support/a-person.js';
import { aPlant, type Plant } from './support/a-plant.js';
import { aRun } from './support/a-run.js';
import { aDevice, aQueue, signedInOn, type TestDevice } from './support/a-queue.js';
import { anActor, asking, openHouse, type TestHouse } from './support/house.js';

const minute = 60_000;

describe('what was entered while the network was away', () => {
  let house: TestHouse;
  let plant: Plant;
  let tablet: TestDevice;
  let tomas: TestPerson;
  beforeAll(async () => {
    house = await openHouse();
    plant = await aPlant(house);
    tablet = await aDevice(house, plant.siteId);
    tomas = await aPerson(house, plant.siteId, { roles: ['line-lead'] });
  });
  afterAll(async () => {
    await house.close();
  });

  const typeOf = (answer: Response): string => (answer.body as { type: string }).type;
  const rows = <Row>(strings: TemplateStringsArray, ...values: unknown[]): Promise<Row[]> =>
    house.databases.reader.sql<Row[]>(strings, ...values);
  const pointsAbout = async (id: string): Promise<readonly string[]> =>
    (await rows<{ cause: string }>`SELECT "cause" FROM "open_point" WHERE "subject_id" = ${id} ORDER BY "id"`).map(
      ({ cause }) => cause,
    );
  const keptCount = async (): Promise<number> => (await rows<{ id: string }>`SELECT "id" FROM "kept_entry"`).length;

  it('is taken as it happened: a bag that was on hold by then went in, days later and with no reason asked', async () => {
    const queue = await aQueue(house, tomas, tablet);
    const bag = await aReleasedBag(house, plant);
    house.clock.pass(2);
    const happenedAt = house.clock.now();
    house.clock.pass(1);
    await house.get(PlaceHold).execute(asking(plant.actor), { kind: 'bulk-bag', id: bag.id, reason: 'torn sieve' });
    house.clock.pass(4 * 24 * 60);
    const answer = await queue.send(
      '/api/tips',
      { bag: bag.number, hopperId: plant.hopperId, isOff: 'on' },
      { happenedAt },
    );
    expect([answer.status, answer.body]).toMatchObject([201, { openedAt: happenedAt, broken: ['bag-on-hold'] }]);
    expect(await pointsAbout(bag.id)).toContain('happened-bag-on-hold');
    const [entry] = await rows<object>`
      SELECT "occurred_at" AS "occurredAt", "person_id" AS "personId", "device_id" AS "deviceId", "reason", "id"
      FROM "journal_entry" WHERE "action" = 'tip-bag' ORDER BY "sequence" DESC LIMIT 1`;
    expect(entry).toMatchObject({
      ...{ occurredAt: happenedAt, personId: tomas.personId, deviceId: tablet.id, reason: 'kept on the device' },
    });
    const came = await rows<{ how: string; happenedAt: string }>`
      SELECT "how", "happened_at" AS "happenedAt" FROM "entry_happening" WHERE "action" = 'tip-bag'`;
    expect(came).toEqual([{ how: 'queued', happenedAt }]);
  });

  it('is corrected by what the clock of the device is ahead', async () => {
    const queue = await aQueue(house, tomas, tablet);
    const bag = await aReleasedBag(house, plant);
    const ahead = shifted(house.clock.now(), 10 * minute);
    const form = { bag: bag.number, hopperId: plant.hopperId };
    const answer = await queue.send('/api/tips', form, { happenedAt: ahead, deviceTime: shifted(ahead, 3 * minute) });
    expect(answer.body).toMatchObject({ openedAt: shifted(house.clock.now(), -3 * minute) });
  });

  it('counts once: sent on line first, then from the queue, it gets the first answer', async () => {
    const queue = await aQueue(house, tomas, tablet);
    const bag = await aReleasedBag(house, plant);
    const form = { bag: bag.number, hopperId: plant.hopperId };
    const first = await queue.me.send('/api/tips', form, 'same-key-0001');
    expect(first.status).toBe(201);
    const again = await queue.send('/api/tips', form, { key: 'same-key-0001' });
    expect([again.status, again.body]).toEqual([201, first.body]);
  });

  it('is taken for every command that may wait, late and without a reason', async () => {
    const queue = await aQueue(house, tomas, tablet);
    const { runId, number } = await aPackedRun(house, plant, { lineId: plant.lineIds[0] });
    const begun = house.clock.now();
    const at = (minutes: number): { happenedAt: string } => ({ happenedAt: shifted(begun, minutes * minute) });
    house.clock.pass(4 * 24 * 60);
    const removal = { kind: 'sweepings', lineId: plant.lineIds[0], netGrams: '2500', scaleId: plant.scaleId };
    const sent = [
      await queue.send('/api/stops', { run: number, stopReason: 'jam', packCount: '500' }, at(1)),
      await queue.send(`/api/runs/${runId}/counts`, { packCount: '600' }, at(10)),
      await queue.send('/api/removals', { ...removal, removalReason: 'floor', fate: 'waste' }, at(11)),
      await queue.send(
        `/api/runs/${runId}/films`,
        { film: 'F-77', kind: 'film', supplierCode: 'S1', packCount: '610' },
        at(12),
      ),
      await queue.send('/api/pallets', { run: number, packCount: '480', label: 'false' }, at(13)),
      await queue.send(`/api/runs/${runId}/loose-counts`, { loosePackCount: '20', packCount: '620' }, at(14)),
    ];
    expect(
      sent.map(({ status, body }) => [status, (body as { kept?: boolean }).kept ?? false, JSON.stringify(body)]),
    ).toEqual(sent.map(({ body }) => [201, false, JSON.stringify(body)]));
    const restarted = await queue.send(`/api/stops/${(sent[0]?.body as { id: string }).id}/restart`, {}, at(6));
    expect([restarted.status, restarted.body]).toMatchObject([201, { startedAgainAt: shifted(begun, 6 * minute) }]);
  });

  const packCountOf = async (runId: string): Promise<number | undefined> =>
    (
      await rows<{ packCount: number }>`
      SELECT "pack_count" AS "packCount" FROM "packing_run_state" WHERE "run_id" = ${runId}`
    )[0]?.packCount;

  it('is booked to the run of then: a count that waited over a changeover', async () => {
    const lineId = plant.lineIds[0];
    const queue = await aQueue(house, tomas, tablet);
    const [open] = await rows<{ runId: string }>`
      SELECT "run_id" AS "runId" FROM "packing_run_state" WHERE "open_line_id" = ${lineId}`;
    const before = open?.runId ?? (await aPackedRun(house, plant, { lineId })).runId;
    const counted = (await packCountOf(before)) ?? 0;
    house.clock.pass(5);
    const happenedAt = house.clock.now();
    house.clock.pass(20);
    const closing = { packCount: counted + 100, loosePackCount: 0 };
    await house.get(CloseRun).execute(asking(plant.actor), before, closing);
    house.clock.pass(5);
    const after = await aRun(house, plant, { lineId });
    house.clock.pass(5);
    const answer = await queue.send(`/line/${lineId}/count`, { packCount: String(counted + 40) }, { happenedAt });
    expect([answer.status, (answer.body as { kept?: boolean }).kept]).toEqual([200, undefined]);
    const counts = await rows<{ runId: string; packCount: number }>`
      SELECT "run_id" AS "runId", "pack_count" AS "packCount" FROM "pack_count" WHERE "counted_at" = ${happenedAt}`;
    expect(counts).toEqual([{ runId: before, packCount: counted + 40 }]);
    expect([await packCountOf(before), await packCountOf(after.runId)]).toEqual([counted + 100, 0]);

    const stopped = await queue.send(
      `/line/${lineId}/stops`,
      { run: (await findRun(house.databases.reader, plant.siteId, before)).number, stopReason: 'jam' },
      { happenedAt: house.clock.now() },
    );
    expect(stopped.status).toBe(200);
    const [stop] = await rows<{
      runId: string;
    }>`SELECT "run_id" AS "runId" FROM "line_stop" ORDER BY "id" DESC LIMIT 1`;
    expect(stop?.runId).toBe(after.runId);
  });

  it('goes into the hopper of then: a tip that waited while its line was linked to another', async () => {
    const lineId = plant.lineIds[1];
    const queue = await aQueue(house, tomas, tablet);
    const bag = await aReleasedBag(house, plant);
    house.clock.pass(1);
    const happenedAt = house.clock.now();
    house.clock.pass(10);
    const linked = (hopperId: string) => house.get(LinkHopperToLine).execute(asking(plant.actor), { lineId, hopperId });
    const capacityGrams = 4_000_000;
    const other = await house
      .get(AddHopper)
      .execute(asking(plant.actor), { code: 'H9', name: 'Hopper 9', capacityGrams });
    await linked(other.id);
    house.clock.pass(10);
    await queue.send(`/line/${lineId}/tips`, { bag: bag.number, isOff: 'true' }, { happenedAt });
    const tips = await rows<{ hopperId: string }>`
      SELECT p."hopper_id" AS "hopperId" FROM "tip" t JOIN "hopper_period" p ON p."id" = t."period_id"
      WHERE t."bag_id" = ${bag.id}`;
    expect(tips).toEqual([{ hopperId: plant.hopperId }]);
    await linked(plant.hopperId);
  });

  it('gives pallets that come in another order than they were built in, and asks the line lead which packs are which', async () => {
    const queue = await aQueue(house, tomas, tablet);
    const { number } = await aPackedRun(house, plant, { lineId: plant.lineIds[1], packCount: 10 });
    house.clock.pass(60);
    const form = { run: number, packCount: '480', label: 'false' };
    const ago = (minutes: number): { happenedAt: string } => ({
      happenedAt: shifted(house.clock.now(), -minutes * minute),
    });
    expect((await queue.send('/api/pallets', form, ago(5))).status).toBe(201);
    const overtaken = await queue.send('/api/pallets', form, ago(9));
    expect(overtaken.status).toBe(201);
    expect(await pointsAbout((overtaken.body as { id: string }).id)).toEqual(['pallet-came-out-of-order']);
  });

  it('keeps what cannot be taken: one entry and one point, the same answer to the same key, and a page to read it on', async () => {
    const queue = await aQueue(house, tomas, tablet);
    const bag = await aReleasedBag(house, plant);
    const form = { bag: bag.number, hopperId: plant.hopperId };
    expect((await queue.me.send('/api/tips', form)).status).toBe(201);
    const before = await keptCount();
    const kept = await queue.send('/api/tips', form, { key: 'conflict-0001' });
    expect([kept.status, kept.body]).toMatchObject([200, { kept: true, code: 'bag-already-tipped' }]);
    expect((kept.body as { says: string }).says).toContain(bag.number);
    const again = await queue.send('/api/tips', form, { key: 'conflict-0001' });
    expect([again.status, again.body]).toEqual([200, kept.body]);
    expect(await keptCount()).toBe(before + 1);
    const { id } = kept.body as { id: string };
    expect(await pointsAbout(id)).toEqual(['entry-kept-queued']);
    const agnes = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['quality-officer'] }));
    const points = await agnes.get('/open-points');
    expect(points.text).toContain(`/kept-entries/${id}`);
    expect(points.text).toContain('A tip, entered by');
    expect(points.text).not.toContain('{');
    const page = await agnes.get(`/kept-entries/${id}`);
    expect(page.text).toContain(bag.number);
    expect(page.text).not.toContain('of a page long gone');
    const dealt = await agnes.send(`/kept-entries/${id}`, {
      explanation: 'tipped once; the second scan was a mistake',
    });
    expect([dealt.status, dealt.headers['location']]).toEqual([303, '/open-points']);
    expect((await agnes.get(`/kept-entries/${id}`)).text).toContain('the second scan was a mistake');
  });

  it('keeps what names a bag that is not known here, and what cannot be read', async () => {
    const queue = await aQueue(house, tomas, tablet);
    const unknown = await queue.send('/api/tips', { bag: 'B9999999', hopperId: plant.hopperId });
    expect([unknown.status, unknown.body]).toMatchObject([200, { kept: true, code: 'kept-not-found' }]);
    expect((unknown.body as { says: string }).says).toContain('bulk bag “B9999999”');
    const unread = await queue.send('/api/tips', { bag: 'B1', hopperId: 'hopper 1', colour: 'red' });
    expect(unread.body).toMatchObject({ kept: true, code: 'kept-bad-form' });
    expect((unread.body as { says: string }).says).toMatch(/hopperId|colour/);
  });

  it('takes two persons on one tablet each as themselves', async () => {
    const ruth = await aPerson(house, plant.siteId, { roles: ['line-lead'] });
    const ofTomas = await aQueue(house, tomas, tablet);
    await ofTomas.me.delete('/api/sessions');
    const ofRuth = await aQueue(house, ruth, tablet);
    const tip = async (): Promise<Record<string, string>> => ({
      bag: (await aReleasedBag(house, plant)).number,
      hopperId: plant.hopperId,
    });
    const mine = await ofRuth.send('/api/tips', await tip());
    expect(mine.status).toBe(201);
    const [entry] = await rows<{ personId: string }>`
      SELECT "person_id" AS "personId" FROM "journal_entry" WHERE "action" = 'tip-bag' ORDER BY "sequence" DESC LIMIT 1`;
    expect(entry?.personId).toBe(ruth.personId);
    house.clock.pass(60);
    const after = await ofTomas.send('/api/tips', await tip());
    expect(after.body).toMatchObject({ kept: true, code: 'entry-outside-proof' });
  });

  describe('the proof that waits with it', () => {
    const bagForm = async (): Promise<Record<string, string>> => ({
      bag: (await aReleasedBag(house, plant)).number,
      hopperId: plant.hopperId,
    });

    it('is issued on a shared device only, to somebody who is signed in, against a form’s token', async () => {
      const desk = await signedInOn(house, tomas, await aDevice(house, plant.siteId, 'desk'));
      const nowhere = await signedIn(house, tomas);
      for (const me of [desk, nowhere]) {
        expect(typeOf(await me.post('/api/queue-proofs'))).toBe('problem:queue-needs-shared-device');
      }
      const me = await signedInOn(house, tomas, tablet);
      const server = request(house.app.getHttpServer());
      expect((await server.post('/api/queue-proofs').set('Cookie', me.cookie)).status).toBe(403);
      expect((await request(house.app.getHttpServer()).post('/api/queue-proofs')).status).toBe(401);
      expect((await me.post('/api/queue-proofs')).status).toBe(201);
    });

    it('is nothing without the cookie of its device, and on another device', async () => {
      const queue = await aQueue(house, tomas, tablet);
      const other = await aDevice(house, plant.siteId);
      const form = await bagForm();
      for (const cookie of ['packthread-device=', other.cookie, queue.me.cookie]) {
        const answer = await queue.send('/api/tips', form, { cookie });
        expect([answer.status, typeOf(answer)]).toEqual([401, 'problem:queue-proof-not-known']);
      }
    });

    it('opens nothing but what may wait, even beside a session', async () => {
      const queue = await aQueue(house, tomas, tablet);
      const cookie = `${tablet.cookie}; ${queue.me.cookie}`;
      const released = await queue.send('/api/hold-lifts', { hold: 'H-1', reason: 'x' }, { cookie });
      expect([released.status, typeOf(released)]).toEqual([403, 'problem:queue-proof-not-for-this']);
      const read = await request(house.app.getHttpServer())
        .get('/api/tips')
        .set('Cookie', cookie)
        .set('Queue-Proof', queue.token);
      expect(read.status).toBe(403);
    });

    it('does not ride on the session that is beside it: it acts as its own person', async () => {
      const ruth = await aPerson(house, plant.siteId, { roles: ['line-lead'] });
      const queue = await aQueue(house, tomas, tablet);
      const hers = await signedInOn(house, ruth, tablet);
      const answer = await queue.send('/api/tips', await bagForm(), { cookie: `${tablet.cookie}; ${hers.cookie}` });
      expect(answer.status).toBe(201);
      const [entry] = await rows<{ personId: string }>`
        SELECT "person_id" AS "personId" FROM "journal_entry" WHERE "action" = 'tip-bag' ORDER BY "sequence" DESC LIMIT 1`;
      expect(entry?.personId).toBe(tomas.personId);
    });

    it('stays good after signing out for what happened before, and keeps what happened after', async () => {
      const queue = await aQueue(house, tomas, tablet);
      const form = await bagForm();
      const happenedAt = house.clock.now();
      house.clock.pass(20);
      await queue.me.delete('/api/sessions');
      house.clock.pass(20);
      const later = await queue.send('/api/tips', await bagForm());
      expect(later.body).toMatchObject({ kept: true, code: 'entry-outside-proof' });
      expect((await queue.send('/api/tips', form, { happenedAt })).status).toBe(201);
      const long = shifted(happenedAt, -60 * minute);
      const earlier = await queue.send('/api/tips', await bagForm(), { happenedAt: long });
      expect(earlier.body).toMatchObject({ kept: true, code: 'entry-outside-proof' });
    });

    it('is over when its session is over, and proves nothing after two weeks', async () => {
      const queue = await aQueue(house, tomas, tablet);
      house.clock.pass(15 * 60);
      expect((await queue.send('/api/tips', await bagForm())).body).toMatchObject({ code: 'entry-outside-proof' });
      house.clock.pass(14 * 24 * 60);
      expect((await queue.send('/api/tips', await bagForm())).status).toBe(401);
    });

    it('lets its person do only what they may do now; the rest is kept', async () => {
      const person = await aPerson(house, plant.siteId, { roles: ['line-lead', 'auditor'] });
      const queue = await aQueue(house, person, tablet);
      const happenedAt = house.clock.now();
      house.clock.pass(1);
      const asked = asking(anActor(plant.siteId, 'administrator'));
      await house.get(EndRole).execute(asked, person.personId, { role: 'line-lead' });
      const answer = await queue.send('/api/tips', await bagForm(), { happenedAt });
      expect(answer.body).toMatchObject({ kept: true, code: 'not-permitted' });
    });

    it('asks when it happened', async () => {
      const queue = await aQueue(house, tomas, tablet);
      const answer = await queue.send('/api/tips', await bagForm(), { happenedAt: 'this morning' });
      expect([answer.status, typeOf(answer)]).toEqual([422, 'problem:bad-form']);
    });
  });
});
