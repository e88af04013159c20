import type { RunRow } from '../packing/packing-run-rows.js';
import { lotRangesOfRuns, runColumns } from '../packing/packing-runs.js';
import { clipped, packsIn, type RunRange } from '../packing/run-ranges.js';
import { millisecondsBetween, type Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { versionsOfPlan } from './check-plans.js';
import type { LineCheckRow } from './line-checks.js';

/** Packs of one run that nobody can vouch for, with the lots that they belong to. */
export interface SuspectRange extends RunRange {
  readonly runNumber: string;
  readonly formatName: string;
  readonly lots: readonly { readonly lotId: string; readonly code: string; readonly packCount: number }[];
}

/** What was packed since the last good check of the thing that failed. */
export interface SuspectPacks {
  /** The last good check before; null: there was none, so everything since the plan's first run is suspect. */
  readonly lastGood: { readonly id: string; readonly occurredAt: Instant } | null;
  /** The time of the last good check, else when the plan came into force. */
  readonly sinceAt: Instant;
  /** The first good check after; null: there is none yet, and what is packed now is suspect too. */
  readonly untilAt: Instant | null;
  readonly minutes: number;
  readonly ranges: readonly SuspectRange[];
  readonly packCount: number;
}

/**
 * The packs that a failed check makes suspect: on its line, after the count at the last good check of the same thing,
 * up to the count at the next good one or, where there is none yet, to the last count. The same thing is the same kind and
 * station, whatever plan or format. Where no count was read at a check, the nearest count on the outer side is
 * taken: rather a pack too many. Without an earlier good check all runs count that were open when the plan came into
 * force, whole, and all since.
 */
export async function suspectPacks(from: ReadFrom, failed: LineCheckRow, now: Instant): Promise<SuspectPacks> {
  const plan = await plansOfSameThing(from, failed);
  const lastGood = await nearestGood(from, plan.planIds, failed, 'before');
  const nextGood = await nearestGood(from, plan.planIds, failed, 'after');
  const sinceAt = lastGood?.occurredAt ?? plan.firstValidFrom;
  const untilAt = nextGood?.occurredAt ?? null;
  const runs = await runsBetween(from, failed.lineId, sinceAt, untilAt);
  const ranges: RunRange[] = [];
  for (const run of runs) {
    const fromCount = lastGood === null ? 0 : await countBefore(from, run, sinceAt);
    const toCount = untilAt === null ? run.packCount : await countAfter(from, run, untilAt);
    if (fromCount < toCount) ranges.push({ runId: run.id, fromCount, toCount });
  }
  return {
    lastGood,
    sinceAt,
    untilAt,
    minutes: Math.round(millisecondsBetween(sinceAt, untilAt ?? now) / 60_000),
    ranges: await withLots(from, ranges, runs),
    packCount: packsIn(ranges),
  };
}

async function plansOfSameThing(
  from: ReadFrom,
  failed: LineCheckRow,
): Promise<{ readonly planIds: readonly string[]; readonly firstValidFrom: Instant }> {
  const rows = await from.sql<{ planId: string }>`
    SELECT DISTINCT "plan_id" AS "planId" FROM "check_plan"
    WHERE "line_id" = ${failed.lineId} AND "kind" = ${failed.kind} AND LOWER("station") = ${failed.station.toLowerCase()}
      AND "voided_by" IS NULL`;
  const planIds = [...new Set([failed.planId, ...rows.map(({ planId }) => planId)])];
  const first = (await versionsOfPlan(from, failed.planId))[0]?.firstValidFrom ?? failed.occurredAt;
  return { planIds, firstValidFrom: first };
}

async function nearestGood(
  from: ReadFrom,
  planIds: readonly string[],
  failed: LineCheckRow,
  side: 'before' | 'after',
): Promise<{ readonly id: string; readonly occurredAt: Instant } | null> {
  const at = failed.occurredAt;
  const rows = await from.sql<{ id: string; occurredAt: Instant }>`
    SELECT "id", "occurred_at" AS "occurredAt" FROM "line_check"
    WHERE "plan_id" IN (${() => [...planIds]}) AND "passed" = ${true} AND "voided_by" IS NULL
      AND ${() => (side === 'before' ? '"occurred_at" <' : '"occurred_at" >')} ${at}
    ORDER BY ${() => (side === 'before' ? '"occurred_at" DESC, "id" DESC' : '"occurred_at", "id"')} LIMIT 1`;
  return rows[0] ?? null;
}

/** The runs of a line that were open at some time between two instants (null: until now), in the order of time. */
async function runsBetween(
  from: ReadFrom,
  lineId: string,
  sinceAt: Instant,
  untilAt: Instant | null,
): Promise<readonly RunRow[]> {
  return from.sql<RunRow>`
    SELECT ${runColumns} WHERE r."line_id" = ${lineId} AND r."voided_by" IS NULL
      AND (c."closed_at" IS NULL OR c."closed_at" >= ${sinceAt}) AND r."started_at" < ${untilAt ?? '~'}
    ORDER BY r."started_at", r."id"`;
}

/** The last count at or before an instant; 0 before the first. Of two at one instant the lower. */
async function countBefore(from: ReadFrom, run: RunRow, at: Instant): Promise<number> {
  const [row] = await from.sql<{ packCount: number }>`
    SELECT "pack_count" AS "packCount" FROM "pack_count"
    WHERE "run_id" = ${run.id} AND "counted_at" <= ${at} AND "voided_by" IS NULL
    ORDER BY "counted_at" DESC, "pack_count" LIMIT 1`;
  return row?.packCount ?? 0;
}

/** The first count at or after an instant; the run's last where nobody has counted since. Of two at one instant the higher. */
async function countAfter(from: ReadFrom, run: RunRow, at: Instant): Promise<number> {
  const [row] = await from.sql<{ packCount: number }>`
    SELECT "pack_count" AS "packCount" FROM "pack_count"
    WHERE "run_id" = ${run.id} AND "counted_at" >= ${at} AND "voided_by" IS NULL
    ORDER BY "counted_at", "pack_count" DESC LIMIT 1`;
  return row?.packCount ?? run.packCount;
}

async function withLots(
  from: ReadFrom,
  ranges: readonly RunRange[],
  runs: readonly RunRow[],
): Promise<readonly SuspectRange[]> {
  const lots = await lotRangesOfRuns(
    from,
    ranges.map(({ runId }) => runId),
  );
  return ranges.map((range) => {
    const run = runs.find(({ id }) => id === range.runId);
    const own = lots.flatMap((lot) => {
      const shared = clipped(range, lot);
      return shared === null ? [] : [{ lotId: lot.lotId, code: lot.code, packCount: packsIn([shared]) }];
    });
    return { ...range, runNumber: run?.number ?? '', formatName: run?.formatName ?? '', lots: own };
  });
}
