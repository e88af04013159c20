import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { aReleasedBag, readerOf } from '../../../test/support/a-bag.js';
import { aDelivery } from '../../../test/support/a-delivery.js';
import { aPackedRun } from '../../../test/support/a-pallet.js';
import { aTippedBag } from '../../../test/support/a-tip.js';
import { aPerson, signedIn, type SignedInPerson } from '../../../test/support/a-person.js';
import { aPlant, type Plant } from '../../../test/support/a-plant.js';
import { asking, openHouse, type TestHouse } from '../../../test/support/house.js';
import { StopLine } from '../../packing/stop-line.js';
import { roles, type Role } from '../../platform/actor.js';
import { PlaceHold } from '../../tracing/place-hold.js';
import { todayView } from './today-view.js';

describe('the plant today', () => {
  let house: TestHouse;
  let plant: Plant;
  const people = new Map<Role, SignedInPerson>();

  beforeAll(async () => {
    house = await openHouse();
    plant = await aPlant(house);
    const bag = await aReleasedBag(house, plant);
    await aTippedBag(house, plant);
    const run = await aPackedRun(house, plant);
    await aDelivery(house, plant);
    await house.get(StopLine).execute(asking(plant.actor), { run: run.number, stopReason: 'jam' });
    await house
      .get(PlaceHold)
      .execute(asking(plant.actor), { kind: 'bulk-bag', id: bag.id, reason: 'A black bit was seen' });
    for (const role of roles.filter((one) => one !== 'device')) {
      people.set(role, await signedIn(house, await aPerson(house, plant.siteId, { roles: [role] })));
    }
  }, 120_000);
  afterAll(async () => {
    await house.close();
  });

  const page = async (role: Role, path: string) => {
    const person = people.get(role);
    if (person === undefined) throw new Error(`nobody is ${role}`);
    return person.get(path);
  };

  it('says which line stands and why, whether the shift adds up, and what is held and to be delivered', async () => {
    const { text } = await page('plant-manager', '/today');
    expect(text).toMatch(/Stands since [^<]*: jam/);
    expect(text).toMatch(/kg tipped = .* kg packed/);
    expect(text).toContain('A black bit was seen');
    expect(text).toContain('Deliveries today');
    expect(text).toContain(`href="/line/${plant.lineIds[0]}"`);
  });

  it('is read by every role', async () => {
    for (const role of people.keys()) expect([role, (await page(role, '/today')).status]).toEqual([role, 200]);
  });

  it('costs the server less than a tenth of a second', async () => {
    const begin = performance.now();
    for (let time = 0; time < 5; time += 1) await todayView(readerOf(house), plant.siteId, house.clock.now());
    expect((performance.now() - begin) / 5).toBeLessThan(100);
  });

  it('leads an auditor through every page that is linked, without a failure and without a form to be refused', async () => {
    // The person's own settings, and what only looks (search boxes are GET) or signs out.
    const own = /^\/(sign-out|language|me|change-|device|interruptions\/mine)/;
    const { visited, faults } = await walk('auditor', own);
    expect(faults).toEqual([]);
    expect(visited).toBeGreaterThan(40);
  }, 240_000);

  /** Follows every link from the first page; of pages of one kind (`/bags/…`) the first two. */
  async function walk(role: Role, own: RegExp): Promise<{ visited: number; faults: string[] }> {
    const queue = ['/', '/today', '/dryer', '/dryer/moves', '/dryer/receipts', '/dryer/scales', '/set-up'];
    const seen = new Map<string, number>();
    const done = new Set<string>();
    const faults: string[] = [];
    for (let path = queue.shift(); path !== undefined; path = queue.shift()) {
      const kind = path.replaceAll(/[0-9a-f]{8}-[0-9a-f-]{27}/g, '…').split('?')[0] ?? path;
      const count = seen.get(kind) ?? 0;
      if (done.has(path) || count >= 2) continue;
      seen.set(kind, count + 1);
      done.add(path);
      const answer = await page(role, path);
      if (![200, 303].includes(answer.status)) faults.push(`${path}: ${answer.status}`);
      if (answer.headers['content-type']?.includes('html') !== true) continue;
      for (const [form] of answer.text.matchAll(/<form[^>]*>/g)) {
        const action = /action="([^"]*)"/.exec(form)?.[1] ?? '';
        if (/method="post"/.test(form) && !own.test(action)) faults.push(`${path}: form to ${action}`);
      }
      for (const [, href] of answer.text.matchAll(/href="(\/[^"#]*)"/g)) {
        if (href !== undefined && !/^\/(assets|sign-)/.test(href)) queue.push(href.replaceAll('&amp;', '&'));
      }
    }
    return { visited: done.size, faults };
  }
});
