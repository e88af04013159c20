import { formatKilograms } from '../core/units/grams.js';
import { decimalText } from '../platform/sentences/decimal-text.js';

/** Grams as the account shows them: kilograms to the gram, so that a column adds up by hand. */
export function kilograms(grams: number): string {
  return decimalText(formatKilograms(grams, { thousands: true, minimumDecimals: 3 }));
}

/** A difference with its sign; a dash where there is none. */
export function signedKilograms(grams: number | null): string {
  if (grams === null) return '–';
  return grams > 0 ? `+${kilograms(grams)}` : withMinus(kilograms(grams));
}

/** A number with a minus that is as wide as a plus. */
export function withMinus(text: string): string {
  return text.replace(/^-/, '\u2212');
}
