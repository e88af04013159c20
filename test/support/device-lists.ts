import type { Page } from 'playwright-core';

/** The lists that a device keeps of the bags in store: a list of a moment ago is not fetched again by itself. */
export function onDeviceLists(page: Page, what: 'clear' | 'count'): Promise<number> {
  return page.evaluate(
    (step) =>
      new Promise<number>((resolve) => {
        const opening = indexedDB.open('packthread');
        opening.onsuccess = () => {
          const store = opening.result.transaction('lists', 'readwrite').objectStore('lists');
          const request = step === 'clear' ? store.clear() : store.count();
          request.onsuccess = () => {
            opening.result.close();
            resolve(Number(request.result));
          };
        };
      }),
    what,
  );
}

/** Opens a page of a line and waits until the device has fetched the bags in store anew. */
export async function openWithBagList(page: Page, address: string): Promise<void> {
  const ready = (): Promise<unknown> => page.waitForFunction(() => document.body.dataset['ready'] === 'yes');
  await page.goto(address);
  await ready();
  await onDeviceLists(page, 'clear');
  await page.goto(address);
  await ready();
  while ((await onDeviceLists(page, 'count')) === 0) await page.waitForTimeout(50);
}
