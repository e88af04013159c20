import 'reflect-metadata';
import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import type { CDPSession } from 'playwright-core';
import { format } from 'prettier';
import { clockAfter } from '../src/demo/demo-clock.js';
import { makeDemo } from '../src/demo/make-demo.js';
import { progressBar } from '../src/demo/progress-bar.js';
import { readConfig } from '../src/platform/config.js';
import { buildHouse, openGround } from '../src/start-house.js';
import { crawlPages, type MetPage } from './crawl-pages.js';
import { crawlOf } from './page-addresses.js';
import { openBrowser } from './open-browser.js';
import { signInWalkers } from './walkers.js';

/** `npm run pages:draw [-- --only TEXT]`: draws every kind of page at tablet and desk size into docs/pages. */
const { values } = parseArgs({ options: { only: { type: 'string' } } });
const sizes = [
  { name: 'tablet', width: 1280, height: 800 },
  { name: 'desk', width: 1920, height: 1080 },
] as const;
const place = 'docs/pages';

const folder = mkdtempSync(join(tmpdir(), 'packthread-pages-'));
const config = readConfig({ DATA_FOLDER: folder, LOG_LEVEL: 'silent', REQUESTS_PER_MINUTE: '1000000' });
const truth = await makeDemo(config, { days: 2, seed: 1, size: 'usual' }, progressBar('plant of 2 days'));
const databases = await openGround(config);
const house = await buildHouse(config, databases, { clock: clockAfter(truth.endsAt) });
await house.listen(0, '127.0.0.1');
const address = await house.getUrl();
const met = await crawlPages(crawlOf(house, address), await signInWalkers(address));
const drawn = values.only === undefined ? met : met.filter(({ pattern }) => pattern.includes(values.only ?? ''));
if (values.only === undefined) rmSync(place, { recursive: true, force: true });
mkdirSync(place, { recursive: true });
const browser = await openBrowser();
for (const size of sizes) {
  const context = await browser.newContext({ viewport: size, locale: 'en-GB', timezoneId: 'Europe/Berlin' });
  const sheet = await context.newPage();
  // A fifth of the bytes of the other formats: these are pages of flat grey.
  const camera = await context.newCDPSession(sheet);
  for (const page of drawn) {
    const [name = '', value = ''] = page.cookie.split('=');
    await context.addCookies([{ name, value, url: address }]);
    await sheet.goto(address + page.path);
    writeFileSync(join(place, `${fileName(page)}.${size.name}.webp`), await picture(camera));
  }
  await context.close();
}
await browser.close();
await house.close();
await databases.close();
rmSync(folder, { recursive: true, force: true });
if (values.only === undefined) writeFileSync(join(place, 'README.md'), await listOf(met));
console.log(`${readdirSync(place).length} files in ${place}`);

/** A page that is still settling refuses to be drawn now and then: it is asked again. */
async function picture(camera: CDPSession): Promise<Buffer> {
  for (let turn = 0; ; turn += 1) {
    try {
      const { data } = await camera.send('Page.captureScreenshot', { format: 'webp', quality: 60 });
      return Buffer.from(data, 'base64');
    } catch (error) {
      if (turn === 5) throw error;
      await new Promise((resolve) => setTimeout(resolve, 300));
    }
  }
}

function fileName({ pattern }: MetPage): string {
  return pattern === '/' ? 'start' : pattern.slice(1).replaceAll('/', '.').replaceAll(':', '');
}

/** The list as the other documents are laid out. */
function listOf(pages: readonly MetPage[]): Promise<string> {
  const lines = pages.map((page) => {
    const file = fileName(page);
    return `| \`${page.pattern}\` | ${page.role} | [tablet](${file}.tablet.webp) | [desk](${file}.desk.webp) |`;
  });
  const head = [
    '# The pages',
    '',
    'Drawn by `npm run pages:draw` from the demo: one of every kind, at 1280 × 800 and 1920 × 1080.',
    '',
  ];
  const text = [...head, '| page | as seen by | | |', '| --- | --- | --- | --- |', ...lines, ''].join('\n');
  return format(text, { parser: 'markdown', printWidth: 120 });
}
