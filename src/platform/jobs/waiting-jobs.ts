import type { ReadFrom } from '../database/reading.js';

/** What the jobs of a kind that are still to be done are about, in the order in which they were left. */
export async function waitingJobs(from: ReadFrom, kind: string): Promise<readonly string[]> {
  const rows = await from.sql<{ payload: string }>`
    SELECT "payload" FROM "outbox_job" WHERE "finished_at" IS NULL AND "kind" = ${kind} ORDER BY "id"`;
  return rows.map(({ payload }) => payload);
}
