import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { Browser, Page } from 'playwright-core';
import { aPerson, signedIn } from '../support/a-person.js';
import { aPlant } from '../support/a-plant.js';
import { aRun } from '../support/a-run.js';
import { accessibilityFindings, openBrowser, openContext } from '../support/browser.js';
import { openHouse, type TestHouse } from '../support/house.js';

/** A tablet, a desk, and a desk magnified four times. */
const sizes = [
  { width: 1024, height: 768 },
  { width: 1440, height: 900 },
  { width: 320, height: 256 },
];

describe('setting up a pack weigher and bringing its file, in a browser', () => {
  let house: TestHouse;
  let browser: Browser;
  let page: Page;
  let address: string;
  let reports: readonly string[];

  beforeAll(async () => {
    house = await openHouse();
    const plant = await aPlant(house);
    await aRun(house, plant);
    house.clock.pass(60);
    const person = await aPerson(house, plant.siteId, { roles: ['administrator', 'plant-manager'] });
    const { cookie } = await signedIn(house, person);
    await house.app.listen(0, '127.0.0.1');
    address = (await house.app.getUrl()).replace('[::1]', '127.0.0.1');
    browser = await openBrowser();
    const { context, policyReports } = await openContext(browser);
    const [name = '', value = ''] = (cookie.split(';')[0] ?? '').split('=');
    await context.addCookies([{ name, value, url: address }]);
    page = await context.newPage();
    reports = policyReports;
  }, 120_000);
  afterAll(async () => {
    await browser.close();
    await house.close();
  });

  async function hasNoFinding(): Promise<void> {
    for (const size of sizes) {
      await page.setViewportSize(size);
      expect(await accessibilityFindings(page)).toEqual([]);
      const runsOut = 'document.documentElement.scrollWidth > document.documentElement.clientWidth + 1';
      expect([page.url(), size, await page.evaluate(runsOut)]).toEqual([page.url(), size, false]);
    }
    await page.setViewportSize({ width: 1024, height: 768 });
  }

  /** Types into a field and leaves it; nothing is clicked. */
  async function type(name: string, text: string): Promise<void> {
    await page.locator(`#field-${name}`).focus();
    await page.keyboard.press('Control+A');
    await page.keyboard.type(text, { delay: 30 });
  }

  it('goes from the set-up to the stored weights by keyboard, and no page has a finding', async () => {
    await page.goto(`${address}/set-up`);
    await page.locator('a[href="/set-up/pack-weighers"]').first().focus();
    await page.keyboard.press('Enter');
    await page.waitForURL('**/set-up/pack-weighers');
    await hasNoFinding();
    await type('machineCode', 'weigher-1');
    await type('code', 'W1');
    await page.locator('#field-lineId').selectOption({ index: 1 });
    await type('stepGrams', '0.2');
    await type('errorGrams', '0.5');
    await page.keyboard.press('Enter');
    await page.locator('p.code').waitFor();
    await hasNoFinding();
    await page.locator('main a.act', { hasText: 'W1' }).focus();
    await page.keyboard.press('Enter');
    await page.locator('#form-withdrawal').waitFor();
    await hasNoFinding();
    await page.locator('#field-takesMqtt').focus();
    await page.keyboard.press('Space');
    await page.keyboard.press('Enter');
    await page.getByText('Saved.').waitFor();
    expect(await page.locator('#field-takesMqtt').isChecked()).toBe(true);
  }, 120_000);

  it('says what the columns mean, reads a file and stores it', async () => {
    await page.getByRole('link', { name: 'Files of this weigher' }).click();
    await hasNoFinding();
    await page.locator('#field-separator').selectOption('semicolon');
    await page.locator('#field-decimal').selectOption('comma');
    await page.locator('#field-timeOrder').selectOption('dmy');
    await page.locator('#field-unit').selectOption('g');
    await type('headerLines', '1');
    await type('timeColumn', 'Zeit');
    await type('timeZone', 'UTC');
    await type('netColumn', 'Netto');
    await page.keyboard.press('Enter');
    await page.locator('#field-file').waitFor();
    await hasNoFinding();
    const lines = Array.from({ length: 30 }, (_, second) => `12.03.2026 06:30:${10 + second};2001,5`);
    const buffer = Buffer.from(['Zeit;Netto', ...lines, 'Summe;60045'].join('\r\n'));
    await page.locator('#field-file').setInputFiles({ name: 'day.csv', mimeType: 'text/csv', buffer });
    await page.locator('#form-files button.act').focus();
    await page.keyboard.press('Enter');
    await page.getByText('30 new, 0 known already, 1 in error').waitFor();
    await hasNoFinding();
    await page.getByRole('button', { name: 'Store 30 weights, leave out 1 in error' }).focus();
    await page.keyboard.press('Enter');
    await page.getByText('30 weights stored, 0 known already, 1 left out.').waitFor();
    expect(reports).toEqual([]);
  }, 120_000);
});
