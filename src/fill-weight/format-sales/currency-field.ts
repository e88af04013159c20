import { TextField } from '../../platform/web/fields.js';

/** The code of a currency by ISO 4217: three letters, large or small. Which codes are in use changes, so any three are taken. */
const currencyPattern = /^[A-Za-z]{3}$/;

export function CurrencyField(says: string): PropertyDecorator {
  return TextField({ optional: true, most: 3, pattern: currencyPattern, form: 'currency', example: 'EUR', says });
}

/** As it is kept and shown; null: nobody said. */
export function currencyCode(entered: string | null | undefined): string | null {
  return entered?.toUpperCase() ?? null;
}
