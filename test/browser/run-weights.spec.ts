import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { Browser } from 'playwright-core';
import { shifted } from '../../src/platform/clock.js';
import { aPackWeigher, weightLine, type TestWeigher } from '../support/a-pack-weigher.js';
import { aPerson, signedIn } from '../support/a-person.js';
import { aPlant } from '../support/a-plant.js';
import { aRun, packsCounted, type RunOpened } from '../support/a-run.js';
import { accessibilityFindings, openBrowser, openContext } from '../support/browser.js';
import { openHouse, type TestHouse } from '../support/house.js';
import { normalDraws } from '../support/normal-draws.js';

const startedAt = '2026-03-12T00:00:00.000Z';
/** A desk, and a desk magnified four times. */
const sizes = [
  { width: 1280, height: 800 },
  { width: 320, height: 256 },
];

describe('the page of a run’s fill weights, with its pictures', () => {
  let house: TestHouse;
  let browser: Browser;
  let weigher: TestWeigher;
  let run: RunOpened;
  let cookie: string;
  let address: string;
  const draw = normalDraws(5, 'run weights');

  beforeAll(async () => {
    house = await openHouse();
    const plant = await aPlant(house);
    weigher = await aPackWeigher(house, plant);
    run = await aRun(house, plant, { startedAt });
    await send(1, 1400);
    await packsCounted(house, plant, run.runId, 1500);
    ({ cookie } = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['auditor'] })));
    await house.app.listen(0, '127.0.0.1');
    address = (await house.app.getUrl()).replace('[::1]', '127.0.0.1');
    browser = await openBrowser();
  }, 60_000);
  afterAll(async () => {
    await browser.close();
    await house.close();
  });

  /** Packs of 2 kg, four a minute, as the machine sends them; the 700th is beyond T2. */
  async function send(from: number, until: number): Promise<void> {
    const lines = Array.from({ length: until - from }, (_, place) => {
      const sequence = from + place;
      const drawn = Math.round(draw(2004, 9) * 5) / 5;
      const netGrams = sequence === 700 ? 1930 : drawn;
      return weightLine(house, sequence, { at: shifted(startedAt, sequence * 15_000), run: run.number, netGrams });
    });
    const server = house.app.getHttpAdapter().getInstance();
    const headers = { authorization: `Bearer ${weigher.token}`, 'content-type': 'application/x-ndjson' };
    const sent = { method: 'POST', url: '/api/fill-weights', headers, payload: lines.join('\n') } as const;
    expect((await server.inject(sent)).statusCode).toBe(201);
  }

  it('has no finding at any size, and shows weights as they come in', async () => {
    const { context, policyReports } = await openContext(browser);
    const [name = '', value = ''] = (cookie.split(';')[0] ?? '').split('=');
    await context.addCookies([{ name, value, url: address }]);
    const page = await context.newPage();
    await page.goto(`${address}/runs/${run.runId}/weights`);
    // Weights, means and spreads of subgroups, means by the hour.
    expect(await page.locator('svg.weight-picture').count()).toBe(4);
    expect(await page.locator('tr.loud').count()).toBeGreaterThan(1);
    await page.evaluate("document.querySelectorAll('main details').forEach((table) => { table.open = true; })");
    for (const size of sizes) {
      await page.setViewportSize(size);
      expect(await accessibilityFindings(page)).toEqual([]);
      const runsOut = 'document.documentElement.scrollWidth > document.documentElement.clientWidth + 1';
      expect(await page.evaluate(runsOut)).toBe(false);
    }
    const figures = page.locator('.figures').first();
    expect(await figures.innerText()).toContain('1\u202f399');
    await send(1400, 1402);
    await figures.getByText('1\u202f401').waitFor({ timeout: 20_000 });
    expect(policyReports).toEqual([]);
    await context.close();
  }, 60_000);
});
