import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { chromium as engine, type Browser, type BrowserContext, type Page } from 'playwright-core';
import { chromiumPath } from '../../bench/open-browser.js';

export { openBrowser } from '../../bench/open-browser.js';

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** A browser that keeps its data in a folder, as a tablet does when it is switched off and on again. */
export async function openLastingContext(folder: string): Promise<BrowserContext> {
  const executablePath = await chromiumPath();
  const settings = { locale: 'en-GB', timezoneId: 'Europe/Berlin', viewport: { width: 1280, height: 800 } };
  return engine.launchPersistentContext(folder, { executablePath, args: ['--no-sandbox'], ...settings });
}

/** A context with a locale, and every report of the content security policy collected; on a screen that is touched, or not. */
export async function openContext(
  browser: Browser,
  size: { readonly width: number; readonly height: number } = { width: 1280, height: 800 },
  { hasTouch = false, policyReports = [] }: { readonly hasTouch?: boolean; readonly policyReports?: string[] } = {},
): Promise<{ context: BrowserContext; policyReports: string[] }> {
  const context = await browser.newContext({
    locale: 'en-GB',
    timezoneId: 'Europe/Berlin',
    viewport: size,
    hasTouch,
    isMobile: hasTouch,
  });
  context.on('console', (message) => {
    if (/content security policy/i.test(message.text())) policyReports.push(message.text());
  });
  return { context, policyReports };
}

/** Each page of this browser brings axe with it: compiled once, where looking at a page compiles it for that page alone. */
export async function bringAxe(context: BrowserContext): Promise<void> {
  await context.addInitScript({ content: axeSource });
}

/** What axe finds on a page: rule, how serious, and where. */
export async function accessibilityFindings(page: Page): Promise<readonly string[]> {
  // A page that has just been led to is there before what stands in it.
  await page.waitForLoadState();
  // evaluate() runs in the page's own world through the debugger, so the strict policy stays on.
  if (!(await page.evaluate(() => 'axe' in globalThis))) await page.evaluate(axeSource);
  return page.evaluate(async () => {
    const { axe } = globalThis as unknown as {
      axe: { run(how: object): Promise<{ violations: { id: string; impact: string; nodes: { html: string }[] }[] }> };
    };
    // Every rule is asked; of those that are kept nothing is gathered.
    const { violations } = await axe.run({ resultTypes: ['violations'] });
    return violations.map(({ id, impact, nodes }) => `${impact}: ${id} at ${nodes[0]?.html ?? ''}`);
  });
}

/**
 * Presses Alt and a letter as a keyboard does. The driver's own keys carry no letter beside Alt, and the browser finds an
 * access key by its letter: so it is said to the browser through its debugger.
 */
export async function pressAccessKey(page: Page, letter: string): Promise<void> {
  const debug = await page.context().newCDPSession(page);
  const windowsVirtualKeyCode = letter.toUpperCase().charCodeAt(0);
  const key = { modifiers: 1, key: letter, code: `Key${letter.toUpperCase()}`, windowsVirtualKeyCode };
  await debug.send('Input.dispatchKeyEvent', { type: 'keyDown', ...key, unmodifiedText: letter });
  await debug.send('Input.dispatchKeyEvent', { type: 'keyUp', ...key }).catch(() => undefined);
  await debug.detach().catch(() => undefined);
}
