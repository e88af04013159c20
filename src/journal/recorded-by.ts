import type { ReadFrom } from '../platform/database/reading.js';
import type { Subject } from './entry-draft.js';

/** Who made the first entry of the journal about a thing, by id; null where the house itself or a device did. */
export async function recordedBy(from: ReadFrom, { kind, id }: Subject): Promise<string | null> {
  const [entry] = await from.sql<{ personId: string | null }>`
    SELECT e."person_id" AS "personId" FROM "journal_subject" s
    JOIN "journal_entry" e ON e."site_id" = s."site_id" AND e."sequence" = s."sequence"
    WHERE s."kind" = ${kind} AND s."id" = ${id} ORDER BY s."sequence" LIMIT 1`;
  return entry?.personId ?? null;
}
