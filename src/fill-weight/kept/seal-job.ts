import type { Instant } from '../../platform/clock.js';
import type { Tx } from '../../platform/database/unit-of-work.js';
import { leaveRecurringJob } from '../../platform/jobs/outbox.js';

export const sealWeightsJob = 'seal-weights';

/** Leaves the job that seals weights, which then comes again by itself; one for the whole house. */
export async function leaveSealJob(tx: Tx, { id, at }: { readonly id: string; readonly at: Instant }): Promise<void> {
  await leaveRecurringJob(tx, { id, kind: sealWeightsJob, payload: {}, at });
}
