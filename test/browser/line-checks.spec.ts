import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { aCheckPlan } from '../support/a-check-plan.js';
import { signedInBrowser } from '../support/a-browser-session.js';
import { aPallet, aPackedRun } from '../support/a-pallet.js';
import { aPerson } from '../support/a-person.js';
import { aPlant, type Plant } from '../support/a-plant.js';
import { accessibilityFindings, openBrowser } from '../support/browser.js';
import { openHouse, type TestHouse } from '../support/house.js';

let house: TestHouse;
let plant: Plant;
let browser: Browser;
let context: BrowserContext;
let page: Page;
let policyReports: string[];
let address: string;
let planId: string;
let sscc: string;

beforeAll(async () => {
  house = await openHouse();
  plant = await aPlant(house);
  planId = await aCheckPlan(house, plant, {
    kind: 'metal-detection',
    station: 'Detector',
    testPieces: [
      { code: 'fe', says: 'Red card', material: 'ferrous', sphereMicrometres: 2000 },
      { code: 'sus', says: 'Green card', material: 'stainless', sphereMicrometres: 3500 },
    ],
  });
  const { runId } = await aPackedRun(house, plant);
  sscc = (await aPallet(house, plant, { run: runId, placeId: plant.placeIds.store })).sscc;
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

const checks = () => `${address}/line/${plant.lineIds[0]}/checks`;

describe('the lead at the line', () => {
  it('checks with two presses when all is well', async () => {
    await page.goto(checks());
    expect(await accessibilityFindings(page)).toEqual([]);
    await page.getByRole('link', { name: 'Check', exact: true }).click();
    await page.waitForURL(`${checks()}/${planId}`);
    expect(await accessibilityFindings(page)).toEqual([]);
    await page.getByRole('button', { name: 'All passed' }).click();
    await page.waitForURL(checks());
    expect(await page.textContent('#due-checks')).toContain('in 60 min');
  }, 60_000);

  it('has presses as high as a gloved thumb needs', async () => {
    await page.goto(`${checks()}/${planId}`);
    const box = await page.getByRole('button', { name: 'All passed' }).boundingBox();
    // 18 mm, by the millimetre of a ten-inch tablet (5.87 points).
    expect(box?.height).toBeGreaterThanOrEqual(105);
  }, 60_000);

  it('says which piece failed and what was done, and is told what that makes suspect', async () => {
    house.clock.pass(45);
    await page.goto(`${checks()}/${planId}`);
    await page.getByText('Something failed').click();
    const piece = (name: string, result: string) =>
      page.getByRole('group', { name }).getByRole('radio', { name: result }).check();
    await piece('Red card', 'passed');
    await piece('Green card', 'failed');
    await page.getByRole('radio', { name: 'Line stopped' }).check();
    await page.getByRole('button', { name: 'Record' }).click();
    await page.waitForURL(/\/checks\/[0-9a-f-]{36}$/);
    expect(await accessibilityFindings(page)).toEqual([]);
    expect(await page.textContent('main')).toContain('Nothing was packed');
  }, 60_000);

  it('was reported by nothing that the policy of the pages forbids', () => {
    expect(policyReports).toEqual([]);
  });
});

describe('quality, after the failure', () => {
  it('sees the banner on any page and, with the check before taken back, the pallet and one press', async () => {
    const officer = await aPerson(house, plant.siteId, { roles: ['quality-officer'] });
    const own = await signedInBrowser(browser, address, officer);
    const other = await own.context.newPage();
    await other.goto(`${address}/checks`);
    expect(await other.textContent('.banner.stop')).toContain('Detector');
    expect(await accessibilityFindings(other)).toEqual([]);
    const rows = other.getByRole('row').filter({ hasText: 'passed' });
    await rows.getByRole('link').first().click();
    await other.getByText('This check was not made').first().click();
    await other.getByLabel('Why').fill('the cards were not put through');
    await other.getByRole('button', { name: 'This check was not made' }).press('Enter');
    await other.goto(`${address}/checks/plans/${planId}`);
    expect(await other.textContent('main')).toContain(sscc);
    await other.getByRole('button', { name: /^Hold these 480 packs/ }).click();
    await other.getByText('Nothing is left to hold').waitFor();
    await own.context.close();
    expect(own.policyReports).toEqual([]);
  }, 60_000);
});
