import type { Page } from 'playwright-core';

/** Between two keys of a scanner. */
const gapSeconds = 0.008;

/**
 * What a scanner does: it types like a keyboard, only faster, and ends with Enter. The keys are handed to the browser
 * all at once (of several codes, too), each with the time at which it was pressed: they come as close together as a
 * scanner's however busy the machine of the test is.
 */
export async function scanOn(page: Page, ...codes: readonly string[]): Promise<void> {
  const keyboard = await page.context().newCDPSession(page);
  const end = { key: 'Enter', text: '\r', code: 'Enter', windowsVirtualKeyCode: 13 };
  const keys = codes.flatMap((code) => [...[...code].map((key) => ({ key, text: key })), end]);
  const begun = Date.now() / 1000;
  const sent = keys.flatMap((key, place) => {
    const timestamp = begun + place * gapSeconds;
    return [
      keyboard.send('Input.dispatchKeyEvent', { type: 'keyDown', timestamp, ...key }),
      keyboard.send('Input.dispatchKeyEvent', { type: 'keyUp', timestamp, ...key, text: '' }),
    ];
  });
  await Promise.all(sent);
  await keyboard.detach();
}
