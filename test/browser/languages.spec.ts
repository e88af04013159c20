import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { Browser, Page } from 'playwright-core';
import type { MetPage } from '../../bench/crawl-pages.js';
import { demoPeople } from '../../src/demo/set-up/demo-people.js';
import { EnrolDevice } from '../../src/people/enrol-device.js';
import { GiveBadge } from '../../src/people/give-badge.js';
import type { Language } from '../../src/platform/sentences/language.js';
import { say, sentencesOf } from '../../src/platform/sentences/sentences.js';
import { aDemo, type DemoHouse } from '../support/a-demo.js';
import { openBrowser, openContext } from '../support/browser.js';
import { anActor, asking } from '../support/house.js';
import { metPages } from '../support/met-pages.js';

let demo: DemoHouse;
let browser: Browser;
let address: string;
let met: readonly MetPage[];

beforeAll(async () => {
  demo = await aDemo({ days: 2, seed: 1, size: 'usual' });
  await demo.app.listen(0, '127.0.0.1');
  address = (await demo.app.getUrl()).replace('[::1]', '127.0.0.1');
  browser = await openBrowser();
  met = await metPages(demo, address);
}, 300_000);

afterAll(async () => {
  await browser.close();
  await demo.close();
});

/** Said in data of the demo, too: the name of a station, and reasons as they were recorded. */
const alsoInData = new Set(['thread-code', 'held-since-last-good', 'held-since-first']);

/** Pieces of English sentences between their facts, long enough to be no number, name or word of the data. */
const englishPieces = [...sentencesOf('en')].flatMap(([code, text]) => {
  if (alsoInData.has(code)) return [];
  const spanish = sentencesOf('es').get(code) ?? '';
  return text
    .split(/\{[^}]*\}/)
    .map((piece) => piece.trim())
    .filter((piece) => piece.length > 12 && /[a-z]{3}/.test(piece) && !spanish.includes(piece))
    .map((piece) => ({ code, piece }));
});

const entities: Readonly<Record<string, string>> = { '&amp;': '&', '&lt;': '<', '&gt;': '>', '&quot;': '"' };

/** What a page says to the eye and to the ear: its text, labels and hints. */
function wordsOf(html: string): string {
  const said = [...html.matchAll(/\s(?:aria-label|placeholder|title)="([^"]*)"/g)].map(([, text]) => text ?? '');
  const text = html.replaceAll(/<(script|style)[\s\S]*?<\/\1>/g, ' ').replaceAll(/<[^>]+>/g, '\n');
  return [text, ...said].join('\n').replaceAll(/&\w+;/g, (entity) => entities[entity] ?? entity);
}

const idOf = async (code: string): Promise<string> => {
  const [person] = await demo.from.sql<{ id: string }>`SELECT "id" FROM "person" WHERE "code" = ${code}`;
  if (person === undefined) throw new Error(`nobody is called ${code}`);
  return person.id;
};

interface ShownPage {
  readonly pattern: string;
  readonly html: string;
}

const shownBefore = new Map<Language, readonly ShownPage[]>();

/** Every page that was met, to people who all speak one language; each is asked for once. */
async function shownIn(language: Language): Promise<readonly ShownPage[]> {
  const before = shownBefore.get(language);
  if (before !== undefined) return before;
  await demo.databases.writer.query(`UPDATE "person_name" SET "language" = '${language}'`);
  try {
    const pages: ShownPage[] = [];
    for (const { path, pattern, cookie } of met) {
      const html = await (await fetch(address + path, { headers: { cookie, accept: 'text/html' } })).text();
      expect(html).toContain(`<html lang="${language}">`);
      pages.push({ pattern, html });
    }
    shownBefore.set(language, pages);
    return pages;
  } finally {
    // Emil alone speaks Spanish in what follows.
    await demo.databases.writer.query(
      `UPDATE "person_name" SET "language" = CASE "name" WHEN 'Emil Hartog' THEN 'es' ELSE 'en' END`,
    );
  }
}

const languageOf = (page: Page): Promise<string | null> => page.locator('html').getAttribute('lang');

async function signIn(page: Page, code: string): Promise<void> {
  await page.goto(`${address}/sign-in`);
  await page.locator('#code').fill(code);
  await page.locator('#password').fill(demoPeople.find((person) => person.code === code)?.password ?? '');
  await page.keyboard.press('Enter');
  await page.waitForURL((url) => !url.pathname.startsWith('/sign-in'));
}

async function signOut(page: Page): Promise<void> {
  await page.locator('form[action="/sign-out"] button').click();
  await page.waitForURL(/\/sign-in/);
}

describe('the house in Spanish', () => {
  it('says no English sentence on any page that links lead to', async () => {
    expect(englishPieces.length).toBeGreaterThan(700);
    expect(met.length).toBeGreaterThan(40);
    const found: string[] = [];
    for (const { pattern, html } of await shownIn('es')) {
      const words = wordsOf(html);
      const english = englishPieces.filter(({ piece }) => words.includes(piece));
      found.push(...english.map(({ code, piece }) => `${pattern}: ${code} “${piece}”`));
    }
    expect(found).toEqual([]);
  }, 300_000);

  it('takes the same access keys as in English, no letter twice on a page, each shown where it presses', async () => {
    const keysIn = async (language: Language): Promise<readonly { pattern: string; keys: readonly string[] }[]> => {
      const found: { pattern: string; keys: readonly string[] }[] = [];
      for (const { pattern, html } of await shownIn(language)) {
        const keys = [...html.matchAll(/<(a|button)\b[^>]*\saccesskey="([^"]+)"[^>]*>([\s\S]*?)<\/\1>/gi)];
        expect([pattern, keys.length]).toEqual([pattern, [...html.matchAll(/\saccesskey=/gi)].length]);
        for (const [, , letter = '', shown] of keys)
          expect([pattern, shown]).toEqual([pattern, expect.stringContaining(`>Alt+${letter.toUpperCase()}</kbd>`)]);
        found.push({ pattern, keys: keys.map(([, , letter = '']) => letter) });
      }
      return found;
    };
    const english = await keysIn('en');
    expect(english.filter(({ keys }) => keys.length > 0).length).toBeGreaterThan(10);
    expect(english.filter(({ keys }) => new Set(keys).size < keys.length)).toEqual([]);
    expect(await keysIn('es')).toEqual(english);
  }, 300_000);

  it('is offered before anybody is known, as the browser asks, and by a link without script', async () => {
    const { context } = await openContext(browser);
    const page = await context.newPage();
    await page.goto(`${address}/sign-in`);
    expect([await languageOf(page), await page.locator('h1').innerText()]).toEqual(['en', say('sign-in-title')]);
    await page.getByRole('link', { name: 'Español' }).click();
    expect([await languageOf(page), await page.locator('h1').innerText()]).toEqual([
      'es',
      say('sign-in-title', {}, 'es'),
    ]);
    await page.goto(`${address}/sign-in`);
    expect(await languageOf(page)).toBe('es');
    await context.close();
  });

  it('changes with the person, by password and by badge on a shared tablet, and stays for the next', async () => {
    const [{ siteId }] = (await demo.from.sql<{ siteId: string }>`SELECT "id" AS "siteId" FROM "site"`) as [
      { siteId: string },
    ];
    const administrator = asking(anActor(siteId, 'administrator'));
    const { token } = await demo.app
      .get(EnrolDevice, { strict: false })
      .execute(administrator, { code: 'tablet-of-two', kind: 'shared-tablet' });
    const badges = demo.app.get(GiveBadge, { strict: false });
    const { badge } = await badges.execute(asking(anActor(siteId, 'administrator')), await idOf('emil'));
    const { context, policyReports } = await openContext(browser);
    await context.addCookies([{ name: 'packthread-device', value: token ?? '', url: address }]);
    const page = await context.newPage();
    await signIn(page, 'tomas');
    expect(await languageOf(page)).toBe('en');
    await signOut(page);
    expect(await languageOf(page)).toBe('en');
    await page.locator('#badge').fill(badge ?? '');
    await page.keyboard.press('Enter');
    await page.waitForURL((url) => !url.pathname.startsWith('/sign-in'));
    expect(await languageOf(page)).toBe('es');
    await signOut(page);
    expect(await languageOf(page)).toBe('es');
    expect(policyReports).toEqual([]);
    await context.close();
  });

  it('is chosen on one’s own page, and said in it at once', async () => {
    const { context } = await openContext(browser);
    const page = await context.newPage();
    await signIn(page, 'tomas');
    await page.goto(`${address}/me`);
    await page.getByLabel('Español').check();
    await page.getByRole('button', { name: say('set-own-language') }).click();
    await page.waitForURL(`${address}/me`);
    expect(await page.locator('.said-before').innerText()).toBe(say('own-language-set', {}, 'es'));
    expect(await languageOf(page)).toBe('es');
    await context.close();
  });

  it('takes kilograms with a comma, as they are typed, and refuses what could mean two things in Spanish', async () => {
    const { context } = await openContext(browser);
    const page = await context.newPage();
    await signIn(page, 'emil');
    const line = met.find(({ pattern }) => pattern === '/line/:lineId/level')?.path ?? '';
    await page.goto(address + line);
    const form = page.locator('form[action$="/level/seen"]');
    const see = async (lower: string, upper: string): Promise<void> => {
      await form
        .locator('[name="how"]')
        .selectOption('probe')
        .catch(() => form.getByLabel(/./).first().check());
      await form.locator('[name="lowerGrams"]').fill(lower);
      await form.locator('[name="upperGrams"]').fill(upper);
      await form.locator('button[type="submit"]').click();
      await page.waitForLoadState();
    };
    await see('1.234,5', '20 000');
    expect(await page.locator('.wrong:not([hidden])').first().innerText()).toContain('Admite kilogramos');
    await page.goto(address + line);
    await see('1234,5', '20 000');
    const rows = await demo.from.sql<{ lower: number; upper: number }>`
      SELECT "lower_grams" AS "lower", "upper_grams" AS "upper" FROM "level_seen" ORDER BY "id" DESC LIMIT 1`;
    expect(rows).toEqual([{ lower: 1_234_500, upper: 20_000_000 }]);
    await context.close();
  });
});
