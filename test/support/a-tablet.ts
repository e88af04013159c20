import type { Browser, BrowserContext, Page } from 'playwright-core';
import { EnrolDevice } from '../../src/people/enrol-device.js';
import { GiveBadge } from '../../src/people/give-badge.js';
import { aPerson, type TestPerson } from './a-person.js';
import type { Plant } from './a-plant.js';
import { openContext } from './browser.js';
import { asking, type TestHouse } from './house.js';

/** A line lead who works at a tablet, with the badge that proves it. */
interface LeadWithBadge extends TestPerson {
  readonly badge: string;
}

/** A tablet at a packing line, its browser on it, and the leads of this shift and of the next. */
export interface TabletAtTheLine {
  readonly address: string;
  readonly line: string;
  readonly context: BrowserContext;
  readonly page: Page;
  readonly policyReports: readonly string[];
  readonly lead: LeadWithBadge;
  readonly next: LeadWithBadge;
}

/** Lets the house listen, enrols a tablet, and opens a page on it for the first line; nobody is signed in. */
export async function aTabletAtTheLine(house: TestHouse, plant: Plant, browser: Browser): Promise<TabletAtTheLine> {
  const lead = await aLeadWithBadge(house, plant, 'A. Kaya');
  const next = await aLeadWithBadge(house, plant, 'J. Moor');
  const device = { code: 'tablet-1', kind: 'shared-tablet' } as const;
  const { token } = await house.get(EnrolDevice).execute(asking(plant.actor), device);
  const address = await listening(house);
  const { context, policyReports } = await openContext(browser);
  await context.addCookies([{ name: 'packthread-device', value: token ?? '', url: address }]);
  const page = await context.newPage();
  return { address, line: `${address}/line/${plant.lineIds[0]}`, context, page, policyReports, lead, next };
}

/** Lets a house listen on a port of its own, and says where. */
export async function listening(house: TestHouse): Promise<string> {
  await house.app.listen(0, '127.0.0.1');
  return (await house.app.getUrl()).replace('[::1]', '127.0.0.1');
}

async function aLeadWithBadge(house: TestHouse, plant: Plant, name: string): Promise<LeadWithBadge> {
  const person = await aPerson(house, plant.siteId, { name });
  const { badge } = await house.get(GiveBadge).execute(asking(plant.actor), person.personId);
  return { ...person, badge: badge ?? '' };
}
