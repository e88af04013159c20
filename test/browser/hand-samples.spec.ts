import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { SetHandPlan } from '../../src/fill-weight/hand-plan/set-hand-plan.js';
import { signedInBrowser } from '../support/a-browser-session.js';
import { aPackWeigher } from '../support/a-pack-weigher.js';
import { aPerson } from '../support/a-person.js';
import { aPlant, type Plant } from '../support/a-plant.js';
import { aPackScale, aRun } from '../support/a-run.js';
import { accessibilityFindings, openBrowser } from '../support/browser.js';
import { asking, openHouse, type TestHouse } from '../support/house.js';

let house: TestHouse;
let plant: Plant;
let browser: Browser;
let context: BrowserContext;
let page: Page;
let policyReports: string[];
let address: string;

beforeAll(async () => {
  house = await openHouse();
  plant = await aPlant(house);
  const plan = { lineId: plant.lineIds[0], everyMinutes: 30, packCount: 5, graceMinutes: 10 };
  await house.get(SetHandPlan).execute(asking(plant.actor), plan);
  await aPackWeigher(house, plant);
  await aPackScale(house, plant);
  await aRun(house, plant);
  house.clock.pass(5);
  await house.app.listen(0, '127.0.0.1');
  address = (await house.app.getUrl()).replace('[::1]', '127.0.0.1');
  browser = await openBrowser();
  const lead = await aPerson(house, plant.siteId, { roles: ['line-lead', 'quality-officer'] });
  ({ context, policyReports } = await signedInBrowser(browser, address, lead));
  page = await context.newPage();
}, 120_000);

afterAll(async () => {
  await context.close();
  await browser.close();
  await house.close();
});

const line = () => `${address}/line/${plant.lineIds[0]}`;
const focused = () => page.evaluate(() => document.activeElement?.getAttribute('name') ?? document.activeElement?.id);
/** As a scale types: all keys at once, then Enter. */
const scaleTypes = async (text: string) => {
  await page.keyboard.type(text, { delay: 4 });
  await page.keyboard.press('Enter');
};

describe('packs weighed by hand', () => {
  it('are asked for on the page of the line, and one touch leads there', async () => {
    await page.goto(line());
    const due = page.locator('.line-points li', { hasText: 'A hand sample of 5 packs is due.' });
    await due.getByRole('link').click();
    await page.waitForURL(`${line()}/hand-samples`);
    expect(await accessibilityFindings(page)).toEqual([]);
  }, 60_000);

  it('are typed by the scale, field after field, and by its last Enter nothing is sent', async () => {
    await page.goto(`${line()}/hand-samples`);
    await page.waitForSelector('body[data-ready=yes]');
    expect(await focused()).toBe('net0');
    for (const [place, net] of ['2001.4', '2003.0', '1999.2', '2001.0'].entries()) {
      await scaleTypes(net);
      expect(await focused()).toBe(`net${place + 1}`);
    }
    // An Enter without a weight goes nowhere.
    await page.keyboard.press('Enter');
    expect(await focused()).toBe('net4');
    await scaleTypes('2002.6');
    expect(page.url()).toBe(`${line()}/hand-samples`);
    const typed = await page
      .locator('[data-goes-on]')
      .evaluateAll((all) => all.map((one) => (one as HTMLInputElement).value));
    expect(typed).toEqual(['2001.4', '2003.0', '1999.2', '2001.0', '2002.6']);
  }, 60_000);

  it('are recorded with the keyboard alone, and the page says in one line what to do', async () => {
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('RECORD THE SAMPLE');
    await page.keyboard.press('Shift+Tab');
    await page.keyboard.press('Shift+Tab');
    expect(await focused()).toBe('scaleId');
    await page.keyboard.press('P');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await page.waitForURL(/\/hand-samples\/[0-9a-f-]{36}$/);
    expect(await page.textContent('main .sentence')).toBe('IN ORDER: the mean is 1.44 g above nominal. Nothing to do.');
    expect(await accessibilityFindings(page)).toEqual([]);
  }, 60_000);

  it('have fields and a button as high as a gloved thumb needs', async () => {
    await page.goto(`${line()}/hand-samples`);
    // 18 mm, by the millimetre of a ten-inch tablet (5.87 points).
    for (const one of [page.locator('[name=net0]'), page.getByRole('button', { name: 'RECORD THE SAMPLE' })]) {
      expect((await one.boundingBox())?.height).toBeGreaterThanOrEqual(105);
    }
  }, 60_000);

  it('are corrected on a page, listed by run, and planned on another, without findings', async () => {
    await page.getByRole('row').nth(1).getByRole('link').click();
    await page.getByRole('link', { name: 'Correct or withdraw it' }).click();
    expect(await accessibilityFindings(page)).toEqual([]);
    await page.getByRole('radio', { name: 'It did not happen' }).check();
    await page.locator('[name=reason]').fill('packs of the other line');
    await page.getByRole('button', { name: 'See what this changes' }).click();
    await page.waitForURL(/\/runs\/[0-9a-f-]{36}\/hand-samples$/);
    expect(await page.textContent('main')).toContain('None was weighed.');
    expect(await accessibilityFindings(page)).toEqual([]);
    await page.goto(`${address}/set-up/weighing`);
    expect(await accessibilityFindings(page)).toEqual([]);
    expect(policyReports).toEqual([]);
  }, 60_000);
});
