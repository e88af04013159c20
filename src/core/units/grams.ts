import { fromScaledInteger, readDecimal, toScaledInteger, withDecimalPlaces, type DecimalProblem } from './decimals.js';

/** Why a typed mass was not taken. */
export type MassProblem = DecimalProblem | 'negative' | 'finer-than-a-gram' | 'too-large' | 'wrong-grouping';

/** A typed mass: whole grams, or why it was not taken. */
export type MassReading =
  { readonly ok: true; readonly grams: number } | { readonly ok: false; readonly problem: MassProblem };

/** 1 000 000 t: no plant's season comes near it, and any sum of such masses stays exact below 2^53. */
const MOST_GRAMS = 1_000_000_000_000;

const NARROW_NO_BREAK_SPACE = '\u202f';

/**
 * Reads a mass in kilograms as a person types or a scale prints it, into whole grams, exactly: "996,5" and "996.5 kg" are 996 500 g.
 *
 * **A single comma or point is always the decimal separator**: "1.234" is 1 kg and 234 g, never 1 234 kg. Two separators ("1.234,5")
 * are refused, because one of them would have to be guessed. Thousands may be set apart by spaces in groups of three ("1 034,5"); other
 * groupings are refused. "kg" behind the number is allowed. Zero is a mass; a minus is not.
 *
 * @returns whole grams from 0 to 10^12 inclusive, or the problem. Digits beyond the gram are refused unless they are zeros. Never throws.
 * @example
 * readKilograms('996,5') // { ok: true, grams: 996500 }
 */
export function readKilograms(text: string): MassReading {
  const typed = text.trim().replace(/\s*kg$/i, '');
  const number = /\d\s+\d/.test(typed) ? ungrouped(typed) : typed;
  if (number === null) return { ok: false, problem: 'wrong-grouping' };
  const reading = readDecimal(number);
  if (!reading.ok) return reading;
  if (reading.decimal.startsWith('-')) return { ok: false, problem: 'negative' };
  if (/\.\d{4}/.test(reading.decimal)) return { ok: false, problem: 'finer-than-a-gram' };
  if (reading.decimal.replace(/\..*/, '').length > 10) return { ok: false, problem: 'too-large' };
  const grams = toScaledInteger(reading.decimal, 3);
  return grams > MOST_GRAMS ? { ok: false, problem: 'too-large' } : { ok: true, grams };
}

/**
 * Whole grams as the canonical decimal text of kilograms, without a unit: for forms, files and messages.
 *
 * @throws RangeError where `grams` is not a safe whole number. Differences may be negative.
 * @example
 * kilogramsText(996500) // '996.5'
 */
export function kilogramsText(grams: number): string {
  return fromScaledInteger(grams, 3);
}

/** How a mass is shown; what is left out is off. */
export interface KilogramsFormat {
  /** Narrow no-break spaces between groups of three digits in front of the point. */
  readonly thousands?: boolean;
  /** At least this many decimals, 0 to 3, so that a column lines up. */
  readonly minimumDecimals?: number;
}

/**
 * Whole grams as people read them, with the unit: the shortest exact number of kilograms, never rounded.
 *
 * @throws RangeError where `grams` is not a safe whole number or `minimumDecimals` is out of range.
 * @example
 * formatKilograms(996500) // '996.5 kg'
 * formatKilograms(1034500, { thousands: true, minimumDecimals: 3 }) // '1\u202f034.500 kg'
 */
export function formatKilograms(grams: number, format: KilogramsFormat = {}): string {
  const text = withDecimalPlaces(kilogramsText(grams), format.minimumDecimals ?? 0);
  return `${format.thousands === true ? grouped(text) : text} kg`;
}

function grouped(text: string): string {
  const [whole = '', fraction] = text.split('.');
  const front = whole.replace(/\B(?=(?:\d{3})+$)/g, NARROW_NO_BREAK_SPACE);
  return fraction === undefined ? front : `${front}.${fraction}`;
}

function ungrouped(text: string): string | null {
  return /^[+-]?\d{1,3}(?:\s\d{3})+(?:[.,]\d*)?$/.test(text) ? text.replace(/\s/g, '') : null;
}
