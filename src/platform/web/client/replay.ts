import { entries, forgetOld, isWaiting, putEntry, type Entry, type EntryState } from './entries.js';
import { sendEntry, type Outcome } from './send-entry.js';
import { csrfToken, whoIsHere } from './who-is-here.js';

const lockName = 'packthread-replay';
const everyMilliseconds = 20_000;
/** After so many faults of the server an entry steps aside, so that it does not hold back all that follows. */
const mostFaults = 5;

/** Tells the tabs of this device that entries changed. */
const changes = new BroadcastChannel('packthread-entries');

/** Acts now and whenever an entry changes, in this tab or in another. */
export function whenEntriesChange(act: () => void): void {
  changes.addEventListener('message', act);
  document.addEventListener('entrieschange', act);
  act();
}

export function tellEntriesChanged(): void {
  changes.postMessage(null);
  document.dispatchEvent(new Event('entrieschange'));
}

/** Sends what waits: on load, when the network comes back, and every twenty seconds. */
export function keepReplaying(): void {
  const go = (): void => {
    void replay();
  };
  addEventListener('online', go);
  setInterval(go, everyMilliseconds);
  void forgetOld(Date.now()).then(go);
}

/** Sends what waits, one entry at a time, in the order of entry. Two tabs do not do so at once. */
export async function replay(): Promise<void> {
  await navigator.locks.request(lockName, { ifAvailable: true }, async (lock) => {
    if (lock !== null) await replayAll();
  });
}

/** Runs `work` while no tab replays. */
export function besideReplay<Answer>(work: () => Promise<Answer>): Promise<Answer> {
  return navigator.locks.request(lockName, work);
}

async function replayAll(): Promise<void> {
  for (const entry of (await entries()).filter(isWaiting)) {
    if (entry.faults >= mostFaults) continue;
    const by = senderOf(entry);
    if (by === null) continue;
    await keep({ ...entry, state: 'sent' });
    if (!(await settle(entry, await sendEntry(entry, by)))) return;
  }
}

/** By its proof; without one, by the session of the same person. */
function senderOf({ proof, personId }: Entry): { csrf: string } | { proof: string } | null {
  if (proof !== null) return { proof };
  return whoIsHere()?.personId === personId ? { csrf: csrfToken() } : null;
}

/** Writes down what became of a sending. Answers whether the next entry is to be sent now. */
async function settle(entry: Entry, outcome: Outcome): Promise<boolean> {
  const became = (state: EntryState, said: string | null): Promise<void> => keep({ ...entry, state, said });
  switch (outcome.kind) {
    case 'accepted':
      await became(outcome.isKept ? 'kept' : 'accepted', outcome.said);
      return true;
    case 'refused':
      await became('refused', outcome.problem.detail);
      return true;
    case 'unknown-person':
      // The person must sign in here once more, and sends it then; entries of others go on.
      await keep({ ...entry, state: 'on-device', proof: null });
      return true;
    case 'fault':
      await keep({ ...entry, state: 'on-device', faults: entry.faults + 1 });
      return false;
    case 'away':
      await became('on-device', null);
      return false;
  }
}

async function keep(entry: Entry): Promise<void> {
  await putEntry(entry);
  tellEntriesChanged();
}
