import { decimalText } from '../platform/sentences/decimal-text.js';
import { countText } from '../platform/web/figures-text.js';

/** Milligrams as grams with so many decimal places: `1 003.5`. */
export function gramsText(milligrams: number, places = 1): string {
  const [whole = '', fraction] = Math.abs(milligrams / 1000)
    .toFixed(places)
    .split('.');
  const text = decimalText(countText(Number(whole)) + (fraction === undefined ? '' : `.${fraction}`));
  // Rounded to nothing is not below nothing.
  return milligrams < 0 && /[1-9]/.test(text) ? `\u2212${text}` : text;
}
