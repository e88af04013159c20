import type { HoldRow } from '../disposition/standings.js';
import { deliveryOf } from '../dispatch/deliveries.js';
import { customerOf } from '../plant/plant-facts.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { reachOfHold, scopeOfRow } from './hold-reach.js';

/** A pallet or bag on a vehicle or with a customer that a hold covers. */
export interface ReachedOnTheWay {
  readonly kind: 'pallet' | 'bulk-bag';
  readonly id: string;
  /** The pallet's SSCC, the bag's number. */
  readonly unit: string;
  readonly customer: string;
  readonly delivery: string;
}

/** What a hold covers, by its class, of what is on a vehicle or has left. */
export async function reachedOnTheWay(from: ReadFrom, hold: HoldRow): Promise<readonly ReachedOnTheWay[]> {
  const { possible, sureAndLikely, bags } = await reachOfHold(from, scopeOfRow(hold), hold);
  const pallets = (hold.hazard === 'safety' ? possible : sureAndLikely).filter(({ status }) => isOnTheWay(status));
  const found = pallets.map(({ palletId, sscc, customerName, deliveryNumber }): ReachedOnTheWay => {
    return { kind: 'pallet', id: palletId, unit: sscc, customer: customerName ?? '', delivery: deliveryNumber ?? '' };
  });
  for (const { bag, isOut } of bags) {
    if (isOut || !isOnTheWay(bag.status) || bag.placeId === null) continue;
    const { customerId, noteNumber, orderNumber } = await deliveryOf(from, bag.placeId);
    const { name, code } = await customerOf(from, customerId);
    const delivery = noteNumber ?? orderNumber;
    found.push({ kind: 'bulk-bag', id: bag.id, unit: bag.number, customer: name ?? code, delivery });
  }
  return found;
}

function isOnTheWay(status: string): boolean {
  return status === 'loaded' || status === 'dispatched';
}
