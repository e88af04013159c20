import { formatKilograms } from '../../core/units/grams.js';
import { decimalText } from '../sentences/decimal-text.js';

/** Grams as kilograms with a narrow no-break space between thousands and without trailing zeros: `4 983`, `0.25`. */
export function kilogramsText(grams: number): string {
  const text = formatKilograms(grams, { thousands: true, minimumDecimals: 0 }).replace(/ kg$/, '');
  return decimalText(text).replace(/^-/, '\u2212');
}

/** Computed grams as whole kilograms: more digits would promise what nobody weighed. */
export function roundKilogramsText(grams: number): string {
  return countText(Math.round(grams / 1000));
}

/** A whole number with a narrow no-break space between thousands: `1 260`. */
export function countText(count: number): string {
  return String(count)
    .replace(/\B(?=(\d{3})+$)/g, '\u202f')
    .replace(/^-/, '\u2212');
}
