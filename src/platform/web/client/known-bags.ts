import { readBagNumber } from '../../../core/identifiers/bag-number.js';
import type { BandText } from './band.js';
import { onShelf } from './store.js';
import { csrfToken } from './who-is-here.js';
import { hourText, say } from './words.js';

/** A bag in store as the server last told it. */
interface KnownBag {
  readonly number: string;
  readonly sscc: string;
  readonly state: string;
  readonly gradeCode: string;
}

/** The bags in store, as at a time. */
interface BagList {
  readonly name: 'bags';
  readonly asAt: string;
  readonly items: readonly KnownBag[];
  readonly lines: readonly { readonly id: string; readonly grades: readonly string[] }[];
}

/** A list of so little age is not fetched again by the next page or tab. */
const freshMilliseconds = 15_000;

function bagList(): Promise<BagList | undefined> {
  return onShelf('lists', 'readonly', (store) => store.get('bags') as IDBRequest<BagList | undefined>);
}

/** Fetches the list of the bags in store, for scans that come while the network is away. */
export async function keepBagList(): Promise<void> {
  const known = await bagList();
  if (known !== undefined && Date.now() - Date.parse(known.asAt) < freshMilliseconds) return;
  try {
    const answer = await fetch('/api/line-bags', { headers: { Accept: 'application/json' } });
    if (!answer.ok) return;
    const content = (await answer.json()) as Pick<BagList, 'items' | 'lines'>;
    const list: BagList = { name: 'bags', asAt: new Date().toISOString(), items: content.items, lines: content.lines };
    await onShelf('lists', 'readwrite', (store) => store.put(list));
  } catch {
    // Off line: the list of before stays.
  }
}

/** The number of the bag that a scan or somebody's typing means, in its stored form; null where it is no bag. */
function bagNumberOf(code: string, list: BagList | undefined): string | null {
  const digits = code.replaceAll(/\D/g, '').slice(-18);
  return readBagNumber(code)?.bagNumber ?? list?.items.find(({ sscc }) => sscc === digits)?.number ?? null;
}

/** What is known on this device of a scanned bag: checked by its check character and by the list of before. */
export async function sayOfBag(code: string): Promise<BandText> {
  const list = await bagList();
  const number = bagNumberOf(code, list);
  const digits = code.slice(-4);
  if (number === null) {
    return {
      word: say('browser-not-a-bag'),
      sentence: say('browser-not-a-bag-says', { code }),
      tone: 'attention',
      digits,
    };
  }
  const bag = list?.items.find((one) => one.number === number);
  const at = list === undefined ? '–' : hourText(list.asAt);
  if (bag === undefined) {
    return {
      word: number,
      sentence: say('browser-bag-not-listed', { at }),
      tone: 'attention',
      digits: number.slice(-4),
    };
  }
  const isOtherGrade = gradesHere(list)?.includes(bag.gradeCode) === false;
  const mayNot = bag.state === 'on-hold' || bag.state === 'rejected' || isOtherGrade;
  const facts = { number, grade: bag.gradeCode, at };
  return {
    word: say(isOtherGrade ? 'browser-bag-other-grade' : `browser-bag-${bag.state}`),
    sentence: say(mayNot ? 'browser-bag-must-not' : 'browser-bag-known', facts),
    tone: mayNot ? 'must-not' : 'quiet',
    digits: number.slice(-4),
    act: offLineTip(number),
  };
}

/** The grades that the run of this page's line takes; null where that is not known. */
function gradesHere(list: BagList | undefined): readonly string[] | null {
  const lineId = lineHere();
  return list?.lines.find(({ id }) => id === lineId)?.grades ?? null;
}

/** The line whose page this is. */
function lineHere(): string | null {
  return /^\/line\/([0-9a-f-]{36})(\/|$)/.exec(location.pathname)?.[1] ?? null;
}

/** The form for the tip of a bag that was scanned off line: the page could not bring its own. */
function offLineTip(number: string): HTMLElement | null {
  const lineId = lineHere();
  if (lineId === null) return null;
  const form = document.createElement('form');
  form.method = 'post';
  form.action = `/line/${lineId}/tips`;
  form.className = 'one-touch';
  form.dataset['queue'] = 'tip';
  const fields = { csrf: csrfToken(), formKey: crypto.randomUUID(), bag: number, isOff: 'true' };
  for (const [name, value] of Object.entries(fields)) {
    const field = document.createElement('input');
    Object.assign(field, { type: 'hidden', name, value });
    form.append(field);
  }
  const button = document.createElement('button');
  button.className = 'act plain';
  button.textContent = say('browser-enter-tip');
  form.append(button);
  return form;
}
