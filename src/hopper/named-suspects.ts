import type { Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { HopperLevel } from './hopper-level.js';

/** A tip that a suspect names: which bag it is of, into which hopper by the records, and when. */
export interface SuspectTip {
  readonly tipId: string;
  /** Null: of a bin, or of a bag that nobody could read. */
  readonly bagNumber: string | null;
  readonly binNumber: string | null;
  readonly hopperCode: string;
  readonly openedAt: Instant;
}

/** The tips that suspects name. What they name else (a level, an empty) is no tip. */
export async function suspectTips(
  from: ReadFrom,
  { suspects }: Pick<HopperLevel, 'suspects'>,
): Promise<readonly SuspectTip[]> {
  const ids = suspects.flatMap(({ id }) => id ?? []);
  if (ids.length === 0) return [];
  return from.sql<SuspectTip>`
    SELECT t."id" AS "tipId", b."number" AS "bagNumber", r."number" AS "binNumber", h."code" AS "hopperCode",
      t."opened_at" AS "openedAt"
    FROM "tip" t
    JOIN "hopper_period" p ON p."id" = t."period_id"
    JOIN "hopper" h ON h."id" = p."hopper_id"
    LEFT JOIN "bulk_bag" b ON b."id" = t."bag_id"
    LEFT JOIN "rework_bin" r ON r."id" = t."bin_id"
    WHERE t."id" IN (${() => ids})`;
}
