import { say } from './words.js';

const listName = 'packthread-waiting-scans';

/** A scan that came while the one before was still on its way to the server. */
interface WaitingScan {
  readonly code: string;
  /** The form that it belongs to. */
  readonly action: string;
}

/** Keeps a scan for the page that answers the one before. It is of this tab alone and ends with it. */
export function letWait(form: HTMLFormElement, code: string): void {
  const action = new URL(form.action).pathname;
  sessionStorage.setItem(listName, JSON.stringify([...waiting(), { code, action } satisfies WaitingScan]));
}

/**
 * The next scan that waited for this page, if any. A *no* to the one before must be read first: what waited behind it
 * is named as not taken.
 */
export function nextWaiting(form: HTMLFormElement): string | null {
  const mine = waiting().filter(({ action }) => action === new URL(form.action).pathname);
  sessionStorage.removeItem(listName);
  const [first, ...rest] = mine;
  if (first === undefined) return null;
  if (document.getElementById('band')?.classList.contains('must-not') !== true) {
    if (rest.length > 0) sessionStorage.setItem(listName, JSON.stringify(rest));
    return first.code;
  }
  sayNotTaken(mine);
  return null;
}

function sayNotTaken(scans: readonly WaitingScan[]): void {
  const also = document.createElement('p');
  also.textContent = say('browser-scans-not-taken', { codes: scans.map(({ code }) => code).join(', ') });
  document.querySelector('#band .said')?.append(also);
}

function waiting(): readonly WaitingScan[] {
  const kept: unknown = JSON.parse(sessionStorage.getItem(listName) ?? '[]');
  return Array.isArray(kept) ? (kept as WaitingScan[]) : [];
}
