import type { Instant } from '../platform/clock.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { leaveRecurringJob } from '../platform/jobs/outbox.js';

export const lookAtChecksJob = 'look-at-line-checks';

/** Leaves the job that looks at a site's checks, which then comes again by itself; one a site. */
export async function leaveLookAtChecks(
  tx: Tx,
  look: { readonly id: string; readonly siteId: string; readonly at: Instant },
): Promise<void> {
  const { id, siteId, at } = look;
  await leaveRecurringJob(tx, { id, kind: lookAtChecksJob, payload: { siteId }, at });
}
