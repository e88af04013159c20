import type { HoldRow } from '../disposition/standings.js';
import { partsToNarrow } from '../pallets/parts-to-narrow.js';
import { reachNow } from '../pallets/reach-now.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { reachOfHold, scopeOfRow, type ReachedBag } from './hold-reach.js';
import type { NarrowedParts } from './hold.form.js';
import { wantedParts } from './narrow-hold.js';
import type { PalletLine } from './thread.js';

/** What a narrowing would take out of a hold, before it is signed; and what stays. */
export interface NarrowingPreview {
  readonly freed: readonly PalletLine[];
  readonly freedPackCount: number;
  readonly freedBags: readonly ReachedBag[];
  readonly stays: readonly PalletLine[];
  readonly staysPackCount: number;
  readonly staysBags: readonly ReachedBag[];
}

/**
 * @throws {Refusal} `nothing-to-take-out`, `minutes-turned-round`, `part-not-reached`, `part-is-the-hold`,
 *   `no-pack-in-these-minutes`
 * @throws {NotFound} bulk-bag, pallet, lot, packing-run
 */
export async function previewNarrowing(
  from: ReadFrom,
  siteId: string,
  hold: HoldRow,
  form: NarrowedParts,
): Promise<NarrowingPreview> {
  const wanted = wantedParts(form);
  const parts = await partsToNarrow(from, siteId, hold, wanted);
  const { possible, bags } = await reachOfHold(from, scopeOfRow(hold), hold);
  const ids = possible.map(({ palletId }) => palletId);
  const after = await reachNow(from, hold, ids, parts);
  const [freed, stays] = parted(possible, ({ palletId }) => after.get(palletId) === 'out');
  const [freedBags, staysBags] = parted(
    bags.filter(({ isOut }) => !isOut),
    ({ bag }) => wanted.bagIds.includes(bag.id),
  );
  return { freed, freedPackCount: packsOn(freed), freedBags, stays, staysPackCount: packsOn(stays), staysBags };
}

function parted<Item>(items: readonly Item[], isOne: (item: Item) => boolean): readonly [Item[], Item[]] {
  return [items.filter(isOne), items.filter((item) => !isOne(item))];
}

function packsOn(pallets: readonly PalletLine[]): number {
  return pallets.reduce((sum, { packCount }) => sum + packCount, 0);
}
