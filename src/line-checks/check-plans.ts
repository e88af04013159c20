import type { Instant } from '../platform/clock.js';
import { toBoolean } from '../platform/database/stored-values.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { groupBy } from '../platform/group-by.js';
import { NotFound } from '../platform/refusal.js';
import type { CheckPlanRow } from './check-plan-rows.js';
import type { CheckEvent, TestPiece } from './check-words.js';

type StoredPlan = Omit<CheckPlanRow, 'events' | 'testPieces' | 'needsSecondPerson' | 'isInForce' | 'firstValidFrom'> & {
  readonly events: string;
  readonly testPieces: string;
  readonly needsSecondPerson: boolean | number;
  readonly isInForce: boolean | number;
};

const planSelect = `
  SELECT v."id", v."plan_id" AS "planId", v."site_id" AS "siteId", v."line_id" AS "lineId", l."code" AS "lineCode",
    l."name" AS "lineName", v."format_id" AS "formatId", f."name" AS "formatName", v."kind", v."station",
    v."every_minutes" AS "everyMinutes", v."grace_minutes" AS "graceMinutes", v."events",
    v."test_pieces" AS "testPieces", v."needs_second_person" AS "needsSecondPerson", v."is_in_force" AS "isInForce",
    v."valid_from" AS "validFrom"
  FROM "check_plan" v
  JOIN "packing_line" l ON l."id" = v."line_id"
  LEFT JOIN "pack_format" f ON f."id" = v."format_id"
  WHERE v."voided_by" IS NULL`;

/** The plans that are in force at a line at an instant, in the order in which they were set up. */
export async function plansOfLine(from: ReadFrom, lineId: string, at: Instant): Promise<readonly CheckPlanRow[]> {
  const stored = await from.sql<StoredPlan>`
    ${() => planSelect} AND v."line_id" = ${lineId} ORDER BY v."plan_id", v."valid_from", v."id"`;
  return versionsAt(stored, at).filter((plan) => plan.isInForce);
}

/** The plans that are in force at a site at an instant, line by line. */
export async function plansOfSite(from: ReadFrom, siteId: string, at: Instant): Promise<readonly CheckPlanRow[]> {
  const stored = await from.sql<StoredPlan>`
    ${() => planSelect} AND v."site_id" = ${siteId} ORDER BY l."code", v."plan_id", v."valid_from", v."id"`;
  return versionsAt(stored, at).filter((plan) => plan.isInForce);
}

/** All versions of a plan, the first one first. */
export async function versionsOfPlan(from: ReadFrom, planId: string): Promise<readonly CheckPlanRow[]> {
  const stored = await from.sql<StoredPlan>`
    ${() => planSelect} AND v."plan_id" = ${planId} ORDER BY v."valid_from", v."id"`;
  return versions(stored);
}

/**
 * What a plan says at an instant, in force or ended; before its first version what that one says.
 *
 * @throws {NotFound} `check-plan`, also for one of another site
 */
export async function planAt(from: ReadFrom, siteId: string, planId: string, at: Instant): Promise<CheckPlanRow> {
  const all = await versionsOfPlan(from, planId);
  const plan = all.filter((version) => version.validFrom <= at).at(-1) ?? all[0];
  if (plan?.siteId !== siteId) throw new NotFound('check-plan', planId);
  return plan;
}

function versionsAt(stored: readonly StoredPlan[], at: Instant): CheckPlanRow[] {
  return [...groupBy(versions(stored), (plan) => plan.planId).values()].flatMap(
    (all) => all.filter((version) => version.validFrom <= at).at(-1) ?? [],
  );
}

function versions(stored: readonly StoredPlan[]): CheckPlanRow[] {
  const first = new Map<string, Instant>();
  return stored.map((row) => {
    const firstValidFrom = first.get(row.planId) ?? row.validFrom;
    first.set(row.planId, firstValidFrom);
    return {
      ...row,
      events: JSON.parse(row.events) as CheckEvent[],
      testPieces: JSON.parse(row.testPieces) as TestPiece[],
      needsSecondPerson: toBoolean(row.needsSecondPerson),
      isInForce: toBoolean(row.isInForce),
      firstValidFrom,
    };
  });
}
