import type { Instant } from '../platform/clock.js';
import { toBoolean } from '../platform/database/stored-values.js';
import { onlyRow, type ReadFrom } from '../platform/database/reading.js';
import { NotFound, Refusal } from '../platform/refusal.js';
import type { Tip } from './tip.entity.js';

/** A tip with its end; `offAt` and what follows null: the bag hangs still. */
export interface TipRow {
  readonly id: string;
  readonly siteId: string;
  readonly periodId: string;
  readonly hopperId: string;
  readonly source: Tip['source'];
  readonly bagId: string | null;
  readonly bagNumber: string | null;
  readonly binId: string | null;
  readonly binNumber: string | null;
  readonly netGrams: number;
  readonly openedAt: Instant;
  readonly identifiedBy: Tip['identifiedBy'];
  readonly secondPersonId: string | null;
  readonly hasHappened: boolean;
  readonly isLate: boolean;
  readonly offId: string | null;
  readonly offAt: Instant | null;
  readonly restGrams: number | null;
  readonly weighingId: string | null;
}

type StoredTip = Omit<TipRow, 'hasHappened' | 'isLate'> & {
  readonly hasHappened: boolean | number;
  readonly isLate: boolean | number;
};

const tipSelect = (): string => `
  SELECT t."id", t."site_id" AS "siteId", t."period_id" AS "periodId", p."hopper_id" AS "hopperId", t."source",
    t."bag_id" AS "bagId", b."number" AS "bagNumber", t."bin_id" AS "binId", r."number" AS "binNumber",
    t."net_grams" AS "netGrams", t."opened_at" AS "openedAt", t."identified_by" AS "identifiedBy",
    t."second_person_id" AS "secondPersonId", t."has_happened" AS "hasHappened", t."is_late" AS "isLate",
    o."id" AS "offId", o."off_at" AS "offAt", o."rest_grams" AS "restGrams", o."weighing_id" AS "weighingId"
  FROM "tip" t
  JOIN "hopper_period" p ON p."id" = t."period_id"
  LEFT JOIN "bulk_bag" b ON b."id" = t."bag_id"
  LEFT JOIN "rework_bin" r ON r."id" = t."bin_id"
  LEFT JOIN "tip_off" o ON o."tip_id" = t."id" AND o."voided_by" IS NULL`;

/**
 * A good tip of a site.
 *
 * @throws {NotFound} `tip`, also for one that was corrected
 */
export async function tipOf(from: ReadFrom, siteId: string, tipId: string): Promise<TipRow> {
  const row = onlyRow(
    await from.sql<StoredTip>`
      ${tipSelect} WHERE t."id" = ${tipId} AND t."site_id" = ${siteId} AND t."voided_by" IS NULL`,
  );
  if (row === null) throw new NotFound('tip', tipId);
  return tipRow(row);
}

/**
 * A tip that is to be corrected.
 *
 * @throws {NotFound} `tip`
 * @throws {Refusal} `already-corrected`
 */
export async function tipToCorrect(from: ReadFrom, siteId: string, tipId: string): Promise<TipRow> {
  const [known] = await from.sql<{ voidedBy: string | null }>`
    SELECT "voided_by" AS "voidedBy" FROM "tip" WHERE "id" = ${tipId} AND "site_id" = ${siteId}`;
  if (known !== undefined && known.voidedBy !== null) throw new Refusal('already-corrected', { id: tipId });
  return tipOf(from, siteId, tipId);
}

/** Good tips of a site (of one hopper, where given), the last recorded first, by key. */
export async function tipPage(
  from: ReadFrom,
  siteId: string,
  page: { readonly hopperId?: string | null; readonly before?: string | null; readonly limit?: number | null },
): Promise<TipRow[]> {
  const rows = await from.sql<StoredTip>`
    ${tipSelect} WHERE t."site_id" = ${siteId} AND t."voided_by" IS NULL
      AND p."hopper_id" = COALESCE(${page.hopperId ?? null}, p."hopper_id") AND t."id" < ${page.before ?? '~'}
    ORDER BY t."id" DESC LIMIT ${page.limit ?? 50}`;
  return rows.map(tipRow);
}

/** Good tips of a period, by opening. */
export async function tipsOfPeriod(from: ReadFrom, periodId: string): Promise<TipRow[]> {
  const rows = await from.sql<StoredTip>`
    ${tipSelect} WHERE t."period_id" = ${periodId} AND t."voided_by" IS NULL ORDER BY t."opened_at", t."id"`;
  return rows.map(tipRow);
}

/** Good tips of a bag, by opening. */
export async function tipsOfBag(from: ReadFrom, bagId: string): Promise<TipRow[]> {
  const rows = await from.sql<StoredTip>`
    ${tipSelect} WHERE t."bag_id" = ${bagId} AND t."voided_by" IS NULL ORDER BY t."opened_at", t."id"`;
  return rows.map(tipRow);
}

/** The bags that a tip may have been. */
export async function candidatesOfTip(from: ReadFrom, tipId: string): Promise<string[]> {
  const rows = await from.sql<{ bagId: string }>`
    SELECT "bag_id" AS "bagId" FROM "tip_candidate" WHERE "tip_id" = ${tipId} AND "voided_by" IS NULL ORDER BY "id"`;
  return rows.map(({ bagId }) => bagId);
}

function tipRow(row: StoredTip): TipRow {
  return { ...row, hasHappened: toBoolean(row.hasHappened), isLate: toBoolean(row.isLate) };
}
