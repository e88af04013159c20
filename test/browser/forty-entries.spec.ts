import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { setTimeout as delay } from 'node:timers/promises';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { anEnrolledTablet, signedInBrowser } from '../support/a-browser-session.js';
import { aPerson } from '../support/a-person.js';
import { aPlant } from '../support/a-plant.js';
import { aReleasedBag, aStartedRun } from '../support/a-tip.js';
import { openBrowser } from '../support/browser.js';
import { settingsOf } from '../support/first-sign-in.js';
import { openFront, type Front } from '../support/front.js';
import { freshPlace, openHouseAt, type Place, type TestHouse } from '../support/house.js';
import { startServer, type RunningServer } from '../support/server.js';

const repetitions = 20;
const entriesEach = 40;
/** Forty entries a quarter of a minute apart: the network is away for ten minutes. */
const apartMilliseconds = 15_000;

interface Bag {
  readonly id: string;
  readonly number: string;
}

interface Tablet {
  readonly context: BrowserContext;
  readonly page: Page;
  readonly path: string;
}

let place: Place;
let front: Front;
let server: RunningServer;
let browser: Browser;
let tablets: readonly [Tablet, Tablet];
let bags: readonly Bag[];

beforeAll(async () => {
  place = await freshPlace();
  // An hour ago both people signed in, so that their proofs are older than what happens now.
  const house = await openHouseAt(place, { at: new Date(Date.now() - 3_600_000).toISOString() });
  const plant = await aPlant(house, { capacityGrams: 1_900_000_000 });
  await aStartedRun(house, plant);
  bags = await bagsFor(house, plant);
  await house.app.listen(0, '127.0.0.1');
  front = await openFront(await house.app.getUrl());
  browser = await openBrowser();
  const [one, two] = plant.lineIds;
  tablets = [await aTablet(house, plant.siteId, one), await aTablet(house, plant.siteId, two)];
  await house.close();
  await begin();
}, 300_000);

afterAll(async () => {
  await browser.close();
  await front.close();
  await server.kill();
  await place.remove();
});

async function begin(): Promise<void> {
  server = await startServer(settingsOf(place));
  front.leadTo(server.address);
}

async function bagsFor(house: TestHouse, plant: Awaited<ReturnType<typeof aPlant>>): Promise<readonly Bag[]> {
  const made: Bag[] = [];
  for (let count = 0; count < repetitions * entriesEach; count += 1) {
    const { id, number } = await aReleasedBag(house, plant);
    made.push({ id, number });
  }
  return made;
}

async function aTablet(house: TestHouse, siteId: string, lineId: string): Promise<Tablet> {
  const person = await aPerson(house, siteId, { roles: ['line-lead'] });
  const token = await anEnrolledTablet(house, siteId, `tablet-${lineId.slice(-6)}`);
  const { context } = await signedInBrowser(browser, front.address, person, token);
  const page = await context.newPage();
  await page.clock.install({ time: Date.now() });
  const path = `/line/${lineId}`;
  const proof = page.waitForResponse(/queue-proofs/);
  await page.goto(front.address + path);
  expect((await proof).ok()).toBe(true);
  await untilStocked(page);
  return { context, page, path };
}

/** Waits until the list of the bags in store lies on the device: without it no scan is known once the network is away. */
function untilStocked(page: Page): Promise<void> {
  return page.evaluate(async () => {
    const known = (): Promise<unknown> =>
      new Promise((resolve, reject) => {
        const opening = indexedDB.open('packthread');
        opening.onerror = () => {
          reject(new Error('the device keeps nothing'));
        };
        opening.onsuccess = () => {
          const asked = opening.result.transaction('lists').objectStore('lists').get('bags');
          asked.onsuccess = () => {
            opening.result.close();
            resolve(asked.result);
          };
        };
      });
    // Turns of the page's own loop: its clock belongs to the test.
    while ((await known()) === undefined);
  });
}

/** Whole numbers that look random and are the same for the same seed. */
function drawing(seed: number): (below: number) => number {
  let state = seed * 2_654_435_761;
  return (below) => {
    state = (Math.imul(state ^ (state >>> 15), 0x2c1b3c6d) + 0x3c6ef372) >>> 0;
    return state % below;
  };
}

/** Scans a bag, as a wedge types it, and taps what the band offers. Answers when the page says that it is kept. */
async function enter({ page }: Tablet, bag: Bag): Promise<void> {
  const kept = page.evaluate(async (code) => {
    // The page's clock belongs to the test: what is waited for is a change of the page, not a time.
    const until = (what: () => boolean): Promise<void> =>
      new Promise((resolve) => {
        const look = (): void => {
          if (!what()) return;
          watch.disconnect();
          resolve();
        };
        const watch = new MutationObserver(look);
        watch.observe(document, { subtree: true, childList: true, attributes: true, characterData: true });
        look();
      });
    const says = (text: string): boolean => document.querySelector('#band .said')?.textContent.includes(text) === true;
    for (const key of [...code, 'Enter'])
      document.body.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true }));
    await until(() => document.querySelector<HTMLInputElement>('#band .acts input[name=bag]')?.value === code);
    document.querySelector<HTMLButtonElement>('#band .acts button')?.click();
    await until(() => says('ON THIS DEVICE'));
    return 'kept';
  }, bag.number);
  const patience = new AbortController();
  const late = delay(30_000, 'late', { signal: patience.signal }).catch(() => 'kept');
  const outcome = await Promise.race([kept, late]);
  patience.abort();
  if (outcome === 'late') throw new Error(`the band says ${await page.locator('#band').innerText()}`);
}

async function waitingOn({ page }: Tablet): Promise<number> {
  const text = (await page.locator('#waiting').textContent()) ?? '';
  if (text.includes('one entry')) return 1;
  return Number(/(\d+) entries wait/.exec(text)?.[1] ?? 0);
}

interface Entered {
  readonly sequence: number;
  readonly action: string;
  readonly subjectId: string;
  readonly occurredAt: string;
}

/** The tips that the journal holds of these bags, in its order. */
async function tipsOf(some: readonly Bag[]): Promise<readonly Entered[]> {
  const ids = new Set(some.map(({ id }) => id));
  const answer = await tablets[0].context.request.get(`${front.address}/api/journal?limit=200`);
  const { items } = (await answer.json()) as { readonly items: readonly Entered[] };
  return items.filter(({ action, subjectId }) => action === 'tip-bag' && ids.has(subjectId)).toReversed();
}

/** Pulls the plug at the nth entry that is sent: before it reaches the server, or when it is on disk and not answered. */
function killAt(nth: number, way: 'there' | 'back'): Promise<void> {
  let count = 0;
  return new Promise((resolve) => {
    front.watch(async (what, at) => {
      if (!/^POST .*\/tips$/.test(what) || at !== way) return true;
      count += 1;
      if (count !== nth) return true;
      await server.kill();
      front.watch(null);
      resolve();
      return false;
    });
  });
}

/**
 * The network is there: the pages are told so, as long as something waits. Their clocks do not leap meanwhile; a leap
 * while entries are sent would be a clock that was set, and would move what happened.
 */
async function letReplay(isOver: () => Promise<boolean>): Promise<void> {
  for (let turn = 0; turn < 400; turn += 1) {
    if (await isOver()) return;
    await Promise.all(tablets.map(({ page }) => page.evaluate(() => dispatchEvent(new Event('online')))));
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  throw new Error('entries still wait');
}

describe('ten minutes without network in the middle of forty entries from two tablets, and a server killed after', () => {
  it.each(Array.from({ length: repetitions }, (_, place) => place + 1))(
    'leaves forty entries, once each, in the order they happened (%i)',
    async (seed) => {
      const draw = drawing(seed);
      const mine = bags.slice((seed - 1) * entriesEach, seed * entriesEach);
      for (const { page, path } of tablets) {
        await page.clock.setSystemTime(Date.now());
        await page.goto(front.address + path);
        await page.waitForFunction(() => document.body.dataset['ready'] === 'yes');
      }
      await front.cut();
      const byTablet: [string[], string[]] = [[], []];
      for (const bag of mine) {
        const which = draw(2) as 0 | 1;
        await enter(tablets[which], bag);
        byTablet[which].push(bag.id);
        await Promise.all(tablets.map(({ page }) => page.clock.fastForward(apartMilliseconds)));
      }
      expect((await waitingOn(tablets[0])) + (await waitingOn(tablets[1]))).toBe(entriesEach);

      const killed = killAt(1 + draw(entriesEach - 5), draw(2) === 0 ? 'there' : 'back');
      await front.mend();
      let isKilled = false;
      void killed.then(() => {
        isKilled = true;
      });
      await letReplay(async () => isKilled);
      await begin();
      await letReplay(async () => (await waitingOn(tablets[0])) + (await waitingOn(tablets[1])) === 0);

      const entered = await tipsOf(mine);
      expect(entered.map(({ subjectId }) => subjectId).sort()).toEqual(mine.map(({ id }) => id).sort());
      for (const order of byTablet) {
        expect(entered.map(({ subjectId }) => subjectId).filter((id) => order.includes(id))).toEqual(order);
      }
      const happened = entered.toSorted((one, other) => (one.occurredAt < other.occurredAt ? -1 : 1));
      expect(happened.map(({ subjectId }) => subjectId)).toEqual(mine.map(({ id }) => id));
    },
    120_000,
  );
});
