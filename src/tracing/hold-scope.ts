import type { HoldScope } from '../disposition/standings.js';
import { bagOf } from '../drying/bulk-bags.js';
import { dryerRunOf } from '../drying/dryer-runs.js';
import { periodOf } from '../hopper/hopper-period-rows.js';
import { filmLotOf, lotOf, runOf } from '../packing/packing-runs.js';
import { palletOf } from '../pallets/pallet-list.js';
import type { ReadFrom } from '../platform/database/reading.js';

/** @throws {NotFound} when there is no such thing to hold */
export async function refuseUnknownScope(from: ReadFrom, scope: HoldScope): Promise<void> {
  const find = {
    'bulk-bag': bagOf,
    'dryer-run': dryerRunOf,
    lot: lotOf,
    'packing-run': runOf,
    pallet: palletOf,
    'hopper-period': periodOf,
    'film-lot': filmLotOf,
  }[scope.kind];
  await find(from, scope.id);
}
