import { asDigits } from './look-alike.js';

/** What the number of a paper is made of. */
export interface DocumentNumber {
  /** One to four capital letters that say what paper it is. */
  readonly prefix: string;
  /** The calendar year in which it was given, four digits. */
  readonly year: number;
  /** The running number within the year, from 1. */
  readonly serial: number;
}

/** Six digits, so that numbers sort as text. */
const SERIAL_DIGITS = 6;
const LAST_SERIAL = 999_999;

/**
 * The number of a paper such as a delivery note: prefix, year and a running number that no year repeats and none leaves out.
 *
 * @throws RangeError where the prefix is not one to four capital letters, the year not 1000 to 9999, or the serial not 1 to 999 999.
 * @example
 * makeDocumentNumber({ prefix: 'DN', year: 2026, serial: 123 }) // 'DN-2026-000123'
 */
export function makeDocumentNumber({ prefix, year, serial }: DocumentNumber): string {
  if (!/^[A-Z]{1,4}$/.test(prefix)) throw new RangeError(`prefix not one to four capital letters: "${prefix}"`);
  if (!Number.isInteger(year) || year < 1000 || year > 9999) throw new RangeError(`year not of four digits: ${year}`);
  if (!Number.isInteger(serial) || serial < 1 || serial > LAST_SERIAL) {
    throw new RangeError(`serial not from 1 to ${LAST_SERIAL}: ${serial}`);
  }
  return `${prefix}-${year}-${String(serial).padStart(SERIAL_DIGITS, '0')}`;
}

/**
 * Reads the number of a paper as typed or scanned. Lower case, lost or changed separators (`DN2026000123`, `dn 2026 123`), and O, I
 * and B for 0, 1 and 8 behind the prefix are forgiven; zeros in front of the serial may be missing only where a separator shows where it begins.
 *
 * @param prefix what the number must begin with; capital letters.
 * @returns its parts, or null where it is not such a number. Never throws.
 * @example
 * readDocumentNumber('dn 2026 123', 'DN') // { prefix: 'DN', year: 2026, serial: 123 }
 */
export function readDocumentNumber(text: string, prefix: string): DocumentNumber | null {
  const typed = text.trim().toUpperCase();
  if (!typed.startsWith(prefix)) return null;
  const parts = /^[^A-Z\d]?([1-9]\d{3})(?:[^A-Z\d](\d{1,6})|(\d{6}))$/.exec(asDigits(typed.slice(prefix.length)));
  const serial = Number(parts?.[2] ?? parts?.[3] ?? 0);
  return parts === null || serial === 0 ? null : { prefix, year: Number(parts[1]), serial };
}
