import type { Instant } from '../platform/clock.js';
import { toWhole } from '../platform/database/stored-values.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Refusal } from '../platform/refusal.js';
import { deliveriesOfUnits, deliveryOf } from './deliveries.js';
import { DeliveryState } from './delivery-state.entity.js';
import type { DeliveryRow, LineProgress } from './delivery-rows.js';
import { Loading } from './loading.entity.js';

/** A unit that goes onto a vehicle. */
export interface LoadingDraft {
  readonly id: string;
  readonly delivery: DeliveryRow;
  readonly palletId: string | null;
  readonly bagId: string | null;
  readonly loadedAt: Instant;
}

/** Writes the loading, next in order. The unit's own state has been changed before, which closed the race. */
export async function addLoading(tx: Tx, draft: LoadingDraft): Promise<{ readonly place: number }> {
  const { id, delivery, palletId, bagId, loadedAt } = draft;
  const [row] = await tx.sql<{ last: number | string | null }>`
    SELECT MAX("place") AS "last" FROM "loading" WHERE "delivery_id" = ${delivery.id}`;
  const place = toWhole(row?.last ?? 0) + 1;
  await tx.insert(Loading, { id, deliveryId: delivery.id, palletId, bagId, place, loadedAt, voidedBy: null });
  const loadedCount = delivery.loadedCount + 1;
  await tx.update(DeliveryState, { deliveryId: delivery.id }, { status: 'loading', loadedCount });
  return { place };
}

/**
 * Says why a unit cannot be loaded that is on a vehicle or gone.
 *
 * @throws {Refusal} `already-loaded`, `loaded-elsewhere`, `already-dispatched`
 */
export async function refuseLoaded(
  tx: Tx,
  delivery: DeliveryRow,
  unit: { readonly name: string; readonly palletId: string | null; readonly bagId: string | null },
): Promise<void> {
  const [on] = await deliveriesOfUnits(tx, {
    palletIds: unit.palletId === null ? [] : [unit.palletId],
    bagIds: unit.bagId === null ? [] : [unit.bagId],
  });
  if (on === undefined) return;
  const other = await deliveryOf(tx, on.deliveryId);
  const facts = { unit: unit.name, order: other.orderNumber, note: other.noteNumber };
  if (other.id === delivery.id) throw new Refusal('already-loaded', facts);
  throw new Refusal(other.status === 'left' ? 'already-dispatched' : 'loaded-elsewhere', facts);
}

/**
 * What is loaded must have been ordered, and not yet be there.
 *
 * @throws {Refusal} `not-ordered`, `more-than-ordered`
 */
export function refuseBeyondOrder(
  line: LineProgress | undefined,
  unit: { readonly name: string; readonly goods: string; readonly count: number },
): void {
  if (line === undefined) throw new Refusal('not-ordered', { unit: unit.name, goods: unit.goods });
  if (unit.count <= line.leftCount) return;
  throw new Refusal('more-than-ordered', {
    unit: unit.name,
    goods: unit.goods,
    count: unit.count,
    ordered: line.orderedCount,
    on: line.loadedCount,
  });
}
