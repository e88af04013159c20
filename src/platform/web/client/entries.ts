import { allOn, onShelf } from './store.js';

/**
 * Where an entry is: on this device, sent and not answered yet, accepted, kept aside by the server for somebody to look
 * at, or refused.
 */
export type EntryState = 'on-device' | 'sent' | 'accepted' | 'kept' | 'refused';

/** What somebody entered, as it is kept on the device. */
export interface Entry {
  /** The order of entry on this device. */
  readonly order: number;
  /** Makes it count once, however often it is sent. */
  readonly key: string;
  readonly action: string;
  /** What it enters: a word such as `tip`. */
  readonly word: string;
  /** The form's fields, urlencoded, without the session's token. */
  readonly fields: string;
  readonly personId: string;
  readonly name: string;
  readonly deviceId: string | null;
  /** By the device's own clock. */
  readonly madeAt: string;
  /** Lets the device send it as this person's later; null where none had been issued. */
  readonly proof: string | null;
  readonly state: EntryState;
  /** What the server said last. */
  readonly said: string | null;
  /** How often the server failed at it. */
  readonly faults: number;
}

export async function addEntry(entry: Omit<Entry, 'order'>): Promise<Entry> {
  const order = await onShelf('entries', 'readwrite', (store) => store.add(entry));
  return { ...entry, order: Number(order) };
}

export async function putEntry(entry: Entry): Promise<void> {
  await onShelf('entries', 'readwrite', (store) => store.put(entry));
}

export async function dropEntry({ order }: Entry): Promise<void> {
  await onShelf('entries', 'readwrite', (store) => store.delete(order));
}

/** All entries of all people on this device, in the order of entry. */
export function entries(): Promise<Entry[]> {
  return allOn<Entry>('entries');
}

/** Those that the server has not answered. */
export function isWaiting({ state }: Entry): boolean {
  return state === 'on-device' || state === 'sent';
}

const hoursShown = 24;

/** Answered entries are shown for a day. */
export async function forgetOld(now: number): Promise<void> {
  for (const entry of await entries()) {
    const isDone = entry.state === 'accepted' || entry.state === 'kept';
    if (isDone && now - Date.parse(entry.madeAt) > hoursShown * 3_600_000) await dropEntry(entry);
  }
}
