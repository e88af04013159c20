import type { Instant } from '../platform/clock.js';
import { inChunks } from '../platform/database/in-chunks.js';
import { onlyRow, type ReadFrom } from '../platform/database/reading.js';
import { NotFound } from '../platform/refusal.js';

/** A hopper period with what it began and ended with. */
export interface PeriodRow {
  readonly id: string;
  readonly siteId: string;
  readonly hopperId: string;
  readonly number: number;
  readonly startedAt: Instant;
  /** When it was proven empty; null: it goes on. */
  readonly endedAt: Instant | null;
  /** Whose residue it began with; null: the first, or the thread was cut. */
  readonly previousPeriodId: string | null;
  readonly residueLowerGrams: number;
  /** As it was stated at the proven empty before. */
  readonly residueGrams: number;
  readonly residueUpperGrams: number;
  /** What was left inside at the end; null: it goes on. */
  readonly endResidueGrams: number | null;
  readonly endResidueUpperGrams: number | null;
}

const periodSelect = (): string => `
  SELECT p."id", h."site_id" AS "siteId", p."hopper_id" AS "hopperId", p."number", p."started_at" AS "startedAt",
    e."proven_at" AS "endedAt", p."previous_period_id" AS "previousPeriodId",
    p."residue_lower_grams" AS "residueLowerGrams", COALESCE(b."residue_grams", 0) AS "residueGrams",
    p."residue_upper_grams" AS "residueUpperGrams", e."residue_grams" AS "endResidueGrams",
    e."residue_upper_grams" AS "endResidueUpperGrams"
  FROM "hopper_period" p
  JOIN "hopper" h ON h."id" = p."hopper_id"
  LEFT JOIN "proven_empty" e ON e."period_id" = p."id" AND e."voided_by" IS NULL
  LEFT JOIN "proven_empty" b ON b."period_id" = p."previous_period_id" AND b."voided_by" IS NULL`;

/** @throws {NotFound} `hopper-period` */
export async function periodOf(from: ReadFrom, periodId: string): Promise<PeriodRow> {
  const rows = await from.sql<PeriodRow>`${periodSelect} WHERE p."id" = ${periodId} AND p."voided_by" IS NULL`;
  const row = onlyRow(rows);
  if (row === null) throw new NotFound('hopper-period', periodId);
  return row;
}

/** The period that a hopper is in; null before anything was recorded of it. */
export async function currentPeriod(from: ReadFrom, hopperId: string): Promise<PeriodRow | null> {
  return onlyRow(
    await from.sql<PeriodRow>`
      ${periodSelect} WHERE p."hopper_id" = ${hopperId} AND p."voided_by" IS NULL ORDER BY p."number" DESC LIMIT 1`,
  );
}

/** The period that a hopper was in at an instant; at the very instant of a proven empty it is the new one. */
export async function periodAt(from: ReadFrom, hopperId: string, at: Instant): Promise<PeriodRow | null> {
  return onlyRow(
    await from.sql<PeriodRow>`
      ${periodSelect} WHERE p."hopper_id" = ${hopperId} AND p."started_at" <= ${at} AND p."voided_by" IS NULL
      ORDER BY p."started_at" DESC, p."number" DESC LIMIT 1`,
  );
}

/** Periods of a hopper, the newest first, those before a number. */
export async function periodsOfHopper(
  from: ReadFrom,
  hopperId: string,
  page: { readonly beforeNumber?: number | null; readonly limit: number },
): Promise<PeriodRow[]> {
  return from.sql<PeriodRow>`
    ${periodSelect} WHERE p."hopper_id" = ${hopperId} AND p."voided_by" IS NULL
      AND p."number" < ${page.beforeNumber ?? 2_000_000_000}
    ORDER BY p."number" DESC LIMIT ${page.limit}`;
}

/** The periods that began with the residue of this one: one, or none. */
export async function periodsAfter(from: ReadFrom, periodId: string): Promise<PeriodRow[]> {
  return from.sql<PeriodRow>`
    ${periodSelect} WHERE p."previous_period_id" = ${periodId} AND p."voided_by" IS NULL`;
}

/** The periods in which a bag was tipped, or may have been (one of several candidates). */
export function periodsOfBag(from: ReadFrom, bagId: string): Promise<string[]> {
  return periodsOfBags(from, [bagId]);
}

/** The same for several bags, each period once. */
export async function periodsOfBags(from: ReadFrom, bagIds: readonly string[]): Promise<string[]> {
  const rows = await inChunks(
    bagIds,
    (chunk) => from.sql<{ periodId: string }>`
      SELECT t."period_id" AS "periodId" FROM "tip" t WHERE t."bag_id" IN (${() => chunk}) AND t."voided_by" IS NULL
      UNION
      SELECT t."period_id" FROM "tip_candidate" c JOIN "tip" t ON t."id" = c."tip_id"
      WHERE c."bag_id" IN (${() => chunk}) AND c."voided_by" IS NULL AND t."voided_by" IS NULL`,
  );
  return [...new Set(rows.map(({ periodId }) => periodId))].sort();
}

/**
 * The hopper periods that runs may have drawn from, while their lines were linked. The periods of a hopper follow each
 * other, so they are looked for from the last one on that began before the run.
 */
export async function periodsOfRuns(
  from: ReadFrom,
  runIds: readonly string[],
): Promise<{ readonly runId: string; readonly periodId: string }[]> {
  if (runIds.length === 0) return [];
  return from.sql<{ runId: string; periodId: string }>`
    SELECT DISTINCT r."id" AS "runId", p."id" AS "periodId", p."hopper_id", p."number"
    FROM "packing_run" r
    JOIN "hopper_line" l ON l."line_id" = r."line_id" AND l."voided_by" IS NULL
    JOIN "hopper_period" p ON p."hopper_id" = l."hopper_id" AND p."voided_by" IS NULL
    LEFT JOIN "proven_empty" e ON e."period_id" = p."id" AND e."voided_by" IS NULL
    WHERE r."id" IN (${() => [...runIds]}) AND r."voided_by" IS NULL
      AND p."started_at" <= COALESCE((
        SELECT c."closed_at" FROM "packing_run_close" c WHERE c."run_id" = r."id" AND c."voided_by" IS NULL), '~')
      AND p."started_at" >= COALESCE((
        SELECT q."started_at" FROM "hopper_period" q
        WHERE q."hopper_id" = l."hopper_id" AND q."voided_by" IS NULL AND q."started_at" < r."started_at"
        ORDER BY q."started_at" DESC LIMIT 1), '')
      AND (e."proven_at" IS NULL OR e."proven_at" >= r."started_at")
    ORDER BY p."hopper_id", p."number", r."id"`;
}
