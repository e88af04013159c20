import type { LocatedShift } from '../../core/shift-calendar/locate-shift.js';
import { toWhole } from '../../platform/database/stored-values.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { NotFound } from '../../platform/refusal.js';
import type { Language } from '../../platform/sentences/language.js';
import { bagTypesOf, type BagTypeRow } from '../../plant/bag-types.js';
import { dryerOf, shiftAt, siteOf } from '../../plant/plant-facts.js';
import type { NamedRow, ScaleStanding } from '../../plant/plant-rows.js';
import { scalesAt } from '../../plant/whole-plant.js';

/** The run that a dryer is in. */
export interface RunInHand {
  readonly id: string;
  readonly number: string;
  readonly gradeId: string;
  readonly gradeName: string;
  readonly startedAt: string;
}

/** A bag that hangs under the filler and is not closed. */
export interface HangingBag {
  readonly id: string;
  readonly number: string;
  readonly runNumber: string;
  readonly fillStartedAt: string;
  readonly safeLoadGrams: number;
  readonly bagTypeId: string | null;
  readonly bagTypeName: string | null;
  readonly usualTareGrams: number | null;
}

/** A bag that was closed: its weighing, and who made it. */
export interface FilledBag {
  readonly id: string;
  readonly number: string;
  readonly status: string;
  readonly netGrams: number;
  readonly filledAt: string;
  readonly weighingId: string;
  readonly personId: string | null;
  readonly scaleId: string;
  readonly bagTypeId: string | null;
  readonly linerLot: string | null;
}

/** All that the page of a dryer shows. */
export interface DryerDesk {
  readonly dryer: NamedRow;
  readonly run: RunInHand | null;
  readonly hanging: readonly HangingBag[];
  readonly shift: LocatedShift | null;
  readonly shiftBags: { readonly count: number; readonly netGrams: number };
  /** Bags of this shift for which no sample stands so far. */
  readonly unsampled: readonly string[];
  readonly lastBags: readonly FilledBag[];
  readonly scales: readonly ScaleStanding[];
  readonly bagTypes: readonly BagTypeRow[];
  /** That of the labels. */
  readonly paperLanguage: Language;
}

/** @throws {NotFound} `dryer`, for one of another site too */
export async function dryerDesk(from: ReadFrom, siteId: string, dryerId: string, now: string): Promise<DryerDesk> {
  const dryer = await dryerOf(from, dryerId);
  if (dryer.siteId !== siteId) throw new NotFound('dryer', dryerId);
  const shift = await shiftOrNull(from, siteId, now);
  const since = shift?.startsAt ?? now;
  return {
    dryer,
    run: await runInHand(from, dryerId),
    hanging: await hangingBags(from, dryerId),
    shift,
    shiftBags: await bagsSince(from, dryerId, since),
    unsampled: await unsampledSince(from, dryerId, since),
    lastBags: await lastBags(from, dryerId),
    scales: await scalesAt(from, siteId, now),
    bagTypes: await bagTypesOf(from, siteId),
    paperLanguage: (await siteOf(from, siteId)).paperLanguage,
  };
}

export async function shiftOrNull(from: ReadFrom, siteId: string, now: string): Promise<LocatedShift | null> {
  try {
    return await shiftAt(from, siteId, now);
  } catch (error) {
    if (error instanceof NotFound) return null;
    throw error;
  }
}

/** The dryers of a site, each with the number of the run that it is in. */
export function dryersOf(
  from: ReadFrom,
  siteId: string,
): Promise<(NamedRow & { readonly runNumber: string | null; readonly gradeName: string | null })[]> {
  return from.sql`
    SELECT d."id", d."site_id" AS "siteId", d."code", d."name", r."number" AS "runNumber", g."name" AS "gradeName"
    FROM "dryer" d
    LEFT JOIN "dryer_run" r ON r."dryer_id" = d."id" AND r."voided_by" IS NULL AND NOT EXISTS (
      SELECT 1 FROM "dryer_run_end" e WHERE e."dryer_run_id" = r."id" AND e."voided_by" IS NULL)
    LEFT JOIN "grade" g ON g."id" = r."grade_id"
    WHERE d."site_id" = ${siteId} ORDER BY d."code"`;
}

async function runInHand(from: ReadFrom, dryerId: string): Promise<RunInHand | null> {
  const [run] = await from.sql<RunInHand>`
    SELECT r."id", r."number", r."grade_id" AS "gradeId", g."name" AS "gradeName", r."started_at" AS "startedAt"
    FROM "dryer_run" r JOIN "grade" g ON g."id" = r."grade_id"
    WHERE r."dryer_id" = ${dryerId} AND r."voided_by" IS NULL AND NOT EXISTS (
      SELECT 1 FROM "dryer_run_end" e WHERE e."dryer_run_id" = r."id" AND e."voided_by" IS NULL)
    ORDER BY r."started_at" DESC, r."id" DESC LIMIT 1`;
  return run ?? null;
}

function hangingBags(from: ReadFrom, dryerId: string): Promise<HangingBag[]> {
  return from.sql<HangingBag>`
    SELECT b."id", b."number", r."number" AS "runNumber", b."fill_started_at" AS "fillStartedAt",
      b."safe_load_grams" AS "safeLoadGrams", y."id" AS "bagTypeId", y."name" AS "bagTypeName",
      y."usual_tare_grams" AS "usualTareGrams"
    FROM "bag_state" t JOIN "bulk_bag" b ON b."id" = t."bag_id" JOIN "dryer_run" r ON r."id" = b."dryer_run_id"
    LEFT JOIN "bag_type_use" u ON u."bag_id" = b."id" LEFT JOIN "bag_type" y ON y."id" = u."bag_type_id"
    WHERE t."status" = 'filling' AND r."dryer_id" = ${dryerId} AND b."voided_by" IS NULL
    ORDER BY b."fill_started_at" DESC, b."id" DESC LIMIT 20`;
}

async function bagsSince(from: ReadFrom, dryerId: string, since: string): Promise<DryerDesk['shiftBags']> {
  const [row] = await from.sql<{ count: number | string; netGrams: number | string | null }>`
    SELECT COUNT(*) AS "count", SUM(w."net_grams") AS "netGrams"
    FROM "bag_weighing" w JOIN "bulk_bag" b ON b."id" = w."bag_id" JOIN "dryer_run" r ON r."id" = b."dryer_run_id"
    WHERE w."weighed_at" >= ${since} AND w."occasion" = 'filled' AND w."voided_by" IS NULL
      AND b."voided_by" IS NULL AND r."dryer_id" = ${dryerId}`;
  return { count: toWhole(row?.count ?? 0), netGrams: toWhole(row?.netGrams ?? 0) };
}

/** A sample stands for one bag, or for a dryer's bags whose filling ended within its time. */
async function unsampledSince(from: ReadFrom, dryerId: string, since: string): Promise<readonly string[]> {
  const rows = await from.sql<{ number: string }>`
    SELECT b."number" FROM "bag_weighing" w JOIN "bulk_bag" b ON b."id" = w."bag_id"
    JOIN "dryer_run" r ON r."id" = b."dryer_run_id"
    WHERE w."weighed_at" >= ${since} AND w."occasion" = 'filled' AND w."voided_by" IS NULL
      AND b."voided_by" IS NULL AND r."dryer_id" = ${dryerId}
      AND NOT EXISTS (SELECT 1 FROM "sample" s WHERE s."bag_id" = b."id" AND s."voided_by" IS NULL)
      AND NOT EXISTS (SELECT 1 FROM "sample" s WHERE s."dryer_id" = ${dryerId} AND s."voided_by" IS NULL
        AND s."from_at" <= w."weighed_at" AND s."until_at" > w."weighed_at")
    ORDER BY w."weighed_at", b."id" LIMIT 100`;
  return rows.map(({ number }) => number);
}

function lastBags(from: ReadFrom, dryerId: string): Promise<FilledBag[]> {
  return from.sql<FilledBag>`
    SELECT b."id", b."number", t."status", w."net_grams" AS "netGrams", w."weighed_at" AS "filledAt",
      w."id" AS "weighingId", w."person_id" AS "personId", w."scale_id" AS "scaleId", u."bag_type_id" AS "bagTypeId",
      b."liner_lot" AS "linerLot"
    FROM "dryer_run" r JOIN "bulk_bag" b ON b."dryer_run_id" = r."id" AND b."voided_by" IS NULL
    JOIN "bag_weighing" w ON w."bag_id" = b."id" AND w."occasion" = 'filled' AND w."voided_by" IS NULL
    JOIN "bag_state" t ON t."bag_id" = b."id" LEFT JOIN "bag_type_use" u ON u."bag_id" = b."id"
    WHERE r."id" IN (SELECT x."id" FROM "dryer_run" x WHERE x."dryer_id" = ${dryerId} AND x."voided_by" IS NULL
      ORDER BY x."started_at" DESC, x."id" DESC LIMIT 3)
    ORDER BY w."weighed_at" DESC, w."id" DESC LIMIT 5`;
}
