import { mkdirSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { Browser, Page } from 'playwright-core';
import { LevelWatch } from '../../src/hopper/level-watch.js';
import { AddHopper } from '../../src/plant/add-hopper.js';
import { LinkHopperToLine } from '../../src/plant/link-hopper-to-line.js';
import { ChangeCode } from '../../src/packing/change-code.js';
import { standingOfPallet } from '../../src/pallets/pallet-standing.js';
import { localText } from '../../src/platform/web/local-text.js';
import { PlaceHold } from '../../src/tracing/place-hold.js';
import { anEnrolledTablet, signedInBrowser } from '../support/a-browser-session.js';
import { aPallet } from '../support/a-pallet.js';
import { aPerson, signedIn, type TestPerson } from '../support/a-person.js';
import { aPlant, type Plant } from '../support/a-plant.js';
import { packsCounted } from '../support/a-run.js';
import { aReleasedBag, aStartedRun, aTip } from '../support/a-tip.js';
import { accessibilityFindings, openBrowser } from '../support/browser.js';
import { openWithBagList } from '../support/device-lists.js';
import { openFront, type Front } from '../support/front.js';
import { asking, openHouse, type TestHouse } from '../support/house.js';
import { scanOn } from '../support/scanner.js';

let house: TestHouse;
let plant: Plant;
let ada: TestPerson;
let ben: TestPerson;
let agnes: TestPerson;
let front: Front;
let address: string;
let browser: Browser;
/** Ada's tablet, whose network can be cut, and Ben's, whose network stays. */
let away: Page;
let near: Page;
let quality: Page;
let runId: string;
let otherHopperId: string;

beforeAll(async () => {
  house = await openHouse();
  plant = await aPlant(house, { packsPerPallet: 100 });
  ada = await aPerson(house, plant.siteId, { roles: ['line-lead'], name: 'Ada Fern' });
  ben = await aPerson(house, plant.siteId, { roles: ['line-lead'], name: 'Ben Sorrel' });
  agnes = await aPerson(house, plant.siteId, { roles: ['quality-officer'], name: 'Agnes Birch' });
  await aSecondHopper();
  await aReleasedBag(house, plant).then(({ id }) => aTip(house, plant, id));
  runId = (await aStartedRun(house, plant)).id;
  await house.get(ChangeCode).execute(asking(plant.actor), runId, { code: 'L60711M', packCount: 0 });
  await aStartedRun(house, plant, { lineId: plant.lineIds[1] });
  await house.app.listen(0, '127.0.0.1');
  address = (await house.app.getUrl()).replace('[::1]', '127.0.0.1');
  front = await openFront(address);
  browser = await openBrowser();
  away = await aTabletPage(front.address, ada, 'tablet-a');
  near = await aTabletPage(address, ben, 'tablet-b');
  quality = await (await signedInBrowser(browser, address, agnes)).context.newPage();
}, 180_000);

afterAll(async () => {
  await browser.close();
  await front.close();
  await house.close();
});

async function aSecondHopper(): Promise<void> {
  const hopper = { code: 'H2', name: 'Hopper 2', capacityGrams: 4_000_000 };
  otherHopperId = (await house.get(AddHopper).execute(asking(plant.actor), hopper)).id;
  const link = { lineId: plant.lineIds[1], hopperId: otherHopperId };
  await house.get(LinkHopperToLine).execute(asking(plant.actor), link);
}

async function aTabletPage(at: string, person: TestPerson, code: string): Promise<Page> {
  const token = await anEnrolledTablet(house, plant.siteId, code);
  const { context } = await signedInBrowser(browser, at, person, token);
  const page = await context.newPage();
  await page.clock.setFixedTime(house.clock.now());
  return page;
}

/** The plant's clock and the clocks of the tablets go on together. */
async function pass(minutes: number): Promise<void> {
  house.clock.pass(minutes);
  for (const page of [away, near]) await page.clock.setFixedTime(house.clock.now());
}

async function picture(page: Page, name: string): Promise<void> {
  const folder = process.env['PICTURES_FOLDER'];
  if (folder === undefined) return;
  mkdirSync(folder, { recursive: true });
  await page.screenshot({ path: `${folder}/${name}.png`, fullPage: true });
}

const lineOf = (place: 0 | 1): string => `/line/${plant.lineIds[place]}`;

/** Scans a bag on the tablet without network, sees what the band says of it, and enters the tip. */
async function tipAway(bag: string, word: string, tone: string): Promise<void> {
  await scanOn(away, bag);
  await away.locator('#band .word', { hasText: word }).waitFor();
  expect(await away.locator('#band').getAttribute('class')).toContain(tone);
  await picture(away, `away-${word.toLowerCase().replaceAll(' ', '-')}`);
  await away.locator('#band .acts button').click();
  await away.locator('#band .word', { hasText: 'ON THIS DEVICE' }).waitFor();
}

/** The network is back, and everything that waited was answered. */
async function comeBack(): Promise<void> {
  await front.mend();
  await away.evaluate(() => dispatchEvent(new Event('online')));
  await away.waitForFunction(() => document.getElementById('waiting')?.textContent.includes('wait') !== true);
}

const tipsOf = (bagId: string): Promise<{ hopperId: string }[]> =>
  house.databases.reader.sql<{ hopperId: string }[]>`
    SELECT p."hopper_id" AS "hopperId" FROM "tip" t JOIN "hopper_period" p ON p."id" = t."period_id"
    WHERE t."bag_id" = ${bagId} AND t."voided_by" IS NULL`;

const gramsIn = async (hopperId: string): Promise<number> => (await house.get(LevelWatch).levelNow(hopperId)).grams;

/** The row of the open point that names a bag. */
async function pointAbout(bag: string): Promise<string> {
  await quality.goto(`${address}/open-points`);
  return quality.locator('tbody tr', { hasText: bag }).first().innerText();
}

describe('a tablet that comes back', () => {
  it('shows what was taken and what was kept, opens the points, and neither loses nor doubles a kilogram', async () => {
    const [tippedElsewhere, heldMeanwhile] = [await aReleasedBag(house, plant), await aReleasedBag(house, plant)];
    const before = [await gramsIn(plant.hopperId), await gramsIn(otherHopperId)];
    await openWithBagList(away, front.address + lineOf(0));
    await front.cut();
    await tipAway(tippedElsewhere.number, 'RELEASED', 'quiet');
    const firstAt = house.clock.now();
    await pass(2);
    await tipAway(heldMeanwhile.number, 'RELEASED', 'quiet');
    const secondAt = house.clock.now();

    await pass(3);
    const nearAt = house.clock.now();
    await near.goto(address + lineOf(1));
    await scanOn(near, tippedElsewhere.number);
    await near.getByRole('button', { name: 'TIP WHOLE' }).click();
    await near.getByText(`Tipped: ${tippedElsewhere.number}`).first().waitFor();
    await pass(2);
    const heldAt = house.clock.now();
    const byAgnes = asking({ ...plant.actor, personId: agnes.personId });
    await house.get(PlaceHold).execute(byAgnes, { kind: 'bulk-bag', id: heldMeanwhile.id, reason: 'torn liner' });
    await pass(5);
    await comeBack();

    await away.goto(`${front.address}/device/queue`);
    const rowOf = (bag: string) => away.locator('#entries tbody tr', { hasText: bag }).first();
    await rowOf(tippedElsewhere.number).waitFor();
    const kept = await rowOf(tippedElsewhere.number).innerText();
    expect(kept).toContain('kept aside for somebody to look at');
    expect(kept).toContain('nothing is lost');
    expect(await rowOf(heldMeanwhile.number).innerText()).toContain('accepted');
    await picture(away, 'queue');

    const local = (at: string): string => localText(at, 'Europe/Berlin');
    const contradiction = await pointAbout(tippedElsewhere.number);
    await picture(quality, 'points');
    for (const part of ['Ada Fern', 'Ben Sorrel', 'H2', local(firstAt), local(nearAt)]) {
      expect(contradiction).toContain(part);
    }
    const held = await pointAbout(heldMeanwhile.number);
    for (const part of ['Ada Fern', 'Agnes Birch', 'H1', local(secondAt), local(heldAt)]) expect(held).toContain(part);

    expect(await tipsOf(tippedElsewhere.id)).toEqual([{ hopperId: otherHopperId }]);
    expect(await tipsOf(heldMeanwhile.id)).toEqual([{ hopperId: plant.hopperId }]);
    const after = [await gramsIn(plant.hopperId), await gramsIn(otherHopperId)];
    expect(after[0]).toBe((before[0] ?? 0) + heldMeanwhile.netGrams);
    expect(after[1]).toBe((before[1] ?? 0) + tippedElsewhere.netGrams);

    await quality.locator('tbody tr', { hasText: tippedElsewhere.number }).first().getByRole('link').first().click();
    await quality.getByText('Ben Sorrel').first().waitFor();
    expect(await accessibilityFindings(quality)).toEqual([]);
    await picture(quality, 'kept-entry');
    await quality.getByLabel(/What really happened/).fill('Ada read the number of the bag beside it.');
    await quality.getByRole('button', { name: 'This is dealt with' }).click();
    await quality.waitForURL(/open-points$/);
    const open = await quality.locator('table').first().innerText();
    expect(open).not.toContain(tippedElsewhere.number);
  }, 120_000);

  it('brings a bag of another grade: it was warned of, and what it reached is known and can be held', async () => {
    const brown = await aReleasedBag(house, plant, { gradeId: plant.otherGradeId });
    const held = (await gramsIn(plant.hopperId)) / 2000;
    await packsCounted(house, plant, runId, 100);
    const clean = await aPallet(house, plant, { run: runId });
    await pass(60);
    await openWithBagList(away, front.address + lineOf(0));
    await front.cut();
    await tipAway(brown.number, 'OTHER GRADE', 'must-not');
    await pass(60);
    // All that was inside before the brown bag, and half of that bag, is packed by now.
    const packCount = Math.ceil(held) + 250;
    await packsCounted(house, plant, runId, packCount);
    await pass(1);
    const pallets = [];
    while (pallets.length * 100 + 200 <= packCount) pallets.push(await aPallet(house, plant, { run: runId }));
    const last = pallets.at(-1);
    await comeBack();

    expect(await tipsOf(brown.id)).toEqual([{ hopperId: plant.hopperId }]);
    const point = await pointAbout(brown.number);
    expect(point).toContain('Ada Fern');
    expect(point).toMatch(/was tipped while run .* Decide what happens to all it may be in/);

    const reader = await signedIn(house, agnes);
    const reach = (await reader.get(`/api/holds/reach?kind=bulk-bag&id=${brown.id}`)).body as {
      readonly possible: readonly { readonly palletId: string }[];
    };
    const reached = reach.possible.map(({ palletId }) => palletId);
    expect(reached).toContain(last?.id);
    expect(reached).not.toContain(clean.id);
    const heldBy = async (id: string | undefined): Promise<string> =>
      JSON.stringify((await standingOfPallet(house.databases.reader, id ?? '')).reasons);
    expect(await heldBy(last?.id)).not.toContain(brown.number);
    const hold = { kind: 'bulk-bag', id: brown.id, reason: 'another grade was tipped' };
    expect((await reader.post('/api/holds', hold)).status).toBe(201);
    expect(await heldBy(last?.id)).toContain(brown.number);
    expect(await heldBy(clean.id)).not.toContain(brown.number);
    await quality.goto(`${address}/thread?code=${brown.number}`);
    await picture(quality, 'brown-thread');
  }, 120_000);
});
