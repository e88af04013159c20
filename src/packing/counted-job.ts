import type { Instant } from '../platform/clock.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { leaveJobOnce } from '../platform/jobs/outbox.js';

const kind = 'packs-counted';

/**
 * Leaves the job that looks at the hopper after a count. One that waits already looks at this count too, so lines that
 * count every minute leave one job and not hundreds. The job bears the count's id.
 */
export async function leaveCountedJob(
  tx: Tx,
  counted: { readonly id: string; readonly runId: string; readonly lineId: string; readonly at: Instant },
): Promise<void> {
  const payload = { runId: counted.runId, lineId: counted.lineId };
  await leaveJobOnce(tx, { id: counted.id, kind, payload, at: counted.at });
}
