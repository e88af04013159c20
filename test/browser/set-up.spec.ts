import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { Browser, Page } from 'playwright-core';
import { createFirstAdministrator } from '../../src/people/first-start.js';
import { accessibilityFindings, openBrowser, openContext } from '../support/browser.js';
import { openHouse, type TestHouse } from '../support/house.js';

/** Where pictures go, when somebody wants to look at them. */
const pictures = process.env['PICTURES'] ?? null;
const ownPassword = 'seven grey herons';

let house: TestHouse;
let browser: Browser;
let page: Page;
let policyReports: string[];
let address: string;
let first: { readonly code: string; readonly password: string };
/** What was typed or chosen by hand, and how often something was pressed. */
const counted = { fields: 0, taps: 0 };

beforeAll(async () => {
  house = await openHouse();
  const made = await createFirstAdministrator(house.app, {}, () => undefined);
  first = { code: made?.code ?? '', password: made?.password ?? '' };
  await house.app.listen(0, '127.0.0.1');
  address = (await house.app.getUrl()).replace('[::1]', '127.0.0.1');
  browser = await openBrowser();
  const opened = await openContext(browser);
  policyReports = opened.policyReports;
  page = await opened.context.newPage();
}, 120_000);

afterAll(async () => {
  await browser.close();
  await house.close();
});

async function signIn(code: string, password: string): Promise<void> {
  await page.context().clearCookies();
  await page.goto(`${address}/sign-in`);
  await page.fill('form:has([name="password"]) [name="code"]', code);
  await page.fill('[name="password"]', password);
  await page.press('[name="password"]', 'Enter');
  await page.waitForURL(/\/me$/);
  await page.fill('[name="oldPassword"]', password);
  await page.fill('[name="newPassword"]', ownPassword);
  await page.press('[name="newPassword"]', 'Enter');
  await page.waitForURL((url) => url.pathname !== '/me' && url.pathname !== '/change-password');
}

/** Fills the form of a step as a newcomer does, presses its act, and goes on. */
async function step(
  to: string,
  typed: Readonly<Record<string, string>>,
  chosen: readonly string[] = [],
): Promise<void> {
  await page.goto(`${address}/set-up/${to.split('/')[0] ?? ''}`);
  const form = page.locator(`form[action="/set-up/${to}"]`);
  for (const [name, value] of Object.entries(typed)) {
    const field = form.locator(`[name="${name}"]`);
    if ((await field.evaluate((one) => one.tagName)) === 'SELECT') await field.selectOption(value);
    else await field.fill(value);
    counted.fields += 1;
  }
  for (const says of chosen) {
    await form.getByText(says, { exact: false }).first().click();
    counted.taps += 1;
  }
  await form.locator('button[type="submit"]').click();
  counted.taps += 2;
  await page.waitForLoadState();
  expect([to, await form.locator('.trouble:visible').allInnerTexts()]).toEqual([to, []]);
}

async function picture(name: string): Promise<void> {
  if (pictures !== null) await page.screenshot({ path: `${pictures}/${name}.png`, fullPage: true, caret: 'initial' });
}

describe('a newcomer sets an empty plant up in a real browser', () => {
  it('is led to the set-up after the first sign-in, and finishes it with few fields', async () => {
    const begin = Date.now();
    await signIn(first.code, first.password);
    await page.goto(`${address}/`);
    await page.goto(`${address}/set-up`);
    await picture('set-up');
    await step('site', { name: 'Alder Quay', timeZone: 'Europe/Berlin' });
    await step('shifts', {});
    await step('scales', { name: 'Bag scale', intervalKilograms: '0.5', errorKilograms: '1' });
    await step('bag-types', {
      ...{ name: 'Four loops', usualTareGrams: '2', leastTareGrams: '1,8', mostTareGrams: '2,2' },
      safeLoadGrams: '1250',
    });
    await step('dryers', { name: 'Dryer 1' });
    await step('hoppers', { name: 'Hopper 1', capacityGrams: '4000' });
    await step('lines', { name: 'Line 1' });
    await step('grades', { name: 'White sugar', code: 'WS2', method1: 'GS2/1/3/9-15', maximum1: '0,06' });
    await picture('set-up-grades');
    await step('formats', {
      ...{ name: 'White sugar 1 kg', code: 'WS-1KG', gtin: '9520123000103', nominalGrams: '1000' },
      ...{ packTareGrams: '9', packsPerPallet: '840', palletTareGrams: '24', lowerGrams: '995', upperGrams: '1010' },
    });
    await picture('set-up-formats');
    await step('places', { code: 'LANE-1' });
    await step('customers', { name: 'Fernhill Foods (invented)', address: '1 Example Way' });
    await step('rules/vehicle-check', {});
    await page.goto(`${address}/set-up/people`);
    await page.fill('form[action="/set-up/people"] [name="name"]', 'Ilka Brandeis');
    await page.selectOption('form[action="/set-up/people"] [name="role"]', 'dryer-operator');
    await page.click('form[action="/set-up/people"] button[type="submit"]');
    counted.fields += 2;
    counted.taps += 2;
    await picture('set-up-password');
    // Typing takes a person five seconds a field and two a tap; ten minutes must do with room to spare.
    expect(counted.fields).toBeLessThanOrEqual(40);
    expect(counted.fields * 5 + counted.taps * 2).toBeLessThan(600);
    expect(Date.now() - begin).toBeLessThan(600_000);
    await page.goto(`${address}/set-up`);
    const text = await page.locator('main').innerText();
    expect(text).not.toContain('There is no');
    expect(text).toContain('Scale S1 was never checked');
  }, 240_000);

  it('fills a bag then by two taps and a weight', async () => {
    await page.goto(`${address}/set-up/people`);
    await page.click('a:text("Ilka Brandeis")');
    await page.click('form[action$="/passwords"] button[type="submit"]');
    const password = (await page.locator('.digits.code').innerText()).trim();
    await signIn('ibrandeis', password);
    await page.goto(`${address}/dryer`);
    await page.locator('.tile').first().click();
    await page.click('text="Start the run"');
    await picture('dryer-next');
    const before = { taps: 0, weights: 0 };
    const tap = async (says: string): Promise<void> => {
      const button = page.getByRole('button', { name: says });
      const box = await button.boundingBox();
      expect([says, (box?.height ?? 0) >= 100]).toEqual([says, true]);
      await button.click();
      before.taps += 1;
    };
    await tap('Bag on');
    await page.waitForSelector('[name="grossGrams"]');
    await picture('dryer-bag');
    // The weight has the focus already: it is only typed.
    await page.keyboard.type('1002,5');
    before.weights += 1;
    await tap('Close and label');
    await page.waitForURL(/label=/);
    await picture('dryer-closed');
    expect(before).toEqual({ taps: 2, weights: 1 });
    expect(await page.locator('main').innerText()).toMatch(/closed with 1\u202f000.5 kg net/);
  }, 120_000);

  it('has nothing for axe to find on these pages, and no report of the content security policy', async () => {
    const findings: string[] = [];
    for (const path of [
      '/dryer',
      '/dryer/moves',
      '/dryer/receipts',
      '/dryer/scales',
      '/today',
      '/set-up',
      '/set-up/people',
    ]) {
      await page.goto(address + path);
      await picture(`page${path.replaceAll('/', '-')}`);
      findings.push(...(await accessibilityFindings(page)).map((one) => `${path} ${one}`));
    }
    expect(findings).toEqual([]);
    expect(policyReports).toEqual([]);
  }, 120_000);
});
