import { say } from './words.js';

const listName = 'packthread-waiting-scans';
/** Later than this, whoever scanned has gone on to something else. */
const mostMilliseconds = 30_000;

/** A scan that came while what the page was asked before was still on its way to the server. */
interface WaitingScan {
  readonly code: string;
  /** The form that it belongs to. */
  readonly action: string;
  readonly at: number;
}

/** Keeps a scan for the page that answers what was asked before. It is of this tab alone and ends with it. */
export function letWait(form: HTMLFormElement, code: string): void {
  keep([...waiting(), { code, action: pathOf(form), at: Date.now() }]);
}

/**
 * The next scan that waited for this page, if any. A *no* to the one before must be read first: what waited behind it
 * is named as not taken.
 */
export function nextWaiting(form: HTMLFormElement | null): string | null {
  if (document.getElementById('band')?.classList.contains('must-not') === true) {
    nameWaiting(form);
    return null;
  }
  const [first, ...rest] = takeWaiting(form);
  if (rest.length > 0) keep(rest);
  return first?.code ?? null;
}

/** Names what waited for this page as not taken. */
export function nameWaiting(form: HTMLFormElement | null): void {
  const mine = takeWaiting(form);
  if (mine.length === 0) return;
  const also = document.createElement('p');
  also.textContent = say('browser-scans-not-taken', { codes: mine.map(({ code }) => code).join(', ') });
  document.querySelector('#band .said')?.append(also);
}

/** Takes what waits off the list: what waited for another page waits for nothing any more. */
function takeWaiting(form: HTMLFormElement | null): readonly WaitingScan[] {
  const all = waiting();
  sessionStorage.removeItem(listName);
  return all.filter(({ action, at }) => form !== null && action === pathOf(form) && Date.now() - at < mostMilliseconds);
}

function waiting(): readonly WaitingScan[] {
  const kept: unknown = JSON.parse(sessionStorage.getItem(listName) ?? '[]');
  return Array.isArray(kept) ? (kept as WaitingScan[]) : [];
}

function keep(scans: readonly WaitingScan[]): void {
  sessionStorage.setItem(listName, JSON.stringify(scans));
}

function pathOf({ action }: HTMLFormElement): string {
  return new URL(action).pathname;
}
