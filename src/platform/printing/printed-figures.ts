import { formatKilograms } from '../../core/units/grams.js';
import { decimalText } from '../sentences/decimal-text.js';
import { languageNow, type Language } from '../sentences/language.js';
import { localText } from '../web/local-text.js';
import { inPaperLanguage } from './paper-language.js';

const months: Readonly<Record<Language, readonly string[]>> = {
  en: ['JAN', 'FEB', 'MAR', 'APR', 'MAY', 'JUN', 'JUL', 'AUG', 'SEP', 'OCT', 'NOV', 'DEC'],
  es: ['ENE', 'FEB', 'MAR', 'ABR', 'MAY', 'JUN', 'JUL', 'AGO', 'SEP', 'OCT', 'NOV', 'DIC'],
};

/** Grams as kilograms, exact, with one decimal at least and a narrow no-break space between thousands: `12 480.0`, `0.25`. */
export function kilograms(grams: number): string {
  return decimalText(formatKilograms(grams, { thousands: true, minimumDecimals: 1 })).replace(/ kg$/, '');
}

/** Grams of a computed mass, as kilograms to a tenth: more digits would promise what nobody weighed. */
export function roundKilograms(grams: number): string {
  return kilograms(Math.round(grams / 100) * 100);
}

/** A whole number with a narrow no-break space between thousands. */
export function thousands(count: number): string {
  return decimalText(String(count).replace(/\B(?=(\d{3})+$)/g, '\u202f'));
}

/** A day in words that no country reads another way: `12 SEP 2027`. */
export function printedDay(dayOn: string): string {
  const [year = '', month = '', day = ''] = dayOn.split('-');
  return `${Number(day)} ${months[languageNow()][Number(month) - 1] ?? '?'} ${year}`;
}

/** An instant by the plant's clock in the language of a paper, whoever has it printed: `Thu 12 Mar 2026, 08:41`. */
export function printedTime(at: string, timeZone: string, language: Language = 'en'): string {
  return inPaperLanguage(() => localText(at, timeZone), language);
}

/** An SSCC in groups that can be read out: `0952 01230 00000 0011`. */
export function printedSscc(sscc: string): string {
  return `${sscc.slice(0, 4)} ${sscc.slice(4, 9)} ${sscc.slice(9, 14)} ${sscc.slice(14)}`;
}
