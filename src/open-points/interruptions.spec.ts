import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import { aPerson, signedIn, type SignedInPerson, type TestPerson } from '../../test/support/a-person.js';
import { aPlant, type Plant } from '../../test/support/a-plant.js';
import { asking, openHouse, type TestHouse } from '../../test/support/house.js';
import type { Actor } from '../platform/actor.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { UnitOfWork } from '../platform/database/unit-of-work.js';
import { SystemIds } from '../platform/ids.js';
import { hasSentence } from '../platform/sentences/sentences.js';
import { bannersFor } from './banners.js';
import { CountInterruptions } from './count-interruptions.js';
import { interruptedHours, topCauses } from './interruptions.js';
import { interruptingCauses, minutesToAct, pointClassOf } from './point-classes.js';
import { clearPoints, raisePoint } from './raise-point.js';
import { ShelvePoint } from './shelve-point.js';

let house: TestHouse;
let plant: Plant;
let person: TestPerson;
let lead: Actor;
let from: ReadFrom;
let siteCount = 0;
const ids = new SystemIds();
const start = '2026-03-12T06:00:00.000Z';

beforeAll(async () => {
  house = await openHouse();
  from = house.app.get<ReadFrom>(READER);
});
afterAll(() => house.close());
beforeEach(async () => {
  house.clock.set(start);
  siteCount += 1;
  plant = await aPlant(house, { siteCode: `IN${siteCount}` });
  person = await aPerson(house, plant.siteId, { name: 'Tomas Weir' });
  lead = { siteId: plant.siteId, personId: person.personId, deviceId: null, roles: ['line-lead'] };
});

/** A point of a cause for leads, on a thing of its own. */
async function raised(cause = 'line-check-overdue', personId: string | null = null): Promise<string> {
  const subject = { kind: 'check-plan', id: ids.next() };
  const id = ids.next();
  const facts = { line: '1', check: 'Detector', at: house.clock.now() };
  const point = { id, siteId: plant.siteId, cause, facts, subject, role: 'line-lead', personId } as const;
  await house.get(UnitOfWork).run((tx) => raisePoint(tx, { ...point, at: house.clock.now() }));
  return id;
}

const show = (actor = lead) => house.get(CountInterruptions).show(actor);
const shelve = (id: string, minutes = 30, actor = lead) =>
  house.get(ShelvePoint).execute(asking(actor), id, { minutes });
const counts = async () =>
  (await interruptedHours(from, plant.siteId, start)).map(({ hourStartsAt, shownCount, repeatCount }) => [
    hourStartsAt.slice(11, 16),
    shownCount,
    repeatCount,
  ]);

describe('the classes of points', () => {
  it('let a cause that nobody has thought about wait on the list', () => {
    expect(pointClassOf('something-new')).toBe('note');
    expect(minutesToAct('something-new')).toBeNull();
  });

  it('give every cause that interrupts a time to act and a name', () => {
    for (const cause of interruptingCauses) {
      expect([cause, pointClassOf(cause)]).not.toEqual([cause, 'note']);
      expect(minutesToAct(cause)).toBeGreaterThan(0);
      expect([cause, hasSentence(`cause-${cause}`), hasSentence(`cause-${cause}`, 'es')]).toEqual([cause, true, true]);
    }
  });
});

describe('a banner', () => {
  it('is for the role and the person whom the point concerns, never for a note', async () => {
    await raised();
    await raised('tip-of-unread-bag');
    expect(await bannersFor(from, lead, house.clock.now())).toMatchObject([{ cause: 'line-check-overdue' }]);
    expect(await bannersFor(from, plant.actorWith('loader'), house.clock.now())).toEqual([]);
    await raised('code-not-as-intended', ids.next());
    expect(await bannersFor(from, lead, house.clock.now())).toHaveLength(1);
    await raised('code-not-as-intended', person.personId);
    expect(await bannersFor(from, lead, house.clock.now())).toHaveLength(2);
  });

  it('says first what stops', async () => {
    await raised('line-check-failed');
    await raised('line-check-overdue');
    expect((await bannersFor(from, lead, house.clock.now())).map(({ pointClass }) => pointClass)).toEqual([
      'stop',
      'act-soon',
    ]);
  });

  it('goes when the point does', async () => {
    const id = await raised();
    const [banner] = await show();
    const subject = { kind: 'check-plan', id: banner!.subjectId };
    const cleared = { siteId: plant.siteId, cause: 'line-check-overdue', subject, personId: null, at: start };
    await house.get(UnitOfWork).run((tx) => clearPoints(tx, { nextId: () => ids.next(), ...cleared }));
    expect(await show()).toEqual([]);
    await expect(shelve(id)).rejects.toMatchObject({ code: 'point-ended-already' });
  });
});

describe('an interruption', () => {
  it('counts once when a banner is shown to a person for the first time, however often the page is', async () => {
    await raised();
    await show();
    await show();
    expect(await counts()).toEqual([['06:00', 1, 0]]);
  });

  it('counts once when two pages of a person show it at once', async () => {
    await raised();
    await Promise.all([show(), show()]);
    expect(await counts()).toEqual([['06:00', 1, 0]]);
  });

  it('is a repeat when the same cause comes again within ten minutes, and a new one at ten', async () => {
    await raised();
    await show();
    house.clock.pass(9);
    await raised();
    await show();
    expect(await counts()).toEqual([['06:00', 1, 1]]);
    house.clock.pass(1);
    await raised();
    await show();
    expect(await counts()).toEqual([['06:00', 2, 1]]);
  });

  it('is another one for another cause, another person and another hour', async () => {
    await raised();
    await raised('line-check-failed');
    await show();
    expect(await counts()).toEqual([['06:00', 2, 0]]);
    const other = await aPerson(house, plant.siteId);
    await show({ ...lead, personId: other.personId });
    expect(await counts()).toHaveLength(2);
    house.clock.pass(60);
    await raised();
    await show();
    expect((await counts())[0]).toEqual(['07:00', 1, 0]);
    expect(await topCauses(from, plant.siteId, start)).toEqual([
      { cause: 'line-check-overdue', shownCount: 3, repeatCount: 0 },
      { cause: 'line-check-failed', shownCount: 2, repeatCount: 0 },
    ]);
  });

  it('is forgotten after a year, when the next one is counted', async () => {
    await raised();
    await show();
    house.clock.pass(366 * 24 * 60);
    expect(await counts()).toEqual([['06:00', 1, 0]]);
    await raised();
    await show({ ...lead, personId: (await aPerson(house, plant.siteId)).personId });
    const [hour] = await interruptedHours(from, plant.siteId, start);
    expect(await counts()).toHaveLength(1);
    expect(hour).toMatchObject({ hourStartsAt: '2027-03-13T06:00:00.000Z' });
    const seen = await from.sql<{ personId: string }>`
      SELECT "person_id" AS "personId" FROM "banner_seen" WHERE "person_id" = ${person.personId}`;
    expect(seen).toEqual([]);
  });

  it('is nobody’s on a machine', async () => {
    await raised();
    expect(await show({ ...lead, personId: null })).toHaveLength(1);
    expect(await counts()).toEqual([]);
  });
});

describe('a point that is put aside', () => {
  it('shows no banner until its time is over, and stays on the list', async () => {
    const id = await raised();
    expect(await shelve(id)).toEqual({ untilAt: '2026-03-12T06:30:00.000Z' });
    expect(await show()).toEqual([]);
    house.clock.pass(30);
    expect(await show()).toHaveLength(1);
  });

  it('is not one that stops, nor one for somebody else', async () => {
    await expect(shelve(await raised('line-check-failed'))).rejects.toMatchObject({ code: 'point-must-not-wait' });
    await expect(shelve(await raised(), 30, plant.actorWith('loader'))).rejects.toMatchObject({
      code: 'point-is-for-another',
    });
  });
});

describe('the pages', () => {
  let browser: SignedInPerson;
  beforeEach(async () => {
    browser = await signedIn(house, person);
  });

  it('show a lead what cannot wait, count it, and let it be put aside where they are', async () => {
    const id = await raised();
    const page = await browser.get('/open-points');
    expect(page.text).toContain('class="banner act-soon"');
    expect(await counts()).toEqual([['06:00', 1, 0]]);
    const sent = await browser.send(`/open-points/${id}/shelf`, { minutes: '30', back: '/open-points' });
    expect([sent.status, sent.headers['location']]).toEqual([303, '/open-points']);
    expect((await browser.get('/open-points')).text).not.toContain('class="banner');
    const elsewhere = await browser.send(`/open-points/${id}/shelf`, { minutes: '30', back: '//elsewhere.invalid' });
    expect(elsewhere.headers['location']).toBe('/');
    expect((await browser.send(`/open-points/${id}/shelf`, { minutes: '1' })).status).toBe(422);
  });

  it('show who was interrupted how often to those who look after it, and not to leads', async () => {
    await raised();
    await show();
    expect((await browser.get('/interruptions')).status).toBe(403);
    const quality = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['quality-officer'] }));
    const page = await quality.get('/interruptions');
    expect(page.status).toBe(200);
    expect(page.text).toContain('Tomas Weir');
    expect(page.text).toContain('A line check is overdue');
    expect((await quality.get('/interruptions?days=0')).status).toBe(422);
  });
});
