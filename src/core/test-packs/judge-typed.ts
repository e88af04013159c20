import { readDecimal, toScaledInteger } from '../units/decimals.js';
import { judgeReading, type ReadingMistake, type TestPack } from './judge-reading.js';

/** What a field for the reading of a test pack comes to, as it was typed. */
export type TypedReading =
  | { readonly found: 'missing' }
  | { readonly found: 'not-meant'; readonly why: ReadingMistake | 'no-number' | 'both' }
  | { readonly found: 'failed'; readonly why: 'none' }
  | { readonly found: 'passed' | 'failed'; readonly why: 'reading'; readonly offMilligrams: number };

/** Kilograms where grams are expected have more digits than grams would. */
const decimalPlaces = 6;

/**
 * Judges a reading as a person or a scale typed it, in grams with comma or point, rounded to the milligram; spaces are
 * taken for those between thousands. More than six digits behind the point are no reading.
 *
 * @param showsNothing the weigher shows no weight for the pack: a failed check without a reading
 * @returns `missing` where nothing was typed; `not-meant` where it is no number, cannot be the pack's reading, or stands
 * beside *shows nothing*. Never throws.
 * @example
 * judgeTyped({ knownMilligrams: 2_000_000, allowedMilligrams: 2000 }, '2 002,4', false)
 * // { found: 'failed', why: 'reading', offMilligrams: 2400 }
 */
export function judgeTyped(pack: TestPack, typed: string, showsNothing: boolean): TypedReading {
  const text = typed.replaceAll(/\s/g, '');
  if (showsNothing) return text === '' ? { found: 'failed', why: 'none' } : { found: 'not-meant', why: 'both' };
  if (text === '') return { found: 'missing' };
  const measuredMilligrams = milligramsOf(text);
  if (measuredMilligrams === null) return { found: 'not-meant', why: 'no-number' };
  const { passed, mistake, offMilligrams } = judgeReading(pack, measuredMilligrams);
  if (mistake !== null) return { found: 'not-meant', why: mistake };
  return { found: passed ? 'passed' : 'failed', why: 'reading', offMilligrams };
}

/**
 * What a check comes to by its readings: failed where one failed, passed where all did; null while one is missing or
 * cannot be meant, and where there is none.
 *
 * @example
 * verdictOf([{ found: 'passed', why: 'reading', offMilligrams: 0 }, { found: 'missing' }]) // null
 */
export function verdictOf(readings: readonly TypedReading[]): 'passed' | 'failed' | null {
  const isWhole = readings.every(({ found }) => found === 'passed' || found === 'failed');
  if (readings.length === 0 || !isWhole) return null;
  return readings.some(({ found }) => found === 'failed') ? 'failed' : 'passed';
}

function milligramsOf(text: string): number | null {
  const reading = readDecimal(text);
  if (!reading.ok) return null;
  try {
    return Math.round(toScaledInteger(reading.decimal, decimalPlaces) / 1000);
  } catch {
    return null;
  }
}
