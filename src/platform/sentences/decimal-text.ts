import { isOnPaper, languageNow, type Language } from './language.js';

const paperMarks: Readonly<Record<Language, string>> = { en: '.', es: ',' };

/**
 * A number, or a mass with its unit, as the conversation writes it. Screens show a point in every language, so that people at
 * one tablet read one number; a paper writes as those do who get it: `0.25 kg`, on a Spanish one `0,25 kg`. Between thousands
 * papers keep the space that they were first drawn with: the same facts give the same bytes.
 */
export function decimalText(decimal: string): string {
  if (!isOnPaper()) return decimal;
  return decimal.replace('.', paperMarks[languageNow()]).replaceAll('\u202f', '\u2009');
}
