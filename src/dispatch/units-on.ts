import { bagsOf } from '../drying/bulk-bags.js';
import { palletsOf } from '../pallets/pallet-list.js';
import { standingsOfPallets } from '../pallets/pallet-standing.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { Refusal } from '../platform/refusal.js';
import type { LoadedRow } from './delivery-rows.js';
import { isFit, refuseUnfit, standingsOfBags, whyUnfit, type UnitStanding } from './unit-standing.js';

/** A unit on a vehicle that may not go. */
export interface UnfitUnit extends UnitStanding {
  readonly kind: 'pallet' | 'bulk-bag';
  readonly id: string;
  /** SSCC of a pallet, short number of a bag. */
  readonly name: string;
}

/** What of the loaded units may not go, in the order of loading: all standings are computed in one pass. */
export async function unfitUnits(from: ReadFrom, loaded: readonly LoadedRow[]): Promise<readonly UnfitUnit[]> {
  const palletIds = loaded.flatMap((row) => row.palletId ?? []);
  const standings = await standingsOfPallets(from, palletIds);
  const names = new Map((await palletsOf(from, palletIds)).map((pallet) => [pallet.id, pallet.sscc]));
  const bags = await bagsOf(
    from,
    loaded.flatMap((row) => row.bagId ?? []),
  );
  const ofBags = await standingsOfBags(from, bags);
  const numbers = new Map(bags.map((bag) => [bag.id, bag.number]));
  return loaded.flatMap(({ palletId, bagId }): readonly UnfitUnit[] => {
    const [kind, id] = palletId === null ? (['bulk-bag', bagId ?? ''] as const) : (['pallet', palletId] as const);
    const standing = kind === 'pallet' ? standings.get(id) : ofBags.get(id);
    if (standing === undefined || isFit(standing)) return [];
    const { state, reasons } = standing;
    return [{ kind, id, name: (kind === 'pallet' ? names : numbers).get(id) ?? id, state, reasons }];
  });
}

/**
 * Every unit is looked at once more: a hold may have been placed since it was scanned.
 *
 * @throws {Refusal} `unit-waits`, `unit-on-hold`, `unit-rejected`, and where it is several the code given
 */
export async function refuseUnfitUnits(from: ReadFrom, loaded: readonly LoadedRow[], several: string): Promise<void> {
  const unfit = await unfitUnits(from, loaded);
  const [first] = unfit;
  if (first === undefined) return;
  if (unfit.length === 1 && several === 'units-may-not-go') refuseUnfit(first.name, first);
  throw new Refusal(several, {
    count: unfit.length,
    units: unfit.map((unit) => unit.name).join(', '),
    because: whyUnfit(first),
  });
}
