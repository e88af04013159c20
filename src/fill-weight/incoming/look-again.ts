import { isLateForReach, leaveReachJob } from '../../open-points/reach-job.js';
import { leaveCountedJob } from '../../packing/counted-job.js';
import { millisecondsBetween, type Instant } from '../../platform/clock.js';
import type { Tx } from '../../platform/database/unit-of-work.js';
import type { Ids } from '../../platform/ids.js';
import type { PackWeigherRow } from '../pack-weighers.js';
import type { EncodedBatch } from './encode-batches.js';

const minuteMilliseconds = 60_000;

/**
 * Weights that come late change what packs hold that were answered for already: their hopper and open holds are looked at
 * again. What comes as it is weighed is looked at with the next count, as the count itself.
 */
export async function lookAgainIfLate(
  tx: Tx,
  of: {
    readonly weigher: PackWeigherRow;
    readonly batches: readonly EncodedBatch[];
    readonly at: Instant;
    readonly ids: Ids;
  },
): Promise<void> {
  const { weigher, batches, at, ids } = of;
  const late = batches.find(({ run, firstAt }) => {
    const lateMinutes = millisecondsBetween(firstAt, at) / minuteMilliseconds;
    return run.closedAt !== null || isLateForReach({ lateMinutes });
  });
  if (late === undefined) return;
  await leaveCountedJob(tx, { id: ids.next(), runId: late.run.id, lineId: weigher.lineId, at });
  await leaveReachJob(tx, { id: ids.next(), siteId: weigher.siteId, holdId: null, at });
}
