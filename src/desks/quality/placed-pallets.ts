import { groupBy } from '../../platform/group-by.js';
import type { PalletLine } from '../../tracing/thread.js';

/** Pallets of a hold at one kind of place. */
export interface PlacedPallets {
  readonly status: string;
  readonly pallets: readonly PalletLine[];
  readonly packCount: number;
}

/** Who must be told first: what has left, then what stands on a vehicle, then what is in store. */
const order = ['dispatched', 'loaded', 'in-store'];

/** The pallets that a hold reaches, by where they are; those that have left already come first. */
export function palletLinesByStatus(pallets: readonly PalletLine[]): readonly PlacedPallets[] {
  const rank = (status: string): number => (order.includes(status) ? order.indexOf(status) : order.length);
  return [...groupBy(pallets, ({ status }) => status)]
    .sort(([one], [other]) => rank(one) - rank(other))
    .map(([status, own]) => ({
      status,
      pallets: own,
      packCount: own.reduce((sum, { packCount }) => sum + packCount, 0),
    }));
}
