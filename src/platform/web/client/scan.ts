import { flash, showBand } from './band.js';
import { Burst, JustScanned, type ScannerHabit } from './burst.js';
import { sayOfBag } from './known-bags.js';
import { forgetProofs } from './proofs.js';
import { letWait, nameWaiting, nextWaiting } from './waiting-scans.js';
import { whoIsHere } from './who-is-here.js';
import { say } from './words.js';

declare global {
  /** A key that was pressed before the page's module ran. */
  interface FirstKey {
    readonly key: string;
    readonly at: number;
    readonly target: EventTarget | null;
    /** What its field held before it. */
    readonly value: string | null;
    /** Enter was held back: whoever takes these keys decides what it does. */
    readonly isHeld: boolean;
  }

  interface Window {
    /** Hands over the keys so far, once, and hears no more. Missing where this file was not loaded. */
    takeFirstKeys?: (() => readonly FirstKey[]) | undefined;
  }
}

const habitName = 'packthread-scanner';

/** What the scanner of this device sends around a code. */
export function scannerHabit(): ScannerHabit {
  try {
    const kept = JSON.parse(localStorage.getItem(habitName) ?? '{}') as Partial<ScannerHabit>;
    return { prefix: kept.prefix ?? '', suffix: kept.suffix ?? 'Enter' };
  } catch {
    return { prefix: '', suffix: 'Enter' };
  }
}

export function setScannerHabit(habit: ScannerHabit): void {
  localStorage.setItem(habitName, JSON.stringify(habit));
}

type Field = HTMLInputElement | HTMLTextAreaElement;

/** A key, and what its field held before it. */
type PressedKey = Pick<FirstKey, 'key' | 'at' | 'target' | 'value'>;

/**
 * Takes a scan wherever the focus is: the scanner types like a keyboard, only faster. Its characters do not stay in the
 * field that happens to have the focus, and its Enter sends no form. What a person types is never touched.
 */
export function listenToScanner(take: (code: string) => void): void {
  const burst = new Burst(scannerHabit());
  const justScanned = new JustScanned();
  /** Fields as they stood before the burst began. */
  const before = new Map<Field, string>();
  const endsScan = ({ key, at, target, value }: PressedKey): boolean => {
    if (burst.isNewAt(at)) before.clear();
    if (isField(target) && value !== null && !before.has(target)) before.set(target, value);
    const code = burst.take({ key, at });
    if (code === null || isTakenWhereItIs(target, code)) return false;
    for (const [field, text] of before) putBack(field, text);
    if (!justScanned.isAgain(code, at)) take(code);
    return true;
  };
  for (const first of window.takeFirstKeys?.() ?? []) {
    if (!endsScan(first) && first.isHeld) pressEnter(first.target);
  }
  document.addEventListener(
    'keydown',
    (event) => {
      if (event.ctrlKey || event.altKey || event.metaKey || event.isComposing) return;
      const { key, timeStamp: at, target } = event;
      if (!endsScan({ key, at, target, value: isField(target) ? target.value : null })) return;
      event.preventDefault();
      event.stopImmediatePropagation();
    },
    { capture: true },
  );
}

/** What a person's Enter does, which was held back until it was known not to end a scan. */
function pressEnter(target: EventTarget | null): void {
  if (target instanceof HTMLInputElement) target.form?.requestSubmit();
  else if (target instanceof HTMLButtonElement || target instanceof HTMLAnchorElement) target.click();
}

function isField(target: EventTarget | null): target is Field {
  return target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement;
}

function putBack(field: Field, text: string): void {
  if (field.value === text) return;
  field.value = text;
  field.dispatchEvent(new Event('input', { bubbles: true }));
}

/** Where a page has no place for scans, a field that takes text keeps what is scanned into it. */
function isTakenWhereItIs(target: EventTarget | null, code: string): boolean {
  if (!isField(target)) return false;
  if (target.dataset['takesScan'] !== undefined) return true;
  if (isBadge(code) && whoIsHere() !== null) return false;
  return document.querySelector('form[data-scan]') === null && target.dataset['number'] === undefined;
}

/** 128 random bits in 26 characters of base32. */
function isBadge(code: string): boolean {
  return /^[A-Z2-7]{26}$/i.test(code);
}

/** What a scan does on this page. */
export function actOnScan(code: string): void {
  const word = wordOf(code);
  const button = [...document.querySelectorAll<HTMLElement>('[data-command]')].find(
    (one) => wordOf(one.dataset['command'] ?? '') === word,
  );
  if (button !== undefined) press(button);
  else if (/^CMD[0-9A-Z]{1,30}$/i.test(code)) {
    showBand({ word, sentence: say('browser-no-such-command'), tone: 'attention' });
  } else if (isBadge(code)) void changePerson(code);
  else void look(code);
}

/** A card at the line stands for a button of the page. A careful act is only shown: somebody must press it. */
function press(button: HTMLElement): void {
  button.scrollIntoView({ block: 'center' });
  button.focus();
  if (!button.classList.contains('careful')) button.click();
}

function wordOf(command: string): string {
  return command
    .toUpperCase()
    .replaceAll(/[^0-9A-Z]/g, '')
    .replace(/^CMD/, '');
}

/** A badge signs its person in, wherever it is scanned, and the page stays the same. */
async function changePerson(badge: string): Promise<void> {
  const field = document.querySelector<HTMLInputElement>('form[action="/sign-in"] input[name=badge]');
  if (field !== null) {
    field.value = badge;
    field.form?.requestSubmit();
    return;
  }
  if (whoIsHere()?.deviceId == null) return;
  try {
    if (isSecureContext) await forgetProofs();
    const body = new URLSearchParams({ proof: 'badge', badge, next: location.pathname + location.search });
    const answer = await fetch('/sign-in', {
      method: 'POST',
      body,
      redirect: 'manual',
      headers: { Accept: 'text/html' },
    });
    if (answer.type === 'opaqueredirect') location.reload();
    else showBand({ word: say('browser-badge'), sentence: say('browser-badge-unknown'), tone: 'must-not' });
  } catch {
    showBand({ word: say('browser-badge'), sentence: say('browser-badge-needs-network'), tone: 'attention' });
  }
}

/** Shows what was scanned in the page's band, without leaving the page where that is possible. */
async function look(code: string): Promise<void> {
  const form = document.querySelector<HTMLFormElement>('form[data-scan]');
  const field = form?.querySelector<HTMLInputElement>('input[name=scan]');
  if (form === null || field === null || field === undefined) {
    location.assign(`/thread?code=${encodeURIComponent(code)}`);
    return;
  }
  // What the page was asked before is not answered yet, and its answer may be another page: this would be lost there.
  if (document.querySelector('form[method=post][aria-busy=true]') !== null) {
    letWait(form, code);
    return;
  }
  field.value = code;
  if (form.method === 'post') form.requestSubmit();
  else await lookInBand(form, code);
}

/** Goes on with a scan that came while an entry, or another scan, was still on its way. */
export function goOnScanning(): void {
  const code = nextWaiting(document.querySelector('form[data-scan]'));
  if (code !== null) void look(code);
}

/** An entry was refused: that is to be read first, so what was scanned behind it is only named. */
export function leaveScans(): void {
  nameWaiting(document.querySelector('form[data-scan]'));
}

const patienceMilliseconds = 4000;
/** How many scans were looked for: an answer to any but the last says nothing any more. */
let lookCount = 0;

async function lookInBand(form: HTMLFormElement, code: string): Promise<void> {
  const address = new URL(form.action, location.href);
  for (const [name, value] of new FormData(form)) {
    if (typeof value === 'string') address.searchParams.set(name, value);
  }
  document.getElementById('band')?.setAttribute('aria-busy', 'true');
  lookCount += 1;
  const mine = lookCount;
  try {
    const signal = AbortSignal.timeout(patienceMilliseconds);
    const answer = await fetch(address, { headers: { Accept: 'text/html' }, signal });
    if (passing.has(answer.status)) throw new Error('the server is away');
    const html = await answer.text();
    if (mine !== lookCount) return;
    const page = new DOMParser().parseFromString(html, 'text/html');
    if (new URL(answer.url).pathname !== address.pathname || !swapBand(page)) location.assign(address);
    else history.replaceState(null, '', address);
  } catch {
    const known = await sayOfBag(code);
    if (mine !== lookCount) return;
    document.getElementById('band')?.removeAttribute('aria-busy');
    showBand(known);
  }
}

const passing = new Set([502, 503, 504]);

function swapBand(page: Document): boolean {
  const [old, made] = [document.getElementById('band'), page.getElementById('band')];
  if (old === null || made === null) return false;
  const hadFocus = old.contains(document.activeElement);
  old.replaceWith(made);
  if (hadFocus) made.querySelector<HTMLInputElement>('input[name=scan]')?.focus();
  flash();
  return true;
}
