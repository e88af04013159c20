import { readBagNumber } from '../../../core/identifiers/bag-number.js';
import type { BandText } from './band.js';
import { onShelf } from './store.js';
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
}

/** Fetches the list of the bags in store, for scans that come while the network is away. */
export async function keepBagList(): Promise<void> {
  try {
    const answer = await fetch('/api/line-bags', { headers: { Accept: 'application/json' } });
    if (!answer.ok) return;
    const content = (await answer.json()) as { readonly items: readonly KnownBag[] };
    const list: BagList = { name: 'bags', asAt: new Date().toISOString(), items: content.items };
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
  const list = await onShelf<BagList | undefined>(
    'lists',
    'readonly',
    (store) => store.get('bags') as IDBRequest<BagList | undefined>,
  );
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
  const isOtherGrade = !gradesHere().includes(bag.gradeCode);
  const mayNot = bag.state === 'on-hold' || bag.state === 'rejected' || isOtherGrade;
  const facts = { number, grade: bag.gradeCode, at };
  return {
    word: say(isOtherGrade ? 'browser-bag-other-grade' : `browser-bag-${bag.state}`),
    sentence: say(mayNot ? 'browser-bag-must-not' : 'browser-bag-known', facts),
    tone: mayNot ? 'must-not' : 'quiet',
    digits: number.slice(-4),
  };
}

/** The grades that the run on this page takes; all where the page does not say. */
function gradesHere(): { includes(code: string): boolean } {
  const said = document.querySelector<HTMLElement>('[data-grades]')?.dataset['grades'];
  return said === undefined ? { includes: () => true } : said.split(' ');
}
