import { locateShift, type LocatedShift } from '../core/shift-calendar/locate-shift.js';
import type { ShiftPattern } from '../core/shift-calendar/shift-pattern.js';
import type { Specification } from '../core/sugar-analysis/specification.js';
import type { Canonical } from '../platform/canonical-text.js';
import type { Instant } from '../platform/clock.js';
import { once, type ReadFrom } from '../platform/database/reading.js';
import { NotFound } from '../platform/refusal.js';
import type {
  CoderClockReading,
  CoderRow,
  CustomerRow,
  FormatRow,
  GradeRow,
  HopperRow,
  LinePeriod,
  NamedRow,
  PlaceRow,
  ScaleStanding,
  SiteRow,
} from './plant-rows.js';
import { scaleStanding, type CheckedScale, type VerifiedSpan } from './scale-standing.js';
import { readShiftPattern } from './shift-pattern-text.js';

/** A coder whose clock nobody has compared yet: right to two minutes, our own value, no source. */
export const uncomparedCoderClock: CoderClockReading = { offsetSeconds: 0, uncertaintySeconds: 120 };

export function siteOf(from: ReadFrom, siteId: string): Promise<SiteRow> {
  return once(from, `site ${siteId}`, () => readSite(from, siteId));
}

async function readSite(from: ReadFrom, siteId: string): Promise<SiteRow> {
  const rows = await from.sql<SiteRow>`
    SELECT s."id", s."code", COALESCE(r."name", s."name") AS "name",
      COALESCE(r."time_zone", s."time_zone") AS "timeZone",
      COALESCE(r."production_day_start", s."production_day_start") AS "productionDayStart",
      COALESCE(r."gln", s."gln") AS "gln", COALESCE(r."company_prefix", s."company_prefix") AS "companyPrefix",
      COALESCE(r."sscc_extension_digit", s."sscc_extension_digit") AS "ssccExtensionDigit",
      COALESCE((SELECT p."language" FROM "paper_language" p WHERE p."site_id" = s."id" AND p."customer_id" IS NULL
        ORDER BY p."id" DESC LIMIT 1), 'en') AS "paperLanguage"
    FROM "site" s LEFT JOIN "site_revision" r ON r."id" = (
      SELECT MAX(x."id") FROM "site_revision" x WHERE x."site_id" = s."id")
    WHERE s."id" = ${siteId}`;
  return known('site', siteId, rows);
}

/** The site where there is exactly one; null before it is set up, and where there are several. */
export async function onlySiteId(from: ReadFrom): Promise<string | null> {
  const rows = await from.sql<{ id: string }>`SELECT "id" FROM "site" ORDER BY "id" LIMIT 2`;
  return rows.length === 1 ? (rows[0]?.id ?? null) : null;
}

export function dryerOf(from: ReadFrom, dryerId: string): Promise<NamedRow> {
  return once(from, `dryer ${dryerId}`, () => readDryer(from, dryerId));
}

async function readDryer(from: ReadFrom, dryerId: string): Promise<NamedRow> {
  const rows = await from.sql<NamedRow>`
    SELECT "id", "site_id" AS "siteId", "code", "name" FROM "dryer" WHERE "id" = ${dryerId}`;
  return known('dryer', dryerId, rows);
}

export function hopperOf(from: ReadFrom, hopperId: string): Promise<HopperRow> {
  return once(from, `hopper ${hopperId}`, () => readHopper(from, hopperId));
}

async function readHopper(from: ReadFrom, hopperId: string): Promise<HopperRow> {
  const rows = await from.sql<HopperRow>`
    SELECT "id", "site_id" AS "siteId", "code", "name", "capacity_grams" AS "capacityGrams",
      "flow_model" AS "flowModel", "likely_permille" AS "likelyPermille"
    FROM "hopper" WHERE "id" = ${hopperId}`;
  return known('hopper', hopperId, rows);
}

export async function lineOf(from: ReadFrom, lineId: string): Promise<NamedRow> {
  const rows = await from.sql<NamedRow>`
    SELECT "id", "site_id" AS "siteId", "code", "name" FROM "packing_line" WHERE "id" = ${lineId}`;
  return known('packing-line', lineId, rows);
}

/** The hopper that feeds a line at an instant; null: none did. */
export async function hopperOfLine(from: ReadFrom, lineId: string, at: Instant): Promise<string | null> {
  const rows = await from.sql<{ hopperId: string | null }>`
    SELECT "hopper_id" AS "hopperId" FROM "hopper_line"
    WHERE "line_id" = ${lineId} AND "valid_from" <= ${at} AND "voided_by" IS NULL
    ORDER BY "valid_from" DESC, "id" DESC LIMIT 1`;
  return rows[0]?.hopperId ?? null;
}

/** When a hopper fed which lines, in the order of time. */
export async function linesOfHopper(from: ReadFrom, hopperId: string): Promise<LinePeriod[]> {
  return from.sql<LinePeriod>`
    SELECT l."line_id" AS "lineId", l."from_at" AS "fromAt", l."until_at" AS "untilAt"
    FROM (
      SELECT "line_id", "hopper_id", "valid_from" AS "from_at",
        LEAD("valid_from") OVER (PARTITION BY "line_id" ORDER BY "valid_from", "id") AS "until_at"
      FROM "hopper_line"
      WHERE "voided_by" IS NULL
        AND "line_id" IN (SELECT "line_id" FROM "hopper_line" WHERE "hopper_id" = ${hopperId})
    ) l
    WHERE l."hopper_id" = ${hopperId} ORDER BY l."from_at", l."line_id"`;
}

/** The coder on a line: the last one that was set up there; null where it has none. */
export function coderOfLine(from: ReadFrom, lineId: string): Promise<CoderRow | null> {
  return once(from, `coder of line ${lineId}`, () => readCoderOfLine(from, lineId));
}

async function readCoderOfLine(from: ReadFrom, lineId: string): Promise<CoderRow | null> {
  const rows = await from.sql<CoderRow>`
    SELECT "id", "site_id" AS "siteId", "line_id" AS "lineId", "code" FROM "coder"
    WHERE "line_id" = ${lineId} ORDER BY "id" DESC LIMIT 1`;
  return rows[0] ?? null;
}

export async function coderOf(from: ReadFrom, coderId: string): Promise<CoderRow> {
  const rows = await from.sql<CoderRow>`
    SELECT "id", "site_id" AS "siteId", "line_id" AS "lineId", "code" FROM "coder" WHERE "id" = ${coderId}`;
  return known('coder', coderId, rows);
}

export async function coderClockAt(from: ReadFrom, coderId: string, at: Instant): Promise<CoderClockReading> {
  const rows = await from.sql<CoderClockReading>`
    SELECT "offset_seconds" AS "offsetSeconds", "uncertainty_seconds" AS "uncertaintySeconds" FROM "coder_clock"
    WHERE "coder_id" = ${coderId} AND "valid_from" <= ${at} AND "voided_by" IS NULL
    ORDER BY "valid_from" DESC, "id" DESC LIMIT 1`;
  return rows[0] ?? uncomparedCoderClock;
}

export async function gradeOf(from: ReadFrom, gradeId: string): Promise<GradeRow> {
  const rows = await from.sql<GradeRow>`
    SELECT "id", "site_id" AS "siteId", "code", "name", "tipping_rule" AS "tippingRule"
    FROM "grade" WHERE "id" = ${gradeId}`;
  return known('grade', gradeId, rows);
}

/**
 * What a grade must be at an instant: the latest version valid by then, or the first one for an instant before it.
 *
 * @throws {NotFound} `specification` where the grade has none
 */
export async function specificationAt(from: ReadFrom, gradeId: string, at: Instant): Promise<Specification> {
  const rows = await from.sql<{ limits: string }>`
    SELECT "limits" FROM "grade_specification" WHERE "grade_id" = ${gradeId} AND "voided_by" IS NULL
    ORDER BY CASE WHEN "valid_from" <= ${at} THEN 0 ELSE 1 END,
      CASE WHEN "valid_from" <= ${at} THEN "valid_from" END DESC, "valid_from", "id" LIMIT 1`;
  return JSON.parse(known('specification', gradeId, rows).limits) as Specification;
}

export async function formatOf(from: ReadFrom, formatId: string): Promise<FormatRow> {
  const rows = await from.sql<FormatRow>`
    SELECT "id", "site_id" AS "siteId", "code", "name", "gtin", "nominal_grams" AS "nominalGrams",
      "assumed_lower_milligrams" AS "assumedLowerMilligrams", "assumed_upper_milligrams" AS "assumedUpperMilligrams",
      "pack_tare_grams" AS "packTareGrams", "packs_per_pallet" AS "packsPerPallet",
      "pallet_tare_grams" AS "palletTareGrams", "code_pattern" AS "codePattern",
      "best_before_months" AS "bestBeforeMonths"
    FROM "pack_format" WHERE "id" = ${formatId}`;
  return known('pack-format', formatId, rows);
}

/** The grades that a format takes. */
export async function gradesOfFormat(from: ReadFrom, formatId: string): Promise<string[]> {
  const rows = await from.sql<{ gradeId: string }>`
    SELECT "grade_id" AS "gradeId" FROM "pack_format_grade"
    WHERE "format_id" = ${formatId} AND "voided_by" IS NULL ORDER BY "grade_id"`;
  return rows.map((row) => row.gradeId);
}

/** What a scale is good for at an instant: in date or overdue, passed or failed, verified for trade or not. */
export async function scaleStandingAt(from: ReadFrom, scaleId: string, at: Instant): Promise<ScaleStanding> {
  const rows = await from.sql<CheckedScale>`
    SELECT s."id", s."site_id" AS "siteId", s."code", s."name", s."interval_milligrams" AS "intervalMilligrams",
      s."maximum_permissible_error_milligrams" AS "maximumPermissibleErrorMilligrams",
      s."check_every_hours" AS "checkEveryHours", COALESCE(r."time_zone", t."time_zone") AS "timeZone", c."checked_at" AS "checkedAt", c."passed"
    FROM "scale" s
    JOIN "site" t ON t."id" = s."site_id"
    LEFT JOIN "site_revision" r ON r."id" = (
      SELECT MAX(x."id") FROM "site_revision" x WHERE x."site_id" = t."id")
    LEFT JOIN "scale_check" c ON c."scale_id" = s."id" AND c."checked_at" <= ${at} AND c."voided_by" IS NULL
    WHERE s."id" = ${scaleId}
    ORDER BY c."checked_at" DESC, c."id" DESC LIMIT 1`;
  const verifications = await from.sql<VerifiedSpan>`
    SELECT "verified_on" AS "verifiedOn", "verified_until_on" AS "verifiedUntilOn" FROM "scale_verification"
    WHERE "scale_id" = ${scaleId} AND "voided_by" IS NULL ORDER BY "verified_on"`;
  return scaleStanding(known('scale', scaleId, rows), verifications, at);
}

export function customerOf(from: ReadFrom, customerId: string): Promise<CustomerRow> {
  return once(from, `customer ${customerId}`, () => readCustomer(from, customerId));
}

async function readCustomer(from: ReadFrom, customerId: string): Promise<CustomerRow> {
  const rows = await from.sql<CustomerRow>`
    SELECT c."id", c."site_id" AS "siteId", c."code", c."gln", k."name", k."address", k."telephone",
      (SELECT p."language" FROM "paper_language" p WHERE p."customer_id" = c."id"
        ORDER BY p."id" DESC LIMIT 1) AS "paperLanguage"
    FROM "customer" c LEFT JOIN "customer_contact" k ON k."customer_id" = c."id" WHERE c."id" = ${customerId}`;
  return known('customer', customerId, rows);
}

export function placeOf(from: ReadFrom, placeId: string): Promise<PlaceRow> {
  return once(from, `store-place ${placeId}`, () => readPlace(from, placeId));
}

async function readPlace(from: ReadFrom, placeId: string): Promise<PlaceRow> {
  const rows = await from.sql<PlaceRow>`
    SELECT "id", "site_id" AS "siteId", "code", "kind" FROM "store_place" WHERE "id" = ${placeId}`;
  return known('store-place', placeId, rows);
}

/** The production day and shift that an instant falls in, by the pattern that was valid then. */
export async function shiftAt(from: ReadFrom, siteId: string, at: Instant): Promise<LocatedShift> {
  const { timeZone } = await siteOf(from, siteId);
  return locateShift(await shiftPatternAt(from, siteId, at), timeZone, at);
}

/**
 * The shifts of a site at an instant: the latest pattern valid by then, or the first one for an instant before it.
 *
 * @throws {NotFound} `shift-pattern` where the site has none
 */
export async function shiftPatternAt(from: ReadFrom, siteId: string, at: Instant): Promise<ShiftPattern> {
  const patterns = await once(from, `shift-patterns ${siteId}`, () => shiftPatterns(from, siteId));
  const byThen = patterns.filter(({ validFrom }) => validFrom <= at);
  const [first] = patterns;
  // Of several that are valid from the same instant, the one that was set first.
  const latest = byThen.find(({ validFrom }) => validFrom === byThen.at(-1)?.validFrom) ?? first;
  if (latest === undefined) throw new NotFound('shift-pattern', siteId);
  return latest.pattern;
}

async function shiftPatterns(
  from: ReadFrom,
  siteId: string,
): Promise<readonly { readonly validFrom: Instant; readonly pattern: ShiftPattern }[]> {
  const rows = await from.sql<{ validFrom: Instant; pattern: string }>`
    SELECT "valid_from" AS "validFrom", "pattern" FROM "shift_pattern"
    WHERE "site_id" = ${siteId} AND "voided_by" IS NULL ORDER BY "valid_from", "id"`;
  return rows.map(({ validFrom, pattern }) => ({ validFrom, pattern: readShiftPattern(pattern) }));
}

/** The rules of a kind that hold at an instant (shapes: `rule-kinds.ts`); null where none were set by then. */
export async function ruleSetAt<Rules = Canonical>(
  from: ReadFrom,
  siteId: string,
  kind: string,
  at: Instant,
): Promise<Rules | null> {
  const rows = await from.sql<{ rules: string }>`
    SELECT "rules" FROM "rule_set"
    WHERE "site_id" = ${siteId} AND "kind" = ${kind} AND "valid_from" <= ${at} AND "voided_by" IS NULL
    ORDER BY "valid_from" DESC, "id" DESC LIMIT 1`;
  return rows[0] === undefined ? null : (JSON.parse(rows[0].rules) as Rules);
}

function known<Row>(kind: string, asked: string, rows: readonly Row[]): Row {
  const [row] = rows;
  if (row === undefined) throw new NotFound(kind, asked);
  return row;
}
