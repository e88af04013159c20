import type { WeightColumns } from '../../core/weight-blocks/weight-columns.js';
import type { Instant } from '../../platform/clock.js';
import { toWhole } from '../../platform/database/stored-values.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { readBytes } from '../kept/kept-weights.js';

/** After an instant, up to and with another. */
export interface Stretch {
  readonly afterAt: Instant;
  readonly upToAt: Instant;
}

interface StoredPart {
  readonly firstAt: Instant;
  readonly lastAt: Instant;
  /** Null of a batch, which has no sums of its own. */
  readonly acceptedCount: number | string | null;
  readonly weights: Uint8Array | null;
}

/**
 * How many accepted packs of a run all its weighers weighed in a stretch of time. Blocks that lie within it are counted by
 * their sums; single weights that cannot be read count for nothing, so that their packs stay unverified.
 */
export async function acceptedBetween(from: ReadFrom, runId: string, stretch: Stretch): Promise<number> {
  const { afterAt, upToAt } = stretch;
  const parts = await from.sql<StoredPart>`
    SELECT "first_at" AS "firstAt", "last_at" AS "lastAt", "accepted_pack_count" AS "acceptedCount",
      CASE WHEN "first_at" > ${afterAt} AND "last_at" <= ${upToAt} THEN NULL ELSE "weights" END AS "weights"
    FROM "weight_block" WHERE "run_id" = ${runId} AND "last_at" > ${afterAt} AND "first_at" <= ${upToAt}
    UNION ALL
    SELECT "first_at", "last_at", NULL, "weights"
    FROM "weight_batch" WHERE "run_id" = ${runId} AND "last_at" > ${afterAt} AND "first_at" <= ${upToAt}`;
  return parts.reduce((sum, part) => sum + acceptedIn(part, stretch), 0);
}

function acceptedIn({ firstAt, lastAt, acceptedCount, weights }: StoredPart, stretch: Stretch): number {
  const isWithin = firstAt > stretch.afterAt && lastAt <= stretch.upToAt;
  if (isWithin && acceptedCount !== null) return toWhole(acceptedCount);
  const columns = readBytes(weights);
  return typeof columns === 'string' ? 0 : acceptedOf(columns, stretch);
}

function acceptedOf({ atCentiseconds, isRejected }: WeightColumns, { afterAt, upToAt }: Stretch): number {
  const [after, upTo] = [Date.parse(afterAt) / 10, Date.parse(upToAt) / 10];
  let count = 0;
  atCentiseconds.forEach((at, place) => {
    if (at > after && at <= upTo && isRejected?.[place] !== 1) count += 1;
  });
  return count;
}
