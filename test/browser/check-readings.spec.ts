import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { aCheckPlan } from '../support/a-check-plan.js';
import { signedInBrowser } from '../support/a-browser-session.js';
import { aPerson } from '../support/a-person.js';
import { aPlant, type Plant } from '../support/a-plant.js';
import { aRun } from '../support/a-run.js';
import { accessibilityFindings, openBrowser } from '../support/browser.js';
import { openHouse, type TestHouse } from '../support/house.js';
import { lineChecksOf } from '../../src/line-checks/line-checks.js';
import { READER, type ReadFrom } from '../../src/platform/database/reading.js';

let house: TestHouse;
let plant: Plant;
let browser: Browser;
let context: BrowserContext;
let page: Page;
let policyReports: string[];
let address: string;
let planId: string;

beforeAll(async () => {
  house = await openHouse();
  plant = await aPlant(house);
  planId = await aCheckPlan(house, plant, {
    testPieces: [
      { code: 'two', says: 'Test pack 2 kg', knownMilligrams: 2_000_000, allowedMilligrams: 2000 },
      { code: 'one', says: 'Test pack 1 kg', knownMilligrams: 1_000_000, allowedMilligrams: 1000 },
    ],
  });
  await aRun(house, plant, { packCount: 0 });
  await house.app.listen(0, '127.0.0.1');
  address = (await house.app.getUrl()).replace('[::1]', '127.0.0.1');
  browser = await openBrowser();
  const lead = await aPerson(house, plant.siteId, { roles: ['line-lead'] });
  ({ context, policyReports } = await signedInBrowser(browser, address, lead));
  page = await context.newPage();
}, 120_000);

afterAll(async () => {
  await context.close();
  await browser.close();
  await house.close();
});

const open = async (): Promise<void> => {
  await page.goto(`${address}/line/${plant.lineIds[0]}/checks/${planId}`);
  await page.locator('body[data-ready=yes]').waitFor();
};
const sign = () => page.locator('form.entry button[type=submit]');
const saidOf = (place: number) => page.locator(`[data-verdict-of=reading${place}]`);
const focused = () => page.evaluate(() => document.activeElement?.getAttribute('name'));
const lastCheck = async () =>
  (await lineChecksOf(house.app.get<ReadFrom>(READER, { strict: false }), plant.siteId, { limit: 1 }))[0];

describe('the readings of a weigher', () => {
  it('come first: nothing asks for passed or failed, and nothing can be signed before they are there', async () => {
    await open();
    expect(await accessibilityFindings(page)).toEqual([]);
    expect(await focused()).toBe('reading0');
    expect(await sign().isDisabled()).toBe(true);
    expect(await page.getByRole('radio').count()).toBe(0);
    expect(await page.getByRole('button', { name: /passed/i }).count()).toBe(0);
  }, 60_000);

  it('typed by a scale go from field to field, are judged, and are signed as they came out', async () => {
    await open();
    await page.keyboard.type('2000,4');
    await page.keyboard.press('Enter');
    expect(await focused()).toBe('reading1');
    expect(await saidOf(0).textContent()).toBe('+0.4 g, within ± 2 g: passed');
    expect(await sign().isDisabled()).toBe(true);
    await page.keyboard.type('999');
    await page.keyboard.press('Enter');
    expect(await page.locator('[data-check-verdict]').textContent()).toMatch(/^PASSED/);
    expect(await sign().textContent()).toBe('SIGN: PASSED');
    expect(await accessibilityFindings(page)).toEqual([]);
    await page.keyboard.press('Enter');
    await page.waitForURL(/\/checks$/);
    expect(await lastCheck()).toMatchObject({
      passed: true,
      results: [{ measuredMilligrams: 2_000_400 }, { measuredMilligrams: 999_000 }],
    });
  }, 60_000);

  it('that fail ask what was done at once, and only then', async () => {
    house.clock.pass(30);
    await open();
    await page.keyboard.type('2000');
    await page.keyboard.press('Enter');
    await page.keyboard.type('1001.1');
    await page.keyboard.press('Enter');
    expect(await saidOf(1).textContent()).toBe('+1.1 g, beyond ± 1 g: FAILED');
    expect(await focused()).toBe('action');
    expect(await accessibilityFindings(page)).toEqual([]);
    await page.getByLabel('Test pack 1 kg').fill('1001');
    expect(await page.getByRole('radio').count()).toBe(0);
    await page.getByLabel('Test pack 1 kg').fill('1001.1');
    await page.getByRole('radio', { name: 'Adjusted' }).check();
    await sign().click();
    await page.waitForURL(/\/checks\/[0-9a-f-]{36}$/);
    expect(await page.textContent('main')).toContain('+1.1 g, beyond ± 1 g: FAILED');
    expect(await lastCheck()).toMatchObject({ passed: false, action: 'adjusted' });
  }, 60_000);

  it.each([
    ['2.0004', 'A thousandth of what it weighs'],
    ['2,000', 'A thousandth of what it weighs'],
    ['2000400', 'A thousand times what it weighs'],
    ['-2', 'Less than nothing'],
    ['20000', 'Far more than it weighs'],
    ['NaN', 'This is no number'],
  ])(
    'that cannot be meant cannot be signed: %s',
    async (typed, says) => {
      await open();
      await page.getByLabel('Test pack 2 kg').fill(typed);
      await page.getByLabel('Test pack 1 kg').fill('1000');
      expect(await saidOf(0).textContent()).toContain(says);
      expect(await sign().isDisabled()).toBe(true);
    },
    60_000,
  );

  it('may be that the weigher shows nothing, which fails', async () => {
    await open();
    await page.getByLabel('Test pack 1 kg').fill('1000');
    await page.getByLabel('It shows nothing').first().check();
    expect(await sign().textContent()).toBe('SIGN: FAILED');
    await page.getByLabel('Test pack 2 kg').fill('2000');
    expect(await sign().isDisabled()).toBe(true);
  }, 60_000);

  it('were reported by nothing that the policy of the pages forbids', () => {
    expect(policyReports).toEqual([]);
  });
});
