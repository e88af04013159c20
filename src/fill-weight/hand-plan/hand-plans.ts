import type { Instant } from '../../platform/clock.js';
import { toBoolean } from '../../platform/database/stored-values.js';
import type { ReadFrom } from '../../platform/database/reading.js';

/** How often packs of a line are weighed by hand. */
export interface HandPlanRow {
  readonly id: string;
  readonly siteId: string;
  readonly lineId: string;
  readonly lineCode: string;
  readonly lineName: string;
  /** Null: every format that has no plan of its own. */
  readonly formatId: string | null;
  readonly formatName: string | null;
  readonly everyMinutes: number;
  readonly packCount: number;
  readonly graceMinutes: number;
  readonly isInForce: boolean;
  readonly setAt: Instant;
}

/** The plans of hand samples that are in force at a site, by line. */
export async function handPlansOf(from: ReadFrom, siteId: string): Promise<readonly HandPlanRow[]> {
  return (await latestPlans(from, siteId)).filter((plan) => plan.isInForce);
}

/** The plan that holds for a format on a line: its own, else that of all formats; null: none. */
export async function handPlanFor(
  from: ReadFrom,
  run: { readonly siteId: string; readonly lineId: string; readonly formatId: string },
): Promise<HandPlanRow | null> {
  const plans = (await handPlansOf(from, run.siteId)).filter(({ lineId }) => lineId === run.lineId);
  const own = plans.find(({ formatId }) => formatId === run.formatId);
  return own ?? plans.find(({ formatId }) => formatId === null) ?? null;
}

/** The last version of each line and format, in force or ended. */
async function latestPlans(from: ReadFrom, siteId: string): Promise<readonly HandPlanRow[]> {
  const rows = await from.sql<HandPlanRow>`
    SELECT p."id", p."site_id" AS "siteId", p."line_id" AS "lineId", l."code" AS "lineCode", l."name" AS "lineName",
      p."format_id" AS "formatId", f."name" AS "formatName", p."every_minutes" AS "everyMinutes",
      p."pack_count" AS "packCount", p."grace_minutes" AS "graceMinutes", p."is_in_force" AS "isInForce",
      p."set_at" AS "setAt"
    FROM "hand_sample_plan" p
    JOIN "packing_line" l ON l."id" = p."line_id"
    LEFT JOIN "pack_format" f ON f."id" = p."format_id"
    WHERE p."site_id" = ${siteId} AND p."voided_by" IS NULL
    ORDER BY l."code", p."line_id", f."name", p."set_at", p."id"`;
  const latest = new Map(rows.map((row) => [`${row.lineId} ${row.formatId ?? ''}`, row]));
  return [...latest.values()].map((row) => ({ ...row, isInForce: toBoolean(row.isInForce) }));
}
