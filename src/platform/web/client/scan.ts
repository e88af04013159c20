import { flash, showBand } from './band.js';
import { Burst, JustScanned, mostGapMilliseconds, type ScannerHabit } from './burst.js';
import { sayOfBag } from './known-bags.js';
import { forgetProofs } from './proofs.js';
import { letWait, nextWaiting } from './waiting-scans.js';
import { whoIsHere } from './who-is-here.js';
import { say } from './words.js';

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

/** A field as it stood before a burst began. */
interface Before {
  readonly field: Field;
  readonly value: string;
}

/**
 * Takes a scan wherever the focus is: the scanner types like a keyboard, only faster. Its characters do not stay in the
 * field that happens to have the focus, and its Enter sends no form. What a person types is never touched.
 */
export function listenToScanner(take: (code: string) => void): void {
  const burst = new Burst(scannerHabit());
  const justScanned = new JustScanned();
  let before: Before | null = null;
  // What was typed just before it could be heard here stands in the page's place for scans, and is a scan's beginning.
  let headUntil = performance.now() + 2 * mostGapMilliseconds;
  let head = '';
  document.addEventListener(
    'keydown',
    (event) => {
      if (event.ctrlKey || event.altKey || event.metaKey || event.isComposing) return;
      if (burst.isNewAt(event.timeStamp)) {
        before = fieldNow(event.target);
        head = event.timeStamp < headUntil ? scannedSoFar(before) : '';
      }
      const heard = burst.take({ key: event.key, at: event.timeStamp });
      if (heard === null || isTakenWhereItIs(event.target, heard)) return;
      const code = head + heard;
      // From the first scan on, what stands there is that scan.
      headUntil = 0;
      event.preventDefault();
      event.stopImmediatePropagation();
      putBack(before);
      if (!justScanned.isAgain(code, event.timeStamp)) take(code);
    },
    { capture: true },
  );
}

/** What stands in the page's place for scans; nothing where the focus is elsewhere. */
function scannedSoFar(before: Before | null): string {
  if (before === null || before.field.name !== 'scan') return '';
  return before.field.form?.dataset['scan'] === undefined ? '' : before.value;
}

function fieldNow(target: EventTarget | null): Before | null {
  const isField = target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement;
  return isField ? { field: target, value: target.value } : null;
}

function putBack(before: Before | null): void {
  if (before === null || before.field.value === before.value) return;
  before.field.value = before.value;
  before.field.dispatchEvent(new Event('input', { bubbles: true }));
}

/** Where a page has no place for scans, a field that takes text keeps what is scanned into it. */
function isTakenWhereItIs(target: EventTarget | null, code: string): boolean {
  if (fieldNow(target) === null) return false;
  const field = target as Field;
  if (field.dataset['takesScan'] !== undefined) return true;
  if (isBadge(code) && whoIsHere() !== null) return false;
  return document.querySelector('form[data-scan]') === null && field.dataset['number'] === undefined;
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
  if (form.method === 'post' && form.getAttribute('aria-busy') === 'true') {
    letWait(form, code);
    return;
  }
  field.value = code;
  if (form.method === 'post') form.requestSubmit();
  else await lookInBand(form, code);
}

/** Goes on with a scan that came while the page before was still sending another. */
export function goOnScanning(): void {
  const form = document.querySelector<HTMLFormElement>('form[data-scan]');
  const code = form?.method === 'post' ? nextWaiting(form) : null;
  if (code !== null) void look(code);
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
