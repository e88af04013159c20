import type { SentenceFacts } from '../refusal.js';
import { languageNow, type Language } from '../sentences/language.js';
import { say } from '../sentences/sentences.js';

const formats = new Map<string, Intl.DateTimeFormat>();

const locales: Readonly<Record<Language, string>> = { en: 'en-GB', es: 'es-ES' };

/** An instant as people of the plant read it, such as `Thu 12 Mar 2026, 08:41`, in the reader's language. */
export function localText(at: string, timeZone: string): string {
  return formatted(at, timeZone, 'whole', {
    ...{ weekday: 'short', day: 'numeric', month: 'short', year: 'numeric' },
    ...{ hour: '2-digit', minute: '2-digit' },
  });
}

/** The plant's clock alone: `08:41`. For pages that are about one shift. */
export function clockText(at: string, timeZone: string): string {
  return formatted(at, timeZone, 'clock', { hour: '2-digit', minute: '2-digit' });
}

function formatted(at: string, timeZone: string, name: string, parts: Intl.DateTimeFormatOptions): string {
  const key = `${languageNow()} ${name} ${timeZone}`;
  let format = formats.get(key);
  if (format === undefined) {
    format = new Intl.DateTimeFormat(locales[languageNow()], { timeZone, hourCycle: 'h23', ...parts });
    formats.set(key, format);
  }
  return format.format(new Date(at));
}

const instant = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z$/;

/** A sentence for a page: instants among its facts as people of the plant read them. */
export function sayLocally(code: string, facts: SentenceFacts, timeZone: string): string {
  const local = Object.entries(facts).map(([name, fact]) => {
    return [name, typeof fact === 'string' && instant.test(fact) ? localText(fact, timeZone) : fact] as const;
  });
  return say(code, Object.fromEntries(local));
}
