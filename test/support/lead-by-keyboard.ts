import { expect } from '@jest/globals';
import type { Page } from 'playwright-core';
import { chooseTile, focusIsKept, press, tabTo, type, typeInto } from './by-keyboard.js';

/** What a line lead does by keyboard alone, from the page of the line and back to it. */
export interface LeadByKeyboard {
  /** Opens the page of the line, which begins at its place for scans. */
  atTheLine(): Promise<void>;
  backAtTheLine(): Promise<void>;
  /** Types a number into the place for scans, as is done where the scanner is broken. */
  lookUp(number: string, says: string): Promise<void>;
  /** Tips a part of a bag, and leaves it hanging. */
  tipPart(number: string): Promise<void>;
  /** Weighs back what is left in a bag that hangs, in kilograms as typed. */
  weighBack(number: string, weighed: { readonly gross: string; readonly tare: string }): Promise<void>;
  count(packs: string): Promise<void>;
  bookOut(removed: Removed): Promise<void>;
  /** Takes the last entry back: it did not happen. */
  undoLast(): Promise<void>;
}

interface Removed {
  readonly kind: string;
  readonly net: string;
  readonly why: string;
  readonly fate: string;
}

export function leadByKeyboard(page: Page, line: string): LeadByKeyboard {
  const shows = (text: string | RegExp): Promise<void> => page.getByText(text).first().waitFor();
  const backAtTheLine = async (): Promise<void> => {
    await page.waitForURL((url) => url.href.split('?')[0] === line);
    await focusIsKept(page);
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('scan');
  };
  const atTheLine = async (): Promise<void> => {
    await page.goto(line);
    await backAtTheLine();
  };
  const lookUp = async (number: string, says: string): Promise<void> => {
    await type(page, number);
    await page.keyboard.press('Enter');
    await page.locator('#band', { hasText: says }).waitFor();
    await backAtTheLine();
  };
  return {
    ...{ atTheLine, backAtTheLine, lookUp },
    tipPart: async (number) => {
      await atTheLine();
      await lookUp(number, 'Tip it?');
      await press(page, 'PART');
      await shows(`Bag ${number} hangs`);
      await focusIsKept(page);
      await page.keyboard.press('Escape');
      await backAtTheLine();
    },
    weighBack: async (number, { gross, tare }) => {
      await lookUp(number, 'HANGS');
      await press(page, 'WEIGH BACK');
      await page.waitForURL(/\/off\//);
      await focusIsKept(page);
      await typeInto(page, 'Gross', gross);
      await typeInto(page, 'Tare', tare);
      await tabTo(page, 'Scale');
      await page.keyboard.press('ArrowDown');
      await press(page, 'RECORD THE REST');
      await shows(/^Off\. /);
      await backAtTheLine();
    },
    count: async (packs) => {
      await atTheLine();
      await press(page, 'Count packs');
      await page.waitForURL(/\/count$/);
      expect((await focusIsKept(page)).says).toContain('The counter shows');
      await type(page, packs);
      await page.keyboard.press('Enter');
      await shows('Counted.');
      await backAtTheLine();
    },
    bookOut: async ({ kind, net, why, fate }) => {
      await atTheLine();
      await press(page, 'REJECTS');
      await page.waitForURL(/\/removals$/);
      await focusIsKept(page);
      await chooseTile(page, 'reject', kind);
      await typeInto(page, 'Net, weighed', net);
      await tabTo(page, 'Scale');
      await page.keyboard.press('ArrowDown');
      await chooseTile(page, 'underweight', why);
      await chooseTile(page, 'rework', fate);
      await press(page, 'RECORD');
      await shows(/Booked out: /);
      await backAtTheLine();
    },
    undoLast: async () => {
      await press(page, 'UNDO MY LAST');
      await page.waitForURL(/\/undo$/);
      await focusIsKept(page);
      await shows('Did it happen?');
      await press(page, 'NO: UNDO IT');
      await shows(/Undone: it is void/);
      await backAtTheLine();
    },
  };
}
