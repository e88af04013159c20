import type { Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { NotFound } from '../platform/refusal.js';
import { PackingRunState } from './packing-run-state.entity.js';
import { followCourse } from './follow-course.js';

/** Whether a run is open and how far it has counted. */
export interface RunState {
  readonly runId: string;
  readonly openLineId: string | null;
  readonly packCount: number;
  readonly lastCountedAt: Instant;
}

/**
 * Takes the run for this unit: every command that adds to a run or corrects it begins so, and what it reads afterwards
 * stays true until it commits.
 */
export async function lockRun(tx: Tx, runId: string): Promise<RunState> {
  // An update that changes nothing takes the row's lock on both databases.
  await tx.sql`UPDATE "packing_run_state" SET "pack_count" = "pack_count" WHERE "run_id" = ${runId}`;
  const state = await tx.findOne(PackingRunState, { runId });
  if (state === null) throw new NotFound('packing-run', runId);
  return state;
}

/** Sets a run's count to its last good one, and keeps its course where it is closed. */
export async function followCounts(tx: Tx, runId: string): Promise<void> {
  const [last] = await tx.sql<{ packCount: number; lastCountedAt: Instant }>`
    SELECT "pack_count" AS "packCount", "counted_at" AS "lastCountedAt" FROM "pack_count"
    WHERE "run_id" = ${runId} AND "voided_by" IS NULL ORDER BY "counted_at" DESC, "pack_count" DESC LIMIT 1`;
  if (last === undefined) throw new RangeError(`run ${runId} has no count`);
  await tx.update(PackingRunState, { runId }, { packCount: last.packCount, lastCountedAt: last.lastCountedAt });
  await followCourse(tx, runId);
}

/** The states of all runs as the facts alone say them. */
async function statesByFacts(from: ReadFrom): Promise<RunState[]> {
  return from.sql<RunState>`
    SELECT p."run_id" AS "runId", CASE WHEN x."id" IS NULL THEN r."line_id" END AS "openLineId",
      p."pack_count" AS "packCount", p."counted_at" AS "lastCountedAt"
    FROM (
      SELECT "run_id", "pack_count", "counted_at",
        ROW_NUMBER() OVER (PARTITION BY "run_id" ORDER BY "counted_at" DESC, "pack_count" DESC) AS "place"
      FROM "pack_count" WHERE "voided_by" IS NULL
    ) p
    JOIN "packing_run" r ON r."id" = p."run_id" AND r."voided_by" IS NULL
    LEFT JOIN "packing_run_close" x ON x."run_id" = r."id" AND x."voided_by" IS NULL
    WHERE p."place" = 1 ORDER BY p."run_id"`;
}

/** Sets every run's state anew by its facts; answers how many were not as the facts say. */
export async function rebuildRunStates(tx: Tx): Promise<number> {
  const stored = new Map(
    (
      await tx.sql<RunState>`
        SELECT "run_id" AS "runId", "open_line_id" AS "openLineId", "pack_count" AS "packCount",
          "last_counted_at" AS "lastCountedAt" FROM "packing_run_state"`
    ).map((state) => [state.runId, state]),
  );
  const wrong = (await statesByFacts(tx)).filter((state) => !isSame(state, stored.get(state.runId)));
  // All are taken away first: a wrong row may hold the line that a right one needs.
  for (const state of wrong) await tx.remove(PackingRunState, { runId: state.runId });
  for (const state of wrong) await tx.insert(PackingRunState, { ...state });
  return wrong.length;
}

function isSame(one: RunState, other: RunState | undefined): boolean {
  return (
    one.openLineId === other?.openLineId &&
    one.packCount === other.packCount &&
    one.lastCountedAt === other.lastCountedAt
  );
}
