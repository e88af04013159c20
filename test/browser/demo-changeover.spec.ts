import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { Page } from 'playwright-core';
import { demoBadgeOf } from '../../src/demo/set-up/demo-people.js';
import {
  asked,
  aServedDemo,
  demoPerson,
  lastRunOf,
  leaves,
  levelGrams,
  tabletSize,
  type DemoRun,
  type ServedHouse,
} from '../support/a-served-demo.js';
import { chooseTile, focusIsKept, press, signInByKeyboard, tabTo, type, typeInto } from '../support/by-keyboard.js';

const tomas = demoPerson('tomas');
const emil = demoPerson('emil');

let demo: ServedHouse;
let page: Page;
let line: string;

interface Changeover {
  readonly next: string | null;
  readonly rungs: readonly { readonly rung: string; readonly count: number | null; readonly recordId: string | null }[];
}

const shows = (text: string | RegExp): Promise<void> => page.getByText(text).first().waitFor();
const lastRun = (): Promise<DemoRun> => lastRunOf(page, 'Line 1');

/** What the house knows of the ladder that this page shows. */
async function ladder(): Promise<Changeover> {
  const action = (await page.locator('form[action*="/changeover/"]').first().getAttribute('action')) ?? '';
  return asked(page, `/api/changeovers/${/changeover\/([0-9a-f-]{36})/.exec(action)?.[1] ?? ''}`);
}

/** Presses what leads to another page, where the focus is again on something. */
async function go(says: string | RegExp): Promise<void> {
  await leaves(page, () => press(page, says));
  await focusIsKept(page);
}

const enter = (): Promise<void> => leaves(page, () => page.keyboard.press('Enter'));

async function atTheLine(says: string | RegExp): Promise<void> {
  expect(page.url().split('?')[0]).toBe(line);
  await shows(says);
  await focusIsKept(page);
}

async function rungIsDone(says: string | RegExp): Promise<void> {
  await go('THIS RUNG IS DONE');
  await shows(says);
}

beforeAll(async () => {
  demo = await aServedDemo();
  page = await demo.nobody(tabletSize);
}, 300_000);

afterAll(async () => {
  await demo.close();
});

describe('the changeover ladder of the demo’s first line, by keyboard alone', () => {
  it('makes the browser the line’s tablet, signs in, and opens the ladder to another format', async () => {
    await page.goto(`${demo.address}/demo`);
    await leaves(page, () => press(page, 'tablet-line-1'));
    await leaves(page, () => signInByKeyboard(page, tomas));
    await go('Line 1');
    line = page.url();
    await go('Changeover');
    await chooseTile(page, /sugar/, 'White sugar 1 kg');
    await go('BEGIN');
    await shows('Changeover to White sugar 1 kg');
    expect(await ladder()).toMatchObject({ next: 'last-pack-out', rungs: [] });
  });

  it('refuses the first rung while the run goes on, and takes it with the run’s close as its proof', async () => {
    await rungIsDone(/PR-2026-\d+ .*(not closed|still)/i);
    const { number, packCount } = await lastRun();
    // What the hopper held is packed: two kilograms a pack.
    const atClose = packCount + Math.floor((await levelGrams(page)) / 2010);
    await go('Close the run');
    expect((await focusIsKept(page)).says).toContain('The counter shows');
    await type(page, String(atClose));
    await typeInto(page, 'Loose on belts', '0');
    await go('LAST PACK IS OUT');
    await atTheLine(/is closed\.$/);
    expect(await lastRun()).toMatchObject({ number, packCount: atClose, closedAt: expect.any(String) });
    await go('GO ON');
    await rungIsDone('Done. The next rung.');
    expect(await ladder()).toMatchObject({ next: 'hopper-empty', rungs: [{ rung: 'last-pack-out', count: atClose }] });
  });

  it('refuses the second until two people have looked into the hopper', async () => {
    await rungIsDone(/H1 .*empty/i);
    await go('Proven empty');
    await tabTo(page, 'The flow is stopped');
    await page.keyboard.press('Space');
    await typeInto(page, 'What sticks inside', '0');
    await tabTo(page, 'Who else saw it?');
    await type(page, 'Emil');
    await go('PROVEN EMPTY');
    await atTheLine(/^Proven empty/);
    await go('GO ON');
    await rungIsDone('Done. The next rung.');
    expect(await ladder()).toMatchObject({ next: 'reject-bin-closed' });
    expect((await ladder()).rungs[1]?.recordId).not.toBeNull();
  });

  it('takes the third with what was seen in the bin, the fourth with the rolls that went back', async () => {
    await rungIsDone(/Something in what was sent|This is missing/);
    await typeInto(page, 'or what was seen', 'empty');
    await rungIsDone('Done. The next rung.');
    expect(await ladder()).toMatchObject({ next: 'film-back' });
    await typeInto(page, 'Rolls and label rolls', '2');
    await rungIsDone('Done. The next rung.');
    const { next, rungs } = await ladder();
    expect([next, rungs.at(-1)]).toEqual(['code-checked', expect.objectContaining({ rung: 'film-back', count: 2 })]);
  });

  it('starts the run of the other format, fits its film, reads its code', async () => {
    await rungIsDone(/White sugar 1 kg/);
    await go('START RUN');
    await chooseTile(page, /sugar/, 'White sugar 1 kg');
    await go('START RUN');
    const code = await page.locator('.code-text').innerText();
    await type(page, code);
    await page.keyboard.press('Tab');
    await type(page, '0');
    await enter();
    expect(await lastRun()).toMatchObject({ formatName: 'White sugar 1 kg', packCount: 0, closedAt: null });
    await go('Film roll fitted');
    await type(page, 'FR-1KG-77');
    await enter();
    await shows(/what is it\?/);
    await focusIsKept(page);
    await chooseTile(page, 'film', 'film');
    await typeInto(page, 'and its supplier', 'FOIL-9');
    await go('RECORD');
    await atTheLine('Film FR-1KG-77 is on.');
  });

  it('is done when a second person has read the code too', async () => {
    await go('GO ON');
    await typeInto(page, 'Their badge', demoBadgeOf(emil));
    await enter();
    await atTheLine('The changeover is done.');
    await go('Count packs');
    await type(page, '30');
    await enter();
    await atTheLine('Counted.');
    expect(await lastRun()).toMatchObject({ packCount: 30 });
    expect(await page.getByText('GO ON', { exact: true }).count()).toBe(0);
  });

  it('met no breach of the content security policy', () => {
    expect(demo.policyReports).toEqual([]);
  });
});
