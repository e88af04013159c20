import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { Page } from 'playwright-core';
import { demoBadgeOf } from '../../src/demo/set-up/demo-people.js';
import {
  asked,
  aServedDemo,
  demoPerson,
  isMadeForGloves,
  isReady,
  keyIn,
  lastRunOf,
  leaves,
  levelGrams,
  listed,
  releasedBags,
  touch,
  type DemoBag,
  type DemoRun,
  type ServedHouse,
} from '../support/a-served-demo.js';
import { scanOn } from '../support/scanner.js';

const tomas = demoPerson('tomas');
const ruth = demoPerson('ruth');

let demo: ServedHouse;
let page: Page;
let line: string;

const shows = (text: string | RegExp): Promise<void> => page.getByText(text).first().waitFor();
const bandSays = (text: string): Promise<void> => page.locator('#band', { hasText: text }).waitFor();
const bagOf = async (id: string): Promise<DemoBag> => (await asked<{ bag: DemoBag }>(page, `/api/bags/${id}`)).bag;
/** The run of this tablet's line, as the house has it now. */
const runNow = (): Promise<DemoRun> => lastRunOf(page, 'Line 1');

async function scan(code: string, ...says: readonly string[]): Promise<void> {
  await scanOn(page, code);
  for (const words of says) await bandSays(words);
}

beforeAll(async () => {
  demo = await aServedDemo();
  page = await demo.device('tablet-line-1', tomas);
}, 300_000);

afterAll(async () => {
  await demo.close();
});

describe('the demo’s line lead, on a tablet, by scan and touch', () => {
  let bags: readonly DemoBag[];

  it('finds the line, with all that a glove must hit large enough', async () => {
    await isMadeForGloves(page);
    await touch(page, /^Line 1/);
    [line = ''] = page.url().split('?');
    await shows(/Tomas Weir · change person/);
    await isMadeForGloves(page);
    bags = await releasedBags(page, 3);
    expect(bags).toHaveLength(3);
  });

  it('tips a bag of the store whole', async () => {
    const [bag] = bags;
    const before = await levelGrams(page);
    await scan(bag!.number, bag!.number.slice(-4), 'Released');
    await isMadeForGloves(page);
    await touch(page, 'TIP WHOLE');
    await shows(`Tipped: ${bag!.number}`);
    expect(await bagOf(bag!.id)).toMatchObject({ status: 'empty', remainingGrams: 0 });
    expect(await levelGrams(page)).toBe(before + bag!.remainingGrams);
    await scan(bag!.number, 'TIPPED ALREADY');
    await scan(bag!.number, 'Tomas Weir');
  });

  it('is refused a bag that is still being filled, and takes the next with one scan', async () => {
    const filling = (await listed<DemoBag>(page, '/api/bags')).find(({ status }) => status === 'filling');
    await scan(filling!.number, 'STOP', 'is being filled still');
    await isMadeForGloves(page);
    await scan(bags[1]!.number, bags[1]!.number.slice(-4), 'Tip it?');
  });

  it('tips a part of that bag and weighs the rest back', async () => {
    const bag = bags[1]!;
    await touch(page, 'PART');
    await shows(`Bag ${bag.number} hangs`);
    await isMadeForGloves(page);
    await touch(page, /^Back to/);
    await scan(bag.number, 'HANGS');
    await touch(page, 'WEIGH BACK');
    await keyIn(page, 'Gross', '402');
    await keyIn(page, 'Tare', '2');
    await page.getByLabel('Scale').selectOption({ index: 1 });
    await isMadeForGloves(page);
    await touch(page, 'RECORD THE REST');
    await shows(/^Off\. /);
    expect(await bagOf(bag.id)).toMatchObject({ remainingGrams: 400_000 });
  });

  it('counts what the counter shows', async () => {
    const { packCount } = await runNow();
    await touch(page, 'Count packs');
    await keyIn(page, 'The counter shows', String(packCount + 40));
    await touch(page, 'RECORD');
    await shows('Counted.');
    expect((await runNow()).packCount).toBe(packCount + 40);
  });

  it('builds a pallet, and scans back the label that comes for it', async () => {
    await touch(page, 'PALLET FULL');
    const sscc = (await page.locator('.code.big').innerText()).trim();
    await isMadeForGloves(page);
    const label = page.getByRole('link', { name: 'LABEL (PDF)' });
    const paper = await page.request.get(new URL((await label.getAttribute('href')) ?? '', page.url()).href);
    expect([paper.status(), paper.headers()['content-type']]).toEqual([200, 'application/pdf']);
    await scanOn(page, sscc);
    await shows(`Scanned back: ${sscc}`);
    await isReady(page);
    const [built] = await listed<object>(page, '/api/pallets?limit=1');
    expect(built).toMatchObject({ sscc, packCount: 480, isFull: true, status: 'in-store' });
  });

  it('stops the line, says why, and lets it run again', async () => {
    await page.goto(line);
    await isReady(page);
    await touch(page, /^STOP/);
    await isMadeForGloves(page);
    await touch(page, 'jam');
    await shows('Why: jam');
    await touch(page, 'RUNS AGAIN');
    const { number } = await runNow();
    const stops = await listed<object>(page, `/api/stops?run=${number}`);
    expect(stops.at(-1)).toMatchObject({ reason: 'jam', startedAgainAt: expect.any(String) });
  });

  it('books sweepings out by weight', async () => {
    const before = await levelGrams(page);
    await touch(page, /^REJECTS/);
    await isMadeForGloves(page);
    await page.getByRole('radio', { name: 'sweepings' }).tap();
    await keyIn(page, 'Net, weighed', '4');
    await page.getByLabel(/^Scale/).selectOption({ index: 1 });
    await page.getByRole('radio', { name: 'floor' }).tap();
    await page.getByRole('radio', { name: 'waste' }).tap();
    await touch(page, 'RECORD');
    await shows('Booked out: 4 kg');
    expect(await levelGrams(page)).toBe(before - 4000);
  });

  it('counts wrong, and undoes it with one touch', async () => {
    const { packCount } = await runNow();
    await touch(page, 'Count packs');
    await keyIn(page, 'The counter shows', String(packCount + 7));
    await touch(page, 'RECORD');
    await touch(page, 'UNDO MY LAST');
    await isMadeForGloves(page);
    await touch(page, 'NO: UNDO IT');
    await shows(/Undone: it is void/);
    expect((await runNow()).packCount).toBe(packCount);
  });

  it('puts the test pieces through the metal detector, and says so with two touches', async () => {
    await touch(page, 'Line checks');
    await isMadeForGloves(page);
    const metal = page.locator('#due-checks li', { hasText: 'Metal detector' });
    await leaves(page, () => metal.getByRole('link', { name: 'Check', exact: true }).tap());
    await isMadeForGloves(page);
    await touch(page, 'All passed');
    await metal.filter({ hasText: /in 1(20|19) min/ }).waitFor();
    await page.goto(line);
  });

  it('signs the line over: both sign, the next by badge', async () => {
    await isReady(page);
    await touch(page, /^HAND OVER/);
    await isMadeForGloves(page);
    await keyIn(page, /Loose packs/, '12');
    await page.getByLabel('Their badge').focus();
    await scanOn(page, demoBadgeOf(ruth));
    await shows('Signed by the incoming lead: Ruth Ansel');
    const id = new URL(page.url()).pathname.split('/').at(-1) ?? '';
    const signed = { how: 'together', agrees: true, disagreement: null, answeredBy: expect.any(String) };
    expect(await asked(page, `/api/handovers/${id}`)).toMatchObject(signed);
  });

  it('lets the next lead come by badge, whose pages speak Spanish, and who tips on', async () => {
    await page.goto(line);
    await isReady(page);
    await touch(page, /change person/);
    await page.getByLabel('Scan your badge').focus();
    await leaves(page, () => scanOn(page, demoBadgeOf(ruth)));
    expect([page.url().split('?')[0], await page.locator('html').getAttribute('lang')]).toEqual([line, 'es']);
    await shows(/Ruth Ansel/);
    await isMadeForGloves(page);
    const bag = bags[2]!;
    await scan(bag.number, bag.number.slice(-4));
    await touch(page, 'VOLCAR ENTERO');
    await shows(bag.number);
    expect(await bagOf(bag.id)).toMatchObject({ status: 'empty', remainingGrams: 0 });
  });

  it('met no breach of the content security policy', () => {
    expect(demo.policyReports).toEqual([]);
  });
});
