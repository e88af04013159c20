import type { Tx } from '../platform/database/unit-of-work.js';
import { leaveJobOnce } from '../platform/jobs/outbox.js';

export const reachJobKind = 'look-at-reach';

/** Whose reach is to be looked at. */
export interface ReachLook {
  readonly siteId: string;
  /** The hold that was itself changed, so that quality knows; null: all open ones, after what had happened was recorded otherwise. */
  readonly holdId: string | null;
}

/** Leaves the job that looks how far open holds reach now. */
export async function leaveReachJob(
  tx: Tx,
  { id, at, ...look }: ReachLook & { readonly id: string; readonly at: string },
): Promise<void> {
  await leaveJobOnce(tx, { id, kind: reachJobKind, payload: { ...look }, at });
}
