import { bagDeliveryOf, deliveryOf, type DeliveryRow } from '../dispatch/deliveries.js';
import { returnsAmong } from '../dispatch/returns.js';
import type { BagRow } from '../drying/bulk-bags.js';
import { contentsOf, palletsOf, palletsOfRanges } from '../pallets/pallet-list.js';
import type { PalletRow, PalletStatus } from '../pallets/pallet-rows.js';
import { clipped, type RunRange } from '../packing/run-ranges.js';
import { placeOf } from '../plant/plant-facts.js';
import type { Instant } from '../platform/clock.js';
import { groupBy } from '../platform/group-by.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { RecallReach } from './recall-reach.js';

/** Where something recalled is now. What came back from a customer counts as having left. */
export type RecallPlace = 'in-store' | 'on-dock' | 'on-vehicle' | 'dispatched';

/** A pallet with recalled packs on it, or a whole bag. */
export interface RecalledUnit {
  readonly kind: 'pallet' | 'bulk-bag';
  readonly id: string;
  /** SSCC, or the bag's short number. */
  readonly name: string;
  readonly place: RecallPlace;
  readonly status: string;
  readonly placeCode: string | null;
  /** The recalled packs on it, by their runs' counts; none of a bag. */
  readonly ranges: readonly RunRange[];
  /** All packs on it, recalled or not: a customer sends back whole pallets. */
  readonly packCount: number;
  readonly lotCodes: readonly string[];
  /** False after a split: it may hold recalled packs, and nobody saw which. */
  readonly isCertain: boolean;
  /** Sugar in a bag. */
  readonly bagGrams: number;
  /** When the pallet was built or the bag filled. */
  readonly madeAt: Instant | null;
  readonly delivery: DeliveryRow | null;
}

/** The pallets and bags that a recall covers, wherever they are. Empty bags are in packs and are left out. */
export async function unitsOfReach(from: ReadFrom, reach: RecallReach): Promise<readonly RecalledUnit[]> {
  const placed = groupBy(await palletsOfRanges(from, reach.ranges), (row) => row.palletId);
  const palletIds = [...placed.keys()];
  const lots = groupBy(await contentsOf(from, palletIds), (row) => row.palletId);
  const bags = reach.bags.filter((bag) => bag.status !== 'empty' && sugarIn(bag) > 0);
  const returned = await returnsAmong(from, { palletIds, bagIds: bags.map(({ id }) => id), lotIds: [] });
  const cameBackOf = new Map(returned.map((row) => [row.palletId ?? row.bagId, row.deliveryId]));
  const units: RecalledUnit[] = [];
  for (const pallet of await palletsOf(from, palletIds)) {
    const rows = placed.get(pallet.id) ?? [];
    const own = { pallet, deliveryId: cameBackOf.get(pallet.id) ?? null };
    units.push({
      ...{ kind: 'pallet', id: pallet.id, name: pallet.sscc, status: pallet.status, packCount: pallet.packCount },
      ...(await whereaboutsOf(from, own)),
      ranges: rows.flatMap((row) => reach.ranges.flatMap((range) => clipped(row, range) ?? [])),
      lotCodes: [...new Set((lots.get(pallet.id) ?? []).map(({ lotCode }) => lotCode))],
      isCertain: rows.every(({ isCertain }) => isCertain),
      ...{ bagGrams: 0, madeAt: pallet.builtAt },
    });
  }
  for (const bag of bags) units.push(await bagUnit(from, bag, cameBackOf.get(bag.id) ?? null));
  return units;
}

type Whereabouts = Pick<RecalledUnit, 'place' | 'placeCode' | 'delivery'>;

async function whereaboutsOf(
  from: ReadFrom,
  { pallet, deliveryId }: { readonly pallet: PalletRow; readonly deliveryId: string | null },
): Promise<Whereabouts> {
  const { status, placeId } = pallet;
  if (hasLeft(status) || status === 'loaded') {
    const onId = status === 'loaded' || status === 'dispatched' ? placeId : deliveryId;
    const delivery = onId === null ? null : await deliveryOf(from, onId);
    return { place: status === 'loaded' ? 'on-vehicle' : 'dispatched', placeCode: null, delivery };
  }
  return inHouse(from, placeId);
}

async function bagUnit(from: ReadFrom, bag: BagRow, deliveryId: string | null): Promise<RecalledUnit> {
  const { id, number: name, status } = bag;
  const unit = {
    ...{ kind: 'bulk-bag' as const, id, name, status, ranges: [], packCount: 0, lotCodes: [], isCertain: true },
    ...{ bagGrams: sugarIn(bag), madeAt: bag.filledAt },
  };
  if (hasLeft(status) || status === 'loaded') {
    const delivery = deliveryId === null ? await bagDeliveryOf(from, id) : await deliveryOf(from, deliveryId);
    return { ...unit, place: status === 'loaded' ? 'on-vehicle' : 'dispatched', placeCode: null, delivery };
  }
  // A hanging bag's place is its hopper: what is left in it can still be blocked there.
  return { ...unit, ...(await inHouse(from, status === 'hanging' ? null : bag.placeId)) };
}

async function inHouse(from: ReadFrom, placeId: string | null): Promise<Whereabouts> {
  const place = placeId === null ? null : await placeOf(from, placeId);
  return { place: place?.kind === 'dock' ? 'on-dock' : 'in-store', placeCode: place?.code ?? null, delivery: null };
}

function hasLeft(status: PalletStatus | BagRow['status']): boolean {
  return status === 'dispatched' || status === 'returned' || status === 'destroyed';
}

function sugarIn(bag: BagRow): number {
  return hasLeft(bag.status) ? bag.remainingGrams || (bag.netGrams ?? 0) : bag.remainingGrams;
}
