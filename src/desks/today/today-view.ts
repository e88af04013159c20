import { isOnCounts } from '../../pallets/timed-packs.js';
import { whereaboutsOfHold } from '../quality/hold-whereabouts.js';
import { localMomentAt } from '../../core/shift-calendar/local-time.js';
import type { LocatedShift } from '../../core/shift-calendar/locate-shift.js';
import { deliveriesToGo, type DeliveryRow } from '../../dispatch/deliveries.js';
import { openHoldsOfSite, type HoldLine } from '../../disposition/holds.js';
import type { HopperLevel } from '../../hopper/hopper-level.js';
import { hoppersOf } from '../../hopper/hopper-views.js';
import { dueChecks, type DueCheck } from '../../line-checks/due-checks.js';
import { interruptedHours, mostAnHour } from '../../open-points/interruptions.js';
import { shiftAt, siteOf } from '../../plant/plant-facts.js';
import type { NamedRow } from '../../plant/plant-rows.js';
import type { Role } from '../../platform/actor.js';
import { shifted } from '../../platform/clock.js';
import { toWhole } from '../../platform/database/stored-values.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { NotFound } from '../../platform/refusal.js';
import { shiftBalanceOf, type ShiftBalance } from '../../reconciliation/shift-balance.js';

/** A line now: what runs on it, and since when and why it stands. */
export interface LineToday {
  readonly id: string;
  readonly name: string;
  readonly runId: string | null;
  readonly runNumber: string | null;
  readonly formatName: string | null;
  readonly startedAt: string | null;
  readonly stoppedAt: string | null;
  readonly stopReason: string | null;
  /** Checks that are failed, overdue or due. */
  readonly checks: readonly DueCheck[];
}

/** A hopper now, and what went through it in this shift and the one before. */
export interface HopperToday extends NamedRow {
  readonly level: HopperLevel;
  readonly thisShift: ShiftBalance | null;
}

/** Open points that one role has to look at. */
export interface PointsOfRole {
  readonly role: Role;
  readonly count: number;
  readonly oldestAt: string;
}

/** A hold that is open; how many of the units that it names have left. */
export interface HoldToday extends HoldLine {
  readonly awayCount: number;
}

/** The plant today, on one page. */
export interface TodayView {
  readonly now: string;
  readonly shift: LocatedShift | null;
  readonly lines: readonly LineToday[];
  readonly hoppers: readonly HopperToday[];
  readonly points: readonly PointsOfRole[];
  readonly holds: readonly HoldToday[];
  readonly deliveries: readonly DeliveryRow[];
  /** Hours of the last day in which somebody was interrupted more often than people stand. */
  readonly tooOften: number;
  readonly interruptions: number;
}

export async function todayView(from: ReadFrom, siteId: string, now: string): Promise<TodayView> {
  const { timeZone } = await siteOf(from, siteId);
  const shift = await shiftOrNull(from, siteId, now);
  const on = localMomentAt(timeZone, now).on;
  const leftSince = shifted(now, -86_400_000);
  const hours = await interruptedHours(from, siteId, leftSince);
  return {
    now,
    shift,
    lines: await linesToday(from, siteId, now),
    hoppers: await hoppersToday(from, siteId, shift, now),
    points: await pointsByRole(from, siteId),
    holds: await holdsToday(from, siteId),
    deliveries: await deliveriesToGo(from, siteId, { on, leftSince }),
    tooOften: hours.filter(({ shownCount }) => shownCount > mostAnHour).length,
    interruptions: hours.reduce((sum, { shownCount }) => sum + shownCount, 0),
  };
}

async function shiftOrNull(from: ReadFrom, siteId: string, now: string): Promise<LocatedShift | null> {
  try {
    return await shiftAt(from, siteId, now);
  } catch (error) {
    if (error instanceof NotFound) return null;
    throw error;
  }
}

async function linesToday(from: ReadFrom, siteId: string, now: string): Promise<LineToday[]> {
  const rows = await from.sql<Omit<LineToday, 'checks'>>`
    SELECT l."id", l."name", r."id" AS "runId", r."number" AS "runNumber", f."name" AS "formatName",
      r."started_at" AS "startedAt", p."stopped_at" AS "stoppedAt", p."reason" AS "stopReason"
    FROM "packing_line" l
    LEFT JOIN "packing_run_state" s ON s."open_line_id" = l."id"
    LEFT JOIN "packing_run" r ON r."id" = s."run_id"
    LEFT JOIN "pack_format" f ON f."id" = r."format_id"
    LEFT JOIN "line_stop" p ON p."id" = (SELECT MAX(x."id") FROM "line_stop" x
      WHERE x."run_id" = r."id" AND x."voided_by" IS NULL AND NOT EXISTS (
        SELECT 1 FROM "line_restart" a WHERE a."stop_id" = x."id" AND a."voided_by" IS NULL))
    WHERE l."site_id" = ${siteId} ORDER BY l."code"`;
  const lines: LineToday[] = [];
  for (const row of rows) {
    const checks = row.runId === null ? [] : await dueChecks(from, row.id, now);
    lines.push({ ...row, checks: checks.filter(({ word }) => ['failed', 'overdue', 'due'].includes(word)) });
  }
  return lines;
}

async function hoppersToday(
  from: ReadFrom,
  siteId: string,
  shift: LocatedShift | null,
  now: string,
): Promise<HopperToday[]> {
  const hoppers: HopperToday[] = [];
  for (const hopper of await hoppersOf(from, siteId)) {
    const asked = { siteId, hopperId: hopper.id, untilAt: now, level: hopper.level };
    const thisShift = shift === null ? null : await shiftBalanceOf(from, { ...asked, fromAt: shift.startsAt });
    hoppers.push({ ...hopper, thisShift });
  }
  return hoppers;
}

async function pointsByRole(from: ReadFrom, siteId: string): Promise<PointsOfRole[]> {
  const rows = await from.sql<{ role: Role; count: number | string; oldestAt: string }>`
    SELECT p."role", COUNT(*) AS "count", MIN(p."raised_at") AS "oldestAt"
    FROM "open_point_state" s JOIN "open_point" p ON p."id" = s."point_id"
    WHERE s."site_id" = ${siteId} GROUP BY p."role" ORDER BY MIN(p."raised_at")`;
  return rows.map((row) => ({ ...row, count: toWhole(row.count) }));
}

/** How much of what a hold covers has left: the bag itself, the pallet itself, or pallets of its lot or run. */
async function holdsToday(from: ReadFrom, siteId: string): Promise<HoldToday[]> {
  const holds: HoldToday[] = [];
  for (const hold of await openHoldsOfSite(from, siteId, 30)) {
    holds.push({ ...hold, awayCount: await awayOf(from, hold) });
  }
  return holds;
}

async function awayOf(from: ReadFrom, hold: HoldLine): Promise<number> {
  const { scopeKind, scopeId, fromAt } = hold;
  if (isOnCounts(hold) && fromAt !== null) return (await whereaboutsOfHold(from, hold)).awayCount;
  if (scopeKind === 'bulk-bag') {
    const bags = await from.sql`
      SELECT "bag_id" FROM "bag_state" WHERE "bag_id" = ${scopeId} AND "status" = 'dispatched'`;
    return bags.length;
  }
  const column = { pallet: 'c."pallet_id"', lot: 'c."lot_id"', 'packing-run': 'c."run_id"' }[scopeKind as string];
  if (column === undefined) return 0;
  const [row] = await from.sql<{ count: number | string }>`
    SELECT COUNT(DISTINCT c."pallet_id") AS "count" FROM "pallet_content" c
    JOIN "pallet_state" s ON s."pallet_id" = c."pallet_id"
    WHERE ${() => column} = ${scopeId} AND c."voided_by" IS NULL AND s."status" = 'dispatched'`;
  return toWhole(row?.count ?? 0);
}
