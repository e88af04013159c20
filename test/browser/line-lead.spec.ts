import { mkdirSync, writeFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { Browser, Page } from 'playwright-core';
import { makeBagNumber } from '../../src/core/identifiers/bag-number.js';
import { ChangeCode } from '../../src/packing/change-code.js';
import { PlaceHold } from '../../src/tracing/place-hold.js';
import { aPlant, type Plant } from '../support/a-plant.js';
import { packsCounted } from '../support/a-run.js';
import { aTabletAtTheLine, type TabletAtTheLine } from '../support/a-tablet.js';
import { aReleasedBag, aStartedRun, aTippedBag, jobsDone } from '../support/a-tip.js';
import { accessibilityFindings, openBrowser } from '../support/browser.js';
import { asking, openHouse, type TestHouse } from '../support/house.js';
import { scanOn } from '../support/scanner.js';

let house: TestHouse;
let plant: Plant;
let browser: Browser;
let tablet: TabletAtTheLine;
let page: Page;
let line: string;
let run: string;

/** What a person does: a scan, a touch, a number typed. Keys of a scan are one action. */
let actions = 0;
const measured: { readonly task: string; readonly actions: number; readonly most: number; readonly seconds: string }[] =
  [];

async function scan(code: string): Promise<void> {
  actions += 1;
  await scanOn(page, code);
}

async function touch(name: string | RegExp): Promise<void> {
  actions += 1;
  await page.getByRole('button', { name }).or(page.getByRole('link', { name })).first().click();
}

async function typed(label: string | RegExp, text: string): Promise<void> {
  actions += 1;
  await page.getByLabel(label).first().fill(text);
}

/** Counts the actions of a task and how long it takes, and holds it to its limit. */
async function task(name: string, most: number, work: () => Promise<void>): Promise<void> {
  await page.goto(line);
  actions = 0;
  const before = performance.now();
  await work();
  measured.push({ task: name, actions, most, seconds: ((performance.now() - before) / 1000).toFixed(1) });
  expect(actions).toBeLessThanOrEqual(most);
}

const shows = (text: string | RegExp): Promise<void> => page.getByText(text).first().waitFor();

const bandSays = async (text: string): Promise<void> => {
  await page.locator('#band', { hasText: text }).waitFor();
};

const picture = async (name: string): Promise<void> => {
  const folder = process.env['PICTURES_FOLDER'];
  if (folder === undefined) return;
  mkdirSync(folder, { recursive: true });
  await page.screenshot({ path: `${folder}/${name}.png`, fullPage: true });
};

async function signIn(): Promise<void> {
  await page.goto(`${tablet.address}/sign-in?next=${encodeURIComponent(new URL(line).pathname)}`);
  await page.locator('#badge').fill(tablet.lead.badge);
  await page.keyboard.press('Enter');
  await page.waitForURL(line);
}

beforeAll(async () => {
  house = await openHouse();
  plant = await aPlant(house, { packsPerPallet: 100 });
  await aTippedBag(house, plant, { netGrams: 1_000_000 });
  const started = await aStartedRun(house, plant);
  run = started.id;
  await house.get(ChangeCode).execute(asking(plant.actor), run, { code: 'L60711M', packCount: 0 });
  house.clock.pass(60);
  await packsCounted(house, plant, run, 300);
  browser = await openBrowser();
  tablet = await aTabletAtTheLine(house, plant, browser);
  ({ page, line } = tablet);
  await signIn();
}, 180_000);

afterAll(async () => {
  const file = process.env['TAPS_FILE'];
  if (file !== undefined) writeFileSync(file, table());
  await browser.close();
  await house.close();
});

function table(): string {
  const rows = measured.map(
    ({ task: name, actions: count, most, seconds }) => `| ${name} | ${count} | ${most} | ${seconds} |`,
  );
  return [
    '# Touches and seconds of the line lead',
    '',
    'Counted by the browser test of the line lead’s day on a tablet of 1280 × 800: a scan, a touch, and a number typed are one action each. Seconds are the machine’s, on a busy small computer; a person adds the walk. Written by `TAPS_FILE=docs/taps.md npm run test:only -- test/browser/line-lead`.',
    '',
    '| task | actions | at most | seconds |',
    '| ---- | ------- | ------- | ------- |',
    ...rows,
    '',
  ].join('\n');
}

describe('the packing-line lead’s day on a tablet', () => {
  it('tips a whole bag with a scan and a touch', async () => {
    const bag = await aReleasedBag(house, plant, { netGrams: 996_500 });
    await task('tip a whole bag', 2, async () => {
      await scan(bag.number);
      await bandSays('996.5 kg');
      await picture('line-scan');
      await touch('TIP WHOLE');
      await shows(`Tipped: ${bag.number}`);
    });
    // The first drill: the same bag again after two minutes is said to be tipped, by whom and when.
    house.clock.pass(2);
    await scan(bag.number);
    await bandSays('TIPPED ALREADY');
    await bandSays('A. Kaya');
  });

  it('refuses a bag on hold, and takes the next bag with one scan', async () => {
    const held = await aReleasedBag(house, plant);
    const good = await aReleasedBag(house, plant);
    await house.get(PlaceHold).execute(asking(plant.actor), { kind: 'bulk-bag', id: held.id, reason: 'torn liner' });
    await page.goto(line);
    await scan(held.number);
    await bandSays('HOLD');
    await picture('line-refusal');
    actions = 0;
    const before = performance.now();
    await scan(good.number);
    await bandSays(good.number);
    measured.push({
      task: 'next bag after a refusal',
      actions,
      most: 1,
      seconds: ((performance.now() - before) / 1000).toFixed(1),
    });
    expect(actions).toBeLessThanOrEqual(1);
  });

  it('refuses a number with two digits swapped by its check character', async () => {
    const right = makeBagNumber(123_456);
    const swapped = right.slice(0, 3) + right.charAt(4) + right.charAt(3) + right.slice(5);
    await page.goto(line);
    await scan(swapped);
    await bandSays('check character does not fit');
  });

  it('builds a pallet, labels it and scans the label back with two actions; the label of another is refused', async () => {
    let first = '';
    await task('pallet full, label, scan back', 3, async () => {
      await touch('PALLET FULL');
      await page.waitForURL(/\/pallets\//);
      first = (await page.locator('.code.big').innerText()).trim();
      await page.getByLabel(/Scan the label/).focus();
      await scan(first);
      await shows(`Scanned back: ${first}`);
    });
    await touch('PALLET FULL');
    await page.waitForURL(/\/pallets\//);
    await page.getByLabel(/Scan the label/).focus();
    await scan(first);
    await shows(/This is the label of pallet/);
    await picture('line-scan-back');
    await touch('Two labels swapped');
    await page.getByLabel('What happened?').fill('the labels were mixed up');
    await touch('EXCHANGE WHAT IS RECORDED');
    await shows('Nothing is recorded yet.');
    await picture('line-swap-changes');
    await touch('Record it');
    await shows(/Exchanged:/);
  });

  it('stops the line with one touch and says why with another', async () => {
    await task('stop and why', 2, async () => {
      await touch(/^STOP/);
      await page.waitForURL(/\/stops\//);
      await picture('line-stop');
      await touch('jam');
      await shows('Why: jam');
    });
    house.clock.pass(4);
    await touch('RUNS AGAIN');
    await page.waitForURL(line);
  });

  it('books sweepings out by weight', async () => {
    await task('sweepings', 7, async () => {
      await touch(/REJECTS/);
      actions += 1;
      await page.getByRole('radio', { name: 'sweepings' }).check();
      await typed('Net, weighed', '4,5');
      actions += 1;
      await page.getByLabel(/^Scale/).selectOption({ index: 1 });
      actions += 1;
      await page.getByRole('radio', { name: 'floor' }).check();
      actions += 1;
      await page.getByRole('radio', { name: 'waste' }).check();
      await picture('line-removals');
      await touch('RECORD');
      await shows('Booked out: 4.5 kg');
    });
  });

  it('warns no later than one hopper-full after a tip that was skipped, and a late tip clears it', async () => {
    const bag = await aReleasedBag(house, plant, { netGrams: 1_000_000 });
    house.clock.pass(120);
    await packsCounted(house, plant, run, 1400);
    await jobsDone(house);
    await page.goto(line);
    await shows(/A tip may not be entered, or late/);
    await picture('line-short');
    await page.goto(`${line}/late`);
    await page.getByLabel('Bag: number or scan').fill(bag.number);
    const then = new Date(Date.parse(house.clock.now()) - 100 * 60_000 + 3_600_000).toISOString().slice(0, 16);
    await page.getByLabel(/When was the spout opened/).fill(then);
    await page.getByLabel(/Why it comes late/).fill('forgotten at the jam');
    await touch('RECORD');
    await shows(`Tipped: ${bag.number}`);
    await jobsDone(house);
    await page.goto(line);
    expect(await page.getByText(/A tip may not be entered, or late/).count()).toBe(0);
    expect(await page.getByText(/can’t be true/).count()).toBe(0);
  });

  it('shows a shift page that answers at once, without a finding of axe, at one look', async () => {
    await page.goto(line);
    await picture('line-shift');
    expect(await accessibilityFindings(page)).toEqual([]);
    for (const path of [
      'handover',
      'level',
      'removals',
      'person',
      'late',
      'changeover',
      'undo',
      'run',
      'code',
      'film',
      'bin',
      'unread',
      'swap',
      'account',
    ]) {
      await page.goto(`${line}/${path}`);
      await picture(`line-${path}`);
      expect([path, await accessibilityFindings(page)]).toEqual([path, []]);
    }
  }, 240_000);

  it('hands the line over with four actions: open, loose packs, the next lead’s badge, sign', async () => {
    await task('sign the line over', 4, async () => {
      await touch(/^HAND OVER/);
      await page.waitForURL(/\/handover$/);
      await typed(/Loose packs/, '12');
      await page.getByLabel('Their badge').focus();
      await scan(tablet.next.badge);
      await page.waitForURL(/\/handovers\//);
      await picture('line-handed-over');
    });
    await shows('Signed by the incoming lead: J. Moor');
  });

  it('changes the person by badge within two seconds, back on the same line', async () => {
    await task('change the person', 2, async () => {
      await touch(/change person/);
      await page.waitForURL(/\/person$/);
      const before = performance.now();
      await page.getByLabel('Scan your badge').focus();
      await scan(tablet.next.badge);
      await page.waitForURL(line);
      expect(performance.now() - before).toBeLessThan(4000);
    });
    await shows(/J\. Moor/);
  });

  it('does a tip by the keyboard alone, with the focus always to be seen', async () => {
    const bag = await aReleasedBag(house, plant);
    await page.goto(line);
    await page.locator('#scan').focus();
    await scan(bag.number);
    await bandSays(bag.number);
    for (let tabs = 0; tabs < 60; tabs += 1) {
      await page.keyboard.press('Tab');
      if ((await page.evaluate(() => document.activeElement?.textContent)) === 'TIP WHOLE') break;
    }
    const outline = await page.evaluate(() => getComputedStyle(document.activeElement ?? document.body).outlineStyle);
    expect(outline).not.toBe('none');
    await page.keyboard.press('Enter');
    await shows(`Tipped: ${bag.number}`);
  });

  it('met no breach of the content security policy', () => {
    expect(tablet.policyReports).toEqual([]);
  });
});
