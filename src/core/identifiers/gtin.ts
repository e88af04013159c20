import { hasGs1CheckDigit } from './check-digit.js';

/** Why a number can't be the GTIN of a pack format that is sold to others. */
export type GtinProblem = 'not-digits' | 'wrong-length' | 'check-digit' | 'restricted-prefix';

/**
 * Whether a text is a GTIN-8, GTIN-12, GTIN-13 or GTIN-14 with the right check digit.
 *
 * A GTIN-13 and a GLN look alike; what a number is comes from where it stands, never from the number.
 *
 * @example
 * isGtin('9520123000103') // true
 */
export function isGtin(text: string): boolean {
  return /^(?:\d{8}|\d{12,14})$/.test(text) && hasGs1CheckDigit(text);
}

/**
 * A GTIN in the 14 digits that element strings, Digital Links and our tables use: filled up with zeros in front.
 *
 * @throws RangeError where it is not a GTIN.
 * @example
 * toGtin14('9520123000103') // '09520123000103'
 */
export function toGtin14(gtin: string): string {
  if (!isGtin(gtin)) throw new RangeError(`not a GTIN: "${gtin}"`);
  return gtin.padStart(14, '0');
}

/**
 * Why a number can't be entered as the GTIN of a pack format, or null where it can.
 *
 * @example
 * gtinProblem('9520123000104') // 'check-digit'
 * gtinProblem('2112345678900') // 'restricted-prefix'
 */
export function gtinProblem(text: string): GtinProblem | null {
  if (!/^\d+$/.test(text)) return 'not-digits';
  if (!/^(?:\d{8}|\d{12,14})$/.test(text)) return 'wrong-length';
  if (!hasGs1CheckDigit(text)) return 'check-digit';
  return isRestrictedPrefix(text) ? 'restricted-prefix' : null;
}

/**
 * Whether a GTIN belongs to numbers that mean something only inside one company or region: they must not go on goods that leave.
 *
 * GTIN-12, -13 and -14: GS1 prefixes 0000000, 02, 04 and 20 to 29. GTIN-8: 0 and 2 as first digit. (GS1 General Specifications
 * tables 1.4.2 and 1.4.3, as quoted by public lists.) Where the number is no GTIN the answer is false.
 *
 * @example
 * isRestrictedPrefix('2112345678900') // true
 */
export function isRestrictedPrefix(gtin: string): boolean {
  const { digits, isShort } = prefixDigits(gtin);
  return isShort ? /^[02]/.test(digits) : /^(?:0000000|02|04|2)/.test(digits);
}

/**
 * Whether a GTIN carries the GS1 prefix 952 (also as GTIN-8), which is kept for demonstrations and examples and never issued.
 *
 * @example
 * isDemonstrationPrefix('9520123000103') // true
 */
export function isDemonstrationPrefix(gtin: string): boolean {
  return prefixDigits(gtin).digits.startsWith('952');
}

/**
 * Whether a GTIN in 14 digits stands for goods of varying measure (first digit 9), which must carry a weight or count beside it
 * (GS1 General Specifications, from memory). Shorter GTINs never do.
 *
 * @example
 * isVariableMeasure('99520123000304') // true
 */
export function isVariableMeasure(gtin: string): boolean {
  return gtin.length === 14 && gtin.startsWith('9') && isGtin(gtin);
}

function prefixDigits(gtin: string): { readonly digits: string; readonly isShort: boolean } {
  if (!isGtin(gtin)) return { digits: '', isShort: false };
  const gtin14 = gtin.padStart(14, '0');
  const isShort = gtin14.startsWith('000000');
  return { digits: gtin14.slice(isShort ? 6 : 1), isShort };
}
