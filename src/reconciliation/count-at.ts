import { millisecondsBetween, type Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';

/** A run's cumulative count at an instant. */
export interface CountAt {
  readonly packCount: number;
  /** So many packs it may be off: those between the readings before and after; 0 where one was taken just then. */
  readonly doubtPackCount: number;
}

interface Reading {
  readonly packCount: number;
  readonly countedAt: Instant;
}

/**
 * A run's count at an instant: the reading that is nearest in time. Where the instant lies between two readings, any
 * count between them may be the true one. Before the first reading there are none, after the last no more.
 */
export async function countAt(from: ReadFrom, runId: string, at: Instant): Promise<CountAt> {
  const [before] = await from.sql<Reading>`
    SELECT "pack_count" AS "packCount", "counted_at" AS "countedAt" FROM "pack_count"
    WHERE "run_id" = ${runId} AND "counted_at" <= ${at} AND "voided_by" IS NULL
    ORDER BY "counted_at" DESC, "pack_count" DESC LIMIT 1`;
  const [after] = await from.sql<Reading>`
    SELECT "pack_count" AS "packCount", "counted_at" AS "countedAt" FROM "pack_count"
    WHERE "run_id" = ${runId} AND "counted_at" > ${at} AND "voided_by" IS NULL
    ORDER BY "counted_at", "pack_count" LIMIT 1`;
  return countBetween(before ?? null, after ?? null, at);
}

/** The same from the readings around it. */
export function countBetween(before: Reading | null, after: Reading | null, at: Instant): CountAt {
  if (before === null) return { packCount: 0, doubtPackCount: 0 };
  if (after === null || before.countedAt === at) return { packCount: before.packCount, doubtPackCount: 0 };
  const doubtPackCount = Math.max(0, after.packCount - before.packCount);
  const isAfterNearer = millisecondsBetween(at, after.countedAt) < millisecondsBetween(before.countedAt, at);
  return { packCount: (isAfterNearer ? after : before).packCount, doubtPackCount };
}
