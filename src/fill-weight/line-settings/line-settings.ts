import type { Instant } from '../../platform/clock.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { NotFound } from '../../platform/refusal.js';
import type { SetFigures } from './add-line-setting.js';

/** A change of setting, as it is listed. */
export interface LineSettingRow extends SetFigures {
  readonly id: string;
  readonly lineId: string;
  readonly formatId: string;
  readonly formatName: string;
  readonly changedAt: Instant;
  readonly why: string;
  readonly setBy: string | null;
}

/** One figure as it was last recorded. */
export interface FigureInForce {
  readonly milligrams: number;
  readonly changedAt: Instant;
  readonly why: string;
}

/** What a line is set to for a format, as far as it was recorded; a figure that nobody recorded is null. */
export interface SettingInForce {
  readonly setpoint: FigureInForce | null;
  readonly rejectBelow: FigureInForce | null;
  readonly rejectAbove: FigureInForce | null;
}

interface OnFormat {
  readonly lineId: string;
  readonly formatId: string;
}

const columns = `s."id", s."line_id" AS "lineId", s."format_id" AS "formatId", f."name" AS "formatName",
  s."setpoint_milligrams" AS "setpointMilligrams", s."reject_below_milligrams" AS "rejectBelowMilligrams",
  s."reject_above_milligrams" AS "rejectAboveMilligrams", s."changed_at" AS "changedAt", s."why", s."set_by" AS "setBy"
  FROM "line_setting" s JOIN "pack_format" f ON f."id" = s."format_id"`;

/** So many changes of a line are listed, the latest. */
export const mostListed = 200;

/** The latest changes of a line's setting, all formats, the latest first. */
export function settingsOfLine(from: ReadFrom, lineId: string): Promise<LineSettingRow[]> {
  return from.sql<LineSettingRow>`
    SELECT ${() => columns} WHERE s."line_id" = ${lineId} AND s."voided_by" IS NULL
    ORDER BY s."changed_at" DESC, s."id" DESC LIMIT ${mostListed}`;
}

/** Changes for a format from one instant to another, both included, in the order of time. */
export function settingsBetween(
  from: ReadFrom,
  { lineId, formatId, fromAt, untilAt }: OnFormat & { readonly fromAt: Instant; readonly untilAt: Instant },
): Promise<LineSettingRow[]> {
  return from.sql<LineSettingRow>`
    SELECT ${() => columns} WHERE s."line_id" = ${lineId} AND s."format_id" = ${formatId} AND s."voided_by" IS NULL
      AND s."changed_at" >= ${fromAt} AND s."changed_at" <= ${untilAt} ORDER BY s."changed_at", s."id"`;
}

/** What a line is set to for a format at an instant, what was changed at that very instant included. */
export async function settingAt(from: ReadFrom, of: OnFormat, at: Instant): Promise<SettingInForce> {
  return {
    setpoint: await figureAt(from, of, { column: 'setpoint_milligrams', at }),
    rejectBelow: await figureAt(from, of, { column: 'reject_below_milligrams', at }),
    rejectAbove: await figureAt(from, of, { column: 'reject_above_milligrams', at }),
  };
}

type FigureColumn = 'setpoint_milligrams' | 'reject_below_milligrams' | 'reject_above_milligrams';

async function figureAt(
  from: ReadFrom,
  { lineId, formatId }: OnFormat,
  { column, at }: { readonly column: FigureColumn; readonly at: Instant },
): Promise<FigureInForce | null> {
  const [row] = await from.sql<FigureInForce>`
    SELECT ${() => `"${column}"`} AS "milligrams", "changed_at" AS "changedAt", "why" FROM "line_setting"
    WHERE "line_id" = ${lineId} AND "format_id" = ${formatId} AND "voided_by" IS NULL AND "changed_at" <= ${at}
      AND ${() => `"${column}"`} IS NOT NULL ORDER BY "changed_at" DESC, "id" DESC LIMIT 1`;
  return row ?? null;
}

/** @throws {NotFound} `line-setting`, also one of another site; one that was corrected is found */
export async function settingOf(from: ReadFrom, siteId: string, settingId: string): Promise<LineSettingRow> {
  const [row] = await from.sql<LineSettingRow>`
    SELECT ${() => columns} JOIN "packing_line" l ON l."id" = s."line_id"
    WHERE s."id" = ${settingId} AND l."site_id" = ${siteId}`;
  if (row === undefined) throw new NotFound('line-setting', settingId);
  return row;
}
