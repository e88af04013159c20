import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { Browser, BrowserContext, Locator, Page } from 'playwright-core';
import { demoPeople } from '../../src/demo/set-up/demo-people.js';
import type { RecallBalance } from '../../src/core/recall-sums/recall-balance.js';
import { aDemo, type DemoHouse } from '../support/a-demo.js';
import { accessibilityFindings, openBrowser, openContext } from '../support/browser.js';
import { pageCount, textOf } from '../support/read-pdf.js';

/**
 * Seconds that a person takes: operators of the keystroke-level model (S. K. Card, T. P. Moran, A. Newell, Communications
 * of the ACM 23, 1980, pages 396 to 410; values from memory): a key of an average typist, pointing, a hand between mouse
 * and keys, a thought before each act. Reading at 200 words a minute is a common value, no source.
 */
const secondsOf = { key: 0.28, pointing: 1.1, hand: 0.4, thought: 1.35, word: 60 / 200 } as const;

let demo: DemoHouse;
let browser: Browser;
let context: BrowserContext;
let page: Page;
let address: string;
let packCode: string;
let policyReports: string[];
let personSeconds = 0;

beforeAll(async () => {
  demo = await aDemo({ days: 2, seed: 1, size: 'usual' });
  await demo.app.listen(0, '127.0.0.1');
  address = (await demo.app.getUrl()).replace('[::1]', '127.0.0.1');
  packCode = await codeOfPackSold();
  browser = await openBrowser();
  ({ context, policyReports } = await openContext(browser));
  page = await context.newPage();
}, 300_000);

afterAll(async () => {
  await context.close();
  await browser.close();
  await demo.close();
});

/** What is printed on a pack that a customer got last, with its time. */
async function codeOfPackSold(): Promise<string> {
  const [gone] = await demo.from.sql<{ runId: string; fromCount: number; toCount: number }>`
    SELECT c."run_id" AS "runId", c."from_count" AS "fromCount", c."to_count" AS "toCount"
    FROM "pallet_state" s JOIN "pallet_content" c ON c."pallet_id" = s."pallet_id" AND c."voided_by" IS NULL
    WHERE s."status" = 'dispatched' ORDER BY c."run_id" DESC, c."from_count" DESC LIMIT 1`;
  const pack = demo.truth.cells.find(({ runId, fromCount, printed }) => {
    return printed !== null && runId === gone?.runId && fromCount >= gone.fromCount && fromCount < gone.toCount;
  });
  if (pack?.printed == null) throw new Error('no pack of the demo was sold');
  return pack.printed;
}

async function press(what: Locator): Promise<void> {
  personSeconds += secondsOf.thought + secondsOf.pointing + secondsOf.key;
  await what.click();
}

async function go(what: Locator): Promise<void> {
  await Promise.all([page.waitForEvent('load'), press(what)]);
}

async function type(into: Locator, text: string): Promise<void> {
  personSeconds += secondsOf.thought + secondsOf.pointing + 2 * secondsOf.hand + text.length * secondsOf.key;
  await into.fill(text);
}

async function read(what: Locator): Promise<string> {
  const text = (await what.innerText()).replaceAll(/(?<=\d)[\u2009\u202f\u00a0](?=\d)/g, '');
  personSeconds += text.split(/\s+/).length * secondsOf.word;
  return text;
}

const button = (name: string | RegExp) => page.locator('main').getByRole('button', { name });
const link = (name: string | RegExp) => page.locator('main').getByRole('link', { name });

/** Thousands stand apart by thin and other spaces. */
const gap = /[\s\u2009\u00a0\u202f]/g;

/** The numbers of a row of the page's balance, by what stands in front of it. */
async function sumsOf(part: string): Promise<readonly number[]> {
  const row = page.locator('section[aria-labelledby="balance"] tr', {
    has: page.getByRole('rowheader', { name: part, exact: true }),
  });
  const cells = await row.locator('td').allInnerTexts();
  return cells.map((text) => Number(text.replaceAll(gap, '').replace('\u2212', '-')));
}

const parts = {
  inStore: 'In store',
  onDock: 'At the dock',
  onVehicle: 'On a vehicle that has not left',
  dispatched: 'Dispatched (with what came back since)',
  rejects: 'Used up: rejects',
  samples: 'Used up: samples',
  retained: 'Used up: retained samples',
  scrapped: 'Used up: sweepings and scrap',
  unaccounted: 'Unaccounted (the difference)',
  produced: 'Produced',
} as const;

interface Answered {
  readonly number: string;
  readonly figures: {
    readonly packs: RecallBalance;
    readonly milligrams: RecallBalance;
    readonly customers: readonly {
      readonly customerId: string;
      readonly packCount: number;
      readonly milligrams: number;
    }[];
  };
}

describe('a mock recall by the page alone, as somebody new to it would', () => {
  it('leads from a printed code to the signed report in under five minutes, with kilograms that add up', async () => {
    const startedAt = Date.now();
    const officer = demoPeople.find(({ role }) => role === 'quality-officer');
    await page.goto(`${address}/sign-in`);
    await type(page.getByLabel(/code/i).first(), officer?.code ?? '');
    await type(page.getByLabel(/password/i).first(), officer?.password ?? '');
    await Promise.all([page.waitForURL((url) => !url.pathname.startsWith('/sign-in')), page.keyboard.press('Enter')]);
    await type(page.locator('#find'), packCode);
    await Promise.all([page.waitForURL(/\/thread/), page.keyboard.press('Enter')]);
    await read(page.locator('section[aria-labelledby="answer"] .sentence'));
    await go(link('Start a recall or an exercise'));
    await read(page.locator('#scope-form'));
    await go(button('Look what it covers'));
    await read(page.locator('section[aria-labelledby="covers"]'));
    await press(page.getByRole('radio', { name: /for practice/ }));
    await press(page.getByRole('radio', { name: /may be hurt/ }));
    await type(page.locator('#open-recall textarea[name="reason"]'), 'Yearly exercise');
    await go(button(/^Open it and start the clock/));
    const path = new URL(page.url()).pathname;
    expect(path).toMatch(/^\/quality\/recalls\/[0-9a-f-]{36}$/);
    expect(await read(page.locator('section[aria-labelledby="answer"]'))).toContain('EXERCISE');
    const told = await read(page.locator('section[aria-labelledby="customers"]'));
    await go(button('List of customers is out'));

    const before = (await (await page.request.get(`${address}/api${path.replace('/quality', '')}`)).json()) as Answered;
    const [customer] = before.figures.customers;
    if (customer === undefined) throw new Error('nobody got any of it');
    expect(told).toContain(String(customer.packCount));
    personSeconds += secondsOf.thought + secondsOf.pointing + secondsOf.key;
    await page.locator('#answer-form select').selectOption(customer.customerId);
    await press(page.getByRole('radio', { name: 'returned', exact: true }));
    await type(page.locator('#answer-form input[name="packCount"]'), '120');
    await go(button('Enter the answer'));
    expect(await read(page.locator('section[aria-labelledby="answers"]'))).toContain('120');
    await go(button('Stop the clock'));
    expect(await accessibilityFindings(page)).toEqual([]);
    const isOdd = (await sumsOf(parts.unaccounted)).some((amount) => amount !== 0);
    if (isOdd) await type(page.locator('textarea[name="explanation"]'), 'Packs still on the table of the line');
    await type(page.locator('#sign-form input[name="password"]'), officer?.password ?? '');
    await go(button(/^Sign$/));
    expect(await read(page.locator('section[aria-labelledby="signed"]'))).toContain(officer?.name ?? '-');

    const hrefs = await Promise.all(
      [link(/Report \(PDF\)/).first(), link('Links (CSV)')].map((one) => one.getAttribute('href')),
    );
    const [report, csv] = await Promise.all(
      hrefs.map(async (href) => (await page.request.get(`${address}${href ?? ''}`)).body()),
    );
    const seconds = personSeconds + (Date.now() - startedAt) / 1000;
    if (process.env['SAY_SECONDS'] !== undefined) process.stdout.write(`a person takes ${Math.round(seconds)} s\n`);
    expect(seconds).toBeLessThan(300);

    await addsUp(path, { report: textOf(report ?? Buffer.alloc(0)), csv: csv?.toString('utf8') ?? '' });
    expect(pageCount(report ?? Buffer.alloc(0))).toBeGreaterThan(1);
    expect(policyReports).toEqual([]);
  }, 240_000);
});

/** Page, JSON, report and CSV say the same, and the parts are the whole. */
async function addsUp(path: string, files: { readonly report: string; readonly csv: string }): Promise<void> {
  const { number, figures } = (await (
    await page.request.get(`${address}/api${path.replace('/quality', '')}`)
  ).json()) as Answered;
  const { packs, milligrams, customers } = figures;
  for (const sums of [packs, milligrams]) {
    expect(sums.inStore + sums.onDock + sums.onVehicle + sums.dispatched + sums.usedUp + sums.unaccounted).toBe(
      sums.produced,
    );
  }
  const printed = files.report.replaceAll(/\s+/g, ' ');
  const shown = [];
  for (const [part, head] of Object.entries(parts) as [keyof typeof parts, string][]) {
    const [packCount = NaN, kilograms = NaN] = await sumsOf(head);
    expect([part, packCount]).toEqual([part, packs[part]]);
    expect(Math.abs(kilograms - milligrams[part] / 1_000_000)).toBeLessThanOrEqual(0.051);
    // On paper: the row whose head is followed by a number, whatever page it came onto.
    const row = printed.split(head).find((after) => /^ [\d\u2212]/.test(after));
    const sums = `${packCount}${kilograms.toFixed(1)}`.replaceAll('-', '\u2212');
    expect([part, row?.replaceAll(gap, '').startsWith(sums)]).toEqual([part, true]);
    shown.push({ part, packCount });
  }
  expect(shown.filter(({ part }) => part !== 'produced').reduce((sum, { packCount }) => sum + packCount, 0)).toBe(
    packs.produced,
  );
  expect(printed).toContain(number);
  const rows = files.csv
    .trimEnd()
    .split('\r\n')
    .map((line) => line.split(','));
  expect(rows[0]).toEqual(['parent', 'child', 'least_kg', 'likely_kg', 'most_kg', 'word', 'time_utc', 'record']);
  const toCustomers = rows.filter(([parent = '', child = '']) => parent.startsWith('DN-') && child.startsWith('K-'));
  const likely = toCustomers.reduce((sum, row) => sum + Number(row[3]), 0);
  const sent = customers.reduce((sum, one) => sum + one.milligrams, 0) / 1_000_000;
  expect(toCustomers.length).toBeGreaterThan(0);
  // Each unit's kilograms are rounded to the gram in the file.
  expect(Math.abs(likely - sent)).toBeLessThan(0.1);
  expect(Math.abs(sent - milligrams.dispatched / 1_000_000)).toBeLessThan(0.001);
}
