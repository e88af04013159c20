import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { Page } from 'playwright-core';
import { demoBadgeOf } from '../../src/demo/set-up/demo-people.js';
import {
  asked,
  aServedDemo,
  demoPerson,
  lastRunOf,
  levelGrams,
  listed,
  releasedBags,
  type DemoBag,
  type ServedHouse,
} from '../support/a-served-demo.js';
import { focusIsKept, press, signInByKeyboard, tabTo, type, typeInto } from '../support/by-keyboard.js';
import { leadByKeyboard, type LeadByKeyboard } from '../support/lead-by-keyboard.js';

let demo: ServedHouse;

beforeAll(async () => {
  demo = await aServedDemo();
}, 300_000);

afterAll(async () => {
  await demo.close();
});

const bagOf = async (page: Page, id: string): Promise<DemoBag> =>
  (await asked<{ bag: DemoBag }>(page, `/api/bags/${id}`)).bag;

describe('the demo’s line lead, by keyboard alone', () => {
  let page: Page;
  let lead: LeadByKeyboard;
  let bags: readonly DemoBag[];
  const shows = (text: string | RegExp): Promise<void> => page.getByText(text).first().waitFor();

  it('signs in at a tablet with the code of the badge, and finds the line', async () => {
    page = await demo.device('tablet-line-1', demoPerson('tomas'));
    await press(page, /^Line 1/);
    await page.waitForURL(/\/line\/[^/]+$/);
    lead = leadByKeyboard(page, page.url());
    await lead.backAtTheLine();
    bags = await releasedBags(page, 2);
    expect(bags).toHaveLength(2);
  });

  it('tips a bag of the store whole', async () => {
    const [bag] = bags;
    const before = await levelGrams(page);
    await lead.lookUp(bag!.number, 'Tip it?');
    await press(page, 'TIP WHOLE');
    await shows(`Tipped: ${bag!.number}`);
    await lead.backAtTheLine();
    expect(await bagOf(page, bag!.id)).toMatchObject({ status: 'empty', remainingGrams: 0 });
    expect(await levelGrams(page)).toBe(before + bag!.remainingGrams);
    await lead.lookUp(bag!.number, 'TIPPED ALREADY');
  });

  it('tips a part of another and weighs the rest back', async () => {
    const bag = bags[1]!;
    await lead.tipPart(bag.number);
    await lead.weighBack(bag.number, { gross: '402', tare: '2' });
    expect(await bagOf(page, bag.id)).toMatchObject({ remainingGrams: 400_000 });
  });

  it('counts, builds a full pallet and types its label back', async () => {
    const { packCount } = await lastRunOf(page, 'Line 1');
    await lead.count(String(packCount + 40));
    expect((await lastRunOf(page, 'Line 1')).packCount).toBe(packCount + 40);
    await press(page, 'PALLET FULL');
    await page.waitForURL(/\/pallets\//);
    expect((await focusIsKept(page)).says).toContain('Scan the label');
    const sscc = (await page.locator('.code.big').innerText()).trim();
    await tabTo(page, 'LABEL (PDF)', { key: 'Shift+Tab', href: '/papers/' });
    await typeInto(page, 'Scan the label', sscc);
    await page.keyboard.press('Enter');
    await shows(`Scanned back: ${sscc}`);
    await focusIsKept(page);
    const [built] = await listed<object>(page, '/api/pallets?limit=1');
    expect(built).toMatchObject({ sscc, packCount: 480, isFull: true, status: 'in-store' });
  });

  it('stops the line, says why, and lets it run again', async () => {
    await lead.atTheLine();
    await press(page, /^STOP$/);
    await page.waitForURL(/\/stops\//);
    await focusIsKept(page);
    await press(page, 'jam');
    await shows('Why: jam');
    await focusIsKept(page);
    await press(page, 'RUNS AGAIN');
    await lead.backAtTheLine();
    const { number } = await lastRunOf(page, 'Line 1');
    const stops = await listed<object>(page, `/api/stops?run=${number}`);
    expect(stops.at(-1)).toMatchObject({ reason: 'jam', startedAgainAt: expect.any(String) });
  });

  it('books sweepings out by weight, counts wrong and undoes that', async () => {
    const before = await levelGrams(page);
    await lead.bookOut({ kind: 'sweepings', net: '4', why: 'floor', fate: 'waste' });
    expect(await levelGrams(page)).toBe(before - 4000);
    const { packCount } = await lastRunOf(page, 'Line 1');
    await lead.count(String(packCount + 7));
    await lead.undoLast();
    expect((await lastRunOf(page, 'Line 1')).packCount).toBe(packCount);
  });

  it('puts the test pieces through the metal detector', async () => {
    await lead.atTheLine();
    await press(page, 'Line checks');
    await page.waitForURL(/\/checks$/);
    await focusIsKept(page);
    const metal = page.locator('#due-checks li', { hasText: 'Metal detector' });
    const href = (await metal.getByRole('link', { name: 'Check', exact: true }).getAttribute('href')) ?? '';
    await press(page, /^Check/, { href });
    await page.waitForURL((url) => url.pathname === href);
    await focusIsKept(page);
    await press(page, 'All passed');
    await metal.filter({ hasText: /in 1(20|19) min/ }).waitFor();
  });

  it('hands the line over, signed by two', async () => {
    await lead.atTheLine();
    await press(page, /^HAND OVER/);
    await page.waitForURL(/\/handover$/);
    expect((await focusIsKept(page)).says).toContain('Loose packs');
    await type(page, '12');
    await typeInto(page, 'Their badge', demoBadgeOf(demoPerson('ruth')));
    await page.keyboard.press('Enter');
    await page.waitForURL(/\/handovers\//);
    await shows('Signed by the incoming lead: Ruth Ansel');
    const id = new URL(page.url()).pathname.split('/').at(-1) ?? '';
    expect(await asked(page, `/api/handovers/${id}`)).toMatchObject({ how: 'together', agrees: true });
  });
});

describe('the demo’s dryer operator, by keyboard alone', () => {
  let page: Page;
  const shows = (text: string | RegExp): Promise<void> => page.getByText(text).first().waitFor();

  async function hanging(): Promise<DemoBag> {
    const [bag] = await listed<DemoBag>(page, '/api/bags');
    expect(bag).toMatchObject({ status: 'filling' });
    return bag!;
  }

  it('signs in with code and password, and closes the bag that hangs', async () => {
    page = await demo.nobody();
    await page.goto(`${demo.address}/sign-in?next=/dryer`);
    await signInByKeyboard(page, demoPerson('ilka'));
    await page.waitForURL(/\/dryer/);
    expect((await focusIsKept(page)).says).toContain('Weight on the scale');
    const bag = await hanging();
    await type(page, '1012');
    await typeInto(page, 'Tare', '2');
    await press(page, 'Close and label');
    await shows(/is closed with/);
    await focusIsKept(page);
    expect(await bagOf(page, bag.id)).toMatchObject({ status: 'full', netGrams: 1_010_000 });
  });

  it('comes to its label, takes a sample, hangs up the next, and corrects what was typed wrong', async () => {
    await tabTo(page, 'Label to print', { href: '/papers/' });
    await press(page, /^Sample of /);
    await shows(/^Sample .* is recorded/);
    await press(page, 'Bag on');
    await shows('Hanging under the filler');
    expect((await focusIsKept(page)).says).toContain('Weight on the scale');
    const bag = await hanging();
    await type(page, '998');
    await press(page, 'Close and label');
    await shows(/is closed with/);
    await press(page, 'Correct what I typed');
    await page.waitForURL(/\/weighings\//);
    expect((await focusIsKept(page)).says).toContain('The right gross weight');
    await type(page, '999');
    await typeInto(page, 'What happened', 'read the wrong line');
    await press(page, 'Correct the weight');
    await shows(/The weight of bag .* is corrected/);
    expect(await bagOf(page, bag.id)).toMatchObject({ grossGrams: 999_000 });
  });

  it('met no breach of the content security policy', () => {
    expect(demo.policyReports).toEqual([]);
  });
});
