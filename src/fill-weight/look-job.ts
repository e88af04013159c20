import type { Instant } from '../platform/clock.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { leaveRecurringJob } from '../platform/jobs/outbox.js';

export const lookAtWeighingJob = 'look-at-weighing';

/** Leaves the job that looks for silent weighers and hand samples that are overdue; one for the whole house. */
export async function leaveLookAtWeighing(
  tx: Tx,
  { id, at }: { readonly id: string; readonly at: Instant },
): Promise<void> {
  await leaveRecurringJob(tx, { id, kind: lookAtWeighingJob, payload: {}, at });
}
