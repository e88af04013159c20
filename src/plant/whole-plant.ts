import type { LocatedShift } from '../core/shift-calendar/locate-shift.js';
import type { ShiftPattern } from '../core/shift-calendar/shift-pattern.js';
import type { Specification } from '../core/sugar-analysis/specification.js';
import type { Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { NotFound } from '../platform/refusal.js';
import { customersOf } from './customers.js';
import { coderClockAt, scaleStandingAt, shiftAt, shiftPatternAt, siteOf, specificationAt } from './plant-facts.js';
import type {
  CoderClockReading,
  CustomerRow,
  FormatRow,
  GradeRow,
  HopperRow,
  NamedRow,
  PlaceRow,
  ScaleStanding,
  SiteRow,
} from './plant-rows.js';

/** A line with what feeds it and what prints on it, at the instant asked for. */
export interface LineSetUp extends NamedRow {
  readonly hopperId: string | null;
  readonly hopperCode: string | null;
  readonly fedSinceAt: Instant | null;
  readonly coderId: string | null;
  readonly coderCode: string | null;
  readonly coderClock: CoderClockReading | null;
}

/** Everything that is set up at a site, as it is at an instant. */
export interface WholePlant {
  readonly site: SiteRow;
  /** Null while no shifts are set. */
  readonly shift: LocatedShift | null;
  readonly shiftPattern: ShiftPattern | null;
  readonly dryers: readonly NamedRow[];
  readonly hoppers: readonly HopperRow[];
  readonly lines: readonly LineSetUp[];
  readonly scales: readonly ScaleStanding[];
  readonly grades: readonly (GradeRow & { readonly specification: Specification | null })[];
  readonly formats: readonly (FormatRow & { readonly gradeCodes: readonly string[] })[];
  /** The latest 200. */
  readonly customers: readonly CustomerRow[];
  readonly places: readonly PlaceRow[];
}

export async function allOf(from: ReadFrom, siteId: string, at: Instant): Promise<WholePlant> {
  return {
    site: await siteOf(from, siteId),
    shift: await orNull(shiftAt(from, siteId, at)),
    shiftPattern: await orNull(shiftPatternAt(from, siteId, at)),
    dryers: await from.sql<NamedRow>`
      SELECT "id", "site_id" AS "siteId", "code", "name" FROM "dryer" WHERE "site_id" = ${siteId} ORDER BY "code"`,
    hoppers: await from.sql<HopperRow>`
      SELECT "id", "site_id" AS "siteId", "code", "name", "capacity_grams" AS "capacityGrams",
        "flow_model" AS "flowModel", "likely_permille" AS "likelyPermille"
      FROM "hopper" WHERE "site_id" = ${siteId} ORDER BY "code"`,
    lines: await linesAt(from, siteId, at),
    scales: await scalesAt(from, siteId, at),
    grades: await gradesAt(from, siteId, at),
    formats: await formatsOf(from, siteId),
    customers: await customersOf(from, siteId, { before: null, limit: 200 }),
    places: await placesOf(from, siteId),
  };
}

async function linesAt(from: ReadFrom, siteId: string, at: Instant): Promise<LineSetUp[]> {
  const lines = await from.sql<Omit<LineSetUp, 'coderClock'>>`
    SELECT l."id", l."site_id" AS "siteId", l."code", l."name",
      h."id" AS "hopperId", h."code" AS "hopperCode", k."valid_from" AS "fedSinceAt",
      c."id" AS "coderId", c."code" AS "coderCode"
    FROM "packing_line" l
    LEFT JOIN "hopper_line" k ON k."line_id" = l."id" AND k."voided_by" IS NULL AND k."valid_from" = (
      SELECT MAX(m."valid_from") FROM "hopper_line" m
      WHERE m."line_id" = l."id" AND m."voided_by" IS NULL AND m."valid_from" <= ${at})
    LEFT JOIN "hopper" h ON h."id" = k."hopper_id"
    LEFT JOIN "coder" c ON c."id" = (SELECT MAX(d."id") FROM "coder" d WHERE d."line_id" = l."id")
    WHERE l."site_id" = ${siteId} ORDER BY l."code"`;
  return Promise.all(
    lines.map(async (line) => ({
      ...line,
      coderClock: line.coderId === null ? null : await coderClockAt(from, line.coderId, at),
    })),
  );
}

/** The scales of a site, each with what it is good for at an instant. */
export async function scalesAt(from: ReadFrom, siteId: string, at: Instant): Promise<ScaleStanding[]> {
  const scales = await from.sql<{ id: string }>`
    SELECT "id" FROM "scale" WHERE "site_id" = ${siteId} ORDER BY "code"`;
  return Promise.all(scales.map(({ id }) => scaleStandingAt(from, id, at)));
}

/** The grades of a site. */
export function gradesOf(from: ReadFrom, siteId: string): Promise<GradeRow[]> {
  return from.sql<GradeRow>`
    SELECT "id", "site_id" AS "siteId", "code", "name", "tipping_rule" AS "tippingRule"
    FROM "grade" WHERE "site_id" = ${siteId} ORDER BY "code"`;
}

/** The places of a site's store. */
export function placesOf(from: ReadFrom, siteId: string): Promise<PlaceRow[]> {
  return from.sql<PlaceRow>`
    SELECT "id", "site_id" AS "siteId", "code", "kind" FROM "store_place" WHERE "site_id" = ${siteId} ORDER BY "code"`;
}

async function gradesAt(from: ReadFrom, siteId: string, at: Instant): Promise<WholePlant['grades']> {
  const grades = await gradesOf(from, siteId);
  return Promise.all(
    grades.map(async (grade) => ({ ...grade, specification: await orNull(specificationAt(from, grade.id, at)) })),
  );
}

async function formatsOf(from: ReadFrom, siteId: string): Promise<WholePlant['formats']> {
  const formats = await from.sql<FormatRow>`
    SELECT "id", "site_id" AS "siteId", "code", "name", "gtin", "nominal_grams" AS "nominalGrams",
      "assumed_lower_milligrams" AS "assumedLowerMilligrams", "assumed_upper_milligrams" AS "assumedUpperMilligrams",
      "pack_tare_grams" AS "packTareGrams", "packs_per_pallet" AS "packsPerPallet",
      "pallet_tare_grams" AS "palletTareGrams", "code_pattern" AS "codePattern",
      "best_before_months" AS "bestBeforeMonths"
    FROM "pack_format" WHERE "site_id" = ${siteId} ORDER BY "code"`;
  const takes = await from.sql<{ formatId: string; code: string }>`
    SELECT f."format_id" AS "formatId", g."code" FROM "pack_format_grade" f JOIN "grade" g ON g."id" = f."grade_id"
    WHERE g."site_id" = ${siteId} AND f."voided_by" IS NULL ORDER BY g."code"`;
  return formats.map((format) => ({
    ...format,
    gradeCodes: takes.filter((take) => take.formatId === format.id).map((take) => take.code),
  }));
}

async function orNull<Found>(reading: Promise<Found>): Promise<Found | null> {
  try {
    return await reading;
  } catch (error) {
    if (error instanceof NotFound) return null;
    throw error;
  }
}
