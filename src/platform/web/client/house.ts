import { sendOnce } from './once.js';
import { actOnScan, goOnScanning, listenToScanner } from './scan.js';
import { loadWords } from './words.js';

const holds = (selector: string): boolean => document.querySelector(selector) !== null;

/** What every page loads. It stays small: the rest is fetched by what the page holds. */
async function begin(): Promise<void> {
  sendOnce(document);
  const isSignedIn = document.body.dataset['person'] !== undefined;
  const words = loadWords();
  // Before anything is waited for: a scan that comes while the page still loads is heard. The self-test hears every key
  // by itself.
  if (!holds('#scanner-test')) {
    listenToScanner((code) => {
      const act = (): void => {
        actOnScan(code);
      };
      void words.then(act, act);
    });
  }
  await words;
  goOnScanning();
  // Without HTTPS a browser lends no locks, no lasting store and no worker: forms are then sent as without script.
  await Promise.all([...parts(isSignedIn), ...(isSecureContext ? lastingParts(isSignedIn) : [])]);
  document.body.dataset['ready'] = 'yes';
  if (isSecureContext) await navigator.serviceWorker.register('/service-worker.js', { type: 'module' });
}

function parts(isSignedIn: boolean): readonly Promise<void>[] {
  const loading: Promise<void>[] = [];
  if (isSignedIn && holds('[data-live]')) {
    loading.push(
      import('./live.js').then(({ followJournal }) => {
        followJournal();
      }),
    );
  }
  if (holds('[data-number]')) {
    loading.push(
      import('./number-pad.js').then(({ offerNumberPads }) => {
        offerNumberPads();
      }),
    );
  }
  if (holds('[data-goes-on]')) {
    loading.push(
      import('./goes-on.js').then(({ goOnByEnter }) => {
        goOnByEnter(document);
      }),
    );
  }
  const readings = document.querySelector('[data-check-readings]')?.closest('form');
  if (readings != null) {
    loading.push(
      import('./check-readings.js').then(({ judgeReadings }) => {
        judgeReadings(readings);
      }),
    );
  }
  if (holds('a[data-back]')) {
    loading.push(
      import('./back.js').then(({ listenToEscape }) => {
        listenToEscape(document);
      }),
    );
  }
  if (holds('#scanner-test')) {
    loading.push(
      import('./scanner-test.js').then(({ testScanner }) => {
        testScanner();
      }),
    );
  }
  return loading;
}

function lastingParts(isSignedIn: boolean): readonly Promise<void>[] {
  if (!isSignedIn) {
    // Somebody signs in: what was issued in the session before proves nothing that happens from now on.
    return location.pathname === '/sign-in' ? [import('./proofs.js').then(({ forgetProofs }) => forgetProofs())] : [];
  }
  const loading = [
    import('./queue.js').then(({ keepQueue }) => {
      keepQueue();
    }),
  ];
  if (holds('#entries')) {
    loading.push(
      import('./entry-list.js').then(({ showEntries }) => {
        showEntries();
      }),
    );
  }
  if (document.body.dataset['device'] !== undefined) {
    loading.push(
      import('./stock-up.js').then(({ stockUp }) => {
        stockUp();
      }),
    );
  }
  return loading;
}

void begin();
