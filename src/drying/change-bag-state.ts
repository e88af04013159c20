import type { Tx } from '../platform/database/unit-of-work.js';
import { BagState } from './bag-state.entity.js';
import type { BagStatus } from './bag-status.js';

/** What a bag must be, for a change of its state to be taken. */
export interface ExpectedBagState {
  readonly status: readonly BagStatus[];
  /** Where given, nothing may have been taken out meanwhile. */
  readonly remainingGrams?: number;
}

/** What a bag becomes. `placeId` is a store place, a hopper or a delivery, after the status. */
export interface NewBagState {
  readonly status: BagStatus;
  readonly remainingGrams: number;
  readonly placeId: string | null;
  readonly at: string;
}

/**
 * The one way to change where a bag is and how much is left in it. Of two that come at once the second finds the bag
 * changed: false is its answer, and it says why in its own words.
 */
export async function changeBagState(
  tx: Tx,
  bagId: string,
  expected: ExpectedBagState,
  to: NewBagState,
): Promise<boolean> {
  const set = { status: to.status, remainingGrams: to.remainingGrams, placeId: to.placeId, changedAt: to.at };
  for (const status of expected.status) {
    const where = { bagId, status, remainingGrams: expected.remainingGrams };
    if ((await tx.update(BagState, where, set)) === 1) return true;
  }
  return false;
}
