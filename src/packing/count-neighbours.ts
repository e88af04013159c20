import type { Instant } from '../platform/clock.js';
import { toWhole } from '../platform/database/stored-values.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { Refusal } from '../platform/refusal.js';

/** The counts around an instant: everything that was counted before it, and after it. Null: nothing was. */
interface CountNeighbours {
  readonly earlierCount: number | null;
  readonly laterCount: number | null;
}

/**
 * Counts only grow, so a count must lie between those before and after it in time; the positions of coder and film
 * changes are counts too. Two at the very same instant (clocks that show minutes) say nothing about each other.
 *
 * @throws {Refusal} `count-goes-back`
 */
export async function refuseCountThatDoesNotFit(
  from: ReadFrom,
  count: { readonly runId: string; readonly packCount: number; readonly at: Instant },
): Promise<void> {
  const { earlierCount, laterCount } = await neighboursOf(from, count.runId, count.at);
  const isBelow = earlierCount !== null && count.packCount < earlierCount;
  const isAbove = laterCount !== null && count.packCount > laterCount;
  if (!isBelow && !isAbove) return;
  throw new Refusal('count-goes-back', { packCount: count.packCount, at: count.at, earlierCount, laterCount });
}

async function neighboursOf(from: ReadFrom, runId: string, at: Instant): Promise<CountNeighbours> {
  const [row] = await from.sql<{ earlierCount: number | null; laterCount: number | null }>`
    SELECT MAX(CASE WHEN p."at" < ${at} THEN p."position" END) AS "earlierCount",
      MIN(CASE WHEN p."at" > ${at} THEN p."position" END) AS "laterCount"
    FROM (
      SELECT * FROM (SELECT "counted_at" AS "at", "pack_count" AS "position" FROM "pack_count"
        WHERE "run_id" = ${runId} AND "counted_at" < ${at} AND "voided_by" IS NULL
        ORDER BY "counted_at" DESC, "pack_count" DESC LIMIT 1) before_it
      UNION ALL
      SELECT * FROM (SELECT "counted_at" AS "at", "pack_count" AS "position" FROM "pack_count"
        WHERE "run_id" = ${runId} AND "counted_at" > ${at} AND "voided_by" IS NULL
        ORDER BY "counted_at", "pack_count" LIMIT 1) after_it
      UNION ALL SELECT "changed_at", "first_pack" FROM "coder_change" WHERE "run_id" = ${runId} AND "voided_by" IS NULL
      UNION ALL SELECT "fitted_at", "first_pack" FROM "film_use" WHERE "run_id" = ${runId} AND "voided_by" IS NULL
    ) p`;
  const count = (stored: number | null | undefined): number | null => (stored == null ? null : toWhole(stored));
  return { earlierCount: count(row?.earlierCount), laterCount: count(row?.laterCount) };
}
