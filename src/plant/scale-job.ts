import type { Instant } from '../platform/clock.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { leaveJob } from '../platform/jobs/outbox.js';

/** What is asked of who looks at scales: whether one is overdue or has failed. */
export interface LookAtScale {
  readonly siteId: string;
  readonly scaleId: string;
}

export const lookAtScaleJob = 'look-at-scale';

/** Leaves word to look at a scale now, and again when its next check is due. */
export async function leaveLooksAtScale(
  tx: Tx,
  nextId: () => string,
  look: LookAtScale & { readonly at: readonly Instant[] },
): Promise<void> {
  const { siteId, scaleId } = look;
  for (const at of look.at) {
    await leaveJob(tx, { id: nextId(), kind: lookAtScaleJob, payload: { siteId, scaleId }, at });
  }
}
