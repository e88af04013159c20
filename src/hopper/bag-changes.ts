import type { LaterBagChange } from '../drying/rebuild-bag-states.js';
import type { ReadFrom } from '../platform/database/reading.js';

/** What good tips did to bags, for rebuilding the states of bags from their facts. */
export async function bagChangesOfTips(from: ReadFrom, siteId: string): Promise<readonly LaterBagChange[]> {
  const rows = await from.sql<{
    bagId: string;
    hopperId: string;
    netGrams: number;
    openedAt: string;
    offAt: string | null;
    restGrams: number | null;
  }>`
    SELECT t."bag_id" AS "bagId", p."hopper_id" AS "hopperId", t."net_grams" AS "netGrams", t."opened_at" AS "openedAt",
      o."off_at" AS "offAt", o."rest_grams" AS "restGrams"
    FROM "tip" t JOIN "hopper_period" p ON p."id" = t."period_id"
    LEFT JOIN "tip_off" o ON o."tip_id" = t."id" AND o."voided_by" IS NULL
    WHERE t."site_id" = ${siteId} AND t."bag_id" IS NOT NULL AND t."voided_by" IS NULL
    ORDER BY t."opened_at", t."id"`;
  return rows.map(({ bagId, hopperId, netGrams, openedAt, offAt, restGrams }): LaterBagChange => {
    const placeId = hopperId;
    if (offAt === null) return { bagId, status: 'hanging', remainingGrams: netGrams, placeId, at: openedAt };
    if (restGrams === null || restGrams === 0) return { bagId, status: 'empty', remainingGrams: 0, placeId, at: offAt };
    // Where an opened bag was put is the last place that is known of it: its moves say so, not its tips.
    return { bagId, status: 'opened', remainingGrams: restGrams, placeId: null, at: offAt };
  });
}
