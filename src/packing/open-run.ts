import { localMomentAt } from '../core/shift-calendar/local-time.js';
import type { Instant } from '../platform/clock.js';
import { isTakenKey } from '../platform/database/constraint-errors.js';
import { takeNumber } from '../platform/database/number-series.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Refusal } from '../platform/refusal.js';
import { siteOf } from '../plant/plant-facts.js';
import { PackCount } from './pack-count.entity.js';
import { PackingRun } from './packing-run.entity.js';
import { PackingRunState } from './packing-run-state.entity.js';
import { makeRunNumber } from './packing-run-number.js';
import { openRunOfLine } from './packing-runs.js';

/** A run to be opened. The ids come from `Ids`; `countId` is that of its first count, which is 0. */
export interface RunDraft {
  readonly id: string;
  readonly siteId: string;
  readonly lineId: string;
  readonly formatId: string;
  readonly startedAt: Instant;
  readonly countId: string;
}

/**
 * Opens a run of a format on a line. Only the hopper's command calls it, after it has looked at what the hopper holds.
 *
 * @throws {Refusal} `line-has-open-run`, `line-was-running` (the run before was closed later than this start)
 */
export async function openRun(tx: Tx, draft: RunDraft): Promise<{ number: string }> {
  const { id, siteId, lineId, formatId, startedAt, countId } = draft;
  const { timeZone } = await siteOf(tx, siteId);
  const year = Number(localMomentAt(timeZone, startedAt).on.slice(0, 4));
  // The number is taken first: a second start waits here for the first and then sees its run.
  const number = makeRunNumber(year, await takeNumber(tx, siteId, `packing-run-${year}`));
  const open = await openRunOfLine(tx, lineId);
  if (open !== null) throw new Refusal('line-has-open-run', { line: open.lineCode, run: open.number });
  await refuseOverlap(tx, lineId, startedAt);
  await tx.insert(PackingRun, { id, siteId, number, lineId, formatId, startedAt, voidedBy: null });
  await tx.insert(PackCount, {
    id: countId,
    runId: id,
    packCount: 0,
    countedAt: startedAt,
    occasion: 'start',
    voidedBy: null,
  });
  await takeLine(tx, { runId: id, openLineId: lineId, packCount: 0, lastCountedAt: startedAt });
  return { number };
}

/** The unique line of the state row closes the race of two starts whatever went before. */
async function takeLine(tx: Tx, state: PackingRunState): Promise<void> {
  try {
    await tx.insert(PackingRunState, state);
  } catch (error) {
    if (isTakenKey(error)) throw new Refusal('line-has-open-run', { line: null, run: null });
    throw error;
  }
}

async function refuseOverlap(tx: Tx, lineId: string, startedAt: Instant): Promise<void> {
  const [later] = await tx.sql<{ number: string; closedAt: Instant }>`
    SELECT r."number", c."closed_at" AS "closedAt" FROM "packing_run" r
    JOIN "packing_run_close" c ON c."run_id" = r."id" AND c."voided_by" IS NULL
    WHERE r."line_id" = ${lineId} AND r."voided_by" IS NULL AND c."closed_at" > ${startedAt}
    ORDER BY c."closed_at" DESC LIMIT 1`;
  if (later !== undefined) throw new Refusal('line-was-running', { run: later.number, closedAt: later.closedAt });
}
