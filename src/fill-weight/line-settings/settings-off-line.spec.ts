import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { aPerson, type TestPerson } from '../../../test/support/a-person.js';
import { aPlant, type Plant } from '../../../test/support/a-plant.js';
import { aDevice, aQueue, type TestDevice, type TestQueue } from '../../../test/support/a-queue.js';
import { aRun } from '../../../test/support/a-run.js';
import { asking, openHouse, type TestHouse } from '../../../test/support/house.js';
import { pageText } from '../../../test/support/page-text.js';
import { CloseRun } from '../../packing/close-run.js';
import type { Instant } from '../../platform/clock.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { settingsOfLine } from './line-settings.js';

describe('a setting that was recorded while the network was away', () => {
  let house: TestHouse;
  let from: ReadFrom;
  let plant: Plant;
  let lead: TestPerson;
  let tablet: TestDevice;
  let early: TestQueue;
  let whileItRan: Instant;

  beforeAll(async () => {
    house = await openHouse();
    from = house.app.get<ReadFrom>(READER, { strict: false });
    plant = await aPlant(house);
    lead = await aPerson(house, plant.siteId, { roles: ['line-lead'] });
    tablet = await aDevice(house, plant.siteId);
    early = await aQueue(house, lead, tablet);
    const { runId } = await aRun(house, plant);
    house.clock.pass(30);
    whileItRan = house.clock.now();
    house.clock.pass(30);
    await house.get(CloseRun).execute(asking(plant.actor), runId, { packCount: 0, loosePackCount: 0 });
    house.clock.pass(30);
    await aRun(house, plant, { formatId: plant.otherFormatId });
    house.clock.pass(4 * 24 * 60);
  });
  afterAll(() => house.close());

  const path = () => `/lines/${plant.lineIds[0]}/settings`;
  const listed = async () => settingsOfLine(from, plant.lineIds[0]);

  it('counts for the run of then, at its own time, however late it comes; on both ways', async () => {
    const page = { formatId: '', setpointGrams: '2004', rejectBelowGrams: '', rejectAboveGrams: '' };
    const sent = await early.send(path(), { ...page, reason: 'Mean low', changedAt: '' }, { happenedAt: whileItRan });
    expect([sent.status, (sent.body as { kept?: true }).kept]).toEqual([200, undefined]);
    const form = { rejectBelowGrams: '1972', reason: 'Pushed out too few' };
    const byRoute = await early.send(`/api${path()}`, form, { happenedAt: whileItRan });
    expect([byRoute.status, byRoute.body]).toMatchObject([
      201,
      { formatId: plant.formatId, rejectBelowMilligrams: 1_972_000, changedAt: whileItRan },
    ]);
    const settings = await listed();
    expect(settings.map(({ formatId, changedAt, setBy }) => [formatId, changedAt, setBy])).toEqual(
      [1, 2].map(() => [plant.formatId, whileItRan, lead.personId]),
    );
    const [entry] = await from.sql<{ reason: string }>`
      SELECT "reason" FROM "journal_entry" WHERE "action" = 'change-setting' ORDER BY "sequence" LIMIT 1`;
    expect(entry?.reason).toBe('Mean low');
  });

  it('counts once, sent on line first and from the queue later', async () => {
    const queue = await aQueue(house, lead, tablet);
    const form = { formatId: plant.otherFormatId, setpointGrams: '1002', reason: 'Mean high' };
    const before = (await listed()).length;
    const first = await queue.me.send(path(), form, 'setting-key-0001');
    expect(first.status).toBe(303);
    const again = await queue.send(path(), form, { key: 'setting-key-0001' });
    expect(again.status).toBe(200);
    expect(await listed()).toHaveLength(before + 1);
  });

  it('is kept where nobody can tell what was meant, and whoever settles it is led to where it is recorded', async () => {
    const queue = await aQueue(house, lead, tablet);
    const before = await listed();
    const send = (fields: Readonly<Record<string, string>>) =>
      queue.send(path(), { reason: 'A try', ...fields }, { happenedAt: house.clock.now() });
    const far = await send({ formatId: plant.formatId, setpointGrams: '20' });
    expect(far.body).toMatchObject({ kept: true, code: 'setting-far-from-nominal' });
    const idle = await queue.send(
      `/lines/${plant.lineIds[1]}/settings`,
      { setpointGrams: '2004', reason: 'A try' },
      { happenedAt: house.clock.now() },
    );
    expect(idle.body).toMatchObject({ kept: true, code: 'setting-needs-format' });
    expect(await listed()).toEqual(before);
    const { text } = await queue.me.get(`/kept-entries/${(far.body as { id: string }).id}`);
    expect(pageText(text)).toContain('A change of setting');
    expect(text).toContain(`<a href="${path()}">Record a setting with its time</a>`);
  });

  it('is recorded on a page that the desk of the line leads to, for what runs then unless a format is chosen', async () => {
    const { me } = await aQueue(house, lead, tablet);
    expect((await me.get(`/line/${plant.lineIds[0]}`)).text).toContain(`href="${path()}"`);
    const { text } = await me.get(path());
    expect(text).toContain('data-queue="setting"');
    expect(text).toMatch(/<option value>What runs then \(now: [^<]+\)<\/option>/);
    expect(text).toContain(`href="/line/${plant.lineIds[0]}"`);
    const idle = await me.get(`/lines/${plant.lineIds[1]}/settings`);
    expect(idle.text).not.toContain('What runs then');
  });
});
