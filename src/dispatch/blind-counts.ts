import type { Instant } from '../platform/clock.js';
import { toWhole } from '../platform/database/stored-values.js';
import type { ReadFrom } from '../platform/database/reading.js';

/** The counts by walking round since the last unit went on or came off: those before it hold no longer. */
export interface BlindCounts {
  /** The latest; null: nobody has counted since. */
  readonly last: { readonly unitCount: number; readonly countedAt: Instant } | null;
  readonly countsSince: number;
  readonly agrees: boolean;
  /** What was counted less what was scanned; null as long as the count is to stay blind: after one that differs. */
  readonly difference: number | null;
}

/** From so many differing counts on the difference is told: a third walk would find nothing that two did not. */
const blindWalks = 2;

export async function blindCountsOf(from: ReadFrom, deliveryId: string, loadedCount: number): Promise<BlindCounts> {
  const changeCount = await changeCountOf(from, deliveryId);
  const rows = await from.sql<{ unitCount: number; countedAt: Instant }>`
    SELECT "unit_count" AS "unitCount", "counted_at" AS "countedAt" FROM "blind_count"
    WHERE "delivery_id" = ${deliveryId} AND "change_count" = ${changeCount} AND "voided_by" IS NULL ORDER BY "id"`;
  const last = rows.at(-1) ?? null;
  const agrees = last?.unitCount === loadedCount;
  const isTold = agrees || rows.length >= blindWalks;
  return {
    last,
    countsSince: rows.length,
    agrees,
    difference: last !== null && isTold ? last.unitCount - loadedCount : null,
  };
}

/** How often something went on or came off. It only grows: void rows count too. */
export async function changeCountOf(from: ReadFrom, deliveryId: string): Promise<number> {
  const [row] = await from.sql<{ changes: number | string }>`
    SELECT COUNT(l."id") + COUNT(u."id") AS "changes" FROM "loading" l
    LEFT JOIN "unloading" u ON u."loading_id" = l."id" WHERE l."delivery_id" = ${deliveryId}`;
  return toWhole(row?.changes ?? 0);
}
