import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { PlaceHold } from '../../src/tracing/place-hold.js';
import { signedInBrowser, signInByForm } from '../support/a-browser-session.js';
import { aBag } from '../support/a-bag.js';
import { aPerson, type TestPerson } from '../support/a-person.js';
import { aPlant, type Plant } from '../support/a-plant.js';
import { accessibilityFindings, openBrowser } from '../support/browser.js';
import { asking, openHouse, type TestHouse } from '../support/house.js';

let house: TestHouse;
let plant: Plant;
let lead: TestPerson;
let other: TestPerson;
let address: string;
let browser: Browser;
let context: BrowserContext;
let page: Page;

beforeAll(async () => {
  house = await openHouse();
  plant = await aPlant(house);
  lead = await aPerson(house, plant.siteId, { roles: ['quality-officer'], name: 'Ada Fern' });
  other = await aPerson(house, plant.siteId, { roles: ['quality-officer'], name: 'Ben Sorrel' });
  await house.app.listen(0, '127.0.0.1');
  address = await house.app.getUrl();
  browser = await openBrowser();
  ({ context } = await signedInBrowser(browser, address, lead));
  page = await context.newPage();
  await page.goto(`${address}/quality`);
  await page.waitForFunction(() => document.body.dataset['ready'] === 'yes');
}, 120_000);

afterAll(async () => {
  await browser.close();
  await house.close();
});

const line = (): ReturnType<Page['locator']> => page.locator('#no-longer-live');

async function placeHold(): Promise<string> {
  const bag = await aBag(house, plant);
  await house.get(PlaceHold).execute(asking(plant.actor), { kind: 'bulk-bag', id: bag.id, reason: 'torn' });
  return bag.number;
}

/** What the house says to an empty form that carries the token of the page's forms. */
function tokenProblem(): Promise<string> {
  return page.evaluate(async () => {
    const token = document.querySelector<HTMLInputElement>('form.who input[name=csrf]')?.value ?? '';
    const headers = { 'x-csrf-token': token, 'Idempotency-Key': crypto.randomUUID() };
    const answer = await fetch('/api/hold-classes', { method: 'POST', headers });
    return ((await answer.json()) as { type: string }).type;
  });
}

describe('a page that is open while its session ends', () => {
  it('says so at the next heartbeat, keeps what is typed, and shows nothing new any more', async () => {
    await page.locator('#find').fill('half a code');
    await context.request.delete(`${address}/api/sessions`, {
      headers: { 'x-csrf-token': await page.evaluate(() => document.body.dataset['csrf'] ?? '') },
    });
    await line().waitFor({ timeout: 20_000 });
    expect(await line().innerText()).toContain('You are signed out');
    expect(await tokenProblem()).toBe('problem:not-signed-in');
    expect(await page.locator('#find').inputValue()).toBe('half a code');
    expect(await accessibilityFindings(page)).toEqual([]);
    const bag = await placeHold();
    await page.waitForTimeout(1000);
    expect(await page.locator('main').innerText()).not.toContain(bag);
  }, 60_000);

  it('goes on when the same person signs in beside it: it catches up, and its forms are good again', async () => {
    const bag = await placeHold();
    await signInByForm(context, address, lead);
    await page.evaluate(() => window.dispatchEvent(new Event('focus')));
    await line().waitFor({ state: 'detached' });
    await page.locator('main', { hasText: bag }).waitFor();
    expect(await page.locator('#find').inputValue()).toBe('half a code');
    expect(await tokenProblem()).toBe('problem:bad-form');
    const later = await placeHold();
    await page.locator('main', { hasText: later }).waitFor({ timeout: 20_000 });
  }, 60_000);

  it('belongs to nobody when somebody else signs in on the device, and says that', async () => {
    await signInByForm(context, address, other);
    const beside = await context.newPage();
    await beside.goto(`${address}/quality`);
    await line().waitFor({ timeout: 20_000 });
    expect(await line().innerText()).toContain('Somebody else is signed in');
    expect(await page.locator('#find').inputValue()).toBe('half a code');
    expect(await page.locator('.who').innerText()).toContain('Ada Fern');
    const bag = await placeHold();
    await beside.locator('main', { hasText: bag }).waitFor({ timeout: 20_000 });
    expect(await page.locator('main').innerText()).not.toContain(bag);
    await line().getByRole('link').click();
    await page.waitForFunction(() => document.body.dataset['name'] === 'Ben Sorrel');
    expect(await line().count()).toBe(0);
  }, 60_000);
});
