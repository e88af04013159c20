import { meanNetsOf } from '../fill-weight/mean-nets.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { toWhole } from '../platform/database/stored-values.js';
import { shifted, type Instant } from '../platform/clock.js';
import type { PeriodRow } from './hopper-period-rows.js';
import type { HopperLevel } from './hopper-level.js';
import { timeUncertaintyAt } from './record-times.js';

/** What was recorded of a period, in sums that two queries give. */
interface PeriodTotals {
  readonly tippedGrams: number;
  readonly removedGrams: number;
  /** Tips with a time that was stated later, void ones, ones without an end, levels seen: each changes more than a sum. */
  readonly oddCount: number;
  /** By the run's id; plain, so that it goes from one thread to another. */
  readonly runs: Readonly<Record<string, RunTotals>>;
}

interface RunTotals {
  readonly packCount: number;
  readonly meanMilligrams: number;
  readonly lowerMilligrams: number;
  readonly upperMilligrams: number;
}

/** What a close look at a hopper found, and what was recorded by then. */
export interface LastLook {
  readonly periodId: string;
  readonly level: HopperLevel;
  readonly totals: PeriodTotals;
}

/** A net by the scale and a removal by eye are off by less than this share. Our own value, no source. */
const tippedShare = 1.01;
const removedShare = 2;

export async function lookedAt(from: ReadFrom, period: PeriodRow, level: HopperLevel): Promise<LastLook> {
  return { periodId: period.id, level, totals: await totalsOf(from, period) };
}

/**
 * Whether nothing that was recorded since the last look can have made the level impossible: only tips and packs came,
 * in their time, and with all their limits the level stays above zero and below the capacity. So that a count a minute
 * and a tip every few need no close look at thousands of rows.
 */
export async function isSurelyPossible(
  from: ReadFrom,
  period: PeriodRow,
  { last, now }: { readonly last: LastLook; readonly now: Instant },
): Promise<boolean> {
  if (last.periodId !== period.id || last.level.findings.length > 0) return false;
  const since = changesSince(last.totals, await totalsOf(from, period));
  if (since === null) return false;
  const { tippedGrams, packed, removedGrams } = since;
  const { upperGrams, lowerGrams, capacityGrams } = last.level;
  const most = upperGrams + tippedGrams - packed.lowerGrams - removedGrams * removedShare;
  if (most < 0) return false;
  const least = lowerGrams + tippedGrams * tippedShare;
  if (least - packed.upperGrams <= capacityGrams) return true;
  // What was opened just now need not be in yet, whatever was packed meanwhile.
  return least - (await underWayGrams(from, period, now)) <= capacityGrams;
}

/**
 * Whether a hopper that held more than it can hold surely still does by its records: since the last look nothing left it
 * and nothing was put right, only more was tipped. So that bag after bag into a full hopper needs no close look each.
 */
export async function isSurelyTooFull(from: ReadFrom, period: PeriodRow, last: LastLook): Promise<boolean> {
  const tooFull = last.level.findings.find(({ kind }) => kind === 'above-capacity');
  if (last.periodId !== period.id || tooFull === undefined) return false;
  const since = changesSince(last.totals, await totalsOf(from, period));
  if (since === null || since.packed.upperGrams > 0 || since.removedGrams > 0) return false;
  // What is under way may be heavier than it counts.
  return tooFull.byGrams > since.tippedGrams * 2 * (tippedShare - 1);
}

/** Grams of tips that the level check takes as perhaps not in yet, at every instant until now: none too many. */
async function underWayGrams(from: ReadFrom, { id, siteId, startedAt }: PeriodRow, now: Instant): Promise<number> {
  const { laterMinutes, handCountMinutes } = await timeUncertaintyAt(from, siteId, startedAt);
  const openedAfter = shifted(now, (handCountMinutes - laterMinutes) * 60_000);
  const [tips] = await from.sql<{ grams: number | string | null }>`
    SELECT SUM("net_grams") AS "grams" FROM "tip"
    WHERE "period_id" = ${id} AND "opened_at" > ${openedAfter} AND "voided_by" IS NULL`;
  return toWhole(tips?.grams ?? 0) * (2 - tippedShare);
}

interface Changes {
  readonly tippedGrams: number;
  readonly removedGrams: number;
  readonly packed: { readonly lowerGrams: number; readonly grams: number; readonly upperGrams: number };
}

/** What came since a look; null where more than tips, packs and removals came, so that only a close look can tell. */
function changesSince(before: PeriodTotals, now: PeriodTotals): Changes | null {
  const packed = packedSince(before.runs, now.runs);
  const tippedGrams = now.tippedGrams - before.tippedGrams;
  const removedGrams = now.removedGrams - before.removedGrams;
  if (packed === null || now.oddCount !== before.oddCount || tippedGrams < 0 || removedGrams < 0) return null;
  return { tippedGrams, removedGrams, packed };
}

/**
 * The level by the last close look and what was recorded since, without reading the whole period again; null where more
 * than tips, packs and removals came in between, so that only a close look can tell.
 */
export async function levelSince(from: ReadFrom, period: PeriodRow, last: LastLook): Promise<HopperLevel | null> {
  if (last.periodId !== period.id) return null;
  const since = changesSince(last.totals, await totalsOf(from, period));
  if (since === null) return null;
  const { level } = last;
  const { tippedGrams: tipped, removedGrams: removed, packed } = since;
  return {
    ...level,
    lowerGrams: Math.max(0, Math.round(level.lowerGrams + tipped - packed.upperGrams - removed)),
    grams: Math.round(level.grams + tipped - packed.grams - removed),
    upperGrams: Math.round(level.upperGrams + tipped - packed.lowerGrams - removed),
  };
}

/** Null where a run is new, was counted back, or was weighed anew. */
function packedSince(before: PeriodTotals['runs'], now: PeriodTotals['runs']): Changes['packed'] | null {
  const sum = { lowerGrams: 0, grams: 0, upperGrams: 0 };
  for (const [runId, run] of Object.entries(now)) {
    const known = before[runId];
    const isSame = known?.lowerMilligrams === run.lowerMilligrams && known.upperMilligrams === run.upperMilligrams;
    if (!isSame || run.packCount < known.packCount) return null;
    sum.grams += ((run.packCount - known.packCount) * run.meanMilligrams) / 1000;
    sum.lowerGrams += ((run.packCount - known.packCount) * run.lowerMilligrams) / 1000;
    sum.upperGrams += ((run.packCount - known.packCount) * run.upperMilligrams) / 1000;
  }
  return sum;
}

async function totalsOf(from: ReadFrom, { id, hopperId, startedAt }: PeriodRow): Promise<PeriodTotals> {
  const [tips] = await from.sql<{ grams: number | string | null; oddCount: number | string | null }>`
    SELECT SUM(CASE WHEN t."voided_by" IS NULL THEN t."net_grams" - COALESCE(o."rest_grams", 0) ELSE 0 END) AS "grams",
      SUM(CASE WHEN t."is_late" = ${true} OR t."voided_by" IS NOT NULL OR COALESCE(o."rest_grams", 0) > 0
        THEN 1 ELSE 0 END) AS "oddCount"
    FROM "tip" t LEFT JOIN "tip_off" o ON o."tip_id" = t."id" AND o."voided_by" IS NULL WHERE t."period_id" = ${id}`;
  const [others] = await from.sql<{ grams: number | string | null; levelCount: number | string }>`
    SELECT (SELECT SUM(m."grams") FROM "removal" m WHERE m."hopper_id" = ${hopperId} AND m."removed_at" >= ${startedAt}
        AND m."voided_by" IS NULL) AS "grams",
      (SELECT COUNT(*) FROM "level_seen" l WHERE l."period_id" = ${id}) AS "levelCount"`;
  return {
    tippedGrams: toWhole(tips?.grams ?? 0),
    removedGrams: toWhole(others?.grams ?? 0),
    oddCount: toWhole(tips?.oddCount ?? 0) + toWhole(others?.levelCount ?? 0),
    runs: await runTotals(from, hopperId, startedAt),
  };
}

async function runTotals(from: ReadFrom, hopperId: string, startedAt: string): Promise<PeriodTotals['runs']> {
  const rows = await from.sql<{ runId: string; packCount: number }>`
    SELECT s."run_id" AS "runId", s."pack_count" AS "packCount"
    FROM (SELECT DISTINCT "line_id" FROM "hopper_line" WHERE "hopper_id" = ${hopperId}) l
    JOIN "packing_run" r ON r."line_id" = l."line_id" AND r."started_at" >= COALESCE((
      SELECT q."started_at" FROM "packing_run" q
      WHERE q."line_id" = l."line_id" AND q."voided_by" IS NULL AND q."started_at" < ${startedAt}
      ORDER BY q."started_at" DESC LIMIT 1), '')
    JOIN "packing_run_state" s ON s."run_id" = r."id"
    WHERE s."last_counted_at" >= ${startedAt}`;
  const nets = await meanNetsOf(
    from,
    rows.map(({ runId }) => runId),
  );
  return Object.fromEntries(
    rows.flatMap(({ runId, packCount }): [string, RunTotals][] => {
      const net = nets.get(runId);
      if (net === undefined) return [];
      const { meanMilligrams, lowerMilligrams, upperMilligrams } = net;
      return [[runId, { packCount, meanMilligrams, lowerMilligrams, upperMilligrams }]];
    }),
  );
}
