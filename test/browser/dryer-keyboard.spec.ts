import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { Browser, Page } from 'playwright-core';
import { readerOf } from '../support/a-bag.js';
import { aPerson, type TestPerson } from '../support/a-person.js';
import { aPlant, type Plant } from '../support/a-plant.js';
import { listening } from '../support/a-tablet.js';
import { openBrowser, openContext } from '../support/browser.js';
import { chooseTile, focusIsKept, press, signInByKeyboard, tabTo, type, typeInto } from '../support/by-keyboard.js';
import { openHouse, type TestHouse } from '../support/house.js';
import { writtenLast } from '../support/written-last.js';

let house: TestHouse;
let plant: Plant;
let browser: Browser;
let page: Page;
let dryer: string;
let operator: TestPerson;
let policyReports: string[];

const shows = (text: string | RegExp): Promise<void> => page.getByText(text).first().waitFor();
const wrote = () => writtenLast(house, operator);

/** Hangs a bag up, weighs it, and comes to its label; gives the bag. */
async function fill(grossKilograms: string): Promise<string> {
  await typeInto(page, 'Safe working load', '1250');
  await press(page, 'Bag on');
  await shows('Hanging under the filler');
  expect((await focusIsKept(page)).says).toContain('Weight on the scale');
  const { action, subjectId, after } = await wrote();
  expect({ action, after }).toMatchObject({ action: 'start-bag', after: { safeLoadGrams: 1_250_000 } });
  house.clock.pass(30);
  await type(page, grossKilograms);
  await typeInto(page, 'Tare', '2.5');
  await press(page, 'Close and label');
  await shows(/is closed with/);
  await focusIsKept(page);
  return subjectId;
}

beforeAll(async () => {
  house = await openHouse();
  plant = await aPlant(house);
  operator = await aPerson(house, plant.siteId, { name: 'M. Reed', roles: ['dryer-operator'] });
  const address = await listening(house);
  dryer = `${address}/dryer/${plant.dryerId}`;
  browser = await openBrowser();
  const opened = await openContext(browser);
  ({ policyReports } = opened);
  page = await opened.context.newPage();
  page.setDefaultTimeout(15_000);
}, 180_000);

afterAll(async () => {
  await browser.close();
  await house.close();
});

describe('the dryer operator’s day by keyboard alone', () => {
  it('signs in and starts a run of a grade', async () => {
    await page.goto(dryer);
    await signInByKeyboard(page, operator);
    await page.waitForURL(dryer);
    await focusIsKept(page);
    await chooseTile(page, /sugar/i, 'White sugar');
    await press(page, 'Start the run');
    await shows(/^Run .* began/);
    await focusIsKept(page);
    expect((await wrote()).action).toBe('start-dryer-run');
  });

  it('fills a bag, weighs it, comes to its label, and hangs up the next', async () => {
    const first = await fill('1002.5');
    const label = await wrote();
    expect(label).toMatchObject({ action: 'print-bag-label', subjectId: first });
    await tabTo(page, 'Label to print', { href: String(label.after['paperId']) });
    await press(page, /^Sample of /);
    await shows(/^Sample .* is recorded/);
    await focusIsKept(page);
    expect((await wrote()).after).toMatchObject({ standsFor: 'bag' });
    const second = await fill('999,5');
    expect(second).not.toBe(first);
    const rows = await readerOf(house).sql`
      SELECT "bag_id" AS "bag", "gross_grams" AS "gross", "tare_grams" AS "tare" FROM "bag_weighing" ORDER BY "gross_grams"`;
    expect(rows).toEqual([
      { bag: second, gross: 999_500, tare: 2500 },
      { bag: first, gross: 1_002_500, tare: 2500 },
    ]);
  });

  it('corrects what was typed wrong', async () => {
    await press(page, 'Correct what I typed');
    await page.waitForURL(/\/weighings\//);
    expect((await focusIsKept(page)).says).toContain('The right gross weight');
    await type(page, '998.5');
    await typeInto(page, 'What happened', 'read the wrong line');
    await press(page, 'Correct the weight');
    await shows(/The weight of bag .* is corrected: 996 kg net/);
    await focusIsKept(page);
    expect((await wrote()).action).toBe('correct-weighing');
  });

  it('met no breach of the content security policy', () => {
    expect(policyReports).toEqual([]);
  });
});
