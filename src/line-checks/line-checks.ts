import type { Instant } from '../platform/clock.js';
import { toBoolean } from '../platform/database/stored-values.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { NotFound } from '../platform/refusal.js';
import type { CheckAction, CheckKind, PieceResult, TestPiece } from './check-words.js';

/** A check as it is shown. */
export interface LineCheckRow {
  readonly id: string;
  readonly siteId: string;
  readonly planId: string;
  readonly kind: CheckKind;
  readonly station: string;
  readonly lineId: string;
  readonly lineCode: string;
  readonly lineName: string;
  readonly runId: string | null;
  readonly runNumber: string | null;
  readonly bagId: string | null;
  readonly bagNumber: string | null;
  readonly occurredAt: Instant;
  readonly passed: boolean;
  readonly results: readonly PieceResult[];
  /** What the plan asked for then. */
  readonly pieces: readonly TestPiece[];
  readonly readCode: string | null;
  readonly intendedCode: string | null;
  readonly action: CheckAction | null;
  readonly note: string | null;
  readonly personId: string | null;
  readonly secondPersonId: string | null;
  readonly isVoid: boolean;
}

/** Which checks a list shows: newest entry first, those before a key. */
export interface CheckChoice {
  readonly lineId?: string | null;
  readonly planId?: string | null;
  readonly kind?: CheckKind | null;
  readonly result?: 'passed' | 'failed' | null;
  readonly before?: string | null;
  readonly limit: number;
}

type StoredCheck = Omit<LineCheckRow, 'passed' | 'results' | 'pieces' | 'isVoid'> & {
  readonly passed: boolean | number;
  readonly results: string;
  readonly pieces: string;
  readonly voidedBy: string | null;
};

const checkSelect = `
  SELECT c."id", c."site_id" AS "siteId", c."plan_id" AS "planId", v."kind", v."station", c."line_id" AS "lineId",
    l."code" AS "lineCode", l."name" AS "lineName", c."run_id" AS "runId", r."number" AS "runNumber",
    c."bag_id" AS "bagId", b."number" AS "bagNumber", c."occurred_at" AS "occurredAt", c."passed", c."results",
    v."test_pieces" AS "pieces",
    c."read_code" AS "readCode", c."intended_code" AS "intendedCode", c."action", c."note",
    c."person_id" AS "personId", c."second_person_id" AS "secondPersonId", c."voided_by" AS "voidedBy"
  FROM "line_check" c
  JOIN "check_plan" v ON v."id" = c."plan_version_id"
  JOIN "packing_line" l ON l."id" = c."line_id"
  LEFT JOIN "packing_run" r ON r."id" = c."run_id"
  LEFT JOIN "bulk_bag" b ON b."id" = c."bag_id"`;

/** The good checks of a site, as chosen. */
export async function lineChecksOf(from: ReadFrom, siteId: string, choice: CheckChoice): Promise<LineCheckRow[]> {
  const { lineId = null, planId = null, kind = null, result = null, before = null } = choice;
  const rows = await from.sql<StoredCheck>`
    ${() => checkSelect} WHERE c."site_id" = ${siteId} AND c."voided_by" IS NULL
      AND c."line_id" = COALESCE(${lineId}, c."line_id") AND c."plan_id" = COALESCE(${planId}, c."plan_id")
      AND v."kind" = COALESCE(${kind}, v."kind")
      AND CASE WHEN c."passed" THEN 'passed' ELSE 'failed' END
        = COALESCE(${result}, CASE WHEN c."passed" THEN 'passed' ELSE 'failed' END)
      AND c."id" < ${before ?? '~'}
    ORDER BY c."id" DESC LIMIT ${choice.limit}`;
  return rows.map(checkRow);
}

/** The good checks of a line at or after an instant, the last one first. */
export async function checksOfLineSince(from: ReadFrom, lineId: string, since: Instant): Promise<LineCheckRow[]> {
  const rows = await from.sql<StoredCheck>`
    ${() => checkSelect} WHERE c."line_id" = ${lineId} AND c."occurred_at" >= ${since} AND c."voided_by" IS NULL
    ORDER BY c."occurred_at" DESC, c."id" DESC LIMIT 200`;
  return rows.map(checkRow);
}

/**
 * A check of a site, void ones too.
 *
 * @throws {NotFound} `line-check`
 */
export async function lineCheckOf(from: ReadFrom, siteId: string, checkId: string): Promise<LineCheckRow> {
  const [row] = await from.sql<StoredCheck>`
    ${() => checkSelect} WHERE c."id" = ${checkId} AND c."site_id" = ${siteId}`;
  if (row === undefined) throw new NotFound('line-check', checkId);
  return checkRow(row);
}

function checkRow({ voidedBy, ...row }: StoredCheck): LineCheckRow {
  const results = JSON.parse(row.results) as PieceResult[];
  const pieces = JSON.parse(row.pieces) as TestPiece[];
  return { ...row, passed: toBoolean(row.passed), results, pieces, isVoid: voidedBy !== null };
}

/** The good checks of a line within a time, in the order of time, 2000 at most. */
export async function checksOfLineBetween(
  from: ReadFrom,
  lineId: string,
  fromAt: Instant,
  untilAt: Instant,
): Promise<readonly Pick<LineCheckRow, 'id' | 'planId' | 'station' | 'occurredAt' | 'passed'>[]> {
  const rows = await from.sql<Pick<StoredCheck, 'id' | 'planId' | 'station' | 'occurredAt' | 'passed'>>`
    SELECT c."id", c."plan_id" AS "planId", v."station", c."occurred_at" AS "occurredAt", c."passed"
    FROM "line_check" c JOIN "check_plan" v ON v."id" = c."plan_version_id"
    WHERE c."line_id" = ${lineId} AND c."occurred_at" >= ${fromAt} AND c."occurred_at" <= ${untilAt}
      AND c."voided_by" IS NULL ORDER BY c."occurred_at" DESC, c."id" DESC LIMIT 2000`;
  return rows.map((row) => ({ ...row, passed: toBoolean(row.passed) })).reverse();
}
