import { isId } from '../platform/is-id.js';
import { onlyRow, type ReadFrom } from '../platform/database/reading.js';
import { NotFound } from '../platform/refusal.js';
import type { Page } from '../platform/web/listed.js';
import { readDocumentNumber, makeDocumentNumber } from '../core/identifiers/document-number.js';

/** A dryer run; `endedAt` null: it goes on. */
export interface DryerRunRow {
  readonly id: string;
  readonly siteId: string;
  readonly number: string;
  readonly dryerId: string;
  readonly gradeId: string;
  readonly startedAt: string;
  readonly endedAt: string | null;
}

/**
 * A dryer run of the site by its number or id.
 *
 * @throws {NotFound} `dryer-run`
 */
export async function findDryerRun(from: ReadFrom, siteId: string, text: string): Promise<DryerRunRow> {
  const read = readDocumentNumber(text, 'DR');
  const column = isId(text) ? 'r."id"' : 'r."number"';
  const key = read === null ? text.trim().toLowerCase() : makeDocumentNumber(read);
  const rows = await from.sql<DryerRunRow>`
    ${() => runSelect} WHERE r."site_id" = ${siteId} AND r."voided_by" IS NULL
      AND ${() => column} = ${key}`;
  const run = onlyRow(rows);
  if (run === null) throw new NotFound('dryer-run', text);
  return run;
}

/** @throws {NotFound} `dryer-run` */
export async function dryerRunOf(from: ReadFrom, runId: string): Promise<DryerRunRow> {
  const rows = await from.sql<DryerRunRow>`${() => runSelect} WHERE r."id" = ${runId} AND r."voided_by" IS NULL`;
  const run = onlyRow(rows);
  if (run === null) throw new NotFound('dryer-run', runId);
  return run;
}

/** The last run of a dryer, open or ended; null before its first. */
export async function lastRunOfDryer(from: ReadFrom, dryerId: string): Promise<DryerRunRow | null> {
  const rows = await from.sql<DryerRunRow>`
    ${() => runSelect} WHERE r."dryer_id" = ${dryerId} AND r."voided_by" IS NULL
    ORDER BY r."started_at" DESC, r."id" DESC LIMIT 1`;
  return onlyRow(rows);
}

/** Runs of a dryer that went on at some time from `fromAt` up to before `untilAt`. */
export function runsOfDryer(
  from: ReadFrom,
  dryerId: string,
  fromAt: string,
  untilAt: string,
): Promise<readonly DryerRunRow[]> {
  return from.sql<DryerRunRow>`
    ${() => runSelect} WHERE r."dryer_id" = ${dryerId} AND r."voided_by" IS NULL
      AND r."started_at" < ${untilAt} AND (e."ended_at" IS NULL OR e."ended_at" > ${fromAt})
    ORDER BY r."started_at", r."id"`;
}

/** Runs of a site, latest recorded first, those before the key `before`. */
export function dryerRunPage(from: ReadFrom, siteId: string, page: Page): Promise<readonly DryerRunRow[]> {
  return from.sql<DryerRunRow>`
    ${() => runSelect} WHERE r."site_id" = ${siteId} AND r."voided_by" IS NULL AND r."id" < ${page.before ?? '~'}
    ORDER BY r."id" DESC LIMIT ${Math.min(page.limit, 200)}`;
}

const runSelect = `
  SELECT r."id", r."site_id" AS "siteId", r."number", r."dryer_id" AS "dryerId", r."grade_id" AS "gradeId",
    r."started_at" AS "startedAt", e."ended_at" AS "endedAt"
  FROM "dryer_run" r LEFT JOIN "dryer_run_end" e ON e."dryer_run_id" = r."id" AND e."voided_by" IS NULL`;
