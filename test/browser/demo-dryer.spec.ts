import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { Page } from 'playwright-core';
import {
  asked,
  aServedDemo,
  demoPerson,
  isMadeForGloves,
  keyIn,
  listed,
  touch,
  type DemoBag,
  type ServedHouse,
} from '../support/a-served-demo.js';

let demo: ServedHouse;
let page: Page;

const shows = (text: string | RegExp): Promise<void> => page.getByText(text).first().waitFor();
const bagOf = async (id: string): Promise<DemoBag> => (await asked<{ bag: DemoBag }>(page, `/api/bags/${id}`)).bag;

/** The bag that hangs under the filler. */
async function hanging(): Promise<DemoBag> {
  const [bag] = await listed<DemoBag>(page, '/api/bags');
  expect(bag).toMatchObject({ status: 'filling' });
  return bag!;
}

beforeAll(async () => {
  demo = await aServedDemo();
  page = await demo.device('tablet-line-1', demoPerson('ilka'));
}, 300_000);

afterAll(async () => {
  await demo.close();
});

describe('the demo’s dryer operator, on a tablet, by touch', () => {
  let first: DemoBag;
  let second: DemoBag;

  it('finds the bag that hangs, and closes it with its weight', async () => {
    expect(new URL(page.url()).pathname).toMatch(/^\/dryer/);
    await isMadeForGloves(page);
    first = await hanging();
    await keyIn(page, 'Weight on the scale', '1012');
    await keyIn(page, 'Tare', '2');
    await touch(page, 'Close and label');
    await shows(/is closed with/);
    expect(await bagOf(first.id)).toMatchObject({ status: 'full', netGrams: 1_010_000 });
  });

  it('has its label, and takes a sample of it', async () => {
    await isMadeForGloves(page);
    const href = await page.getByRole('link', { name: 'Label to print' }).getAttribute('href');
    const label = await page.request.get(new URL(href ?? '', page.url()).href);
    expect([label.status(), label.headers()['content-type']]).toEqual([200, 'application/pdf']);
    await touch(page, /^Sample of /);
    await shows(/^Sample .* is recorded/);
    const [sample] = await listed<object>(page, '/api/samples');
    expect(sample).toMatchObject({ standsFor: 'bag', bagId: first.id });
  });

  it('hangs up the next and closes it, with two touches and a weight', async () => {
    await touch(page, 'Bag on');
    await shows('Hanging under the filler');
    second = await hanging();
    expect(second.id).not.toBe(first.id);
    await keyIn(page, 'Weight on the scale', '998');
    await touch(page, 'Close and label');
    await shows(/is closed with/);
    expect(await bagOf(second.id)).toMatchObject({ status: 'full', grossGrams: 998_000 });
  });

  it('corrects what was typed wrong', async () => {
    await touch(page, 'Correct what I typed');
    await isMadeForGloves(page);
    await keyIn(page, 'The right gross weight', '999');
    await page.getByLabel('What happened').tap();
    await page.keyboard.type('read the wrong line', { delay: 60 });
    await touch(page, 'Correct the weight');
    await shows(/The weight of bag .* is corrected/);
    expect(await bagOf(second.id)).toMatchObject({ grossGrams: 999_000 });
  });

  it('met no breach of the content security policy', () => {
    expect(demo.policyReports).toEqual([]);
  });
});
