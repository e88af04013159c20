import type { Tx } from '../platform/database/unit-of-work.js';
import type { PalletStatus } from './pallet-rows.js';
import { PalletState } from './pallet-state.entity.js';

/** What a pallet becomes. `placeId` is a store place, or the delivery while it is loaded or gone. */
export interface NewPalletState {
  readonly status: PalletStatus;
  readonly placeId: string | null;
  readonly at: string;
}

/**
 * The one way to change where a pallet is. Of two that come at once the second finds it changed: false is its answer, and it
 * says why in its own words.
 */
export async function changePalletState(
  tx: Tx,
  palletId: string,
  expected: { readonly status: readonly PalletStatus[] },
  to: NewPalletState,
): Promise<boolean> {
  const set = { status: to.status, placeId: to.placeId, changedAt: to.at };
  for (const status of expected.status) {
    if ((await tx.update(PalletState, { palletId, status }, set)) === 1) return true;
  }
  return false;
}
