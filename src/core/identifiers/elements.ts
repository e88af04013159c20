import { applicationIdentifier, type ApplicationIdentifier } from './application-identifiers.js';
import { hasGs1CheckDigit } from './check-digit.js';
import { gs1DateOn } from './gs1-date.js';

/** One application identifier with its value, as on a label. */
export interface Gs1Element {
  readonly ai: string;
  readonly value: string;
}

/** Why an element string or a Digital Link was not taken. */
export type ElementProblem =
  | 'empty'
  | 'other-symbology'
  | 'malformed-brackets'
  | 'unknown-ai'
  | 'not-digits'
  | 'bad-character'
  | 'too-short'
  | 'too-long'
  | 'check-digit'
  | 'no-such-date'
  | 'no-such-time'
  | 'repeated-with-other-value'
  | 'not-together'
  | 'partner-missing'
  | 'malformed-link'
  | 'no-key'
  | 'wrong-path'
  | 'wrong-attribute';

/** A refusal: what is wrong, and with which identifier (null where it is the text as a whole). */
export interface ElementFault {
  readonly ok: false;
  readonly problem: ElementProblem;
  readonly ai: string | null;
}

/** What was read, in the order in which it stood, or why nothing was. */
export type ElementsReading = { readonly ok: true; readonly elements: readonly Gs1Element[] } | ElementFault;

/** What the reader of elements must be told. */
export interface ElementRules {
  /** The full year in which we read, for the century of two-digit years. */
  readonly currentYear: number;
  /**
   * Whether the partners that GS1 asks for must be there (02 with 37, 37 with 00 and 02, 10 with 01 …). They are judged over all symbols
   * of a unit together, so a single scan of a pallet label that has several must be read without.
   */
  readonly pairing?: boolean;
}

/** GS1 character set 82 (ISO/IEC 646 subset), as the unit tests of the GS1 Barcode Syntax Dictionary list it. */
const CHARACTER_SET_82 = /^[!"%&'()*+,\-./0-9:;<=>?A-Z_a-z]*$/;

/**
 * Checks elements that are to be printed or were read: each value by its identifier (length, characters, check digit, date), then the
 * set: an identifier that stands twice has one value, none stands beside one that it excludes, and, with `pairing`, partners are there.
 *
 * @returns the first fault in the order of the elements, or null where there is none. No elements at all is `empty`. Never throws.
 * @example
 * elementFault([{ ai: '15', value: '271301' }], { currentYear: 2026 }) // { ok: false, problem: 'no-such-date', ai: '15' }
 */
export function elementFault(elements: readonly Gs1Element[], rules: ElementRules): ElementFault | null {
  if (elements.length === 0) return fault('empty', null);
  for (const { ai, value } of elements) {
    const row = applicationIdentifier(ai);
    if (row === null) return fault('unknown-ai', ai);
    const problem = valueProblem(row, value, rules.currentYear);
    if (problem !== null) return fault(problem, ai);
  }
  return setFault(elements, rules.pairing === true);
}

/**
 * The value of an identifier among elements; null where it is not there.
 *
 * @example
 * elementValue([{ ai: '10', value: 'A61' }], '10') // 'A61'
 */
export function elementValue(elements: readonly Gs1Element[], ai: string): string | null {
  return elements.find((element) => element.ai === ai)?.value ?? null;
}

/**
 * A refusal as the readers give it.
 *
 * @example
 * fault('unknown-ai', '04') // { ok: false, problem: 'unknown-ai', ai: '04' }
 */
export function fault(problem: ElementProblem, ai: string | null): ElementFault {
  return { ok: false, problem, ai };
}

function valueProblem(row: ApplicationIdentifier, value: string, currentYear: number): ElementProblem | null {
  const [fewest, most] = row.length;
  if (value.length < fewest) return 'too-short';
  if (value.length > most) return 'too-long';
  if (row.kind === 'digits' && !/^\d*$/.test(value)) return 'not-digits';
  if (!CHARACTER_SET_82.test(value)) return 'bad-character';
  if (row.check === 'check-digit') return hasGs1CheckDigit(value) ? null : 'check-digit';
  if (row.check === 'date') return gs1DateOn(value, currentYear) === null ? 'no-such-date' : null;
  return row.check === 'production-time' ? productionTimeProblem(value, currentYear) : null;
}

/** YYMMDDHH, then minutes, then seconds; here a day must be stated. */
function productionTimeProblem(value: string, currentYear: number): ElementProblem | null {
  if (value.length % 2 === 1) return 'too-short';
  const day = value.slice(0, 6);
  if (day.endsWith('00') || gs1DateOn(day, currentYear) === null) return 'no-such-date';
  return /^(?:[01]\d|2[0-3])(?:[0-5]\d){0,2}$/.test(value.slice(6)) ? null : 'no-such-time';
}

function setFault(elements: readonly Gs1Element[], pairing: boolean): ElementFault | null {
  const values = new Map<string, string>();
  for (const { ai, value } of elements) {
    if ((values.get(ai) ?? value) !== value) return fault('repeated-with-other-value', ai);
    values.set(ai, value);
  }
  for (const ai of values.keys()) {
    const row = applicationIdentifier(ai);
    if (row?.excludes.some((other) => values.has(other)) === true) return fault('not-together', ai);
    if (pairing && row !== null && !hasPartners(row, values)) return fault('partner-missing', ai);
  }
  return null;
}

function hasPartners(row: ApplicationIdentifier, values: ReadonlyMap<string, string>): boolean {
  return row.needs.length === 0 || row.needs.some((group) => group.every((ai) => values.has(ai)));
}
