import { expect } from '@jest/globals';
import type { Page } from 'playwright-core';

/** Slower than any scanner: what is typed at this pace is never taken for a scan. */
const typingMilliseconds = 60;
/** No page of one task asks for more stops than this between two things. */
const mostTabs = 90;

/** Where the keyboard is, as a person finds it. */
interface FocusNow {
  readonly tag: string;
  /** What it says, or what its label says. */
  readonly says: string;
  readonly href: string;
  /** It has an outline and lies inside the window. */
  readonly isShown: boolean;
}

export function focusNow(page: Page): Promise<FocusNow> {
  return page.evaluate(() => {
    const at = document.activeElement ?? document.body;
    const labels = 'labels' in at ? [...((at as HTMLInputElement).labels ?? [])] : [];
    const says = (labels.length > 0 ? labels.map((label) => label.textContent).join(' ') : at.textContent).trim();
    // A tile's own field is not seen: the tile carries its outline.
    const seen = at.matches('.tile input') ? (at.nextElementSibling ?? at) : at;
    const { outlineStyle, outlineWidth } = getComputedStyle(seen);
    const { top, bottom, width, height } = seen.getBoundingClientRect();
    const isInside = width > 0 && height > 0 && bottom > 0 && top < innerHeight;
    const isShown = outlineStyle !== 'none' && parseFloat(outlineWidth) > 0 && isInside;
    return { tag: at.tagName.toLowerCase(), says, href: at.getAttribute('href') ?? '', isShown };
  });
}

/** Where the keyboard is once the page has come to rest: what a busy machine draws late is waited for. */
async function focusOnceShown(page: Page): Promise<FocusNow> {
  const until = Date.now() + 3000;
  let focus = await focusNow(page);
  while (!focus.isShown && Date.now() < until) {
    await page.waitForTimeout(50);
    focus = await focusNow(page);
  }
  return focus;
}

/** After a step the focus is on something that is seen to have it, or at the beginning of the page's content. */
export async function focusIsKept(page: Page): Promise<FocusNow> {
  await page.locator('body[data-ready=yes]').waitFor();
  // The browser gives a new page its focus when it first draws it, which may come after the page's script.
  await page
    .waitForFunction(() => document.activeElement !== document.body, undefined, { timeout: 3000 })
    .catch(() => undefined);
  if ((await focusNow(page)).tag === 'main') return focusNow(page);
  const focus = await focusOnceShown(page);
  expect({ at: page.url(), ...focus }).toEqual({ at: page.url(), ...focus, isShown: true });
  expect(focus.tag).not.toBe('body');
  return focus;
}

/** Goes on with Tab until what says this has the focus, which must be seen there. */
export async function tabTo(page: Page, says: string | RegExp, wishes: { key?: string; href?: string } = {}) {
  const { key = 'Tab', href = '' } = wishes;
  const passed: string[] = [];
  for (let tabs = 0; tabs < mostTabs; tabs += 1) {
    const focus = await focusNow(page);
    const fits = typeof says === 'string' ? focus.says.startsWith(says) : says.test(focus.says);
    if (fits && focus.tag !== 'main' && focus.tag !== 'body' && focus.href.includes(href)) {
      expect(await focusOnceShown(page)).toEqual({ ...focus, isShown: true });
      return;
    }
    passed.push(focus.says.slice(0, 20));
    await page.keyboard.press(key);
  }
  throw new Error(`${String(says)} is not reached by ${key} at ${page.url()}; passed: ${passed.join(' | ')}`);
}

/** Presses what says this, with Enter. */
export async function press(page: Page, says: string | RegExp, wishes: { key?: string; href?: string } = {}) {
  await tabTo(page, says, wishes);
  await page.keyboard.press('Enter');
}

/** Types as a person does, key by key, into what has the focus. */
export async function type(page: Page, text: string): Promise<void> {
  await page.keyboard.type(text, { delay: typingMilliseconds });
}

/** Goes to a field and types into it. */
export async function typeInto(page: Page, label: string | RegExp, text: string): Promise<void> {
  await tabTo(page, label);
  await type(page, text);
}

/** Chooses one of a group of tiles: Tab finds the group at its first tile, the arrows walk through it. */
export async function chooseTile(page: Page, first: string | RegExp, wanted: string): Promise<void> {
  await tabTo(page, first);
  await page.keyboard.press('Space');
  for (let steps = 0; steps < 20 && !(await focusNow(page)).says.startsWith(wanted); steps += 1) {
    await page.keyboard.press('ArrowDown');
  }
  expect(await focusOnceShown(page)).toMatchObject({ says: expect.stringContaining(wanted), isShown: true });
  expect(await page.evaluate(() => (document.activeElement as HTMLInputElement).checked)).toBe(true);
}

/** Signs in by code and password, from wherever the page begins. */
export async function signInByKeyboard(page: Page, person: { readonly code: string; readonly password: string }) {
  await tabTo(page, /code/i);
  await type(page, person.code);
  await page.keyboard.press('Tab');
  await type(page, person.password);
  await page.keyboard.press('Enter');
}
