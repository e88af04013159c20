import type { LaterBagChange } from '../drying/rebuild-bag-states.js';
import type { Instant } from '../platform/clock.js';
import { toWhole } from '../platform/database/stored-values.js';
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
    departureId: string | null;
    everCount: number | string;
    loadedCount: number | string;
  }>`
    SELECT d."id" AS "deliveryId",
      (SELECT c."id" FROM "delivery_close" c WHERE c."delivery_id" = d."id" AND c."voided_by" IS NULL) AS "closeId",
      (SELECT x."id" FROM "delivery_cancel" x WHERE x."delivery_id" = d."id" AND x."voided_by" IS NULL) AS "cancelId",
      (SELECT g."id" FROM "delivery_departure" g WHERE g."delivery_id" = d."id" AND g."voided_by" IS NULL) AS "departureId",
      (SELECT COUNT(*) FROM "loading" l WHERE l."delivery_id" = d."id" AND l."voided_by" IS NULL) AS "everCount",
      (SELECT COUNT(*) FROM "loading" l WHERE l."delivery_id" = d."id" AND l."voided_by" IS NULL AND NOT EXISTS (
        SELECT 1 FROM "unloading" u WHERE u."loading_id" = l."id" AND u."voided_by" IS NULL)) AS "loadedCount"
    FROM "delivery" d WHERE d."voided_by" IS NULL ORDER BY d."id"`;
  return rows.map(({ deliveryId, closeId, cancelId, departureId, everCount, loadedCount }) => ({
    deliveryId,
    status: departureId === null ? statusOf(closeId !== null, cancelId !== null, toWhole(everCount) > 0) : 'left',
    loadedCount: toWhole(loadedCount),
  }));
}

function statusOf(isClosed: boolean, isCancelled: boolean, hasLoadings: boolean): DeliveryStatus {
  if (isCancelled) return 'cancelled';
  if (isClosed) return 'closed';
  return hasLoadings ? 'loading' : 'planned';
}

/** A loading with all that came of it. */
interface LoadingFate {
  readonly palletId: string | null;
  readonly bagId: string | null;
  readonly deliveryId: string;
  readonly loadedAt: Instant;
  readonly unloadedAt: Instant | null;
  readonly leftAt: Instant | null;
  readonly returnedAt: Instant | null;
  readonly returnPlaceId: string | null;
  readonly fate: 'restock' | 'destroy' | null;
  readonly decidedAt: Instant | null;
}

/** Good loadings in the order in which they were recorded: taken off, left, come back, and what was decided then. */
function loadingFates(from: ReadFrom): Promise<readonly LoadingFate[]> {
  return from.sql<LoadingFate>`
    SELECT l."pallet_id" AS "palletId", l."bag_id" AS "bagId", l."delivery_id" AS "deliveryId",
      l."loaded_at" AS "loadedAt", u."unloaded_at" AS "unloadedAt", g."left_at" AS "leftAt",
      b."returned_at" AS "returnedAt", b."place_id" AS "returnPlaceId", e."fate", e."decided_at" AS "decidedAt"
    FROM "loading" l
    LEFT JOIN "unloading" u ON u."loading_id" = l."id" AND u."voided_by" IS NULL
    LEFT JOIN "delivery_departure" g ON g."delivery_id" = l."delivery_id" AND g."voided_by" IS NULL
    LEFT JOIN "returned_unit" r ON r."loading_id" = l."id" AND r."voided_by" IS NULL
    LEFT JOIN "delivery_return" b ON b."id" = r."return_id"
    LEFT JOIN "return_decision" e ON e."unit_id" = r."id" AND e."voided_by" IS NULL
    WHERE l."voided_by" IS NULL ORDER BY l."id"`;
}

/** Where every pallet is, deliveries included. */
export async function wholePalletStates(
  from: ReadFrom,
): Promise<readonly { readonly palletId: string; readonly status: PalletStatus; readonly placeId: string | null }[]> {
  const last = new Map((await loadingFates(from)).map((row) => [row.palletId, row]));
  return (await palletStatesByFacts(from)).map(({ palletId, status, placeId, changedAt }) => {
    const loading = last.get(palletId);
    if (status === 'taken-apart' || loading === undefined) return { palletId, status, placeId };
    const { deliveryId, unloadedAt, leftAt, returnPlaceId, fate, decidedAt } = loading;
    if (fate === 'destroy') return { palletId, status: 'destroyed', placeId: returnPlaceId };
    if (fate === 'restock')
      return { palletId, status, placeId: changedAt > (decidedAt ?? '') ? placeId : returnPlaceId };
    if (returnPlaceId !== null) return { palletId, status: 'returned', placeId: returnPlaceId };
    if (unloadedAt === null)
      return { palletId, status: leftAt === null ? 'loaded' : 'dispatched', placeId: deliveryId };
    // Taken off and not brought anywhere since: nobody said where it stands.
    return { palletId, status, placeId: changedAt >= unloadedAt ? placeId : null };
  });
}

/** What deliveries did to whole bags, for rebuilding the states of bags from their facts. */
export async function bagChangesOfLoadings(from: ReadFrom): Promise<readonly LaterBagChange[]> {
  const moves = await from.sql<{ bagId: string; placeId: string; movedAt: Instant }>`
    SELECT "bag_id" AS "bagId", "place_id" AS "placeId", "moved_at" AS "movedAt" FROM "bag_move"
    WHERE "voided_by" IS NULL ORDER BY "id"`;
  const lastMove = new Map(moves.map((move) => [move.bagId, move]));
  return (await loadingFates(from)).flatMap(({ bagId, ...fate }) =>
    bagId === null ? [] : changesOfBag(bagId, fate, lastMove.get(bagId)),
  );
}

/** One change for each thing that happened; a bag that was moved since stands where it was moved to. */
function changesOfBag(
  bagId: string,
  { deliveryId, loadedAt, unloadedAt, leftAt, returnedAt, returnPlaceId, fate, decidedAt }: Omit<LoadingFate, 'bagId'>,
  lastMove: { readonly placeId: string; readonly movedAt: Instant } | undefined,
): readonly LaterBagChange[] {
  const movedSince = (at: Instant): string | null =>
    lastMove !== undefined && lastMove.movedAt >= at ? lastMove.placeId : null;
  const change = (at: Instant | null, to: Pick<LaterBagChange, 'status' | 'placeId' | 'remainingGrams'>) =>
    at === null ? [] : [{ bagId, at, ...to }];
  const whole = { remainingGrams: null };
  return [
    ...change(loadedAt, { ...whole, status: 'loaded', placeId: deliveryId }),
    ...change(unloadedAt, { ...whole, status: 'full', placeId: movedSince(unloadedAt ?? '') }),
    ...change(unloadedAt === null ? leftAt : null, { ...whole, status: 'dispatched', placeId: deliveryId }),
    ...change(returnedAt, { ...whole, status: 'returned', placeId: returnPlaceId }),
    ...(fate === 'destroy'
      ? change(decidedAt, { remainingGrams: 0, status: 'destroyed', placeId: returnPlaceId })
      : change(decidedAt, { ...whole, status: 'full', placeId: movedSince(decidedAt ?? '') ?? returnPlaceId })),
  ];
}
