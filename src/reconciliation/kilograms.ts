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

/**
 * A standard uncertainty: two digits that count and no more, since it is itself known no better (JCGM 100:2008, 7.2.6):
 * 240 838 g is `240 kg`, 612 g is `0.61 kg`.
 */
export function uncertainKilograms(grams: number): string {
  const step = 10 ** Math.max(0, Math.floor(Math.log10(Math.max(1, grams))) - 1);
  return decimalText(formatKilograms(Math.round(grams / step) * step, { thousands: true, minimumDecimals: 0 }));
}

/** A limit, to a tenth of a kilogram. */
export function tenthsOfKilograms(grams: number): string {
  return decimalText(formatKilograms(Math.round(grams / 100) * 100, { thousands: true, minimumDecimals: 1 }));
}

/** A share with two decimals of the four that it is kept with. */
export function shortPercent(percent: string): string {
  return decimalText(withMinus(Number(percent).toFixed(2)));
}

/** A number with a minus that is as wide as a plus. */
export function withMinus(text: string): string {
  return text.replace(/^-/, '\u2212');
}
