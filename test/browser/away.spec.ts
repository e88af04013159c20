import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, it } from '@jest/globals';
import type { BrowserContext, Page } from 'playwright-core';
import { PlaceHold } from '../../src/tracing/place-hold.js';
import { aReleasedBag, aStartedRun } from '../support/a-tip.js';
import { anEnrolledTablet, signInByForm } from '../support/a-browser-session.js';
import { aBag } from '../support/a-bag.js';
import { aPerson, type TestPerson } from '../support/a-person.js';
import { aPlant, type Plant } from '../support/a-plant.js';
import { openLastingContext } from '../support/browser.js';
import { openWithBagList } from '../support/device-lists.js';
import { openFront, type Front } from '../support/front.js';
import { asking, openHouse, type TestHouse } from '../support/house.js';
import { scanOn } from '../support/scanner.js';

let house: TestHouse;
let plant: Plant;
let lead: TestPerson;
let other: TestPerson;
let front: Front;
let linePath: string;
let token: string;
let folder: string;
let context: BrowserContext;
let page: Page;

beforeAll(async () => {
  house = await openHouse();
  plant = await aPlant(house);
  lead = await aPerson(house, plant.siteId, { roles: ['line-lead'], name: 'Ada Fern' });
  other = await aPerson(house, plant.siteId, { roles: ['line-lead'], name: 'Ben Sorrel' });
  token = await anEnrolledTablet(house, plant.siteId, 'tablet-1');
  await aStartedRun(house, plant);
  linePath = `/line/${plant.lineIds[0]}`;
  await house.app.listen(0, '127.0.0.1');
  front = await openFront(await house.app.getUrl());
  folder = mkdtempSync(join(tmpdir(), 'packthread-browser-'));
  await openTablet();
  await context.addCookies([{ name: 'packthread-device', value: token, url: front.address, expires: inAYear() }]);
}, 120_000);

afterAll(async () => {
  await context.close();
  await front.close();
  await house.close();
  rmSync(folder, { recursive: true, force: true });
});

afterEach(async () => {
  front.watch(null);
  await front.mend();
});

const inAYear = (): number => Math.floor(Date.now() / 1000) + 31_536_000;

async function openTablet(): Promise<void> {
  context = await openLastingContext(folder);
  page = context.pages()[0] ?? (await context.newPage());
}

async function open(path: string): Promise<void> {
  await page.goto(front.address + path);
  await page.waitForFunction(() => document.body.dataset['ready'] === 'yes');
}

/** Signed in, the page seen once under the service worker, and the list of bags kept. */
async function settle(person: TestPerson): Promise<void> {
  await page.goto(`${front.address}/sign-in`);
  await signInByForm(context, front.address, person);
  await open(linePath);
  await page.evaluate(async () => navigator.serviceWorker.ready.then(() => undefined));
  // A page that was on its way while the worker began is taken in hand from its next load on.
  await openWithBagList(page, front.address + linePath);
}

async function scan(code: string): Promise<void> {
  await scanOn(page, code);
}

describe('a tablet whose network is away', () => {
  it('shows the page of work as it was, says since when, and another page says what can be done', async () => {
    await settle(lead);
    await front.cut();
    await open(linePath);
    expect(await page.locator('#off-line').innerText()).toContain('Off line');
    expect(await page.locator('.who').innerText()).toContain('Ada Fern');
    await page.goto(`${front.address}/pallets`).catch(() => undefined);
    expect(await page.locator('h1').innerText()).toBe('No network');
    expect(await page.locator('a').count()).toBeGreaterThan(0);
  }, 60_000);

  it('knows a scanned bag from its list, in the must-not colour when it is on hold, and enters the tip all the same', async () => {
    const good = await aReleasedBag(house, plant);
    const held = await aReleasedBag(house, plant);
    const brown = await aBag(house, plant, { gradeId: plant.otherGradeId });
    await house.get(PlaceHold).execute(asking(plant.actor), { kind: 'bulk-bag', id: held.id, reason: 'torn' });
    await settle(lead);
    await front.cut();
    await scan(good.number);
    await page.locator('#band .word', { hasText: 'RELEASED' }).waitFor();
    await scan(brown.number);
    await page.locator('#band .word', { hasText: 'OTHER GRADE' }).waitFor();
    expect(await page.locator('#band').getAttribute('class')).toContain('must-not');
    await scan(held.number);
    await page.locator('#band .word', { hasText: 'HOLD' }).waitFor();
    expect(await page.locator('#band').getAttribute('class')).toContain('must-not');
    await page.locator('#band .acts button').click();
    await page.locator('#band .word', { hasText: 'ON THIS DEVICE' }).waitFor();
    expect(await page.locator('#waiting').innerText()).toContain('one entry waits');
    const swapped = held.number.slice(0, 5) + (held.number[6] ?? '') + (held.number[5] ?? '') + held.number.slice(7);
    if (swapped !== held.number) {
      await scan(swapped);
      await page.locator('#band .word', { hasText: 'CHECK' }).waitFor();
    }
  }, 60_000);

  it('has lost nothing when the browser was closed meanwhile, and sends it when the network is back', async () => {
    await front.cut();
    await context.close();
    await openTablet();
    await open(linePath);
    expect(await page.locator('#waiting').innerText()).toContain('one entry waits');
    await front.mend();
    await page.evaluate(() => dispatchEvent(new Event('online')));
    await page.waitForFunction(() => document.getElementById('waiting')?.textContent.includes('waits') !== true);
    await open('/device/queue');
    await page.locator('#entries tbody tr').first().waitFor();
    expect(await page.locator('#entries tbody tr').first().innerText()).not.toContain('on this device');
  }, 60_000);

  it('keeps the settings of a line as they were seen, never with a figure that was advised then', async () => {
    const path = `/lines/${plant.lineIds[0]}/settings`;
    // What waits is told by how long ago it was: the run began before.
    house.clock.pass(10);
    await settle(lead);
    await open(path);
    await open(`${path}?setpointGrams=2003.4`);
    await front.cut();
    await open(path);
    expect(await page.locator('#off-line').innerText()).toContain('Off line');
    expect(await page.locator('[name=setpointGrams]').inputValue()).toBe('');
    await page.locator('[name=setpointGrams]').fill('2004');
    await page.locator('[name=reason]').fill('Mean low');
    await page.getByRole('button', { name: 'RECORD THE SETTING' }).click();
    await page.locator('#said-here .word', { hasText: 'ON THIS DEVICE' }).waitFor();
    await page.goto(`${front.address}${path}?setpointGrams=2003.4`).catch(() => undefined);
    expect(await page.locator('h1').innerText()).toBe('No network');
    await front.mend();
    await open(path);
    await page.evaluate(() => dispatchEvent(new Event('online')));
    const row = page.locator('main table', { hasText: /setpoint 2.004\.00 g/ });
    for (let turn = 0; turn < 40 && (await row.count()) === 0; turn += 1) {
      await page.waitForTimeout(250);
      await open(path);
    }
    expect(await row.count()).toBe(1);
  }, 60_000);

  it('waits longer for what answers an entry than for a page: a copy would not know of it', async () => {
    await settle(lead);
    await open(`${linePath}/level`);
    const late: string[] = [];
    front.watch(async (what, way) => {
      if (what === `GET ${linePath}` && way === 'there') {
        late.push(what);
        await new Promise((resolve) => setTimeout(resolve, 6000));
      }
      return true;
    });
    await page.locator('#run-down input:not([type=hidden])').first().fill('5');
    await page.getByRole('button', { name: 'RUN DOWN' }).click();
    await page.waitForURL((url) => url.pathname === linePath, { timeout: 20_000 });
    await page.waitForFunction(() => document.body.dataset['ready'] === 'yes');
    expect(late).toHaveLength(1);
    expect(await page.locator('#off-line').count()).toBe(0);
    expect(await page.locator('main').innerText()).toContain('Recorded.');
    // A page that nobody's entry leads to is shown as it was before.
    await page.goto(front.address + linePath);
    expect(await page.locator('#off-line').count()).toBe(1);
  }, 60_000);

  it('shows nobody the pages of who was here before', async () => {
    await settle(lead);
    await page.locator('.who button[type=submit]').first().click();
    await page.waitForURL(/sign-in/);
    await front.cut();
    await page.goto(front.address + linePath).catch(() => undefined);
    expect(await page.locator('body').innerText()).not.toContain('Ada Fern');
    await front.mend();
    await settle(other);
    await front.cut();
    await open(linePath);
    expect(await page.locator('.who').innerText()).toContain('Ben Sorrel');
  }, 60_000);
});
