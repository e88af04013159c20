import { keepBagList } from './known-bags.js';
import { keepNumbers } from './pallet-numbers.js';

const everyMilliseconds = 60_000;
const lockName = 'packthread-stock-up';

/** Keeps on the device what work without network needs: the bags in store, and numbers for pallets. */
export function stockUp(): void {
  if (document.querySelector('form[data-scan], form[data-queue]') === null) return;
  const go = (): void => {
    void navigator.locks.request(lockName, async () => {
      await keepBagList();
      await keepNumbers();
    });
  };
  go();
  setInterval(go, everyMilliseconds);
}
