import type { ReadFrom } from '../platform/database/reading.js';

/** A lot of bags or liners as it is compared: no spaces around, capital letters. */
const lotKey = (typed: string): string => typed.trim().toUpperCase();

/** The good bags that were filled with a lot of bags or liners, as somebody types it; none where no bag names it. */
export async function bagsOfLinerLot(from: ReadFrom, siteId: string, linerLot: string): Promise<readonly string[]> {
  const rows = await from.sql<{ id: string }>`
    SELECT b."id" FROM "bulk_bag" b WHERE b."id" IN (
        SELECT k."id" FROM "bulk_bag" k WHERE UPPER(k."liner_lot") = ${lotKey(linerLot)})
      AND b."site_id" = ${siteId} AND b."voided_by" IS NULL`;
  return rows.map(({ id }) => id).sort();
}

/** How a lot of liners is written on the bags of it, and how many there are; null where no bag names it. */
export async function findLinerLot(
  from: ReadFrom,
  siteId: string,
  typed: string,
): Promise<{ readonly linerLot: string; readonly bagCount: number } | null> {
  const bagIds = await bagsOfLinerLot(from, siteId, typed);
  return bagIds.length === 0 ? null : { linerLot: lotKey(typed), bagCount: bagIds.length };
}

/** Whether any bag of any site names a lot of liners. */
export async function isLinerLot(from: ReadFrom, linerLot: string): Promise<boolean> {
  const rows = await from.sql`
    SELECT "id" FROM "bulk_bag" WHERE UPPER("liner_lot") = ${lotKey(linerLot)} AND "voided_by" IS NULL LIMIT 1`;
  return rows.length > 0;
}
