import { journalPage } from '../../src/journal/journal-entries.js';
import { readerOf } from './a-bag.js';
import type { TestHouse } from './house.js';

/** The newest entry of a person in the journal: what was done, and what is so since. */
export async function writtenLast(
  house: TestHouse,
  person: { readonly siteId: string; readonly personId: string },
): Promise<{ readonly action: string; readonly subjectId: string; readonly after: Record<string, unknown> }> {
  const entries = await journalPage(readerOf(house), person.siteId, { before: null, limit: 50 });
  const entry = entries.find(({ personId }) => personId === person.personId);
  if (entry === undefined) throw new Error('the person has written nothing');
  const after = JSON.parse(entry.after ?? '{}') as Record<string, unknown>;
  return { action: entry.action, subjectId: entry.subjectId, after };
}
