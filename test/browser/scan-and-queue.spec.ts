import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { GiveBadge } from '../../src/people/give-badge.js';
import { AddStorePlace } from '../../src/plant/add-store-place.js';
import { anEnrolledTablet, signedInBrowser } from '../support/a-browser-session.js';
import { aPerson, type TestPerson } from '../support/a-person.js';
import { aPlant, type Plant } from '../support/a-plant.js';
import { openBrowser } from '../support/browser.js';
import { openFront, type Front } from '../support/front.js';
import { anActor, asking, openHouse, type TestHouse } from '../support/house.js';
import { tryPage } from '../support/try-page.js';
import { scanOn } from '../support/scanner.js';

const tryAt = '/device/size?try';

let house: TestHouse;
let plant: Plant;
let manager: TestPerson;
let front: Front;
let browser: Browser;
let context: BrowserContext;
let policyReports: string[];
let page: Page;

beforeAll(async () => {
  house = await openHouse();
  plant = await aPlant(house);
  manager = await aPerson(house, plant.siteId, { roles: ['plant-manager'], name: 'Ada Fern' });
  await house.app.listen(0, '127.0.0.1');
  front = await openFront(await house.app.getUrl(), tryPage);
  browser = await openBrowser();
}, 120_000);

afterAll(async () => {
  await browser.close();
  await front.close();
  await house.close();
});

beforeEach(async () => {
  await front.mend();
  ({ context, policyReports } = await signedInBrowser(browser, front.address, manager));
  page = await context.newPage();
  await open();
}, 60_000);

afterEach(async () => {
  front.watch(null);
  expect(policyReports).toEqual([]);
  await context.close();
});

async function open(): Promise<void> {
  await page.goto(front.address + tryAt);
  await page.waitForFunction(() => document.body.dataset['ready'] === 'yes');
}

/** As a scanner types: fast, then Enter. */
async function scan(code: string): Promise<void> {
  await scanOn(page, code);
}

/** A page that is here while its modules are still on their way, in a browser that keeps none of them. */
async function openWithoutModules(): Promise<{ tab: Page; letModulesCome: () => void }> {
  let letModulesCome = (): void => undefined;
  const mayCome = new Promise<void>((done) => {
    letModulesCome = done;
  });
  front.watch(async (what, way) => {
    if (way === 'there' && what.endsWith('house.js')) await mayCome;
    return true;
  });
  await context.close();
  ({ context, policyReports } = await signedInBrowser(browser, front.address, manager));
  const tab = await context.newPage();
  await tab.goto(front.address + tryAt, { waitUntil: 'commit' });
  await tab.locator('#band').waitFor();
  return { tab, letModulesCome };
}

/** The server has taken an entry, and its answer is on its way until it is let come. */
function holdAnswers(): () => void {
  let letCome = (): void => undefined;
  const mayCome = new Promise<void>((done) => {
    letCome = done;
  });
  front.watch(async (what, way) => {
    if (way === 'back' && what.startsWith('POST ')) await mayCome;
    return true;
  });
  return letCome;
}

/** Sends the entry of the page, and scans while its answer is held back. */
async function sendAndScan(code: string): Promise<void> {
  const letAnswerCome = holdAnswers();
  await page.locator('#entry button').click();
  await page.locator('form[aria-busy=true]').first().waitFor();
  await scan(code);
  await page.waitForFunction((text) => (sessionStorage.getItem('packthread-waiting-scans') ?? '').includes(text), code);
  letAnswerCome();
}

/** The form is ready for the next entry. */
async function untilEmpty(tab: Page): Promise<void> {
  await tab.waitForFunction(() => document.querySelector<HTMLInputElement>('#field-code')?.value === '');
}

const bandSays = (): Promise<string> => page.locator('#band .said').innerText();

async function placeCodes(): Promise<readonly string[]> {
  const rows = await house.databases.reader.manager.sql<{ code: string }[]>`
    SELECT p."code" AS "code" FROM "store_place" p JOIN "journal_entry" e ON e."subject_id" = p."id" ORDER BY e."sequence"`;
  return rows.map(({ code }) => code).filter((code) => code.startsWith('T-'));
}

describe('a scan', () => {
  it('goes to the band wherever the focus is, and leaves a number field as it was', async () => {
    await page.locator('#number').fill('12');
    await page.locator('#number').focus();
    await scan('B0012344');
    await page.locator('#band .word').waitFor();
    expect(await bandSays()).toContain('B0012344');
    expect(await page.locator('#number').inputValue()).toBe('12');
    expect(new URL(page.url()).pathname).toBe('/device/size');
  });

  it('is taken from the body of the page, too, and into the band without leaving the page', async () => {
    await page.evaluate(() => {
      (document.activeElement as HTMLElement).blur();
      document.body.dataset['same'] = 'page';
    });
    await scan('B0012344');
    await page.locator('#band .word').waitFor();
    expect(await page.evaluate(() => document.body.dataset['same'])).toBe('page');
  });

  it('is heard from the moment that the page is loaded, however slowly its modules come', async () => {
    const slow = await signedInBrowser(browser, front.address, manager);
    front.watch(async (what, way) => {
      if (way === 'there' && /(scan|words)\.js$|\.json$/.test(what)) await new Promise((done) => setTimeout(done, 700));
      return true;
    });
    const tab = await slow.context.newPage();
    await tab.goto(front.address + tryAt);
    await tab.evaluate(() => {
      (document.activeElement as HTMLElement).blur();
    });
    await scanOn(tab, 'B0012344');
    await tab.locator('#band .word').waitFor({ timeout: 8000 });
    front.watch(null);
    expect(await tab.locator('#band .said').innerText()).toContain('B0012344');
    await slow.context.close();
  });

  it('is heard while the page is still being loaded, before any module of it ran', async () => {
    const { tab, letModulesCome } = await openWithoutModules();
    await scanOn(tab, 'B0012344');
    expect(tab.url()).toBe(front.address + tryAt);
    letModulesCome();
    await tab.locator('#band .word').waitFor();
    expect(await tab.locator('#band .said').innerText()).toContain('B0012344');
    expect(await tab.locator('#scan').inputValue()).toBe('');
    await tab.close();
  });

  it('leaves a person’s own Enter what it is, though it was pressed before any module ran', async () => {
    const { tab, letModulesCome } = await openWithoutModules();
    await tab.locator('#scan').focus();
    await tab.keyboard.type('B0012', { delay: 60 });
    await tab.keyboard.press('Enter');
    letModulesCome();
    await tab.waitForURL(/scan=B0012$/);
    await tab.close();
  });

  it('that comes while an entry is being sent is looked at on the page that answers it', async () => {
    await page.locator('#field-code').fill('T-AND-SCAN');
    await sendAndScan('B0012344');
    await page.locator('#band .said', { hasText: 'B0012344' }).waitFor();
    front.watch(null);
    await untilEmpty(page);
    expect(await placeCodes()).toContain('T-AND-SCAN');
    expect(await bandSays()).toContain('B0012344');
  });

  it('that comes behind an entry that is refused is named as not taken', async () => {
    await page.locator('#field-code').fill('no such code!');
    await sendAndScan('B0012344');
    await page.locator('#entry .trouble').waitFor();
    front.watch(null);
    expect(await bandSays()).toContain('Not taken meanwhile: B0012344');
  });

  it('wins over one before it that is answered later', async () => {
    let first = true;
    front.watch(async (what, way) => {
      if (way === 'back' && what === 'GET /device/size' && first) {
        first = false;
        await new Promise((done) => setTimeout(done, 800));
      }
      return true;
    });
    await scan('B0012344');
    await scan('B0012352');
    await page.locator('#band .said', { hasText: 'B0012352' }).waitFor();
    await page.waitForTimeout(1000);
    front.watch(null);
    expect(await bandSays()).toContain('B0012352');
    expect(new URL(page.url()).searchParams.get('scan')).toBe('B0012352');
  });

  it('is not lost when the page draws itself anew in the middle of it', async () => {
    await page.locator('#draft').focus();
    await page.evaluate(() => {
      const keys = [...'B0012344', 'Enter'];
      for (const [place, key] of keys.entries()) {
        const at = document.activeElement ?? document.body;
        at.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }));
        // As a live region does: what had the focus is replaced.
        const region = document.getElementById('live');
        if (place === 3 && region !== null) region.replaceWith(region.cloneNode(true));
      }
    });
    await page.locator('#band .word').waitFor();
    expect(await bandSays()).toContain('B0012344');
  });

  it('of the same code within five seconds does nothing', async () => {
    const before = front.passed.filter((one) => one === 'GET /device/size').length;
    await scan('B0012344');
    await page.locator('#band .word').waitFor();
    await scan('B0012344');
    await page.waitForTimeout(300);
    expect(front.passed.filter((one) => one === 'GET /device/size').length).toBe(before + 1);
  });

  it('does not take what a person types slowly, nor its Enter', async () => {
    await page.locator('#number').focus();
    await page.keyboard.type('1234567'.slice(0, 6), { delay: 120 });
    expect(await page.locator('#number').inputValue()).toBe('123456');
    await page.waitForTimeout(120);
    await page.keyboard.press('Enter');
    await page.waitForURL(`${front.address}/device/size`);
  });

  it('of a command code presses the button it stands for, and only shows a careful one', async () => {
    await scan('CMDCAREFUL');
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Careful');
    await page.locator('#number').fill('1');
    await scan('CMDWIDER');
    await page.waitForURL(`${front.address}/device/size`);
  });

  it('of a command code that stands for nothing here says so', async () => {
    await scan('CMDNOTHING');
    expect(await bandSays()).toContain('no such act');
  });

  it('of a badge on an enrolled tablet changes the person within two seconds, and stays on the page', async () => {
    const other = await aPerson(house, plant.siteId, { roles: ['line-lead'], name: 'Ben Sorrel' });
    const asked = asking(anActor(plant.siteId, 'administrator'));
    const badge = (await house.get(GiveBadge).execute(asked, other.personId)).badge ?? '';
    await context.addCookies([
      { name: 'packthread-device', value: await anEnrolledTablet(house, plant.siteId, 'tablet-b'), url: front.address },
    ]);
    await context.request.post(`${front.address}/sign-in`, {
      form: { proof: 'password', code: manager.code, password: manager.password },
      maxRedirects: 0,
    });
    await open();
    await page.locator('#number').focus();
    const begun = Date.now();
    await scan(badge);
    await page.locator('.who', { hasText: 'Ben Sorrel' }).waitFor();
    expect(Date.now() - begun).toBeLessThan(2000);
    expect(page.url()).toBe(front.address + tryAt);
  });
});

describe('an entry', () => {
  it('is sent at once where the network is there, and the page goes on', async () => {
    await page.locator('#field-code').fill('T-ONCE');
    await page.locator('#entry button').click();
    await untilEmpty(page);
    expect(await placeCodes()).toContain('T-ONCE');
  });

  it('counts once when the button is clicked twice', async () => {
    await page.locator('#field-code').fill('T-DOUBLE');
    await page.locator('#entry button').dblclick();
    await untilEmpty(page);
    await page.waitForTimeout(200);
    expect((await placeCodes()).filter((code) => code === 'T-DOUBLE')).toHaveLength(1);
  });

  it('counts once when it is sent, and sent again after the back button', async () => {
    await page.goto(`${front.address}/device/scanner`);
    await open();
    await page.locator('#field-code').fill('T-BACK');
    await page.locator('#entry button').click();
    await untilEmpty(page);
    await page.goBack();
    await page.goForward();
    await page.waitForFunction(() => document.body.dataset['ready'] === 'yes');
    await page.locator('#field-code').fill('T-BACK');
    await page.locator('#entry button').click();
    await page.locator('#entry .trouble').waitFor();
    expect((await placeCodes()).filter((code) => code === 'T-BACK')).toHaveLength(1);
  });

  it('that is refused is shown at its field, with what was typed, and waits nowhere', async () => {
    await page.locator('#field-code').fill('no such code!');
    await page.locator('#entry button').click();
    await page.locator('#entry .trouble').waitFor();
    expect(await page.locator('#field-code').inputValue()).toBe('no such code!');
    expect(await page.locator('#field-code').getAttribute('aria-invalid')).toBe('true');
    expect((await page.locator('#field-code-wrong').innerText()).length).toBeGreaterThan(5);
    expect(await page.evaluate(() => document.activeElement?.getAttribute('data-trouble'))).toBe('entry');
    expect(await page.locator('#waiting').isHidden()).toBe(true);
  });

  it('loses the spaces and line ends that were pasted around it', async () => {
    await page.locator('#field-code').focus();
    await page.keyboard.insertText('  T-PASTED \r\n');
    await page.locator('#entry button').click();
    await untilEmpty(page);
    expect(await placeCodes()).toContain('T-PASTED');
  });

  it('is kept on the device while the network is away, said so, and sent when it is back', async () => {
    await front.cut();
    for (const code of ['T-CUT-1', 'T-CUT-2', 'T-CUT-3']) {
      await page.locator('#field-code').fill(code);
      await page.locator('#entry button').click();
      await untilEmpty(page);
    }
    expect(await bandSays()).toContain('ON THIS DEVICE');
    expect(await page.locator('#waiting').innerText()).toContain('3 entries wait on this device');
    expect((await placeCodes()).filter((code) => code.startsWith('T-CUT'))).toEqual([]);
    await front.mend();
    await page.evaluate(() => dispatchEvent(new Event('online')));
    await page.waitForFunction(() => document.getElementById('waiting')?.hidden === true, null, { timeout: 15_000 });
    expect((await placeCodes()).filter((code) => code.startsWith('T-CUT'))).toEqual(['T-CUT-1', 'T-CUT-2', 'T-CUT-3']);
  });

  it('is sent once by two tabs that both find the network again', async () => {
    const second = await context.newPage();
    await second.goto(front.address + tryAt);
    await second.waitForFunction(() => document.body.dataset['ready'] === 'yes');
    await front.cut();
    for (const [tab, code] of [
      [page, 'T-TAB-1'],
      [second, 'T-TAB-2'],
      [page, 'T-TAB-3'],
    ] as const) {
      await tab.locator('#field-code').fill(code);
      await tab.locator('#entry button').click();
      await untilEmpty(tab);
    }
    await front.mend();
    const sent = front.passed.filter((one) => one === 'POST /api/plant/places').length;
    await Promise.all([page, second].map((tab) => tab.evaluate(() => dispatchEvent(new Event('online')))));
    await second.waitForFunction(() => document.getElementById('waiting')?.hidden === true, null, { timeout: 15_000 });
    expect((await placeCodes()).filter((code) => code.startsWith('T-TAB'))).toEqual(['T-TAB-1', 'T-TAB-2', 'T-TAB-3']);
    expect(front.passed.filter((one) => one === 'POST /api/plant/places').length).toBe(sent + 3);
  });

  it('is listed with where it is, and what the server said', async () => {
    await front.cut();
    await page.locator('#field-code').fill('T-LIST');
    await page.locator('#entry button').click();
    await untilEmpty(page);
    await front.mend();
    await page.goto(`${front.address}/device/queue`);
    await page.locator('#entries tr', { hasText: 'accepted' }).waitFor({ timeout: 15_000 });
    expect(await page.locator('#entries tbody').innerText()).toContain('Ada Fern');
  });
});

describe('a page that is open', () => {
  it('shows by itself what the journal takes in, within two seconds', async () => {
    const before = await page.locator('#stamp').innerText();
    await page.waitForTimeout(300);
    const begun = Date.now();
    await house.get(AddStorePlace).execute(asking(plant.actor), { code: 'LIVE-1', kind: 'store' });
    await page.waitForFunction((old) => document.getElementById('stamp')?.textContent !== old, before);
    expect(Date.now() - begun).toBeLessThan(2000);
  });

  it('does not take away what somebody is typing, but offers what is new', async () => {
    await page.waitForTimeout(300);
    await page.locator('#draft').fill('half a sentence');
    await house.get(AddStorePlace).execute(asking(plant.actor), { code: 'LIVE-2', kind: 'store' });
    await page.locator('.changed').waitFor();
    expect(await page.locator('#draft').inputValue()).toBe('half a sentence');
    await page.locator('.changed button').click();
    expect(await page.locator('#draft').inputValue()).toBe('');
  });
});
