import type { Instant } from '../../platform/clock.js';
import type { Tx } from '../../platform/database/unit-of-work.js';
import { leaveJob } from '../../platform/jobs/outbox.js';

export const sealWeightsJob = 'seal-weights';

/** Leaves the job that seals weights, which then comes again by itself; one for the whole house. */
export async function leaveSealJob(tx: Tx, { id, at }: { readonly id: string; readonly at: Instant }): Promise<void> {
  const waiting = await tx.sql`
    SELECT "id" FROM "outbox_job" WHERE "finished_at" IS NULL AND "kind" = ${sealWeightsJob} LIMIT 1`;
  if (waiting.length === 0) await leaveJob(tx, { id, kind: sealWeightsJob, payload: {}, at });
}
