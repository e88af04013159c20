import { expect, jest } from '@jest/globals';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { serveDemo } from '../../src/demo/serve-demo.js';
import { demoBadgeOf, demoPeople, type DemoPerson } from '../../src/demo/set-up/demo-people.js';
import { readTruth } from '../../src/demo/truth.js';
import { copyOfDemo } from './a-demo.js';
import { openBrowser, openContext } from './browser.js';

/** The demo as `npm run demo` serves it, and a browser beside it that knows nothing but its address. */
export interface ServedHouse {
  readonly address: string;
  /** What the demo printed at its start. */
  readonly printed: string;
  readonly browser: Browser;
  /** What any of its browsers reported against the content security policy. */
  readonly policyReports: readonly string[];
  /** Presses a device on the demo's own page, and signs in there with the badge. */
  device(code: string, person: DemoPerson, size?: Size): Promise<Page>;
  /** Signs in with code and password at a computer that the plant does not know. */
  desk(person: DemoPerson): Promise<Page>;
  /** A page where nobody has signed in. */
  nobody(size?: Size): Promise<Page>;
  close(): Promise<void>;
}

interface Size {
  readonly width: number;
  readonly height: number;
}

export const tabletSize = { width: 1280, height: 800 };
export const deskSize = { width: 1920, height: 1080 };
export const handheldSize = { width: 412, height: 915 };

/** A person of the demo by the code that it prints. */
export function demoPerson(code: string): DemoPerson {
  const person = demoPeople.find((one) => one.code === code);
  if (person === undefined) throw new RangeError(`nobody of the demo is called ${code}`);
  return person;
}

/** Serves a copy of the demo of two days, whose plant is in the middle of an early shift. */
export async function aServedDemo(): Promise<ServedHouse> {
  const place = await copyOfDemo({ days: 2, seed: 1, size: 'usual' });
  const truth = readTruth(place.config.dataFolder);
  if (truth === null) throw new Error('the demo has no truth');
  const terminal = jest.spyOn(process.stdout, 'write').mockReturnValue(true);
  const served = await serveDemo({ ...place.config, port: 0 }, truth);
  const printed = terminal.mock.calls.map(([text]) => String(text)).join('');
  terminal.mockRestore();
  const [, address = ''] = /^ {2}(http\S+)\/demo$/m.exec(printed) ?? [];
  const browser = await openBrowser();
  const policyReports: string[] = [];
  const contexts: BrowserContext[] = [];
  const nobody = async (size: Size = deskSize): Promise<Page> => {
    const opened = await openContext(browser, size, { hasTouch: size !== deskSize, policyReports });
    contexts.push(opened.context);
    const page = await opened.context.newPage();
    // A machine that does other things besides is slow, but not so slow.
    page.setDefaultTimeout(20_000);
    return page;
  };
  return {
    ...{ address, printed, browser, policyReports, nobody },
    device: async (code, person, size = tabletSize) => {
      const page = await nobody(size);
      await page.goto(`${address}/demo`);
      await page.getByRole('button', { name: code }).click();
      await page.waitForURL(`${address}/sign-in`);
      await isReady(page);
      await page.locator('#badge').fill(demoBadgeOf(person));
      await leaves(page, () => page.keyboard.press('Enter'));
      return page;
    },
    desk: async (person) => {
      const page = await nobody();
      await page.goto(`${address}/sign-in`);
      await isReady(page);
      await page.locator('#code').fill(person.code);
      await page.locator('#password').fill(person.password);
      await leaves(page, () => page.keyboard.press('Enter'));
      return page;
    },
    close: async () => {
      for (const context of contexts) await context.close();
      await browser.close();
      await served.close();
      await place.remove();
    },
  };
}

/** The page's script has taken hold: scans are heard, forms go out once. */
export async function isReady(page: Page): Promise<void> {
  await page.locator('body[data-ready=yes]').waitFor();
}

/** Does what leads to another page, and waits until that one is there. */
export async function leaves(page: Page, act: () => Promise<unknown>): Promise<void> {
  await page.evaluate(() => {
    document.body.dataset['left'] = 'yes';
  });
  await act();
  await page.locator('body[data-ready=yes]:not([data-left])').waitFor();
}

/** What is too small for a finger, by name: every thing in the page's own part that is pressed or filled in. */
export async function tooSmallToTouch(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const target = document.createElement('div');
    target.style.height = 'var(--target)';
    document.body.append(target);
    const least = target.getBoundingClientRect().height;
    target.remove();
    const pressed =
      'main button, main .act, main .tile span, main summary, main .tick, main .field input, main .field select';
    return [...document.querySelectorAll(pressed)].flatMap((one) => {
      const { width, height } = one.getBoundingClientRect();
      if (height === 0 || (height >= least - 1 && width >= least - 1)) return [];
      const name = one.textContent.trim() || one.getAttribute('name') || one.tagName;
      return [`${name} is ${width.toFixed(0)} × ${height.toFixed(0)}, not ${least.toFixed(0)}`];
    });
  });
}

/** All that a glove has to hit on this page is as large as the house promises for its device. */
export async function isMadeForGloves(page: Page): Promise<void> {
  expect({ at: new URL(page.url()).pathname, tooSmall: await tooSmallToTouch(page) }).toMatchObject({ tooSmall: [] });
}

/** A finger on what is called so; the next page is there afterwards. */
export async function touch(page: Page, name: string | RegExp): Promise<void> {
  const there = page.getByRole('button', { name }).or(page.getByRole('link', { name })).first();
  await leaves(page, () => there.tap());
}

/** A finger on a field, and on the keys that come up below it. */
export async function keyIn(page: Page, label: string | RegExp, digits: string): Promise<void> {
  const field = page.getByLabel(label).first();
  await field.tap();
  const pad = page.locator('.number-pad');
  for (const digit of digits) await pad.getByRole('button', { name: digit, exact: true }).tap();
  await isMadeForGloves(page);
  await pad.locator('.done').tap();
  expect(await field.inputValue()).toBe(digits);
}

/** What `/api` answers this browser's person. */
export async function asked<Answer>(page: Page, path: string): Promise<Answer> {
  const answer = await page.request.get(new URL(path, page.url()).href);
  expect([path, answer.status()]).toEqual([path, 200]);
  return (await answer.json()) as Answer;
}

/** The first page of a list of `/api`. */
export async function listed<Row>(page: Page, path: string): Promise<readonly Row[]> {
  return (await asked<{ readonly items: readonly Row[] }>(page, path)).items;
}

export interface DemoRun {
  readonly number: string;
  readonly lineName: string;
  readonly formatName: string;
  readonly packCount: number;
  readonly closedAt: string | null;
}

/** The run that was started last on a line. */
export async function lastRunOf(page: Page, lineName: string): Promise<DemoRun> {
  const run = (await listed<DemoRun>(page, '/api/runs')).find((one) => one.lineName === lineName);
  if (run === undefined) throw new Error(`nothing was packed on ${lineName}`);
  return run;
}

/** What the records expect in the demo's hopper. */
export async function levelGrams(page: Page): Promise<number> {
  const [hopper] = await listed<{ level: { grams: number } }>(page, '/api/hoppers');
  return hopper?.level.grams ?? Number.NaN;
}

/** A bulk bag of the demo, as `/api` tells it. */
export interface DemoBag {
  readonly id: string;
  readonly number: string;
  readonly status: string;
  readonly remainingGrams: number;
  readonly grossGrams: number | null;
  readonly netGrams: number | null;
}

/** Bags of the demo's store that may be tipped without a second thought, oldest first. */
export async function releasedBags(page: Page, most: number): Promise<readonly DemoBag[]> {
  const bagsKnown = await listed<DemoBag>(page, '/api/bags');
  const released: DemoBag[] = [];
  for (const bag of bagsKnown.toReversed()) {
    if (bag.status !== 'full' || released.length === most) continue;
    const { state } = await asked<{ state: string }>(page, `/api/bags/${bag.id}/standing`);
    if (state === 'released') released.push(bag);
  }
  return released;
}
