import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { demoPeople } from '../../src/demo/set-up/demo-people.js';
import { codesToShow, type ShownCodes } from '../../src/demo/welcome.js';
import { resultsBySource } from '../../src/tracing/source-results.js';
import type { Thread } from '../../src/tracing/thread.js';
import { aDemo, type DemoHouse } from '../support/a-demo.js';
import { openBrowser, openContext } from '../support/browser.js';

let demo: DemoHouse;
let browser: Browser;
let context: BrowserContext;
let policyReports: string[];
let page: Page;
let address: string;
let codes: ShownCodes;

beforeAll(async () => {
  demo = await aDemo({ days: 2, seed: 1, size: 'usual' });
  await demo.app.listen(0, '127.0.0.1');
  address = (await demo.app.getUrl()).replace('[::1]', '127.0.0.1');
  codes = await codesToShow(demo.from, demo.truth);
  browser = await openBrowser();
  ({ context, policyReports } = await openContext(browser));
  page = await context.newPage();
}, 300_000);

afterAll(async () => {
  await browser.close();
  await demo.close();
});

async function signIn(role: string): Promise<void> {
  const person = demoPeople.find((one) => one.role === role);
  await page.goto(`${address}/sign-in`);
  await page
    .getByLabel(/code/i)
    .first()
    .fill(person?.code ?? '');
  await page
    .getByLabel(/password/i)
    .first()
    .fill(person?.password ?? '');
  await page.keyboard.press('Enter');
  await page.waitForURL((url) => !url.pathname.startsWith('/sign-in'));
}

describe('the quality officer at the desk, in a real browser', () => {
  it('signs in and types a code off a pack: sees shifts, bags with their results, pallets and customers', async () => {
    await signIn('quality-officer');
    await page.goto(`${address}/`);
    await page.waitForFunction(() => document.activeElement?.id === 'code');
    // A scanner types into the box that has the focus, and presses Enter.
    await page.keyboard.type(codes.packCode);
    await page.keyboard.press('Enter');
    await page.waitForURL(/\/thread\?/);
    const text = await page.locator('main').innerText();
    const answer = await page.request.get(`${address}/api/thread?code=${encodeURIComponent(codes.packCode)}`);
    const { thread } = (await answer.json()) as { thread: Thread };
    expect(thread.packed.length).toBeGreaterThan(0);
    expect(thread.sources.length).toBeGreaterThan(0);
    expect(thread.pallets.length).toBeGreaterThan(0);
    for (const { productionOn, shiftCode } of [
      ...thread.packed.flatMap((part) => part.packingShifts),
      ...thread.dryerShifts,
    ]) {
      expect(text).toContain(`${productionOn} shift ${shiftCode}`);
    }
    const results = resultsBySource(thread);
    for (const source of thread.sources) {
      const row = page.locator('tr', { hasText: source.bagNumber }).first();
      const cells = (await row.innerText()).replaceAll('\u202f', '');
      for (const grams of [source.leastGrams, source.likelyGrams, source.mostGrams]) {
        expect(cells).toContain((grams / 1000).toFixed(3));
      }
      for (const result of results.get(source.bagId) ?? []) expect(cells).toContain(result.amount);
    }
    for (const pallet of thread.pallets) {
      expect(text).toContain(pallet.sscc);
      if (pallet.customerName !== null) expect(text).toContain(pallet.customerName);
    }
  });

  it.each(['bagNumber', 'sscc'] as const)('follows the %s of the demo the same way', async (kind) => {
    await page.goto(`${address}/`);
    await page.waitForFunction(() => document.activeElement?.id === 'code');
    await page.keyboard.type(codes[kind]);
    await page.keyboard.press('Enter');
    await page.waitForURL(/\/thread\?/);
    expect(await page.locator('h1').innerText()).toContain(codes[kind]);
    expect(await page.getByText('The answer', { exact: true }).count()).toBe(1);
  });

  it('is told in words what to do about a code that nothing carries', async () => {
    await page.goto(`${address}/thread?code=${encodeURIComponent('NOTHING LIKE IT')}`);
    expect(await page.getByRole('alert').innerText()).toContain('NOTHING LIKE IT');
  });
});

describe('the keyboard', () => {
  it('shows where it is, and reaches the content at once', async () => {
    await page.goto(`${address}/bags`);
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('content');
    // Whoever went back into the frame of the page comes to the content at once again.
    await page.locator('a.skip').focus();
    const outline = await page.evaluate(() => getComputedStyle(document.activeElement ?? document.body).outlineStyle);
    expect(outline).not.toBe('none');
    await page.keyboard.press('Enter');
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('content');
  });

  it('met no report of the content security policy', () => {
    expect(policyReports).toEqual([]);
  });
});
