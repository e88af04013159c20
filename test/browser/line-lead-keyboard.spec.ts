import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { Browser, Page } from 'playwright-core';
import { readerOf } from '../support/a-bag.js';
import { aPlant, type Plant } from '../support/a-plant.js';
import { aTabletAtTheLine, type TabletAtTheLine } from '../support/a-tablet.js';
import { aReleasedBag, aTippedBag } from '../support/a-tip.js';
import { openBrowser } from '../support/browser.js';
import { chooseTile, focusIsKept, press, signInByKeyboard, tabTo, type, typeInto } from '../support/by-keyboard.js';
import { leadByKeyboard, type LeadByKeyboard } from '../support/lead-by-keyboard.js';
import { openHouse, type TestHouse } from '../support/house.js';
import { writtenLast } from '../support/written-last.js';

let house: TestHouse;
let plant: Plant;
let browser: Browser;
let tablet: TabletAtTheLine;
let page: Page;
let line: string;
let lead: LeadByKeyboard;

const shows = (text: string | RegExp): Promise<void> => page.getByText(text).first().waitFor();
const wrote = () => writtenLast(house, tablet.lead);

/** What came back of a bag's last tip; null while it hangs. */
async function restOf(bagId: string): Promise<number | null> {
  const [row] = await readerOf(house).sql<{ rest: number }>`
    SELECT o."rest_grams" AS "rest" FROM "tip" t JOIN "tip_off" o ON o."tip_id" = t."id"
    WHERE t."bag_id" = ${bagId} AND t."voided_by" IS NULL AND o."voided_by" IS NULL`;
  return row?.rest ?? null;
}

async function countsThatStand(): Promise<readonly number[]> {
  const rows = await readerOf(house).sql<{ packs: number }>`
    SELECT "pack_count" AS "packs" FROM "pack_count" WHERE "voided_by" IS NULL`;
  return rows.map(({ packs }) => packs);
}

beforeAll(async () => {
  house = await openHouse();
  plant = await aPlant(house, { packsPerPallet: 100 });
  await aTippedBag(house, plant, { netGrams: 1_000_000 });
  browser = await openBrowser();
  tablet = await aTabletAtTheLine(house, plant, browser);
  ({ page, line } = tablet);
  page.setDefaultTimeout(15_000);
  lead = leadByKeyboard(page, line);
}, 180_000);

afterAll(async () => {
  await browser.close();
  await house.close();
});

describe('the packing-line lead’s day by keyboard alone', () => {
  it('signs in with code and password', async () => {
    await page.goto(`${tablet.address}/sign-in?next=${encodeURIComponent(new URL(line).pathname)}`);
    await signInByKeyboard(page, tablet.lead);
    await lead.backAtTheLine();
    await shows(/A\. Kaya/);
  });

  it('starts a run and types the code that stands on its first pack', async () => {
    await lead.atTheLine();
    await press(page, 'START RUN');
    await page.waitForURL(/\/run$/);
    expect(await focusIsKept(page)).toMatchObject({ tag: 'a', says: expect.stringContaining('Back to') });
    await chooseTile(page, /sugar/, 'White sugar 2 kg');
    await press(page, 'START RUN');
    await page.waitForURL(/\/code$/);
    expect((await wrote()).action).toBe('start-run');
    await focusIsKept(page);
    await type(page, 'L60711M');
    await page.keyboard.press('Tab');
    await type(page, '0');
    await page.keyboard.press('Enter');
    await lead.backAtTheLine();
    expect(await wrote()).toMatchObject({ action: 'change-code', after: { code: 'L60711M' } });
  });

  it('counts the packs', async () => {
    house.clock.pass(60);
    await lead.count('300');
    expect(await wrote()).toMatchObject({ action: 'count-packs', after: { counts: [{ packCount: 300 }] } });
  });

  it('tips a bag whole', async () => {
    const bag = await aReleasedBag(house, plant, { netGrams: 996_500 });
    await lead.atTheLine();
    await lead.lookUp(bag.number, '996.5 kg');
    await press(page, 'TIP WHOLE');
    await shows(`Tipped: ${bag.number}`);
    await lead.backAtTheLine();
    expect(await wrote()).toMatchObject({ action: 'tip-bag', after: { netGrams: 996_500 } });
    expect(await restOf(bag.id)).toBe(0);
  });

  it('tips a part of a bag and weighs the rest back', async () => {
    const bag = await aReleasedBag(house, plant, { netGrams: 1_000_000 });
    await lead.tipPart(bag.number);
    expect((await wrote()).action).toBe('tip-bag');
    expect(await restOf(bag.id)).toBeNull();
    house.clock.pass(5);
    await lead.weighBack(bag.number, { gross: '250', tare: '2' });
    expect(await wrote()).toMatchObject({ action: 'end-tip', after: { restGrams: 248_000 } });
    expect(await restOf(bag.id)).toBe(248_000);
  });

  it('builds a full pallet, comes to its label and types the label back', async () => {
    await lead.atTheLine();
    await press(page, 'PALLET FULL');
    await page.waitForURL(/\/pallets\//);
    expect((await focusIsKept(page)).says).toContain('Scan the label');
    const sscc = (await page.locator('.code.big').innerText()).trim();
    expect(await wrote()).toMatchObject({ action: 'build-pallet', after: { sscc, packCount: 100 } });
    await tabTo(page, 'LABEL (PDF)', { key: 'Shift+Tab', href: '/papers/' });
    await typeInto(page, 'Scan the label', sscc);
    await page.keyboard.press('Enter');
    await shows(`Scanned back: ${sscc}`);
    await focusIsKept(page);
    expect(await wrote()).toMatchObject({ action: 'check-pallet-label', after: { sscc } });
  });

  it('stops the line, steps back with Escape, and says why from the open point', async () => {
    await lead.atTheLine();
    await press(page, /^STOP$/);
    await page.waitForURL(/\/stops\//);
    await focusIsKept(page);
    const { action, after } = await wrote();
    expect({ action, after }).toMatchObject({ action: 'stop-line', after: { reason: 'not-said' } });
    await page.keyboard.press('Escape');
    await lead.backAtTheLine();
    await shows(/nobody has said why/);
    await tabTo(page, 'DO', { href: '/stops/' });
    // Somebody else tips meanwhile: the page becomes newer by itself, and the focus stays where it was.
    const before = await page.locator('#line-now').innerText();
    await aTippedBag(house, plant, { netGrams: 500_000 });
    await page.waitForFunction((was) => document.getElementById('line-now')?.innerText !== was, before);
    expect(await focusIsKept(page)).toMatchObject({ says: 'DO', href: expect.stringContaining(String(after['id'])) });
    await page.keyboard.press('Enter');
    await page.waitForURL(/\/stops\//);
    await focusIsKept(page);
    await press(page, 'jam');
    await shows('Why: jam');
    await focusIsKept(page);
    expect(await wrote()).toMatchObject({ action: 'correct-stop', after: { reason: 'jam' } });
    house.clock.pass(4);
    await press(page, 'RUNS AGAIN');
    await lead.backAtTheLine();
    expect(await wrote()).toMatchObject({ action: 'start-line-again', after: { minutes: 4 } });
  });

  it('books rejects and sweepings out by weight', async () => {
    await lead.bookOut({ kind: 'reject', net: '3', why: 'torn', fate: 'rework' });
    expect((await wrote()).action).toBe('remove-sugar');
    await lead.bookOut({ kind: 'sweepings', net: '4,5', why: 'floor', fate: 'waste' });
    expect((await wrote()).action).toBe('remove-sugar');
    const rows = await readerOf(house).sql`
      SELECT "kind", "grams", "reason" AS "why", "fate" FROM "removal" ORDER BY "grams"`;
    expect(rows).toEqual([
      { kind: 'reject', grams: 3000, why: 'torn', fate: 'rework' },
      { kind: 'sweepings', grams: 4500, why: 'floor', fate: 'waste' },
    ]);
  });

  it('counts wrong, and undoes this last entry', async () => {
    await lead.count('350');
    expect(await countsThatStand()).toContain(350);
    await lead.undoLast();
    expect((await wrote()).action).toBe('correct-count');
    expect(await countsThatStand()).not.toContain(350);
    expect(await countsThatStand()).toContain(300);
  });

  it('steps back with Escape only when nothing is being typed, and throws nothing away', async () => {
    await lead.atTheLine();
    await press(page, /^HAND OVER/);
    await page.waitForURL(/\/handover$/);
    await typeInto(page, 'What else must', 'the belt squeaks');
    await page.keyboard.press('Escape');
    expect(await focusIsKept(page)).toMatchObject({ says: expect.stringContaining('Back to') });
    expect(page.url()).toContain('/handover');
    expect(await page.getByLabel('What else must').inputValue()).toBe('the belt squeaks');
    await page.keyboard.press('Escape');
    await lead.backAtTheLine();
  });

  it('hands the line over, signed by two', async () => {
    await lead.atTheLine();
    await press(page, /^HAND OVER/);
    await page.waitForURL(/\/handover$/);
    expect((await focusIsKept(page)).says).toContain('Loose packs');
    await type(page, '12');
    await typeInto(page, 'Their badge', tablet.next.badge);
    await page.keyboard.press('Enter');
    await page.waitForURL(/\/handovers\//);
    await shows('Signed by the incoming lead: J. Moor');
    await focusIsKept(page);
    const { action, subjectId, after } = await wrote();
    expect({ action, after }).toMatchObject({ action: 'sign-handover', after: { loosePackCount: 12 } });
    const answers = await readerOf(house).sql<{ by: string }>`
      SELECT "person_id" AS "by" FROM "handover_answer" WHERE "handover_id" = ${subjectId}`;
    expect(answers).toEqual([{ by: tablet.next.personId }]);
  });

  it('signs the account when the shift is over', async () => {
    house.clock.set('2026-03-12T13:05:00.000Z');
    await lead.atTheLine();
    await press(page, 'Account of the shift');
    await page.waitForURL(/\/account$/);
    await focusIsKept(page);
    await typeInto(page, 'What do you know of the difference?', 'packs on the belt');
    await press(page, 'SIGN THE ACCOUNT');
    await page.waitForURL(/\/accounts\//);
    await focusIsKept(page);
    expect(await wrote()).toMatchObject({ action: 'sign-account' });
  });

  it('met no breach of the content security policy', () => {
    expect(tablet.policyReports).toEqual([]);
  });
});
