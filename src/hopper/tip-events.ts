import { addEventSource, type EventSource } from '../fill-weight/run-weights/run-events.js';
import type { Instant } from '../platform/clock.js';
import { say } from '../platform/sentences/sentences.js';

/** Tips into the hopper that fed the run's line while it ran: the sugar of another bag may flow otherwise. */
const tipsOfRun: EventSource = async (from, { run, untilAt }) => {
  const rows = await from.sql<{ at: Instant; number: string | null }>`
    SELECT t."opened_at" AS "at", COALESCE(b."number", r."number") AS "number"
    FROM (
      SELECT "hopper_id", "valid_from" AS "from_at",
        LEAD("valid_from") OVER (ORDER BY "valid_from", "id") AS "until_at"
      FROM "hopper_line" WHERE "line_id" = ${run.lineId} AND "voided_by" IS NULL
    ) l
    JOIN "hopper_period" p ON p."hopper_id" = l."hopper_id" AND p."voided_by" IS NULL
    JOIN "tip" t ON t."period_id" = p."id" AND t."voided_by" IS NULL
    LEFT JOIN "bulk_bag" b ON b."id" = t."bag_id"
    LEFT JOIN "rework_bin" r ON r."id" = t."bin_id"
    WHERE t."site_id" = ${run.siteId} AND t."opened_at" >= ${run.startedAt} AND t."opened_at" <= ${untilAt}
      AND t."opened_at" >= l."from_at" AND (l."until_at" IS NULL OR t."opened_at" < l."until_at")
    ORDER BY t."opened_at", t."id" LIMIT 200`;
  return rows.map(({ at, number }) => ({ at, text: say('run-weights-tip', { number }) }));
};

addEventSource(tipsOfRun);
