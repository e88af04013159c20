import { decimalText } from '../../platform/sentences/decimal-text.js';
import { countText } from '../../platform/web/figures-text.js';

/** A price as it was entered, with its currency where that is known: `0.62 EUR`. */
export function priceText(price: string, currency: string | null): string {
  return withCurrency(decimalText(price), currency);
}

/** An amount in whole units, with its currency where that is known: `1 095 EUR`. */
export function moneyText(amount: number, currency: string | null): string {
  return withCurrency(countText(Math.round(amount)), currency);
}

/** Figure and currency stay on one line. */
function withCurrency(figure: string, currency: string | null): string {
  return currency === null ? figure : `${figure}\u00a0${currency}`;
}
