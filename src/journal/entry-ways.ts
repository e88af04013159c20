import { inChunks } from '../platform/database/in-chunks.js';
import type { ReadFrom } from '../platform/database/reading.js';

/** How entries came that were not made at the server when it happened, by their ids; the others are left out. */
export async function waysOfEntries(
  from: ReadFrom,
  entryIds: readonly string[],
): Promise<ReadonlyMap<string, 'queued' | 'paper'>> {
  const rows = await inChunks(
    entryIds,
    (chunk) => from.sql<{ entryId: string; how: 'queued' | 'paper' }>`
      SELECT "entry_id" AS "entryId", "how" FROM "entry_happening"
      WHERE "entry_id" IN (${() => chunk}) AND "voided_by" IS NULL`,
  );
  return new Map(rows.map(({ entryId, how }) => [entryId, how]));
}
