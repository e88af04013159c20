import type { Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { countsOf, runOf } from './packing-runs.js';
import type { RunCounts } from './packing-run-rows.js';
import { possibleRange, type TimeWindow } from './ranges-in-time.js';

/** The runs of a line that were open at some time of a window, in the order of time. */
export function runsOfLine(
  from: ReadFrom,
  during: { readonly lineId: string; readonly fromAt: Instant; readonly untilAt: Instant },
): Promise<{ readonly id: string; readonly number: string }[]> {
  return from.sql`
    SELECT r."id", r."number" FROM "packing_run" r
    LEFT JOIN "packing_run_close" c ON c."run_id" = r."id" AND c."voided_by" IS NULL
    WHERE r."line_id" = ${during.lineId} AND r."voided_by" IS NULL AND r."started_at" < ${during.untilAt}
      AND (c."closed_at" IS NULL OR c."closed_at" > ${during.fromAt})
    ORDER BY r."started_at", r."id"`;
}

/**
 * The packs of a run that may have been packed within a window, as counts say now: from the last count before it to the
 * first after it. Where none came after it yet, it has no end: what is counted next may be of it.
 */
export async function packsOfRunBetween(from: ReadFrom, runId: string, window: TimeWindow): Promise<RunCounts[]> {
  const { packCount, closedAt } = await runOf(from, runId);
  const openEnd = Number.MAX_SAFE_INTEGER;
  const all = { runId, fromCount: 0, toCount: closedAt === null ? openEnd : packCount };
  const range = possibleRange(all, await countsOf(from, [runId]), window);
  return range === null ? [] : [{ ...range, toCount: range.toCount === openEnd ? null : range.toCount }];
}

/** The packs that a line may have packed within a window, run by run. */
export async function packsOfLineBetween(from: ReadFrom, lineId: string, window: TimeWindow): Promise<RunCounts[]> {
  const packs: RunCounts[] = [];
  for (const { id } of await runsOfLine(from, { lineId, ...window })) {
    packs.push(...(await packsOfRunBetween(from, id, window)));
  }
  return packs;
}
