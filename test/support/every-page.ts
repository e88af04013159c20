import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { Browser, Page } from 'playwright-core';
import type { MetPage } from '../../bench/crawl-pages.js';
import { crawlOf } from '../../bench/page-addresses.js';
import type { Language } from '../../src/platform/sentences/language.js';
import { aDemo, type DemoHouse } from './a-demo.js';
import { accessibilityFindings, bringAxe, openBrowser, openContext } from './browser.js';
import { metPages } from './met-pages.js';

/** Tablet, desk, and a desk magnified four times: WCAG 1.4.10 takes 1280 points at 400 % as 320. */
const sizes = [
  { width: 1280, height: 800 },
  { width: 1920, height: 1080 },
  { width: 320, height: 256 },
] as const;

/** Pages that the demo has no cause for, each with the reason. */
const notWalked: Readonly<Record<string, string>> = {
  '/kept-entries/:id': 'nothing of the demo was entered off line',
  '/set-up/pack-weighers/:id/files/:file': 'no file of weights waits in the demo; a spec of its own looks at the page',
  '/line/:lineId/off/:tipId': 'no bag hangs over a hopper at the demo’s end',
};

/** A language a file: two workers share what takes minutes. */
export function describeEveryPage(language: Language): void {
  let demo: DemoHouse;
  let browser: Browser;
  let address: string;
  let met: readonly MetPage[];
  const policyReports: string[] = [];
  const faults: string[] = [];

  beforeAll(async () => {
    demo = await aDemo({ days: 2, seed: 1, size: 'usual' });
    await demo.app.listen(0, '127.0.0.1');
    address = (await demo.app.getUrl()).replace('[::1]', '127.0.0.1');
    browser = await openBrowser();
    const { routes } = crawlOf(demo.app, address);
    met = (await metPages(demo, address)).filter(({ pattern }) => routes.some(({ path }) => path === pattern));
  }, 300_000);

  afterAll(async () => {
    await browser.close();
    await demo.close();
  });

  describe(`every page of the house, in ${language}`, () => {
    it('is met by links from somebody’s desk, or where a form or a scan leads', () => {
      const { routes } = crawlOf(demo.app, address);
      const pages = routes.filter(({ method }) => method === 'GET');
      const unmet = pages.map(({ path }) => path).filter((path) => !met.some(({ pattern }) => pattern === path));
      expect(unmet.filter((path) => notWalked[path] === undefined)).toEqual([]);
      expect(met.length).toBeGreaterThan(40);
    });

    it('has one heading, no finding of any grade, and nothing that runs out of the side', async () => {
      await demo.databases.writer.query(`UPDATE "person_name" SET "language" = '${language}'`);
      const findings: string[] = [];
      const walk = { browser, address, language, policyReports, faults, tabs: new Map<string, Page>() };
      for (const page of met) findings.push(...(await findingsOn(page, walk)));
      expect(findings).toEqual([]);
    }, 900_000);

    it('was shown without one report of the content security policy and without a fault of its script', () => {
      expect(policyReports).toEqual([]);
      expect(faults).toEqual([]);
    });
  });
}

interface Walk {
  readonly browser: Browser;
  readonly address: string;
  readonly language: Language;
  readonly policyReports: string[];
  readonly faults: string[];
  /** By cookie: each person goes from page to page in a browser of their own. */
  readonly tabs: Map<string, Page>;
}

async function findingsOn({ path, pattern, cookie }: MetPage, walk: Walk): Promise<string[]> {
  const page = walk.tabs.get(cookie) ?? (await openTab(cookie, walk));
  const findings: string[] = [];
  const note = (found: string): number => findings.push(`${pattern} ${found}`);
  await page.setViewportSize(sizes[0]);
  await page.goto(walk.address + path);
  if ((await page.locator('html').getAttribute('lang')) !== walk.language) note(`is not in ${walk.language}`);
  if ((await page.locator('h1').count()) !== 1) note('has not one heading');
  for (const size of sizes) {
    await page.setViewportSize(size);
    for (const finding of await accessibilityFindings(page)) note(`at ${size.width}: ${finding}`);
    if (await runsOut(page)) note(`at ${size.width}: runs out of the side`);
  }
  return findings;
}

async function openTab(cookie: string, { browser, address, policyReports, faults, tabs }: Walk): Promise<Page> {
  const { context } = await openContext(browser, sizes[0], { policyReports });
  const [name = '', value = ''] = cookie.split('=');
  await context.addCookies([{ name, value, url: address }]);
  await bringAxe(context);
  const page = await context.newPage();
  page.on('pageerror', (error) => faults.push(`${page.url()} ${error.message}`));
  tabs.set(cookie, page);
  return page;
}

async function runsOut(page: Page): Promise<boolean> {
  return page.evaluate(() => document.documentElement.scrollWidth > document.documentElement.clientWidth + 1);
}
