import type { ReadFrom } from '../platform/database/reading.js';

/** A bag that is likely inside a hopper, and how much of it. */
export interface LikelyLayer {
  readonly tipId: string;
  /** Null: nobody could read it, or it is a rework bin. */
  readonly bagNumber: string | null;
  readonly name: string;
  readonly grams: number;
}

export interface LikelyLayers {
  /** The newest, on top, first. */
  readonly layers: readonly LikelyLayer[];
  /** Bags of the same period below these: some of each may still stick to the walls. The newest first. */
  readonly olderBags: readonly string[];
  readonly olderCount: number;
}

/** So many tips back are looked at: more never fit into a hopper at once. */
const tipsBack = 30;

/**
 * What likely lies in a hopper, first in first out: the newest tips, until they make up the level. Older bags of the period
 * are possible, however little of them.
 */
export async function likelyLayersOf(from: ReadFrom, periodId: string, levelGrams: number): Promise<LikelyLayers> {
  const tips = await from.sql<{ tipId: string; bagNumber: string | null; binNumber: string | null; grams: number }>`
    SELECT t."id" AS "tipId", b."number" AS "bagNumber", r."number" AS "binNumber",
      t."net_grams" - COALESCE(o."rest_grams", 0) AS "grams"
    FROM "tip" t
    LEFT JOIN "bulk_bag" b ON b."id" = t."bag_id"
    LEFT JOIN "rework_bin" r ON r."id" = t."bin_id"
    LEFT JOIN "tip_off" o ON o."tip_id" = t."id" AND o."voided_by" IS NULL
    WHERE t."period_id" = ${periodId} AND t."voided_by" IS NULL ORDER BY t."opened_at" DESC, t."id" DESC LIMIT ${tipsBack}`;
  const [counted] = await from.sql<{ tipCount: number | string }>`
    SELECT COUNT(*) AS "tipCount" FROM "tip" WHERE "period_id" = ${periodId} AND "voided_by" IS NULL`;
  const layers: LikelyLayer[] = [];
  let left = Math.max(0, levelGrams);
  for (const { tipId, bagNumber, binNumber, grams } of tips) {
    if (left <= 0) break;
    const inside = Math.min(grams, left);
    left -= inside;
    layers.push({ tipId, bagNumber, name: bagNumber ?? binNumber ?? '?', grams: inside });
  }
  const older = tips.slice(layers.length).map(({ bagNumber, binNumber }) => bagNumber ?? binNumber ?? '?');
  return { layers, olderBags: older, olderCount: Number(counted?.tipCount ?? 0) - layers.length };
}
