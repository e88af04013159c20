/**
 * The key under which a printed lot code is stored and searched: capital letters and digits alone, without the lot mark in front.
 *
 * What keyboards, eyes and scanners change is dropped: case, spaces, hyphens, points, colons. The letter L in front of a digit is the lot
 * mark of Directive 2011/91/EU, no part of the code, and never stands in AI 10; so the code on a pack, the lot in its symbol and what
 * a customer types have one key. Two codes that differ only in such marks share a key: a search shows both.
 *
 * Applying it twice changes nothing. A text without letters and digits gives the empty text.
 *
 * @example
 * normaliseCode(' l 6123-a ') // '6123A'
 */
export function normaliseCode(text: string): string {
  const plain = text
    .normalize('NFKC')
    .toUpperCase()
    .normalize('NFKC')
    .replace(/[^\p{L}\p{N}]/gu, '');
  return plain.replace(/^L(?=\d)/, '');
}

/** A printed code without its time, and the time. */
export interface SplitCode {
  /** What is printed before or after the time, spaces at its ends dropped; otherwise as typed. */
  readonly lotText: string;
  /** `HH:mm`, or null where no time was found. */
  readonly localTime: string | null;
}

/**
 * Splits a time of day off the end (or the front) of a printed code, where no pattern says where it stands.
 *
 * A time is one or two digits, a colon, point or h, and two digits, 0:00 to 23:59, set apart from the code by a space or standing alone;
 * a day such as 23.11.2028 is none. Digits run together (`1432`) are not taken for a time: only a pattern can tell them from a code.
 *
 * @example
 * splitCodeTime('L6123A 14:32') // { lotText: 'L6123A', localTime: '14:32' }
 */
export function splitCodeTime(text: string): SplitCode {
  const typed = text.trim();
  const found =
    /(?:^|\s)([01]?\d|2[0-3])[:.hH]([0-5]\d)$/.exec(typed) ?? /^([01]?\d|2[0-3])[:.hH]([0-5]\d)(?=\s)/.exec(typed);
  if (found === null) return { lotText: typed, localTime: null };
  const lotText = (typed.slice(0, found.index) + typed.slice(found.index + found[0].length)).trim();
  return { lotText, localTime: `${(found[1] ?? '').padStart(2, '0')}:${found[2] ?? ''}` };
}

/**
 * What stands in a typed code like a time of day and is none: hours beyond 23, minutes beyond 59. Null where nothing does.
 *
 * @example
 * impossibleTimeIn('L6123A 25:99') // '25:99'
 */
export function impossibleTimeIn(text: string): string | null {
  const found = /(?:^|\s)(\d{1,2}[:.hH]\d{2})(?:$|\s)/.exec(text)?.[1] ?? null;
  return found !== null && splitCodeTime(found).localTime === null ? found : null;
}
