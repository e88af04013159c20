import type { Asked, Change } from '../journal/entry-draft.js';
import { settleAsked, type SettledAsk } from '../journal/settle-asked.js';
import { millisecondsBetween, type Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Refusal } from '../platform/refusal.js';
import type { RunRow } from './packing-run-rows.js';
import { findRun, runOf } from './packing-runs.js';
import { lockRun } from './run-states.js';

/** A counter that was read at most so long ago still stands for now. Our own value, no source. */
const countStandsMilliseconds = 2 * 60_000;

/** What a form says of a happening on a run. */
export interface HappeningOnRun {
  readonly asked: Asked;
  readonly run: string;
  readonly statedAt: Instant | null;
  readonly lateReason: string | null;
}

/** The run, taken for this unit, and when the thing happened on it. */
export interface RunAt extends SettledAsk {
  readonly run: RunRow;
}

/**
 * Takes a run for something that happened on it. A late fact of a run that was closed since is taken.
 *
 * @throws {Refusal} `run-is-closed`, `before-run-start`, those of the time
 * @throws {NotFound} `packing-run`
 */
export async function takeRunAt(tx: Tx, change: Change, happening: HappeningOnRun): Promise<RunAt> {
  const { id } = await findRun(tx, happening.asked.actor.siteId, happening.run);
  await lockRun(tx, id);
  const run = await runOf(tx, id);
  const { asked, statedAt, lateReason } = happening;
  const settled = settleAsked(asked, { statedAt, reason: lateReason }, change.recordedAt);
  refuseOutsideRun(run, settled.occurredAt);
  return { run, ...settled };
}

/** @throws {Refusal} `run-is-closed`, `before-run-start` */
export function refuseOutsideRun(run: RunRow, at: Instant): void {
  if (at < run.startedAt) throw new Refusal('before-run-start', { run: run.number, startedAt: run.startedAt });
  if (run.closedAt !== null && at > run.closedAt) {
    throw new Refusal('run-is-closed', { run: run.number, closedAt: run.closedAt });
  }
}

/**
 * The run's count at an instant at which nobody read the counter: the last one, when it is fresh, or when the line
 * stood between it and the next.
 *
 * @throws {Refusal} `count-needed`
 */
export async function countWithoutReading(from: ReadFrom, run: RunRow, at: Instant): Promise<number> {
  const [last] = await from.sql<{ packCount: number; countedAt: Instant }>`
    SELECT "pack_count" AS "packCount", "counted_at" AS "countedAt" FROM "pack_count"
    WHERE "run_id" = ${run.id} AND "counted_at" <= ${at} AND "voided_by" IS NULL
    ORDER BY "counted_at" DESC, "pack_count" DESC LIMIT 1`;
  const [next] = await from.sql<{ packCount: number }>`
    SELECT "pack_count" AS "packCount" FROM "pack_count"
    WHERE "run_id" = ${run.id} AND "counted_at" >= ${at} AND "voided_by" IS NULL
    ORDER BY "counted_at", "pack_count" LIMIT 1`;
  if (last === undefined) throw new RangeError(`run ${run.number} has no count`);
  const isFresh = millisecondsBetween(last.countedAt, at) <= countStandsMilliseconds;
  if (isFresh || next?.packCount === last.packCount) return last.packCount;
  throw new Refusal('count-needed', { run: run.number, lastCount: last.packCount, lastAt: last.countedAt });
}
