import { canonicalText } from '../platform/canonical-text.js';
import type { Instant } from '../platform/clock.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { leaveJob } from '../platform/jobs/outbox.js';

export const lookAtChecksJob = 'look-at-line-checks';

/** Leaves the job that looks at a site's checks, which then comes again by itself; one a site. */
export async function leaveLookAtChecks(
  tx: Tx,
  look: { readonly id: string; readonly siteId: string; readonly at: Instant },
): Promise<void> {
  const payload = { siteId: look.siteId };
  const waiting = await tx.sql`
    SELECT "id" FROM "outbox_job" WHERE "finished_at" IS NULL AND "kind" = ${lookAtChecksJob}
      AND "payload" = ${canonicalText(payload)} LIMIT 1`;
  if (waiting.length === 0) await leaveJob(tx, { id: look.id, kind: lookAtChecksJob, payload, at: look.at });
}
