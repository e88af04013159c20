import type { Instant } from '../platform/clock.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { leaveJob } from '../platform/jobs/outbox.js';

export const lookAtWeighingJob = 'look-at-weighing';

/** Leaves the job that looks for silent weighers and hand samples that are overdue; one for the whole house. */
export async function leaveLookAtWeighing(
  tx: Tx,
  { id, at }: { readonly id: string; readonly at: Instant },
): Promise<void> {
  const waiting = await tx.sql`
    SELECT "id" FROM "outbox_job" WHERE "finished_at" IS NULL AND "kind" = ${lookAtWeighingJob} LIMIT 1`;
  if (waiting.length === 0) await leaveJob(tx, { id, kind: lookAtWeighingJob, payload: {}, at });
}
