import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { Browser } from 'playwright-core';
import { weightsOf } from '../../src/core/weight-blocks/weights.examples.js';
import { addToSummaries } from '../../src/fill-weight/kept/add-to-summaries.js';
import { CloseRun } from '../../src/packing/close-run.js';
import { shifted } from '../../src/platform/clock.js';
import { UnitOfWork } from '../../src/platform/database/unit-of-work.js';
import { aPackWeigher } from '../support/a-pack-weigher.js';
import { aPerson, signedIn } from '../support/a-person.js';
import { aPlant } from '../support/a-plant.js';
import { aRun } from '../support/a-run.js';
import { accessibilityFindings, openBrowser, openContext } from '../support/browser.js';
import { asking, openHouse, type TestHouse } from '../support/house.js';
import { normalDraws } from '../support/normal-draws.js';

/** A tablet, a desk, and a desk magnified four times. */
const sizes = [
  { width: 1024, height: 768 },
  { width: 1440, height: 900 },
  { width: 320, height: 256 },
];

describe('the page of how a line fills', () => {
  let house: TestHouse;
  let browser: Browser;
  let lineId: string;
  let cookie: string;
  let address: string;

  beforeAll(async () => {
    house = await openHouse();
    const plant = await aPlant(house);
    lineId = plant.lineIds[0];
    const { weigherId } = await aPackWeigher(house, plant);
    const [endAt, draw] = [house.clock.now(), normalDraws(8, 'line fill')];
    for (let daysAgo = 6; daysAgo > 0; daysAgo -= 1) {
      const startedAt = shifted(endAt, -daysAgo * 86_400_000);
      const { runId } = await aRun(house, plant, { startedAt });
      const mean = draw(2_012_000, 2_000);
      const at = Math.floor(Date.parse(startedAt) / 10);
      const columns = weightsOf(
        Array.from({ length: 400 }, (_, place) => {
          const net = Math.round(draw(mean, 18_000) / 200) * 200;
          return { sequence: place + 1, at: at + place * 100, net, isRejected: false };
        }),
      );
      const added = { runId, weigherId, series: runId, nominalMilligrams: 2_000_000, columns };
      await house.get(UnitOfWork).run((tx) => addToSummaries(tx, [added]));
      house.clock.set(shifted(startedAt, 3_600_000));
      const closed = { packCount: daysAgo === 3 ? 900 : 402, loosePackCount: 0 };
      await house.get(CloseRun).execute(asking(plant.actor), runId, closed);
      house.clock.set(endAt);
    }
    ({ cookie } = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['auditor'] })));
    await house.app.listen(0, '127.0.0.1');
    address = (await house.app.getUrl()).replace('[::1]', '127.0.0.1');
    browser = await openBrowser();
  }, 60_000);
  afterAll(async () => {
    await browser.close();
    await house.close();
  });

  it('is reached from the plant, reckons with what is entered, and has no finding at any size', async () => {
    const { context, policyReports } = await openContext(browser);
    const [name = '', value = ''] = (cookie.split(';')[0] ?? '').split('=');
    await context.addCookies([{ name, value, url: address }]);
    const page = await context.newPage();
    await page.goto(`${address}/plant`);
    await page.locator(`a[href="/lines/${lineId}/fill"]`).click();
    const advice = page.getByText('Set the mean to');
    const before = await advice.innerText();
    await page.getByLabel('Limit of the tare').fill('1,5');
    await page.getByLabel('Price of a kilogram').fill('0.62');
    await page.getByRole('button', { name: 'Reckon' }).click();
    await page.waitForURL(/tareLimitGrams=1%2C5/);
    expect(await advice.innerText()).not.toBe(before);
    expect(await page.getByText('worth').count()).toBe(1);
    for (const size of sizes) {
      await page.setViewportSize(size);
      expect(await accessibilityFindings(page)).toEqual([]);
      const runsOut = 'document.documentElement.scrollWidth > document.documentElement.clientWidth + 1';
      expect(await page.evaluate(runsOut)).toBe(false);
      const scrolled =
        "[...document.querySelectorAll('.table-wrap')].filter((one) => one.scrollWidth > one.clientWidth)";
      if (size.width >= 1024) expect(await page.evaluate(`${scrolled}.length`)).toBe(0);
    }
    expect(policyReports).toEqual([]);
    await context.close();
  }, 60_000);
});
