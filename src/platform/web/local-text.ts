import type { SentenceFacts } from '../refusal.js';
import { say } from '../sentences/sentences.js';

const formats = new Map<string, Intl.DateTimeFormat>();

/** An instant as people of the plant read it, such as `Thu 12 Mar 2026, 08:41`. */
export function localText(at: string, timeZone: string): string {
  let format = formats.get(timeZone);
  if (format === undefined) {
    format = new Intl.DateTimeFormat('en-GB', {
      timeZone,
      weekday: 'short',
      day: 'numeric',
      month: 'short',
      year: 'numeric',
      hour: '2-digit',
      minute: '2-digit',
      hourCycle: 'h23',
    });
    formats.set(timeZone, format);
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
