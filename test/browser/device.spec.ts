import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { Burst, JustScanned } from '../../src/platform/web/client/burst.js';
import { cardTenths, sizeStyle, steppedTenths } from '../../src/desks/device/true-size.js';
import { signInByForm } from '../support/a-browser-session.js';
import { aPerson } from '../support/a-person.js';
import { aPlant } from '../support/a-plant.js';
import { accessibilityFindings, openBrowser } from '../support/browser.js';
import { openFront, type Front } from '../support/front.js';
import { openHouse, type TestHouse } from '../support/house.js';
import { tryPage } from '../support/try-page.js';

describe('keys that come from somewhere', () => {
  const habit = { prefix: '', suffix: 'Enter' };
  const typed = (burst: Burst, text: string, gap: number): string | null => {
    [...text].forEach((key, place) => burst.take({ key, at: place * gap }));
    return burst.take({ key: 'Enter', at: text.length * gap });
  };

  it.each([7, 12, 16, 30])('are a scan when %i milliseconds lie between them', (gap) => {
    expect(typed(new Burst(habit), 'B0012344', gap)).toBe('B0012344');
  });

  it.each([31, 60, 79, 81, 150])('are a person’s when %i milliseconds lie between them', (gap) => {
    expect(typed(new Burst(habit), 'B0012344', gap)).toBeNull();
  });

  it('takes no Tab for the middle of a scan: who goes on to a button typed what stands before', () => {
    const burst = new Burst(habit);
    [...'1234567'].forEach((key, place) => burst.take({ key, at: place * 8 }));
    burst.take({ key: 'Tab', at: 60 });
    expect(burst.take({ key: 'Enter', at: 68 })).toBeNull();
  });

  it('are a scan with one key that came late, and none with five characters', () => {
    const burst = new Burst(habit);
    [0, 10, 20, 30, 95, 105, 115, 125].forEach((at, place) => burst.take({ key: 'B0012344'.charAt(place), at }));
    expect(burst.take({ key: 'Enter', at: 135 })).toBe('B0012344');
    expect(typed(new Burst(habit), 'B0012', 10)).toBeNull();
  });

  it('lose the prefix that this scanner sends, and end by its own key', () => {
    expect(typed(new Burst({ prefix: '~', suffix: 'Enter' }), '~B0012344', 10)).toBe('B0012344');
    const burst = new Burst({ prefix: '', suffix: 'Tab' });
    [...'B0012344'].forEach((key, place) => burst.take({ key, at: place * 10 }));
    expect(burst.take({ key: 'Tab', at: 80 })).toBe('B0012344');
  });

  it('of the same code count again after five seconds, not before', () => {
    const just = new JustScanned();
    expect([just.isAgain('A', 0), just.isAgain('A', 4999), just.isAgain('B', 5000), just.isAgain('A', 5001)]).toEqual([
      false,
      true,
      false,
      false,
    ]);
    expect(just.isAgain('A', 10_001)).toBe(false);
  });
});

describe('the true size of a screen', () => {
  it('is the browser’s own until somebody measures, and never beyond what a screen can be', () => {
    expect(cardTenths(undefined)).toBe(3235);
    expect(cardTenths('nonsense')).toBe(3235);
    expect(steppedTenths(3235, '1')).toBe(3245);
    expect(steppedTenths(3235, '-10')).toBe(3135);
    expect(steppedTenths(1200, '-10')).toBe(1200);
    expect(steppedTenths(12_000, '10')).toBe(12_000);
    expect(sizeStyle('4280')).toBe(':root{--mm:5.0000px}\n');
    expect(sizeStyle(undefined)).not.toContain('--mm:');
    expect(sizeStyle('}body{display:none')).toBe(':root{--mm:3.7792px}\n');
  });
});

describe('the pages of a device', () => {
  let house: TestHouse;
  let front: Front;
  let browser: Browser;
  let context: BrowserContext;
  let page: Page;

  beforeAll(async () => {
    house = await openHouse();
    const plant = await aPlant(house);
    const person = await aPerson(house, plant.siteId);
    await house.app.listen(0, '127.0.0.1');
    front = await openFront(await house.app.getUrl(), tryPage);
    browser = await openBrowser();
    context = await browser.newContext({ hasTouch: true, isMobile: true, viewport: { width: 1280, height: 800 } });
    await signInByForm(context, front.address, person);
    page = await context.newPage();
  }, 120_000);
  afterAll(async () => {
    await browser.close();
    await front.close();
    await house.close();
  });

  async function open(path: string): Promise<void> {
    await page.goto(front.address + path);
    await page.waitForFunction(() => document.body.dataset['ready'] === 'yes');
  }

  it.each(['/device', '/device/size', '/device/scanner', '/device/queue'])('axe finds nothing on %s', async (path) => {
    await open(path);
    expect(await accessibilityFindings(page)).toEqual([]);
  });

  it('make a millimetre true: the card as drawn, and the keys by it', async () => {
    await open('/device/size');
    const before = (await page.locator('.bank-card').boundingBox())?.width ?? 0;
    await page.getByRole('button', { name: '10 wider' }).click();
    await page.waitForFunction(
      (old) => (document.querySelector('.bank-card')?.getBoundingClientRect().width ?? 0) > old,
      before,
    );
    const card = (await page.locator('.bank-card').boundingBox())?.width ?? 0;
    await page.reload();
    const mm = await page.evaluate(() => getComputedStyle(document.documentElement).getPropertyValue('--mm'));
    expect(card - before).toBeCloseTo(10, 1);
    expect(Number.parseFloat(mm)).toBeCloseTo(card / 85.6, 2);
  });

  it.each([
    ['PT0123456789-ABCDEFGHIJKLMNOPQRSTUVWXYZ', 'sends every character'],
    ['PT0123456789ßABCDEFGHIJKLMNOPQRSTUVWXZY', '- arrives as ß.'],
    ['pt0123456789-abcdefghijklmnopqrstuvwxyz', 'small letters'],
    ['~PT0123456789-ABCDEFGHIJKLMNOPQRSTUVWXYZ', '“~” before a code'],
    ['SOMETHING ELSE', 'is not the reference code'],
  ])('say in words what a scanner does that sends %s', async (sent, says) => {
    await open('/device/scanner');
    await page.evaluate(
      (keys) => {
        for (const key of keys) document.body.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true }));
      },
      [...sent, 'Enter'],
    );
    await page.locator('#scanner-test', { hasText: says }).waitFor({ timeout: 5000 });
  });

  it('offer keys of twenty millimetres under a number field, and take them away again', async () => {
    await open('/device/size?try');
    await page.locator('#number').tap();
    const key = page.locator('.number-pad button', { hasText: '7' });
    const box = await key.boundingBox();
    const mm = await page.evaluate(() => getComputedStyle(document.documentElement).getPropertyValue('--mm'));
    expect(Math.min(box?.width ?? 0, box?.height ?? 0)).toBeGreaterThanOrEqual(20 * Number.parseFloat(mm) - 0.5);
    expect(await page.locator('#number').getAttribute('inputmode')).toBe('none');
    await key.tap();
    await page.locator('.number-pad button', { hasText: '.' }).tap();
    await page.locator('.number-pad button', { hasText: '.' }).tap();
    await page.getByRole('button', { name: '5', exact: true }).tap();
    await page.getByRole('button', { name: '5 more' }).tap();
    expect(await page.locator('#number').inputValue()).toBe('12.5');
    await page.getByRole('button', { name: 'Rub out the last digit' }).tap();
    expect(await page.locator('#number').inputValue()).toBe('12.');
    expect(await accessibilityFindings(page)).toEqual([]);
    await page.locator('.number-pad .done').tap();
    expect(await page.locator('.number-pad').count()).toBe(0);
    expect(await page.locator('#number').getAttribute('inputmode')).toBe('decimal');
  });

  it('leave in sight what the keyboard has gone on to, when the keys above it go', async () => {
    const before = page.viewportSize();
    await open('/device/size?try');
    await page.setViewportSize({ width: 1280, height: 330 });
    // A page that goes on below: its end does not hold it where it is.
    await page.locator('main').evaluate((main) => {
      for (let paragraphs = 0; paragraphs < 60; paragraphs += 1) main.append(document.createElement('hr'));
    });
    await page.locator('#number').focus();
    await page.locator('.number-pad').waitFor();
    await page.locator('#number').evaluate((field: HTMLInputElement) => {
      const stops = [...document.querySelectorAll<HTMLElement>('main input, main button, main select, main a')];
      const next = stops.slice(stops.indexOf(field) + 1).find((stop) => stop.closest('.number-pad') === null);
      next?.focus();
    });
    await page.locator('.number-pad').waitFor({ state: 'detached' });
    const seen = () =>
      page.evaluate(() => {
        const { top, bottom } = (document.activeElement ?? document.body).getBoundingClientRect();
        return [document.activeElement?.tagName, top >= 0, bottom <= innerHeight];
      });
    expect(await seen()).toEqual([expect.stringMatching(/INPUT|BUTTON|SELECT|A/), true, true]);
    if (before !== null) await page.setViewportSize(before);
  });
});
