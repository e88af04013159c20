import type { Instant } from '../platform/clock.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { leaveJobOnce } from '../platform/jobs/outbox.js';

export const levelJobKind = 'check-hopper-level';

/** Leaves the job that looks at a hopper period's level. One that waits already looks at this change too. */
export async function leaveLevelJob(
  tx: Tx,
  job: { readonly id: string; readonly periodId: string; readonly at: Instant },
): Promise<void> {
  await leaveJobOnce(tx, { id: job.id, kind: levelJobKind, payload: { periodId: job.periodId }, at: job.at });
}
