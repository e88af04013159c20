import { asDigits } from './look-alike.js';

/** The number that a bulk bag was given, taken apart. */
export interface BagNumber {
  /** The bag's running number, from 1. */
  readonly serial: number;
  /** The number as it is stored and printed: `B`, six or more digits, the check character. */
  readonly bagNumber: string;
}

/** The last serial there is: 999 999 999, thousands of years at four hundred bags a day. */
const LAST_SERIAL = 999_999_999;

/** Longer texts are no bag number, whatever stands between the digits. */
const LONGEST_TYPED = 30;

/**
 * The short number of a bulk bag, for people: `B`, the running number in at least six digits, and one check character, 0 to 9 or X.
 *
 * The check character is that of ISO/IEC 7064, MOD 11-2 (from memory; implementations that restate it agree on 079 → X): weights are the
 * powers of 2 modulo 11. Modulo 11 every single wrong character changes the sum, and so does every swap of two neighbours, because two
 * neighbours' weights differ. The GS1 check digit and the hybrid systems of that standard let some swaps pass (from memory).
 * B and X lie on the same keys on QWERTY, QWERTZ and AZERTY keyboards (from memory), so a scanner and a host that disagree about Y, Z, A or Q
 * still agree about them; no I and no O occur.
 *
 * @param serial whole number from 1 to 999 999 999.
 * @throws RangeError where the serial is outside.
 * @example
 * makeBagNumber(1234) // 'B0012344'
 */
export function makeBagNumber(serial: number): string {
  if (!Number.isInteger(serial) || serial < 1 || serial > LAST_SERIAL) {
    throw new RangeError(`bag serial not from 1 to ${LAST_SERIAL}: ${serial}`);
  }
  const digits = String(serial).padStart(6, '0');
  return `B${digits}${mod11Radix2(digits)}`;
}

/**
 * Reads a bag's short number as it is scanned or typed.
 *
 * Lower case, spaces, hyphens, apostrophes and points between the characters (keyboards confuse them), the missing B, an
 * 8 in its place before six digits, and the letters O, I and B for 0, 1 and 8 are forgiven. A wrong check character is not, nor is a
 * missing zero: with it a lost digit would pass for one.
 *
 * @returns the serial and the number as stored; null where it is no bag number or its check character is wrong. Never throws.
 * @example
 * readBagNumber("b001 234'4") // { serial: 1234, bagNumber: 'B0012344' }
 */
export function readBagNumber(text: string): BagNumber | null {
  if (text.length > LONGEST_TYPED) return null;
  const typed = text.toUpperCase().replace(/[\s\-'’.\u2010-\u2015]/g, '');
  // Without its B in front, a B further behind may have changed places with a digit: then it is no 8.
  const digits = typed.startsWith('B') ? asDigits(typed.slice(1)) : asDigits(typed.replaceAll('B', '?'));
  const asTyped = ofDigits(digits);
  return asTyped ?? (/^8\d{6}[\dX]$/.test(typed) ? ofDigits(typed.slice(1)) : null);
}

/** Six to nine digits and their check character. */
function ofDigits(typed: string): BagNumber | null {
  const digits = /^(\d{6,9})[\dX]$/.exec(typed)?.[1] ?? '0';
  const serial = Number(digits);
  if (serial === 0) return null;
  const bagNumber = makeBagNumber(serial);
  return `B${typed}` === bagNumber ? { serial, bagNumber } : null;
}

/**
 * A bag number in groups of four characters, as it is printed large and read aloud.
 *
 * @example
 * spacedBagNumber('B0012344') // 'B001 2344'
 */
export function spacedBagNumber(bagNumber: string): string {
  return bagNumber.replace(/(.{4})(?=.)/g, '$1 ');
}

/**
 * The check character of ISO/IEC 7064, MOD 11-2 for a run of digits: 0 to 9, or X for ten. Zeros in front do not change it.
 *
 * @throws RangeError where `digits` is empty or holds anything but digits.
 * @example
 * mod11Radix2('079') // 'X'
 */
export function mod11Radix2(digits: string): string {
  if (!/^\d+$/.test(digits)) throw new RangeError(`not digits: "${digits}"`);
  let product = 0;
  for (const digit of digits) product = ((product + Number(digit)) * 2) % 11;
  const check = (12 - product) % 11;
  return check === 10 ? 'X' : String(check);
}
