import type { Tx } from '../platform/database/unit-of-work.js';
import { leaveJobOnce } from '../platform/jobs/outbox.js';

export const reachJobKind = 'look-at-reach';

/** Up to so many minutes an entry is as good as made at once; a later one may change what was answered meanwhile. Our own value, no source. */
const atOnceMinutes = 5;

export function isLateForReach({ lateMinutes }: { readonly lateMinutes: number }): boolean {
  return lateMinutes > atOnceMinutes;
}

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
