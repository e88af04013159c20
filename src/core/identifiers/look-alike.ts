/** A character that was read as another one that looks like it. */
export interface Swap {
  /** The place in the text without spaces and punctuation, from 1. */
  readonly place: number;
  readonly typed: string;
  readonly read: string;
}

/** The characters that eyes, dust and dot-matrix coders take for each other: a letter and the digit like it. */
const digitLike: Readonly<Record<string, string>> = { O: '0', I: '1', B: '8' };
const letterLike: Readonly<Record<string, string>> = { '0': 'O', '1': 'I', '8': 'B' };

/** Beyond so many doubtful characters a text has more readings than a person can choose from. */
const mostDoubtful = 4;

/**
 * A text with digits in the place of the letters that look like them: O for 0, I for 1, B for 8. Capital letters only;
 * all other characters stay. For places where only a digit can stand.
 *
 * Which characters are forgiven is our own choice; that these pairs are confused is common knowledge of printed codes
 * (no source).
 *
 * @example
 * asDigits('6O7I') // '6071'
 */
export function asDigits(text: string): string {
  return text.replace(/[OIB]/g, (letter) => digitLike[letter] ?? letter);
}

/**
 * What a text of capital letters and digits may have been where both can stand: itself first, then every way of reading
 * its O and 0, I and 1, B and 8 as the other. Itself alone where more than four of its characters are doubtful.
 *
 * @example
 * lookAlikesOf('A8') // ['A8', 'AB']
 */
export function lookAlikesOf(text: string): readonly string[] {
  const other = (character: string): string | undefined => digitLike[character] ?? letterLike[character];
  if ([...text].filter((character) => other(character) !== undefined).length > mostDoubtful) return [text];
  return [...text].reduce<readonly string[]>(
    (readings, character) => {
      const swapped = other(character);
      const kept = readings.map((reading) => reading + character);
      return swapped === undefined ? kept : [...kept, ...readings.map((reading) => reading + swapped)];
    },
    [''],
  );
}

/**
 * Where a text as typed differs from what it was read as, place by place; both without case, spaces and punctuation.
 * Empty where they are of different lengths: then it was not single characters that were read otherwise.
 *
 * @example
 * swapsBetween('b0O1 2344', 'B0012344') // [{ place: 3, typed: 'O', read: '0' }]
 */
export function swapsBetween(typed: string, read: string): readonly Swap[] {
  const plain = (text: string): readonly string[] => [...text.toUpperCase().replace(/[^A-Z0-9]/g, '')];
  const [one, other] = [plain(typed), plain(read)];
  if (one.length !== other.length) return [];
  return one.flatMap((character, at) => {
    const meant = other[at] ?? '';
    return meant === character ? [] : [{ place: at + 1, typed: character, read: meant }];
  });
}
