import type { BagRow } from '../drying/bulk-bags.js';

/** Whether sugar of a bag has gone on: into a hopper or onto a vehicle. */
export function isUsed(bag: Pick<BagRow, 'status'>): boolean {
  return bag.status !== 'filling' && bag.status !== 'full';
}
