import { hopperOf, hopperOfLine, lineOf, shiftAt } from '../../plant/plant-facts.js';
import type { HopperRow, NamedRow } from '../../plant/plant-rows.js';
import type { LocatedShift } from '../../core/shift-calendar/locate-shift.js';
import { openRunOfLine } from '../../packing/packing-runs.js';
import type { RunRow } from '../../packing/packing-run-rows.js';
import type { Instant } from '../../platform/clock.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { NotFound } from '../../platform/refusal.js';

/** A line at an instant, with what feeds it and what runs on it: what each of its pages begins from. */
export interface LineNow {
  readonly line: NamedRow;
  /** Null: none feeds it. */
  readonly hopper: HopperRow | null;
  readonly run: RunRow | null;
  readonly shift: LocatedShift;
  readonly now: Instant;
}

/** @throws {NotFound} `packing-line`, also for one of another site */
export async function lineNow(
  from: ReadFrom,
  siteId: string,
  { lineId, now }: { readonly lineId: string; readonly now: Instant },
): Promise<LineNow> {
  const line = await lineOf(from, lineId);
  if (line.siteId !== siteId) throw new NotFound('packing-line', lineId);
  const hopperId = await hopperOfLine(from, lineId, now);
  return {
    line,
    hopper: hopperId === null ? null : await hopperOf(from, hopperId),
    run: await openRunOfLine(from, lineId),
    shift: await shiftAt(from, siteId, now),
    now,
  };
}

/** The lines of a site by code, each with what runs on it. */
export async function linesOf(
  from: ReadFrom,
  siteId: string,
): Promise<{ readonly id: string; readonly code: string; readonly name: string; readonly format: string | null }[]> {
  return from.sql`
    SELECT l."id", l."code", l."name", f."name" AS "format" FROM "packing_line" l
    LEFT JOIN "packing_run_state" s ON s."open_line_id" = l."id"
    LEFT JOIN "packing_run" r ON r."id" = s."run_id"
    LEFT JOIN "pack_format" f ON f."id" = r."format_id"
    WHERE l."site_id" = ${siteId} ORDER BY l."code"`;
}

/** The scales of a site: which one weighed is always asked. */
export async function scalesOf(
  from: ReadFrom,
  siteId: string,
): Promise<{ readonly id: string; readonly name: string }[]> {
  return from.sql`SELECT "id", "code" || ' · ' || "name" AS "name" FROM "scale" WHERE "site_id" = ${siteId} ORDER BY "code"`;
}

/** The formats of a site. */
export async function formatsOf(
  from: ReadFrom,
  siteId: string,
): Promise<{ readonly id: string; readonly code: string; readonly name: string }[]> {
  return from.sql`SELECT "id", "code", "name" FROM "pack_format" WHERE "site_id" = ${siteId} ORDER BY "code"`;
}

/** Who works here and may stand by as a second person, by name. */
export async function colleaguesOf(
  from: ReadFrom,
  siteId: string,
  personId: string | null,
): Promise<{ readonly id: string; readonly name: string }[]> {
  return from.sql`
    SELECT p."id", COALESCE(n."name", p."code") AS "name" FROM "person" p
    LEFT JOIN "person_name" n ON n."person_id" = p."id"
    WHERE p."site_id" = ${siteId} AND p."id" <> ${personId ?? ''} AND EXISTS (
      SELECT 1 FROM "role_holding" r WHERE r."person_id" = p."id" AND r."voided_by" IS NULL AND r."role" <> 'auditor')
    ORDER BY 2`;
}
