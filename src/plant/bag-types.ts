import type { ReadFrom } from '../platform/database/reading.js';
import { NotFound } from '../platform/refusal.js';

/** A type of bulk bag as the plant has set it up. */
export interface BagTypeRow {
  readonly id: string;
  readonly siteId: string;
  readonly code: string;
  readonly name: string;
  readonly usualTareGrams: number;
  readonly leastTareGrams: number;
  readonly mostTareGrams: number;
  readonly safeLoadGrams: number;
}

/** The types of bags that a site fills now. */
export function bagTypesOf(from: ReadFrom, siteId: string): Promise<BagTypeRow[]> {
  return from.sql<BagTypeRow>`
    ${() => typeSelect} WHERE "site_id" = ${siteId} AND "voided_by" IS NULL ORDER BY "code"`;
}

/** A type by its id, also one that was changed since. @throws {NotFound} `bag-type` */
export async function bagTypeOf(from: ReadFrom, siteId: string, bagTypeId: string): Promise<BagTypeRow> {
  const [type] = await from.sql<BagTypeRow>`${() => typeSelect} WHERE "id" = ${bagTypeId} AND "site_id" = ${siteId}`;
  if (type === undefined) throw new NotFound('bag-type', bagTypeId);
  return type;
}

const typeSelect = `
  SELECT "id", "site_id" AS "siteId", "code", "name", "usual_tare_grams" AS "usualTareGrams",
    "least_tare_grams" AS "leastTareGrams", "most_tare_grams" AS "mostTareGrams", "safe_load_grams" AS "safeLoadGrams"
  FROM "bag_type"`;

/** Between what net weights a full bag of a grade usually is; null where nobody has said so. */
export async function usualNetOf(
  from: ReadFrom,
  gradeId: string,
): Promise<{ readonly leastNetGrams: number; readonly mostNetGrams: number } | null> {
  const [row] = await from.sql<{ leastNetGrams: number; mostNetGrams: number }>`
    SELECT "least_net_grams" AS "leastNetGrams", "most_net_grams" AS "mostNetGrams" FROM "grade_usual_net"
    WHERE "grade_id" = ${gradeId} ORDER BY "id" DESC LIMIT 1`;
  return row ?? null;
}
