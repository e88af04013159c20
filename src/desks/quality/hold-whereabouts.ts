import type { HoldLine } from '../../disposition/holds.js';
import { bagOf } from '../../drying/bulk-bags.js';
import type { RunCounts } from '../../packing/packing-run-rows.js';
import { filmRanges, rangesOfLot } from '../../packing/packing-runs.js';
import { palletsOf, palletsOfRanges } from '../../pallets/pallet-list.js';
import { isOnCounts, packsOfHold } from '../../pallets/timed-packs.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { reachOfHold, scopeOfRow } from '../../tracing/hold-reach.js';

/** Where what an open hold reaches is now: numbers of pallets, and a bag sold whole counts as one. */
export interface HoldWhereabouts {
  readonly palletCount: number;
  readonly awayCount: number;
  readonly onVehicleCount: number;
}

/**
 * Packs are found by their counts alone; only a hold on sugar (a bag that was tipped, a dryer run, a hopper period)
 * has to be followed through the hopper.
 */
export async function whereaboutsOfHold(from: ReadFrom, hold: HoldLine): Promise<HoldWhereabouts> {
  const statuses = await statusesOf(from, hold);
  return {
    palletCount: statuses.length,
    awayCount: statuses.filter((status) => status === 'dispatched').length,
    onVehicleCount: statuses.filter((status) => status === 'loaded').length,
  };
}

async function statusesOf(from: ReadFrom, hold: HoldLine): Promise<readonly string[]> {
  const { scopeKind, scopeId } = hold;
  if (scopeKind === 'pallet') return statusesOfPallets(from, [scopeId]);
  if (scopeKind === 'lot') return statusesOfRanges(from, await rangesOfLot(from, scopeId));
  if (scopeKind === 'film-lot') return statusesOfRanges(from, await filmRanges(from, scopeId));
  if (isOnCounts(hold)) return statusesOfRanges(from, await packsOfHold(from, hold));
  if (scopeKind === 'bulk-bag') {
    const { status } = await bagOf(from, scopeId);
    if (status === 'full' || status === 'filling') return [];
    if (status === 'loaded' || status === 'dispatched') return [status];
  }
  const { possible } = await reachOfHold(from, scopeOfRow(hold));
  return possible.map(({ status }) => status);
}

async function statusesOfRanges(from: ReadFrom, ranges: readonly RunCounts[]): Promise<readonly string[]> {
  const placed = await palletsOfRanges(from, ranges);
  return statusesOfPallets(
    from,
    placed.map(({ palletId }) => palletId),
  );
}

async function statusesOfPallets(from: ReadFrom, palletIds: readonly string[]): Promise<readonly string[]> {
  return (await palletsOf(from, palletIds)).map(({ status }) => status);
}
