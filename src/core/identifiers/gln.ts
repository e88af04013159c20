import { gs1CheckDigit, hasGs1CheckDigit } from './check-digit.js';
import { isCompanyPrefix } from './sscc.js';

/**
 * Whether a text is a GLN, the number of a site or party: exactly 13 digits, the last of them the check digit.
 *
 * @example
 * isGln('9520123000011') // true
 */
export function isGln(text: string): boolean {
  return /^\d{13}$/.test(text) && hasGs1CheckDigit(text);
}

/**
 * The GLN of a company's location: prefix, location number filled up with zeros to 12 digits, check digit.
 *
 * @param location a whole number from 0; a prefix of 7 digits leaves room up to 99 999, one of 12 digits for 0 alone.
 * @throws RangeError where the prefix is not 4 to 12 digits or the location does not fit.
 * @example
 * makeGln('9520123', 1) // '9520123000011'
 */
export function makeGln(companyPrefix: string, location: number): string {
  if (!isCompanyPrefix(companyPrefix)) throw new RangeError(`company prefix not 4 to 12 digits: "${companyPrefix}"`);
  const places = 12 - companyPrefix.length;
  if (!Number.isInteger(location) || location < 0 || location >= 10 ** places) {
    throw new RangeError(`location number does not fit behind prefix ${companyPrefix}: ${location}`);
  }
  const digits = companyPrefix + (places === 0 ? '' : String(location).padStart(places, '0'));
  return digits + gs1CheckDigit(digits);
}
