import { kilogramsText } from '../core/units/grams.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { figuresOfText } from './frozen-figures.js';
import { figuresOfRecall } from './recall-figures.js';
import { linksOfRecall, type RecallLink } from './recall-links.js';
import { signingOf, type RecallRow } from './recalls.js';

const head = ['parent', 'child', 'least_kg', 'likely_kg', 'most_kg', 'word', 'time_utc', 'record'];

/**
 * The links of a recall as comma-separated values (RFC 4180: a head, CRLF, quotes doubled), one line a link, times in UTC.
 * A text that a spreadsheet would take for a formula begins with an apostrophe.
 */
export function csvOfLinks(links: readonly RecallLink[]): string {
  const rows = links.map(({ parent, child, leastGrams, likelyGrams, mostGrams, word, at, record }) => [
    ...[parent, child, kilogramsText(leastGrams), kilogramsText(likelyGrams), kilogramsText(mostGrams)],
    ...[word, at ?? '', record],
  ]);
  return [head, ...rows].map((row) => `${row.map(cell).join(',')}\r\n`).join('');
}

/** As signed; as the records stand while it is open. */
export async function linksCsv(from: ReadFrom, recall: RecallRow): Promise<string> {
  const signing = await signingOf(from, recall.id);
  if (signing !== null) return csvOfLinks(figuresOfText(signing.figures).links);
  return csvOfLinks(await linksOfRecall(from, await figuresOfRecall(from, recall)));
}

function cell(text: string): string {
  const safe = /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
