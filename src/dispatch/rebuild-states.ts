import type { Instant } from '../platform/clock.js';
import { toWhole } from '../platform/database/columns.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { palletStatesByFacts } from '../pallets/pallet-states.js';
import type { PalletStatus } from '../pallets/pallet-rows.js';
import type { DeliveryStatus } from './delivery-rows.js';

/** How far deliveries are, as the facts alone say it. */
export async function deliveryStatesByFacts(
  from: ReadFrom,
): Promise<readonly { readonly deliveryId: string; readonly status: DeliveryStatus; readonly loadedCount: number }[]> {
  const rows = await from.sql<{
    deliveryId: string;
    closeId: string | null;
    cancelId: string | null;
    everCount: number | string;
    loadedCount: number | string;
  }>`
    SELECT d."id" AS "deliveryId",
      (SELECT c."id" FROM "delivery_close" c WHERE c."delivery_id" = d."id" AND c."voided_by" IS NULL) AS "closeId",
      (SELECT x."id" FROM "delivery_cancel" x WHERE x."delivery_id" = d."id" AND x."voided_by" IS NULL) AS "cancelId",
      (SELECT COUNT(*) FROM "loading" l WHERE l."delivery_id" = d."id" AND l."voided_by" IS NULL) AS "everCount",
      (SELECT COUNT(*) FROM "loading" l WHERE l."delivery_id" = d."id" AND l."voided_by" IS NULL AND NOT EXISTS (
        SELECT 1 FROM "unloading" u WHERE u."loading_id" = l."id" AND u."voided_by" IS NULL)) AS "loadedCount"
    FROM "delivery" d WHERE d."voided_by" IS NULL ORDER BY d."id"`;
  return rows.map(({ deliveryId, closeId, cancelId, everCount, loadedCount }) => ({
    deliveryId,
    status: statusOf(closeId !== null, cancelId !== null, toWhole(everCount) > 0),
    loadedCount: toWhole(loadedCount),
  }));
}

function statusOf(isClosed: boolean, isCancelled: boolean, hasLoadings: boolean): DeliveryStatus {
  if (isCancelled) return 'cancelled';
  if (isClosed) return 'closed';
  return hasLoadings ? 'loading' : 'planned';
}

/** Where every pallet is, deliveries included. */
export async function wholePalletStates(
  from: ReadFrom,
): Promise<readonly { readonly palletId: string; readonly status: PalletStatus; readonly placeId: string | null }[]> {
  const loadings = await from.sql<{
    palletId: string;
    deliveryId: string;
    loadedAt: Instant;
    unloadedAt: Instant | null;
    closeId: string | null;
  }>`
    SELECT l."pallet_id" AS "palletId", l."delivery_id" AS "deliveryId", l."loaded_at" AS "loadedAt",
      u."unloaded_at" AS "unloadedAt", c."id" AS "closeId"
    FROM "loading" l
    LEFT JOIN "unloading" u ON u."loading_id" = l."id" AND u."voided_by" IS NULL
    LEFT JOIN "delivery_close" c ON c."delivery_id" = l."delivery_id" AND c."voided_by" IS NULL
    WHERE l."pallet_id" IS NOT NULL AND l."voided_by" IS NULL ORDER BY l."id"`;
  const last = new Map(loadings.map((row) => [row.palletId, row]));
  return (await palletStatesByFacts(from)).map(({ palletId, status, placeId, changedAt }) => {
    const loading = last.get(palletId);
    if (status === 'taken-apart' || loading === undefined) return { palletId, status, placeId };
    const { deliveryId, unloadedAt, closeId } = loading;
    if (unloadedAt === null)
      return { palletId, status: closeId === null ? 'loaded' : 'dispatched', placeId: deliveryId };
    // Taken off and not brought anywhere since: nobody said where it stands.
    return { palletId, status, placeId: changedAt > unloadedAt ? placeId : null };
  });
}
