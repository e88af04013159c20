import {
  dockDeliveries,
  refusedScansOf,
  type DockDelivery,
  type RefusedScanRow,
} from '../../dispatch/dock-deliveries.js';
import { deliveryView, type DeliveryView, type UnitView } from '../../dispatch/delivery-views.js';
import { findUnit } from '../../dispatch/find-unit.js';
import { palletOf } from '../../pallets/pallet-list.js';
import { placeOf } from '../../plant/plant-facts.js';
import type { Instant } from '../../platform/clock.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { Refusal } from '../../platform/refusal.js';

/** All that a loading page shows of one delivery. */
export interface LoadingView extends DockDelivery {
  readonly view: DeliveryView;
  readonly refused: readonly RefusedScanRow[];
  /** The unit that was scanned last, where it is on. */
  readonly last: UnitView | null;
}

/** Standings of all that is on are computed on the way: read it from a snapshot. */
export async function loadingView(
  from: ReadFrom,
  siteId: string,
  asked: { readonly deliveryId: string; readonly lastUnitId: string | null; readonly now: Instant },
): Promise<LoadingView> {
  const view = await deliveryView(from, siteId, asked.deliveryId, asked.now);
  const [docked] = await dockDeliveries(from, [view]);
  if (docked === undefined) throw new Error(`no delivery ${asked.deliveryId}`);
  const last = view.units.find((unit) => unit.id === asked.lastUnitId) ?? null;
  return { ...docked, view, refused: await refusedScansOf(from, view.id), last };
}

/** The place in the store from which a refused unit came, and to which it goes back; null where nobody knows. */
export async function placeBefore(from: ReadFrom, siteId: string, scan: string): Promise<string | null> {
  try {
    const { kind, id, placeId } = await findUnit(from, siteId, scan);
    const isInStore = kind === 'bulk-bag' || (await palletOf(from, id)).status === 'in-store';
    return placeId !== null && isInStore ? (await placeOf(from, placeId)).code : null;
  } catch (error) {
    if (error instanceof Refusal || (error as Error).name === 'NotFound') return null;
    throw error;
  }
}

/** The places of the store, by their codes. */
export async function storePlaces(
  from: ReadFrom,
  siteId: string,
): Promise<readonly { readonly id: string; readonly code: string }[]> {
  return from.sql`
    SELECT "id", "code" FROM "store_place" WHERE "site_id" = ${siteId} AND "kind" = 'store' ORDER BY "code"`;
}

/** Where a unit stood before it was loaded; null where nobody said. */
export async function placeIdBefore(from: ReadFrom, unit: Pick<UnitView, 'kind' | 'id'>): Promise<string | null> {
  const [row] =
    unit.kind === 'pallet'
      ? await from.sql<{ placeId: string }>`
          SELECT "place_id" AS "placeId" FROM "pallet_move" WHERE "pallet_id" = ${unit.id} AND "voided_by" IS NULL
          ORDER BY "moved_at" DESC, "id" DESC LIMIT 1`
      : await from.sql<{ placeId: string }>`
          SELECT "place_id" AS "placeId" FROM "bag_move" WHERE "bag_id" = ${unit.id} AND "voided_by" IS NULL
          ORDER BY "moved_at" DESC, "id" DESC LIMIT 1`;
  return row?.placeId ?? null;
}
