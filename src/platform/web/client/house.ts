import { sendOnce } from './once.js';

/** What every page loads. It stays small: the rest is fetched by what the page holds. */
async function begin(): Promise<void> {
  sendOnce(document);
  const holds = (selector: string): boolean => document.querySelector(selector) !== null;
  const isSignedIn = document.body.dataset['person'] !== undefined;
  const { listenToScanner, actOnScan } = await import('./scan.js');
  listenToScanner(actOnScan);
  const { loadWords } = await import('./words.js');
  await loadWords();
  if (isSignedIn) {
    const { keepQueue } = await import('./queue.js');
    keepQueue();
  }
  if (isSignedIn && holds('[data-live]')) {
    const { followJournal } = await import('./live.js');
    followJournal();
  }
  if (holds('[data-number]')) {
    const { offerNumberPads } = await import('./number-pad.js');
    offerNumberPads();
  }
  if (holds('a[data-back]')) {
    const { listenToEscape } = await import('./back.js');
    listenToEscape(document);
  }
  if (holds('#scanner-test')) {
    const { testScanner } = await import('./scanner-test.js');
    testScanner();
  }
  if (holds('#entries')) {
    const { showEntries } = await import('./entry-list.js');
    showEntries();
  }
  if (isSignedIn && document.body.dataset['device'] !== undefined) {
    const { stockUp } = await import('./stock-up.js');
    stockUp();
  }
  document.body.dataset['ready'] = 'yes';
  if ('serviceWorker' in navigator) await navigator.serviceWorker.register('/service-worker.js', { type: 'module' });
}

void begin();
