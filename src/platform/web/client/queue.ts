import { showBand } from './band.js';
import { addEntry, dropEntry, entries, isWaiting, putEntry, type Entry } from './entries.js';
import { clearTrouble, showTrouble } from './form-trouble.js';
import { giveNumber } from './pallet-numbers.js';
import { askForProof, forgetProofs, proofOf } from './proofs.js';
import { besideReplay, keepReplaying, replay, tellEntriesChanged, whenEntriesChange } from './replay.js';
import { goOnScanning, leaveScans } from './scan.js';
import { sendEntry } from './send-entry.js';
import { csrfToken, whoIsHere } from './who-is-here.js';
import { hourText, say } from './words.js';

/**
 * Forms that may wait (`data-queue`): what is entered is written to the device before it is sent, so that neither a dead
 * network nor an empty battery loses it.
 */
export function keepQueue(): void {
  const asking = askForProof();
  document.addEventListener('submit', (event) => {
    const { target: form, submitter } = event;
    if (!(form instanceof HTMLFormElement) || event.defaultPrevented) return;
    if (form.action.endsWith('/sign-out') || form.action.endsWith('/sign-in')) void forgetProofs();
    if (form.dataset['queue'] === undefined || form.dataset['native'] !== undefined) return;
    if (submitter?.dataset['native'] !== undefined) return;
    event.preventDefault();
    void take(form, submitter, asking);
  });
  whenEntriesChange(() => void showWaiting());
  keepReplaying();
  void navigator.storage.persist();
}

async function take(form: HTMLFormElement, submitter: HTMLElement | null, asking: Promise<void>): Promise<void> {
  if (form.getAttribute('aria-busy') === 'true') return;
  form.setAttribute('aria-busy', 'true');
  let end: Ending = 'stays';
  try {
    clearTrouble(form);
    await Promise.race([asking, new Promise((resolve) => setTimeout(resolve, 1000))]);
    const entry = await writeDown(form, submitter);
    end = entry === null ? sendNatively(form, submitter) : await sendOrKeep(form, entry);
  } finally {
    // A page that is being left stays busy: what is scanned meanwhile waits for the next one.
    if (end !== 'leaves') form.removeAttribute('aria-busy');
    if (end === 'stays') goOnScanning();
    if (end === 'refused') leaveScans();
  }
}

/** What becomes of the page when an entry was sent or kept. */
type Ending = 'leaves' | 'stays' | 'refused';

/** Null where the device has no store (a private window): the form is then sent as without script. */
async function writeDown(form: HTMLFormElement, submitter: HTMLElement | null): Promise<Entry | null> {
  const here = whoIsHere();
  await giveNumber(form);
  const fields = new URLSearchParams();
  for (const [name, value] of new FormData(form, submitter)) {
    if (typeof value === 'string') fields.append(name, value);
  }
  const key = fields.get('formKey');
  fields.delete('csrf');
  if (here === null || key === null) return null;
  try {
    const entry = await addEntry({
      ...{ key, action: actionOf(form, submitter), word: form.dataset['queue'] ?? '', fields: fields.toString() },
      ...{ ...here, madeAt: new Date().toISOString(), proof: await proofOf(here.personId) },
      ...{ state: 'on-device', said: null, faults: 0 },
    });
    tellEntriesChanged();
    return entry;
  } catch {
    return null;
  }
}

function actionOf(form: HTMLFormElement, submitter: HTMLElement | null): string {
  const own = submitter?.getAttribute('formaction');
  const { pathname, search } = new URL(own ?? form.action, location.href);
  return pathname + search;
}

/** Sends the entry now where nothing waits before it; else it waits its turn. */
async function sendOrKeep(form: HTMLFormElement, entry: Entry): Promise<Ending> {
  const outcome = await besideReplay(async () => {
    const before = (await entries()).filter((other) => isWaiting(other) && other.order < entry.order);
    if (before.length > 0) return { kind: 'away' } as const;
    await putEntry({ ...entry, state: 'sent' });
    return sendEntry(entry, { csrf: csrfToken() });
  });
  if (outcome.kind === 'accepted') {
    await putEntry({ ...entry, state: outcome.isKept ? 'kept' : 'accepted', said: outcome.said });
    tellEntriesChanged();
    return goOn(outcome.next);
  }
  if (outcome.kind === 'refused') {
    // The person is here and can say what is meant: nothing was recorded, nothing waits.
    await dropEntry(entry);
    tellEntriesChanged();
    // What it changes is looked at before it is recorded, on a page of its own.
    if (outcome.problem.type === 'problem:look-first') return sendNatively(form, null);
    showTrouble(form, outcome.problem);
    return 'refused';
  }
  if (outcome.kind === 'unknown-person' && entry.proof === null) {
    await dropEntry(entry);
    tellEntriesChanged();
    return sendNatively(form, null);
  }
  await putEntry({ ...entry, state: 'on-device' });
  tellEntriesChanged();
  makeReady(form);
  showBand({
    word: say('browser-on-device'),
    sentence: say('browser-kept-here', { at: hourText(entry.madeAt) }),
    tone: 'attention',
  });
  void replay();
  return 'stays';
}

function goOn(next: string | null): 'leaves' {
  const there = new URL(next ?? location.href, location.href);
  if (there.href === location.href) location.reload();
  else location.assign(there);
  return 'leaves';
}

/** The form is ready for the next entry, with a key of its own. */
function makeReady(form: HTMLFormElement): void {
  form.reset();
  const key = form.querySelector<HTMLInputElement>('input[name=formKey]');
  if (key !== null) key.value = key.defaultValue = crypto.randomUUID();
  const number = form.querySelector<HTMLInputElement>('input[type=hidden][name=sscc]');
  if (number !== null) number.value = '';
}

function sendNatively(form: HTMLFormElement, submitter: HTMLElement | null): 'leaves' {
  form.dataset['native'] = '';
  form.removeAttribute('aria-busy');
  form.requestSubmit(submitter);
  return 'leaves';
}

/** How many entries of whomever wait on this device, in the frame of the page. */
async function showWaiting(): Promise<void> {
  const region = document.getElementById('waiting');
  if (region === null) return;
  const all = await entries();
  const waiting = all.filter(isWaiting).length;
  const refused = all.filter(({ state }) => state === 'refused').length;
  region.hidden = waiting + refused === 0;
  const link = document.createElement('a');
  link.href = '/device/queue';
  link.textContent = [
    ...(waiting === 0 ? [] : [say(waiting === 1 ? 'browser-one-waits' : 'browser-many-wait', { count: waiting })]),
    ...(refused === 0 ? [] : [say('browser-some-refused', { count: refused })]),
  ].join(' · ');
  if (region.textContent !== link.textContent) region.replaceChildren(link);
}
