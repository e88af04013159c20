import { applicationIdentifier, leadingApplicationIdentifier } from './application-identifiers.js';
import {
  elementFault,
  fault,
  type ElementFault,
  type ElementRules,
  type ElementsReading,
  type Gs1Element,
} from './elements.js';

/** The separator between elements as every scanner transmits it: the control character GS, ASCII 29. */
export const ELEMENT_SEPARATOR = '\u001d';

/** A GS1-128 symbol holds at most this many data characters, separators counted (GS1 General Specifications R18, 5.4.4). */
export const GS1_128_MAX_CHARACTERS = 48;

/** GS1-128, GS1 DataMatrix, GS1 QR Code, GS1 DotCode, GS1 DataBar (AIM symbology identifiers, GS1 Barcode Syntax Engine). */
const GS1_SYMBOLOGIES = [']C1', ']d2', ']Q3', ']J1', ']e0'];

/** How an element string is read. */
export interface ElementStringRules extends ElementRules {
  /** Texts that this scanner sends in place of the separator, because its keyboard mode can't send a control character. */
  readonly separators?: readonly string[];
}

/**
 * Reads a GS1 element string as a scanner sends it or as it stands below the bars.
 *
 * Taken are: data with the AIM prefix of a GS1 symbol (`]C1`, `]d2`, `]Q3` …), data that begins with a separator, bare data with no prefix
 * at all, and human-readable text with the identifiers in parentheses (a parenthesis inside a value is written `\(`; spaces after a
 * bracket are dropped). A separator is needed after each value of variable length, unless it stands last; one too many after
 * a value of fixed length or at the end is tolerated, two in a row are not.
 *
 * **A separator that got lost is not always noticed**: `…37 40 10 01` without it reads as count 401001. Compare counts with your own.
 *
 * @returns the elements in the order in which they stood, repeated ones too; or the first fault. Never throws.
 * @example
 * readElementString(']C102195201230001003740\u001d10A61', { currentYear: 2026 })
 * // { ok: true, elements: [{ ai: '02', value: '19520123000100' }, { ai: '37', value: '40' }, { ai: '10', value: 'A61' }] }
 */
export function readElementString(scanned: string, rules: ElementStringRules): ElementsReading {
  const data = withSeparators(scanned, rules.separators ?? []).replace(/^[ \r\n\t]+|[ \r\n\t]+$/g, '');
  const reading = split(data);
  return reading.ok ? (elementFault(reading.elements, rules) ?? reading) : reading;
}

/**
 * The data of a symbol: identifiers and values in the given order, separators only where they are needed; without the FNC1 in front,
 * which the symbol's own encoder adds. Its length is the count that `GS1_128_MAX_CHARACTERS` limits.
 *
 * Put values of fixed length first and one of variable length last: that saves separators.
 *
 * @throws RangeError where `elementFault` finds something; ask it first for values that people entered.
 * @example
 * writeElementString([{ ai: '37', value: '40' }, { ai: '10', value: 'A61' }], { currentYear: 2026 }) // '3740\u001d10A61'
 */
export function writeElementString(elements: readonly Gs1Element[], rules: ElementRules): string {
  const found = elementFault(elements, rules);
  if (found !== null) throw new RangeError(`element ${found.ai ?? 'string'}: ${found.problem}`);
  return elements
    .map(
      ({ ai, value }, place) =>
        ai + value + (needsSeparator(ai) && place < elements.length - 1 ? ELEMENT_SEPARATOR : ''),
    )
    .join('');
}

/**
 * The lines to print below the bars, one per element: the identifier in parentheses, a space, the value exactly as encoded.
 *
 * @example
 * humanReadable([{ ai: '10', value: 'A61' }]) // ['(10) A61']
 */
export function humanReadable(elements: readonly Gs1Element[]): readonly string[] {
  return elements.map(({ ai, value }) => `(${ai}) ${value}`);
}

/**
 * The elements in one line with bracketed identifiers and no spaces, as symbol encoders take them; `(` inside a value becomes `\(`.
 *
 * @example
 * bracketedText([{ ai: '37', value: '40' }, { ai: '10', value: 'A61' }]) // '(37)40(10)A61'
 */
export function bracketedText(elements: readonly Gs1Element[]): string {
  return elements.map(({ ai, value }) => `(${ai})${value.replaceAll('(', '\\(')}`).join('');
}

function withSeparators(scanned: string, replacements: readonly string[]): string {
  return replacements
    .filter((replacement) => replacement !== '')
    .reduce((data, replacement) => data.replaceAll(replacement, ELEMENT_SEPARATOR), scanned);
}

function split(data: string): ElementsReading {
  if (data.startsWith('(')) return splitBracketed(data);
  const symbology = /^\][A-Za-z]./.exec(data)?.[0] ?? null;
  if (symbology !== null && !GS1_SYMBOLOGIES.includes(symbology)) return fault('other-symbology', null);
  const body = symbology === null ? data.replace(ELEMENT_SEPARATOR, (gs, at) => (at === 0 ? '' : gs)) : data.slice(3);
  return splitTransmitted(body);
}

function splitTransmitted(body: string): ElementsReading {
  const elements: Gs1Element[] = [];
  let rest = body;
  while (rest !== '') {
    const row = leadingApplicationIdentifier(rest);
    if (row === null) return unknownIdentifier(rest);
    const from = row.ai.length;
    const end = rest.indexOf(ELEMENT_SEPARATOR, from);
    const upToSeparator = end < 0 ? rest.length : end;
    const until = row.needsSeparator ? upToSeparator : Math.min(upToSeparator, from + row.length[1]);
    elements.push({ ai: row.ai, value: rest.slice(from, until) });
    rest = rest.slice(rest.charAt(until) === ELEMENT_SEPARATOR ? until + 1 : until);
  }
  return { ok: true, elements };
}

/** Names the digits that were taken for an identifier: the reader of the message looks for them on the label. */
function unknownIdentifier(rest: string): ElementFault {
  return fault('unknown-ai', /^\d{2,4}/.exec(rest)?.[0] ?? null);
}

function splitBracketed(data: string): ElementsReading {
  const elements: Gs1Element[] = [];
  // An identifier in brackets, then everything up to the next bracket that is not escaped.
  const element = /\((\d{2,4})\)((?:\\\(|[^(])*)/y;
  while (element.lastIndex < data.length) {
    const found = element.exec(data);
    if (found === null) return fault('malformed-brackets', null);
    elements.push({ ai: found[1] ?? '', value: (found[2] ?? '').trim().replaceAll('\\(', '(') });
  }
  return { ok: true, elements };
}

function needsSeparator(ai: string): boolean {
  return applicationIdentifier(ai)?.needsSeparator === true;
}
