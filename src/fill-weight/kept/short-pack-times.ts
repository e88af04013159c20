import type { Instant } from '../../platform/clock.js';
import { inChunks } from '../../platform/database/in-chunks.js';
import type { ReadFrom } from '../../platform/database/reading.js';

/** When packs beyond T2 were weighed and went on, of some runs. */
export async function shortPackTimes(from: ReadFrom, runIds: readonly string[]): Promise<readonly Instant[]> {
  const rows = await inChunks(
    runIds,
    (chunk) => from.sql<{ weighedAt: Instant }>`
      SELECT "weighed_at" AS "weighedAt" FROM "short_pack" WHERE "run_id" IN (${() => chunk}) ORDER BY "weighed_at"`,
  );
  return rows.map(({ weighedAt }) => weighedAt);
}
