import { readBagNumber } from './bag-number.js';
import { patternProblem } from './code-pattern.js';
import { readDigitalLink } from './digital-link.js';
import { makeDocumentNumber, readDocumentNumber } from './document-number.js';
import { readElementString } from './element-string.js';
import { elementValue, type ElementProblem, type ElementsReading, type Gs1Element } from './elements.js';
import { isGtin, toGtin14 } from './gtin.js';
import { asDigits, swapsBetween, type Swap } from './look-alike.js';
import { normaliseCode, splitCodeTime } from './normalise-code.js';
import { readCode, type CodeReading, type CodeWindow } from './read-code.js';
import { isSscc } from './sscc.js';

/** A pack format's code pattern, with whatever names the format to the caller. */
export interface FormatPattern {
  readonly formatId: string;
  readonly pattern: string;
}

/** A reading of a pack code by the pattern of one format. */
export interface FormatReading {
  readonly formatId: string;
  readonly reading: CodeReading;
}

/** What a scanned or typed text may be. */
export type Candidate =
  | {
      readonly kind: 'logistic-unit';
      readonly sscc: string;
      readonly elements: readonly Gs1Element[];
      readonly swaps?: readonly Swap[];
    }
  | {
      readonly kind: 'trade-item';
      readonly gtin14: string;
      /** AI 10 as it stands in the symbol; its `normaliseCode` is the key of the printed lot. */
      readonly lot: string | null;
      readonly elements: readonly Gs1Element[];
    }
  | { readonly kind: 'other-elements'; readonly elements: readonly Gs1Element[] }
  | { readonly kind: 'delivery'; readonly deliveryNumber: string; readonly swaps: readonly Swap[] }
  | { readonly kind: 'complaint'; readonly complaintNumber: string; readonly swaps: readonly Swap[] }
  | { readonly kind: 'recall'; readonly recallNumber: string; readonly swaps: readonly Swap[] }
  | { readonly kind: 'bag'; readonly serial: number; readonly bagNumber: string; readonly swaps: readonly Swap[] }
  | {
      readonly kind: 'pack-code';
      /** The key to search stored lot codes by; search each reading's `lotKey` too. */
      readonly codeKey: string;
      readonly lotText: string;
      readonly localTime: string | null;
      readonly readings: readonly FormatReading[];
    }
  | { readonly kind: 'text'; readonly text: string; readonly problem: ElementProblem | null };

/** What the house prints, for telling its codes apart. */
export interface HouseCodes {
  /** The full year in which we read. */
  readonly currentYear: number;
  /** The letters that its delivery numbers begin with. */
  readonly deliveryPrefix: string;
  /** The letters that the numbers of its complaints begin with, where they are looked for. */
  readonly complaintPrefix?: string;
  /** The letters that the numbers of its recalls and exercises begin with, where they are looked for. */
  readonly recallPrefixes?: readonly string[];
  readonly patterns: readonly FormatPattern[];
  readonly window: CodeWindow;
  /** Texts that scanners send in place of the GS1 separator. */
  readonly separators?: readonly string[];
}

/** Longer texts are shown and searched by their beginning. */
const LONGEST_TEXT = 500;

/**
 * What a text from a scanner or a keyboard may be, most likely first.
 *
 * Texts that say themselves what they are (AIM prefix of a GS1 symbol, brackets, a web address) are read as that alone; if they are wrong, the
 * plain text says what is wrong with them. Everything else is tried in this order: SSCC with 18 or 20 digits; bare element string;
 * delivery number; complaint number; number of a recall; bag number with its B; pack code that follows the pattern of a format; GTIN; bag number without B; pack code that
 * follows no pattern. Spaces, line ends and a symbology prefix around the text are dropped.
 * In numbers of the house, and where the pattern of a code allows it, O, I and B pass for 0, 1 and 8; the candidate says which.
 *
 * @returns at least one candidate; the last is always the plain text, except where the text could be read as what it says it is.
 * Patterns that can't be used are passed over. Never throws on the text.
 * @throws RangeError where the window is not two days.
 * @example
 * recognise('0952012 3000000001 1', house)[0] // { kind: 'logistic-unit', sscc: '095201230000000011', elements: [{ ai: '00', … }] }
 */
export function recognise(typed: string, house: HouseCodes): readonly Candidate[] {
  const text = typed.slice(0, LONGEST_TEXT).replace(/^[\s\u0000]+|[\s\u0000]+$/g, '');
  const symbology = /^\][A-Za-z]./.exec(text)?.[0] ?? null;
  const data = symbology === null ? text : text.slice(3);
  if (/^https?:\/\//i.test(data)) return ofItself(readDigitalLink(data, house), data, house);
  const saysGs1 = /^(?:\(|\u001d|\](?:C1|d2|Q3|J1|e0))/.test(text);
  if (saysGs1) return ofItself(readElementString(text, house), text, house);
  return [...typedCandidates(data.trim(), house), plainText(data, null)];
}

function ofItself(reading: ElementsReading, text: string, house: HouseCodes): readonly Candidate[] {
  return reading.ok ? ofElements(reading.elements, house) : [plainText(text, reading.problem)];
}

/** The unit first, then what it holds; a lot with no item beside it is searched like a code off a pack. */
function ofElements(elements: readonly Gs1Element[], house: HouseCodes): readonly Candidate[] {
  const sscc = elementValue(elements, '00');
  const gtin14 = elementValue(elements, '01') ?? elementValue(elements, '02');
  const lot = elementValue(elements, '10');
  if (sscc !== null) return [{ kind: 'logistic-unit', sscc, elements }];
  if (gtin14 !== null) return [{ kind: 'trade-item', gtin14, lot, elements }];
  return lot === null
    ? [{ kind: 'other-elements', elements }]
    : [packCode(lot, house), { kind: 'other-elements', elements }];
}

function typedCandidates(text: string, house: HouseCodes): readonly Candidate[] {
  const bag = readBagNumber(text);
  const bags: readonly Candidate[] =
    bag === null ? [] : [{ kind: 'bag', ...bag, swaps: swapsBetween(withB(text), bag.bagNumber) }];
  const saysBag = /^b/i.test(text);
  const code = packCode(text, house);
  const followsPattern = code.readings.length > 0;
  const isLikeCode = /\d/.test(code.codeKey) && code.codeKey.length >= 3;
  return [
    ...numbered(text, house),
    ...papers(text, house),
    ...(saysBag ? bags : []),
    ...(followsPattern ? [code] : []),
    ...tradeItems(text),
    ...(saysBag ? [] : bags),
    ...(!followsPattern && isLikeCode ? [code] : []),
  ];
}

/** SSCCs as people copy them, and element strings of scanners that send no prefix. */
function numbered(text: string, house: HouseCodes): readonly Candidate[] {
  const typed = withoutGaps(text).toUpperCase();
  const digits = asDigits(typed).replace(/^00(?=\d{18}$)/, '');
  if (isSscc(digits)) {
    const elements = [{ ai: '00', value: digits }];
    return [{ kind: 'logistic-unit', sscc: digits, elements, swaps: swapsBetween(typed.slice(-18), digits) }];
  }
  if (!/^0[0-2]\d{14}/.test(text)) return [];
  const reading = readElementString(text, house);
  return reading.ok ? ofElements(reading.elements, house) : [];
}

function papers(text: string, house: HouseCodes): readonly Candidate[] {
  const { deliveryPrefix, complaintPrefix, recallPrefixes = [] } = house;
  const numbersOf = (prefixes: readonly string[]) =>
    prefixes.flatMap((prefix) => {
      const read = readDocumentNumber(text, prefix);
      if (read === null) return [];
      const number = makeDocumentNumber(read);
      return [{ number, swaps: swapsBetween(text, number) }];
    });
  return [
    ...numbersOf([deliveryPrefix]).map(({ number, swaps }): Candidate => {
      return { kind: 'delivery', deliveryNumber: number, swaps };
    }),
    ...numbersOf(complaintPrefix === undefined ? [] : [complaintPrefix]).map(({ number, swaps }): Candidate => {
      return { kind: 'complaint', complaintNumber: number, swaps };
    }),
    ...numbersOf(recallPrefixes).map(({ number, swaps }): Candidate => {
      return { kind: 'recall', recallNumber: number, swaps };
    }),
  ];
}

/** A bag number with the B that may be left out. */
function withB(text: string): string {
  return /^[b8]/i.test(text) ? text : `B${text}`;
}

function tradeItems(text: string): readonly Candidate[] {
  const digits = withoutGaps(text);
  if (!isGtin(digits)) return [];
  const gtin14 = toGtin14(digits);
  return [{ kind: 'trade-item', gtin14, lot: null, elements: [{ ai: '01', value: gtin14 }] }];
}

function packCode(text: string, house: HouseCodes): Extract<Candidate, { readonly kind: 'pack-code' }> {
  const { lotText, localTime } = splitCodeTime(text);
  const readings = house.patterns
    .filter(({ pattern }) => patternProblem(pattern) === null)
    .flatMap(({ formatId, pattern }) =>
      readCode(pattern, text, house.window, { lookAlikes: true }).map((reading): FormatReading => ({
        formatId,
        reading,
      })),
    );
  return { kind: 'pack-code', codeKey: normaliseCode(lotText), lotText, localTime, readings };
}

function plainText(text: string, problem: ElementProblem | null): Candidate {
  return { kind: 'text', text: text.replace(/\p{Cc}+/gu, ' ').trim(), problem };
}

function withoutGaps(text: string): string {
  return text.replace(/[\s\-\u2010-\u2015]/g, '');
}
