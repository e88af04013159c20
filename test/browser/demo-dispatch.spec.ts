import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { Page } from 'playwright-core';
import {
  asked,
  aServedDemo,
  demoPerson,
  handheldSize,
  isMadeForGloves,
  isReady,
  leaves,
  listed,
  touch,
  type ServedHouse,
} from '../support/a-served-demo.js';
import { pressAccessKey } from '../support/browser.js';
import { focusIsKept, press, signInByKeyboard, tabTo, type, typeInto } from '../support/by-keyboard.js';
import { scanOn } from '../support/scanner.js';

const oskar = demoPerson('oskar');
const piet = demoPerson('piet');
const order = 'AQ-5001';

let demo: ServedHouse;
/** The clerk's desk; nothing on it is touched by a mouse. */
let desk: Page;
/** The loader's handheld on the dock. */
let hand: Page;
let good: readonly string[];
let held: { readonly hold: string; readonly sscc: string };

interface Delivery {
  readonly id: string;
  readonly orderNumber: string;
  readonly status: string;
  readonly loadedCount: number;
  readonly noteNumber: string | null;
  readonly notePaperId: string | null;
}
interface Pallet {
  readonly sscc: string;
  readonly status: string;
  readonly packCount: number;
}

const shows = (page: Page, text: string | RegExp): Promise<void> => page.getByText(text).first().waitFor();

/** Alt and a letter, as it stands on the button; the next page is there afterwards, and the focus on something. */
async function alt(letter: string): Promise<void> {
  await leaves(desk, () => pressAccessKey(desk, letter));
  await focusIsKept(desk);
}

async function enter(): Promise<void> {
  await leaves(desk, () => desk.keyboard.press('Enter'));
  await focusIsKept(desk);
}

async function scan(page: Page, code: string, ...says: readonly string[]): Promise<void> {
  await leaves(page, () => scanOn(page, code));
  const band = await page.locator('#band').innerText();
  const at = page.url();
  for (const words of says) expect({ at, band }).toEqual({ at, band: expect.stringContaining(words) });
}

async function delivery(): Promise<Delivery> {
  const found = (await listed<Delivery>(desk, '/api/deliveries')).find(({ orderNumber }) => orderNumber === order);
  if (found === undefined) throw new Error(`order ${order} is not planned`);
  return found;
}

async function palletOf(sscc: string): Promise<Pallet> {
  const pallets = await listed<Pallet & { id: string }>(desk, '/api/pallets?limit=200');
  return pallets.find((one) => one.sscc === sscc)!;
}

/** SSCCs of full pallets that the page of the stock says may go. */
async function freePallets(): Promise<readonly string[]> {
  const cells = desk.locator('.cells a').filter({ hasText: 'Released' }).filter({ hasNotText: 'part' });
  const hrefs = await cells.evaluateAll((links) => links.slice(0, 3).map((link) => link.getAttribute('href') ?? ''));
  const found: string[] = [];
  for (const href of hrefs) found.push((await asked<Pallet>(desk, `/api${href}`)).sscc);
  return found;
}

beforeAll(async () => {
  demo = await aServedDemo();
  desk = await demo.nobody();
  hand = await demo.device('handheld-dock', piet, handheldSize);
}, 300_000);

afterAll(async () => {
  await demo.close();
});

describe('the demo’s dispatch clerk, by keyboard and scanner, and its loader with the handheld', () => {
  it('looks into the stock for what may go', async () => {
    await desk.goto(`${demo.address}/sign-in`);
    await isReady(desk);
    await leaves(desk, () => signInByKeyboard(desk, oskar));
    expect(new URL(desk.url()).pathname).toBe('/dispatch');
    await focusIsKept(desk);
    await alt('k');
    await leaves(desk, () => press(desk, 'White sugar 1 kg'));
    good = await freePallets();
    expect(good).toHaveLength(3);
    const holds = await listed<{ number: string; scopeKind: string; scopeId: string }>(desk, '/api/holds');
    const hold = holds.find(({ scopeKind }) => scopeKind === 'pallet');
    const { sscc } = await asked<Pallet>(desk, `/api/pallets/${hold?.scopeId ?? ''}`);
    held = { hold: hold?.number ?? '', sscc };
  });

  it('plans a delivery of three pallets', async () => {
    await alt('b');
    await alt('n');
    await tabTo(desk, 'Customer');
    await type(desk, 'Millrace');
    await typeInto(desk, 'Order', order);
    await tabTo(desk, 'Goods 1');
    await type(desk, 'White sugar 1');
    await typeInto(desk, 'Packs, or bags', '2700');
    await alt('s');
    await shows(desk, 'Planned.');
    expect(await delivery()).toMatchObject({ status: 'planned', loadedCount: 0 });
  });

  it('checks the vehicle, point by point', async () => {
    await alt('v');
    await typeInto(desk, 'Registration', 'AQ 412 D');
    await desk.keyboard.press('Tab');
    await type(desk, 'H-07');
    const pointCount = await desk.getByRole('checkbox').count();
    for (let point = 0; point < pointCount; point += 1) {
      await desk.keyboard.press('Tab');
      await desk.keyboard.press('Space');
    }
    await enter();
    await shows(desk, /vehicle AQ 412 D checked/);
  });

  it('scans one pallet on, and is told why another may not go', async () => {
    await scan(desk, good[0]!, 'YES');
    expect(await delivery()).toMatchObject({ status: 'loading', loadedCount: 1 });
    await scan(desk, held.sscc, 'NO', held.hold);
    await shows(desk, 'Refused on this delivery: 1');
    expect(await delivery()).toMatchObject({ loadedCount: 1 });
    expect(await palletOf(held.sscc)).toMatchObject({ status: 'in-store' });
  });

  it('lets the loader scan on, with a yes and a no that a glove can reach, while the clerk’s page follows', async () => {
    await isReady(hand);
    await touch(hand, new RegExp(order));
    await isMadeForGloves(hand);
    await scan(hand, good[1]!, 'YES');
    await isMadeForGloves(hand);
    await desk.locator('#loading', { hasText: good[1]!.slice(-4) }).waitFor();
    await scan(hand, held.sscc, 'NO', held.hold);
    await isMadeForGloves(hand);
    await scan(hand, good[2]!, 'YES');
    expect(await delivery()).toMatchObject({ loadedCount: 3 });
    expect(await hand.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(handheldSize.width);
  });

  it('lets the loader take one off again, with its reason, and find no way to close', async () => {
    const sscc = good[2]!;
    await leaves(hand, () => hand.locator(`#dock li:has-text("${sscc.slice(-4)}") a`).tap());
    await isMadeForGloves(hand);
    await hand.getByLabel('Why').tap();
    await hand.keyboard.type('corner crushed', { delay: 60 });
    await touch(hand, 'Take off');
    expect(await delivery()).toMatchObject({ loadedCount: 2 });
    expect(await palletOf(sscc)).toMatchObject({ status: 'in-store' });
    expect(await hand.getByText(/close and print/i).count()).toBe(0);
    await desk.locator('#loading', { hasText: /locked/ }).waitFor();
  });

  it('counts without looking, says why less goes, prints only when told to, and lets the vehicle go', async () => {
    await alt('c');
    expect((await focusIsKept(desk)).says).toContain('Pallets and bags');
    expect(await desk.locator('main').innerText()).not.toContain(good[0]!.slice(-4));
    await type(desk, '2');
    await enter();
    await shows(desk, 'The count agrees.');
    await alt('p');
    expect((await focusIsKept(desk)).says).toContain('Seal');
    await type(desk, 'S4412');
    await enter();
    await shows(desk, /Less than ordered|reason/);
    expect(await delivery()).toMatchObject({ status: 'loading' });
    await tabTo(desk, 'Why less goes');
    await desk.keyboard.press('ArrowDown');
    await typeInto(desk, 'The same in words', 'one pallet with a crushed corner');
    await enter();
    await shows(desk, 'Nothing is printed yet');
    expect(await delivery()).toMatchObject({ status: 'loading', noteNumber: null });
    await alt('p');
    await shows(desk, /Papers are printed/);
    const closed = await delivery();
    expect(closed).toMatchObject({ status: 'closed', loadedCount: 2, noteNumber: expect.stringMatching(/^DN-/) });
    const note = await desk.request.get(`${demo.address}/papers/${closed.notePaperId ?? ''}/file`);
    expect([note.status(), note.headers()['content-type']]).toEqual([200, 'application/pdf']);
    await alt('g');
    await alt('g');
    expect(await delivery()).toMatchObject({ status: 'left' });
    expect(await palletOf(good[0]!)).toMatchObject({ status: 'dispatched', packCount: 900 });
  });

  it('met no breach of the content security policy', () => {
    expect(demo.policyReports).toEqual([]);
  });
});
