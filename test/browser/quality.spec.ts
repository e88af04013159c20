import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { Decide } from '../../src/disposition/decide.js';
import { decisionOn, openHolds } from '../../src/disposition/standings.js';
import { TakeSample } from '../../src/laboratory/take-sample.js';
import type { ReadFrom } from '../../src/platform/database/reading.js';
import { PlaceHold } from '../../src/tracing/place-hold.js';
import { aBag, readerOf, someResults } from '../support/a-bag.js';
import { signedInBrowser } from '../support/a-browser-session.js';
import { aPerson, type TestPerson } from '../support/a-person.js';
import { aPlant, type Plant } from '../support/a-plant.js';
import { accessibilityFindings, openBrowser } from '../support/browser.js';
import { asking, openHouse, type TestHouse } from '../support/house.js';

let house: TestHouse;
let plant: Plant;
let reader: ReadFrom;
let officer: TestPerson;
let lead: TestPerson;
let address: string;
let browser: Browser;
let context: BrowserContext;
let policyReports: string[];
let page: Page;

beforeAll(async () => {
  house = await openHouse();
  plant = await aPlant(house);
  reader = readerOf(house);
  officer = await aPerson(house, plant.siteId, { roles: ['quality-officer'], name: 'Agnes Fern' });
  lead = await aPerson(house, plant.siteId, { roles: ['line-lead'], name: 'Tom Alder' });
  await house.app.listen(0, '127.0.0.1');
  address = (await house.app.getUrl()).replace('[::1]', '127.0.0.1');
  browser = await openBrowser();
}, 120_000);

afterAll(async () => {
  await browser.close();
  await house.close();
});

beforeEach(async () => {
  ({ context, policyReports } = await signedInBrowser(browser, address, officer));
  page = await context.newPage();
}, 60_000);

afterEach(async () => {
  expect(policyReports).toEqual([]);
  await context.close();
});

/** Goes on by Tab until the thing has the focus: nothing that a keyboard can't reach is used. */
async function tabTo(selector: string): Promise<void> {
  for (let step = 0; step < 120; step += 1) {
    if (await page.evaluate((wanted) => document.activeElement?.matches(wanted) ?? false, selector)) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`Tab does not lead to ${selector} on ${page.url()}`);
}

async function press(selector: string): Promise<void> {
  await tabTo(selector);
  await Promise.all([page.waitForEvent('load'), page.keyboard.press('Enter')]);
}

async function typeInto(selector: string, text: string): Promise<void> {
  await tabTo(selector);
  // As a person types: what comes faster is a scanner, and is taken as a scan.
  await page.keyboard.type(text, { delay: 60 });
}

const open = (path: string) => page.goto(address + path);
const verdictOf = async (bagId: string): Promise<string> => (await decisionOn(reader, 'bulk-bag', bagId)).verdict;
const text = (): Promise<string> => page.locator('main').innerText();

async function aTestedBag(): Promise<{ id: string; number: string }> {
  const bag = await aBag(house, plant);
  await someResults(house, plant, bag);
  return { id: bag.id, number: bag.number };
}

describe('the quality officer at the desk, by keyboard alone', () => {
  it('releases the bags of a dryer shift together', async () => {
    const bags = [await aTestedBag(), await aTestedBag()];
    await open('/quality');
    await press('a[href*="/quality/bags?group="]');
    expect(await page.locator('input[name="bagIds"]:checked').count()).toBe(2);
    await tabTo('input[name="verdict"]');
    await page.keyboard.press('Space');
    await press('#decision button[type="submit"]');
    expect(await page.getByRole('status').first().innerText()).toContain('2 bags released');
    expect(await Promise.all(bags.map(({ id }) => verdictOf(id)))).toEqual(['released', 'released']);
  });

  it('is shown what was entered where a reason is missing, and then rejects a bag', async () => {
    const bag = await aTestedBag();
    await open(`/quality/bags/${bag.id}`);
    await tabTo('input[name="verdict"]');
    await page.keyboard.press('ArrowRight');
    await press('#decision .act.asked');
    expect(await page.locator('.trouble:not([hidden])').innerText()).toContain(bag.number);
    expect(await page.locator('input[name="verdict"]:checked').getAttribute('value')).toBe('rejected');
    await typeInto('#decision textarea', 'torn at the spout');
    await press('#decision .act.asked');
    expect(await verdictOf(bag.id)).toBe('rejected');
  });

  it('sees what a hold reaches before placing it, and lifts it with the password asked again', async () => {
    const bag = await aTestedBag();
    await open('/quality/holds/new');
    await typeInto('#code', bag.number);
    await page.keyboard.press('Enter');
    await page.waitForURL(/kind=bulk-bag/);
    expect(await openHolds(reader, [{ kind: 'bulk-bag', id: bag.id }])).toEqual([]);
    expect(await text()).toContain('What it reaches');
    await typeInto('textarea[name="reason"]', 'liner torn');
    await press('.entry .act.asked');
    await page.waitForURL(/\/quality\/holds\/[0-9a-f-]{36}$/);
    expect(await openHolds(reader, [{ kind: 'bulk-bag', id: bag.id }])).toHaveLength(1);
    await typeInto('textarea[name="liftReason"]', 'the inner liner is whole');
    await typeInto('input[name="password"]', 'not the password');
    await press('#lift-form .act');
    expect(await page.locator('#lift-form .trouble').innerText()).toContain('does not prove');
    expect(await page.locator('textarea[name="liftReason"]').inputValue()).toBe('the inner liner is whole');
    expect(await page.locator('input[name="password"]').inputValue()).toBe('');
    await typeInto('input[name="password"]', officer.password);
    await press('#lift-form .act');
    expect(await openHolds(reader, [{ kind: 'bulk-bag', id: bag.id }])).toEqual([]);
  }, 60_000);

  it('does not decide on a page that moved on in another tab, and is shown what changed', async () => {
    const bag = await aTestedBag();
    await open(`/quality/bags/${bag.id}`);
    const reject = { kind: 'bulk-bag', subject: bag.id, verdict: 'rejected', reason: 'smells' } as const;
    await house.get(Decide).execute(asking({ ...plant.actor, personId: lead.personId }), reject);
    await tabTo('input[name="verdict"]');
    await page.keyboard.press('Space');
    await press('#decision .act.asked');
    expect(await verdictOf(bag.id)).toBe('rejected');
    const changed = await page.locator('section[aria-labelledby="changed-since"]').innerText();
    expect(changed).toContain('smells');
    expect(changed).toContain(lead.name);
  });

  it('ticks off late entries, so that the list empties', async () => {
    const bag = await aBag(house, plant);
    const takenAt = new Date(Date.parse(house.clock.now()) - 30 * 60_000).toISOString();
    await house.get(TakeSample).execute(asking(plant.actor), { standsFor: 'bag', bag: bag.number, takenAt });
    await open('/quality/changes');
    const before = await page.locator('input[name="entryIds"]').count();
    expect(before).toBeGreaterThan(0);
    await tabTo('input[name="entryIds"]');
    await page.keyboard.press('Space');
    await press('.entry .act.asked');
    expect(await page.locator('input[name="entryIds"]').count()).toBe(before - 1);
  });

  it('enters a result with a comma, and stays at the sample while it lacks another', async () => {
    const bag = await aBag(house, plant);
    const sample = await house.get(TakeSample).execute(asking(plant.actor), { standsFor: 'bag', bag: bag.number });
    await open(`/quality/results/${sample.id}`);
    await typeInto('input[name="amount"]', '0,034');
    await press('.entry .act.asked');
    expect(await text()).toContain('0.034');
    expect(page.url()).toContain(sample.id);
  });

  it('finds nothing that axe objects to on the desk and its pages', async () => {
    const bag = await aTestedBag();
    const hold = await house
      .get(PlaceHold)
      .execute(asking(plant.actor), { kind: 'bulk-bag', id: bag.id, reason: 'seen wet' });
    const paths = [
      ...['/quality', '/quality/bags', `/quality/bags/${bag.id}`, `/quality/holds/${hold.id}`, '/quality/holds/new'],
      ...[`/quality/holds/new?kind=bulk-bag&id=${bag.id}`, '/quality/changes', '/quality/results'],
      ...['/quality/samples/new'],
    ];
    const findings: string[] = [];
    for (const path of paths) {
      expect([path, (await open(path))?.status()]).toEqual([path, 200]);
      findings.push(...(await accessibilityFindings(page)).map((one) => `${path} ${one}`));
    }
    expect(findings).toEqual([]);
  }, 120_000);
});

describe('somebody who is not of quality', () => {
  it('may place a hold and goes back to where they were, but cannot lift it', async () => {
    const { context: own } = await signedInBrowser(browser, address, lead);
    const tab = await own.newPage();
    const bag = await aTestedBag();
    await tab.goto(`${address}/quality/holds/new?kind=bulk-bag&id=${bag.id}&next=${encodeURIComponent('/bags')}`);
    await tab.locator('textarea[name="reason"]').fill('seen wet');
    await tab.locator('.entry .act.asked').click();
    await tab.waitForURL(`${address}/bags`);
    const [hold] = await openHolds(reader, [{ kind: 'bulk-bag', id: bag.id }]);
    await tab.goto(`${address}/quality/holds/${hold?.id ?? ''}`);
    expect(await tab.locator('#lift-form').count()).toBe(0);
    await own.close();
  }, 60_000);
});
