import { canonicalText } from '../platform/canonical-text.js';
import type { Instant } from '../platform/clock.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { leaveJob } from '../platform/jobs/outbox.js';

export const levelJobKind = 'check-hopper-level';

/** Leaves the job that looks at a hopper period's level. One that waits already looks at this change too. */
export async function leaveLevelJob(
  tx: Tx,
  job: { readonly id: string; readonly periodId: string; readonly at: Instant },
): Promise<void> {
  const payload = { periodId: job.periodId };
  const waiting = await tx.sql`
    SELECT "id" FROM "outbox_job" WHERE "finished_at" IS NULL AND "leased_until" IS NULL AND "kind" = ${levelJobKind}
      AND "payload" = ${canonicalText(payload)} LIMIT 1`;
  if (waiting.length === 0) await leaveJob(tx, { id: job.id, kind: levelJobKind, payload, at: job.at });
}
