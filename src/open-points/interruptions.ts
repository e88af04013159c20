import { shifted, type Instant } from '../platform/clock.js';
import { toWhole } from '../platform/database/stored-values.js';
import type { ReadFrom } from '../platform/database/reading.js';

/** At most so many an hour: one in ten minutes (notes of practice; from surveys of control rooms). */
export const mostAnHour = 6;

/** How often one person was interrupted in one hour. */
export interface InterruptedHour {
  readonly personId: string;
  readonly hourStartsAt: Instant;
  readonly shownCount: number;
  readonly repeatCount: number;
}

/** How often one cause interrupted anybody. */
export interface InterruptingCause {
  readonly cause: string;
  readonly shownCount: number;
  readonly repeatCount: number;
}

/** The hours since an instant in which people were interrupted, the latest first; at most 200. */
export async function interruptedHours(from: ReadFrom, siteId: string, since: Instant): Promise<InterruptedHour[]> {
  const rows = await from.sql<InterruptedHour>`
    SELECT "person_id" AS "personId", "hour_starts_at" AS "hourStartsAt", SUM("shown_count") AS "shownCount",
      SUM("repeat_count") AS "repeatCount"
    FROM "interruption_count" WHERE "site_id" = ${siteId} AND "hour_starts_at" >= ${since}
    GROUP BY "person_id", "hour_starts_at" ORDER BY "hour_starts_at" DESC, "person_id" LIMIT 200`;
  return rows.map(wholeCounts);
}

/** What interrupted most since an instant: the ten causes to look at. */
export async function topCauses(from: ReadFrom, siteId: string, since: Instant): Promise<InterruptingCause[]> {
  const rows = await from.sql<InterruptingCause>`
    SELECT "cause", SUM("shown_count") AS "shownCount", SUM("repeat_count") AS "repeatCount"
    FROM "interruption_count" WHERE "site_id" = ${siteId} AND "hour_starts_at" >= ${since}
    GROUP BY "cause" ORDER BY SUM("shown_count") DESC, "cause" LIMIT 10`;
  return rows.map(wholeCounts);
}

/** So many days back. */
export function daysBack(now: Instant, days: number): Instant {
  return shifted(now, -days * 86_400_000);
}

function wholeCounts<Row extends { readonly shownCount: number; readonly repeatCount: number }>(row: Row): Row {
  return { ...row, shownCount: toWhole(row.shownCount), repeatCount: toWhole(row.repeatCount) };
}
