import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { Page } from 'playwright-core';
import { printedSscc } from '../../src/platform/printing/printed-figures.js';
import { asked, aServedDemo, demoPerson, isReady, leaves, listed, type ServedHouse } from '../support/a-served-demo.js';
import { pressAccessKey } from '../support/browser.js';
import { chooseTile, focusIsKept, press, signInByKeyboard, tabTo, type, typeInto } from '../support/by-keyboard.js';

const agnes = demoPerson('agnes');

let demo: ServedHouse;
let page: Page;

interface Hold {
  readonly id: string;
  readonly number: string;
  readonly scopeKind: string;
  readonly hazardSet: string | null;
  readonly liftedAt: string | null;
}

const shows = (text: string | RegExp): Promise<void> => page.getByText(text).first().waitFor();
const text = (): Promise<string> => page.locator('main').innerText();
const stateOf = async (kind: 'bags' | 'pallets', id: string): Promise<string> =>
  kind === 'bags'
    ? (await asked<{ state: string }>(page, `/api/bags/${id}/standing`)).state
    : (await asked<{ standing: { state: string } }>(page, `/api/pallets/${id}`)).standing.state;

async function go(says: string | RegExp): Promise<void> {
  await leaves(page, () => press(page, says));
  await focusIsKept(page);
}

async function enter(): Promise<void> {
  await leaves(page, () => page.keyboard.press('Enter'));
  await focusIsKept(page);
}

async function alt(letter: string): Promise<void> {
  await leaves(page, () => pressAccessKey(page, letter));
  await focusIsKept(page);
}

beforeAll(async () => {
  demo = await aServedDemo();
  page = await demo.nobody();
}, 300_000);

afterAll(async () => {
  await demo.close();
});

describe('the demo’s quality officer, at a desk, by keyboard alone', () => {
  it('finds what needs a decision, the gravest first', async () => {
    await page.goto(`${demo.address}/sign-in`);
    await isReady(page);
    await leaves(page, () => signInByKeyboard(page, agnes));
    await focusIsKept(page);
    const said = await text();
    const places = ['Safety holds on what has left', 'Holds without a class', 'to be released'].map((part) =>
      said.indexOf(part),
    );
    expect(places.every((place) => place >= 0)).toBe(true);
    expect(places.toSorted((one, other) => one - other)).toEqual(places);
  });

  it('releases the bags of a dryer shift whose results are complete', async () => {
    await go('Release together');
    const ids = await page
      .locator('input[name="bagIds"]:checked')
      .evaluateAll((boxes) => boxes.map((box) => (box as HTMLInputElement).value));
    expect(ids.length).toBeGreaterThan(1);
    expect(await stateOf('bags', ids[0]!)).toBe('waiting');
    await tabTo(page, 'Release');
    await page.keyboard.press('Space');
    await go('Record the decision');
    await shows(`${ids.length} bags released`);
    for (const id of ids) expect(await stateOf('bags', id)).toBe('released');
  });

  it('follows a printed code to its bags, pallets and customers', async () => {
    const [, code = ''] = /thread\?code=(\S+)/.exec(demo.printed) ?? [];
    await tabTo(page, 'Any code or number');
    await type(page, decodeURIComponent(code));
    await enter();
    await shows(`Packs coded ${decodeURIComponent(code)}`);
    const { thread } = await asked<{ thread: { sources: readonly { bagNumber: string; mostGrams: number }[] } }>(
      page,
      `/api/thread?code=${code}`,
    );
    const said = await text();
    expect(thread.sources.length).toBeGreaterThan(1);
    for (const { bagNumber } of thread.sources) expect(said).toContain(bagNumber);
  });

  it('sees what a hold on today’s lot would reach, places it as a safety hold, and lifts it with the password', async () => {
    const lots = await listed<{ id: string; code: string }>(page, '/api/lots');
    const lot = lots.find(({ code }) => code === 'L62991M');
    await leaves(page, () => press(page, 'Quality', { key: 'Shift+Tab' }));
    await alt('h');
    expect((await focusIsKept(page)).says).toContain('What is to be held');
    await type(page, lot!.code);
    await enter();
    const { possible } = await asked<{ possible: readonly { palletId: string; sscc: string }[] }>(
      page,
      `/api/holds/reach?kind=lot&id=${lot!.id}`,
    );
    await shows(`It reaches ${possible.length} pallets`);
    const said = await text();
    for (const { sscc } of possible) expect(said).toContain(printedSscc(sscc));
    expect((await listed<Hold>(page, '/api/holds')).filter(({ scopeKind }) => scopeKind === 'lot')).toHaveLength(1);
    await typeInto(page, 'Why', 'a screw was found at the sieve at 10:20');
    await chooseTile(page, 'safety hold', 'safety hold');
    await go('Place the hold');
    const id = new URL(page.url()).pathname.split('/').at(-1) ?? '';
    expect(await asked(page, `/api/holds/${id}`)).toMatchObject({
      ...{ scopeKind: 'lot', scopeId: lot!.id, hazardSet: 'safety', liftedAt: null },
    });
    for (const { palletId } of possible.slice(0, 2)) expect(await stateOf('pallets', palletId)).toBe('on-hold');
    await typeInto(page, 'Why it can be lifted', 'the screw is of the old guard, none is missing');
    await typeInto(page, 'Your password once more', agnes.password);
    await go('Lift the hold');
    expect(await asked(page, `/api/holds/${id}`)).toMatchObject({ liftedAt: expect.any(String) });
    expect(await stateOf('pallets', possible[0]!.palletId)).not.toBe('on-hold');
  });

  it('holds a whole shift of a line by its day and name, and minutes of a run', async () => {
    await leaves(page, () => press(page, 'Quality', { key: 'Shift+Tab' }));
    await alt('h');
    await press(page, 'A whole shift of a dryer or a line');
    await tabTo(page, 'Dryer or line');
    await type(page, 'shift of line 2');
    await tabTo(page, 'Shift');
    await type(page, 'M');
    await go('Look at its reach');
    await shows('Place a hold on shift of line 2, 2026-10-26 shift M');
    await typeInto(page, 'Why', 'the sieve of this shift was torn');
    await go('Place the hold');
    const hold = (await listed<Hold & { scopeId: string }>(page, '/api/holds'))[0]!;
    expect(hold).toMatchObject({ scopeKind: 'packing-shift', fromAt: '2026-10-26T05:00:00.000Z' });
    const reach = await asked<{ possible: readonly { palletId: string }[] }>(
      page,
      `/api/holds/reach?kind=packing-shift&id=${hold.scopeId}&fromAt=2026-10-26T09:00:00.000Z`,
    );
    expect(reach.possible.length).toBeGreaterThan(3);
    for (const { palletId } of reach.possible.slice(0, 2)) expect(await stateOf('pallets', palletId)).toBe('on-hold');
    const number = (await listed<{ number: string }>(page, '/api/runs'))[0]!.number;
    const times = 'from=2026-10-26T08:00&until=2026-10-26T08:30';
    await page.goto(`${demo.address}/quality/holds/new?run=${number}&${times}`);
    await shows(/Only what may have been packed from .*08:00 to .*08:30/);
  });

  it('met no breach of the content security policy', () => {
    expect(demo.policyReports).toEqual([]);
  });
});
