import type { Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';

/** So many of the latest results are looked at. Our own choice. */
const latestResults = 500;

/** The results of a property by a method that were analysed within a time, of bags and dryer runs of one grade. */
export async function resultsOfGrade(
  from: ReadFrom,
  siteId: string,
  asked: {
    readonly gradeId: string;
    readonly property: string;
    readonly method: string;
    readonly fromAt: Instant;
    readonly untilAt: Instant;
  },
): Promise<readonly number[]> {
  const { gradeId, property, method, fromAt, untilAt } = asked;
  const rows = await from.sql<{ amount: string }>`
    SELECT r."amount" FROM "result" r JOIN "sample" s ON s."id" = r."sample_id"
    LEFT JOIN "bulk_bag" b ON b."id" = s."bag_id"
    WHERE s."site_id" = ${siteId} AND r."property" = ${property} AND r."method" = ${method}
      AND r."analysed_at" >= ${fromAt} AND r."analysed_at" <= ${untilAt}
      AND r."voided_by" IS NULL AND s."voided_by" IS NULL
      AND (b."intended_grade_id" = ${gradeId} OR EXISTS (
        SELECT 1 FROM "dryer_run" d
        LEFT JOIN "dryer_run_end" e ON e."dryer_run_id" = d."id" AND e."voided_by" IS NULL
        WHERE d."dryer_id" = s."dryer_id" AND d."grade_id" = ${gradeId} AND d."voided_by" IS NULL
          AND d."started_at" < s."until_at" AND (e."ended_at" IS NULL OR e."ended_at" > s."from_at")))
    ORDER BY r."id" DESC LIMIT ${latestResults}`;
  return rows.map(({ amount }) => Number(amount));
}
