import { mkdirSync } from 'node:fs';
import { setTimeout as delay } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { Browser, Page } from 'playwright-core';
import { deliveryOf } from '../../src/dispatch/deliveries.js';
import { CloseRun } from '../../src/packing/close-run.js';
import type { PalletAnswer } from '../../src/pallets/add-pallet.js';
import { readerOf } from '../support/a-bag.js';
import { aDelivery, palletLoaded, unitsCounted } from '../support/a-delivery.js';
import { aPackedRun, aPallet, aTippedBag } from '../support/a-pallet.js';
import { aPerson, type TestPerson } from '../support/a-person.js';
import { aPlant, type Plant } from '../support/a-plant.js';
import { accessibilityFindings, openBrowser, openContext, pressAccessKey } from '../support/browser.js';
import { asking, openHouse, type TestHouse } from '../support/house.js';
import { scanOn } from '../support/scanner.js';

let house: TestHouse;
let plant: Plant;
let browser: Browser;
let address: string;
let clerk: TestPerson;
let loader: TestPerson;
let quality: TestPerson;
const policyReports: string[] = [];

beforeAll(async () => {
  house = await openHouse();
  plant = await aPlant(house, { packsPerPallet: 100, capacityGrams: 30_000_000 });
  const person = (name: string, role: 'dispatch-clerk' | 'loader' | 'quality-officer') =>
    aPerson(house, plant.siteId, { name, roles: [role] });
  clerk = await person('C. Lerk', 'dispatch-clerk');
  loader = await person('L. Oader', 'loader');
  quality = await person('Q. Officer', 'quality-officer');
  await house.app.listen(0, '127.0.0.1');
  address = (await house.app.getUrl()).replace('[::1]', '127.0.0.1');
  browser = await openBrowser();
}, 120_000);

afterAll(async () => {
  await browser.close();
  await house.close();
});

async function pallets(palletCount: number, code = 'L6071A1'): Promise<readonly PalletAnswer[]> {
  await aTippedBag(house, plant);
  const run = await aPackedRun(house, plant, { packCount: palletCount * 100, code });
  const built: PalletAnswer[] = [];
  for (let place = 0; place < palletCount; place += 1) {
    built.push(await aPallet(house, plant, { run: run.runId, placeId: plant.placeIds.store }));
  }
  const ended = { packCount: palletCount * 100, loosePackCount: 0 };
  await house.get(CloseRun).execute(asking(plant.actor), run.runId, ended);
  house.clock.pass(1);
  return built;
}

async function at(person: TestPerson, path: string, size = { width: 1280, height: 800 }): Promise<Page> {
  const opened = await openContext(browser, size);
  const page = await opened.context.newPage();
  page.on('close', () => policyReports.push(...opened.policyReports));
  await page.goto(`${address}/sign-in?next=${encodeURIComponent(path)}`);
  await page.locator('#code').or(page.getByLabel(/code/i)).first().fill(person.code);
  await page
    .getByLabel(/password/i)
    .first()
    .fill(person.password);
  await page.keyboard.press('Enter');
  await page.waitForURL(address + path);
  await page.locator('body[data-ready=yes]').waitFor();
  return page;
}

/** A scanner types fast, ends with Enter, and asks for no focus. */
async function scan(page: Page, code: string): Promise<void> {
  await page.evaluate(() => {
    (document.activeElement as HTMLElement | null)?.blur();
  });
  await scanOn(page, code);
}

async function seen(page: Page, name: string): Promise<void> {
  const serious = (await accessibilityFindings(page)).filter((one) => /^(serious|critical|moderate)/.test(one));
  expect([name, serious]).toEqual([name, []]);
  const folder = process.env['PICTURES_FOLDER'];
  if (folder === undefined) return;
  mkdirSync(folder, { recursive: true });
  await page.screenshot({ path: `${folder}/${name}.png`, fullPage: true });
}

describe('the dispatch clerk at the desk, by keyboard and scanner alone', () => {
  it('checks, scans, counts, closes and lets the vehicle go; Enter alone prints nothing', async () => {
    const [first, second] = await pallets(2);
    const id = await aDelivery(house, plant, {
      failedPoints: null,
      lines: [{ formatId: plant.formatId, orderedCount: 200 }],
    });
    const page = await at(clerk, '/dispatch');
    await seen(page, 'dispatch-today');
    await page.goto(`${address}/dispatch/${id}`);
    await pressAccessKey(page, 'v');
    await page.waitForURL(/\/check$/);
    await page.getByLabel('Registration').focus();
    await page.keyboard.type('AQ 123 D');
    await page.keyboard.press('Tab');
    await page.keyboard.type('H-01');
    for (let point = 0; point < 5; point += 1) {
      await page.keyboard.press('Tab');
      await page.keyboard.press('Space');
    }
    await seen(page, 'dispatch-check');
    await page.keyboard.press('Enter');
    await page.waitForURL(`${address}/dispatch/${id}`);
    await page.locator('body[data-ready=yes]').waitFor();
    await scan(page, first!.sscc);
    await page.locator('#band', { hasText: 'YES' }).waitFor();
    await page.locator('body[data-ready=yes]').waitFor();
    await scan(page, `00${second!.sscc}`);
    await page.locator('#band', { hasText: second!.sscc.slice(-4) }).waitFor();
    await page.locator('body[data-ready=yes]').waitFor();
    await seen(page, 'dispatch-loading');
    await pressAccessKey(page, 'c');
    await page.waitForURL(/\/count$/);
    await page.getByLabel(/Pallets and bags/).focus();
    await page.keyboard.type('2');
    await page.keyboard.press('Enter');
    await page.waitForURL(`${address}/dispatch/${id}`);
    await pressAccessKey(page, 'p');
    await page.waitForURL(/\/close$/);
    await page.getByLabel('Seal').focus();
    await page.keyboard.type('S777');
    await page.keyboard.press('Enter');
    await page.getByText('Nothing is printed yet').waitFor();
    expect(await deliveryOf(readerOf(house), id)).toMatchObject({ status: 'loading' });
    await seen(page, 'dispatch-close');
    await pressAccessKey(page, 'p');
    await page.waitForURL(`${address}/dispatch/${id}`);
    await page.getByText(/Papers are printed/).waitFor();
    await pressAccessKey(page, 'g');
    await page.waitForURL(/\/leave$/);
    await pressAccessKey(page, 'g');
    await page.waitForURL(`${address}/dispatch/${id}`);
    expect(await deliveryOf(readerOf(house), id)).toMatchObject({ status: 'left' });
    await pressAccessKey(page, 'r');
    await page.waitForURL(/\/return$/);
    await seen(page, 'dispatch-return');
    await page.locator('body[data-ready=yes]').waitFor();
    await page.keyboard.press('Escape');
    await page.waitForURL(`${address}/dispatch/${id}`);
    for (const path of ['new', 'stock']) {
      await page.goto(`${address}/dispatch/${path}`);
      await seen(page, `dispatch-${path}`);
    }
    await page.close();
  }, 240_000);
});

describe('a lot is put on hold while three of its pallets are on the open vehicle', () => {
  it('locks printing on the clerk’s screen within two seconds and names the three', async () => {
    const on = await pallets(3);
    const id = await aDelivery(house, plant, { lines: [{ formatId: plant.formatId, orderedCount: 300 }] });
    for (const { sscc } of on) await palletLoaded(house, plant, id, sscc);
    await unitsCounted(house, plant, id, 3);
    const page = await at(clerk, `/dispatch/${id}`);
    await page.locator(`a[href="/dispatch/${id}/close"]`).waitFor();
    const officer = await at(quality, '/holds');
    const lot = await readerOf(house).sql<{ lotId: string }>`
      SELECT "lot_id" AS "lotId" FROM "pallet_content" WHERE "pallet_id" = ${on[0]!.id} LIMIT 1`;
    const csrf = (await officer.locator('body').getAttribute('data-csrf')) ?? '';
    const before = performance.now();
    const answer = await officer.request.post(`${address}/api/holds`, {
      headers: { 'x-csrf-token': csrf, 'Idempotency-Key': `drill-${Date.now()}` },
      data: { kind: 'lot', id: lot[0]!.lotId, reason: 'a stone was found' },
    });
    expect([answer.status(), answer.ok() ? null : await answer.text()]).toEqual([201, null]);
    await page.locator('#loading [role=alert]').waitFor({ timeout: 10_000 });
    const seconds = (performance.now() - before) / 1000;
    const text = await page.locator('#loading [role=alert]').innerText();
    for (const { sscc } of on) expect(text).toContain(sscc.slice(-4));
    expect(await page.locator(`a[href="/dispatch/${id}/close"]`).count()).toBe(0);
    expect(seconds).toBeLessThan(2);
    await seen(page, 'dispatch-held');
    await officer.close();
    await page.close();
  }, 120_000);
});

describe('the loader on the dock, with a handheld of 412 × 915', () => {
  it('loses no scan that comes while the one before is still being sent, and names one that came after a no', async () => {
    const [first, second, third] = await pallets(3, 'L6071A8');
    const id = await aDelivery(house, plant, {
      orderNumber: 'DOCK-2',
      lines: [{ formatId: plant.formatId, orderedCount: 300 }],
    });
    const page = await at(loader, `/dock/${id}`, { width: 412, height: 915 });
    // Both are on their way to the browser before the first is answered, however busy the machine is.
    const scanBoth = async (one: string, next: string): Promise<void> => {
      await page.route('**/scans', async (route) => {
        await delay(1000);
        await route.continue();
      });
      await scanOn(page, one, next);
    };
    await scanBoth(first!.sscc, second!.sscc);
    await page.locator('#band', { hasText: second!.sscc.slice(-4) }).waitFor();
    expect(await deliveryOf(readerOf(house), id)).toMatchObject({ loadedCount: 2 });
    await page.locator('body[data-ready=yes]').waitFor();
    await page.unroute('**/scans');
    await scanBoth('095201230000999995', third!.sscc);
    await page.getByText(`Not taken meanwhile: ${third!.sscc}`).waitFor();
    expect(await page.locator('#band').innerText()).toContain('NO');
    expect(await deliveryOf(readerOf(house), id)).toMatchObject({ loadedCount: 2 });
    await page.close();
  }, 120_000);

  it('chooses the vehicle, scans yes and no, takes off, and finds no way to close', async () => {
    const [pallet] = await pallets(1, 'L6071A9');
    const id = await aDelivery(house, plant, { orderNumber: 'DOCK-1' });
    const page = await at(loader, '/dock', { width: 412, height: 915 });
    await seen(page, 'dock-list');
    await page.getByRole('link', { name: /DOCK-1/ }).click();
    await page.waitForURL(`${address}/dock/${id}`);
    await page.locator('body[data-ready=yes]').waitFor();
    await scan(page, pallet!.sscc);
    await page.locator('#band', { hasText: 'YES' }).waitFor();
    await page.locator('body[data-ready=yes]').waitFor();
    await seen(page, 'dock-yes');
    await scan(page, '095201230000999995');
    await page.locator('#band', { hasText: 'NO' }).waitFor();
    await seen(page, 'dock-no');
    const wide = await page.evaluate(() => document.documentElement.scrollWidth);
    expect(wide).toBeLessThanOrEqual(412);
    const off = await page.getByRole('link', { name: /^Take off/ }).boundingBox();
    expect(off?.height).toBeGreaterThanOrEqual(48);
    await page.getByRole('link', { name: /^Take off/ }).click();
    await page.getByLabel('Why').fill('wrong vehicle');
    await page.keyboard.press('Enter');
    await page.waitForURL(`${address}/dock/${id}`);
    expect(await page.getByText(/close and print/i).count()).toBe(0);
    await page.close();
  }, 120_000);
});

describe('all these pages', () => {
  it('were shown without one report of the content security policy', () => {
    expect(policyReports).toEqual([]);
  });
});
