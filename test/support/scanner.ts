import type { Page } from 'playwright-core';

/**
 * What a scanner does: it types like a keyboard, only faster, and ends with Enter. The keys are handed to the browser
 * all at once, so that they come as close together as a scanner's however busy the machine of the test is.
 */
export async function scanOn(page: Page, code: string): Promise<void> {
  const keyboard = await page.context().newCDPSession(page);
  const keys = [...code].map((key) => ({ key, text: key }));
  const sent = [...keys, { key: 'Enter', text: '\r', code: 'Enter', windowsVirtualKeyCode: 13 }].flatMap((key) => [
    keyboard.send('Input.dispatchKeyEvent', { type: 'keyDown', ...key }),
    keyboard.send('Input.dispatchKeyEvent', { type: 'keyUp', ...key, text: '' }),
  ]);
  await Promise.all(sent);
  await keyboard.detach();
}
