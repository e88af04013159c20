import type { ReadFrom } from '../platform/database/reading.js';
import { inChunks } from '../platform/database/in-chunks.js';
import { NotFound } from '../platform/refusal.js';
import type { Page } from '../platform/web/listed.js';
import type { CountRow, FilmLotRow, LotRow, RemovalRow, RunRow } from './packing-run-rows.js';
import { lotColumns, lotOf, removalColumns, runColumns } from './packing-runs.js';

/** Runs of a site, newest first, by key. */
export async function runPage(from: ReadFrom, siteId: string, page: Page): Promise<RunRow[]> {
  return from.sql<RunRow>`
    SELECT ${runColumns} WHERE r."site_id" = ${siteId} AND r."voided_by" IS NULL AND r."id" < ${page.before ?? '~'}
    ORDER BY r."id" DESC LIMIT ${page.limit}`;
}

/** Lots of a site, newest first, by key. */
export async function lotPage(from: ReadFrom, siteId: string, page: Page): Promise<LotRow[]> {
  return from.sql<LotRow>`
    SELECT ${lotColumns} WHERE l."site_id" = ${siteId} AND l."voided_by" IS NULL AND l."id" < ${page.before ?? '~'}
    ORDER BY l."id" DESC LIMIT ${page.limit}`;
}

/** The lots of a site that were printed last, with when their code was set, the latest first. */
export async function latestLots(
  from: ReadFrom,
  siteId: string,
  limit: number,
): Promise<
  readonly { readonly id: string; readonly code: string; readonly formatName: string; readonly changedAt: string }[]
> {
  return from.sql`
    SELECT l."id", l."code", f."name" AS "formatName", MAX(c."changed_at") AS "changedAt"
    FROM "coder_change" c JOIN "lot" l ON l."id" = c."lot_id" JOIN "pack_format" f ON f."id" = l."format_id"
    WHERE l."id" IN (SELECT x."id" FROM "lot" x WHERE x."site_id" = ${siteId} AND x."voided_by" IS NULL
        ORDER BY x."id" DESC LIMIT ${limit})
      AND c."voided_by" IS NULL
    GROUP BY l."id", l."code", f."name" ORDER BY MAX(c."changed_at") DESC, l."id" DESC`;
}

/** The latest lots of a format by its GTIN, newest first. */
export async function lotsOfItem(from: ReadFrom, siteId: string, gtin14: string, limit: number): Promise<LotRow[]> {
  return from.sql<LotRow>`
    SELECT ${lotColumns} WHERE l."site_id" = ${siteId} AND f."gtin" = ${gtin14} AND l."voided_by" IS NULL
    ORDER BY l."id" DESC LIMIT ${limit}`;
}

/** Film lots of a site, newest first, by key. */
export async function filmLotPage(from: ReadFrom, siteId: string, page: Page): Promise<FilmLotRow[]> {
  return from.sql<FilmLotRow>`
    SELECT "id", "site_id" AS "siteId", "code", "supplier_code" AS "supplierCode", "kind" FROM "film_lot"
    WHERE "site_id" = ${siteId} AND "voided_by" IS NULL AND "id" < ${page.before ?? '~'}
    ORDER BY "id" DESC LIMIT ${page.limit}`;
}

/** Removals of a site, newest first, by key. */
export async function removalPage(from: ReadFrom, siteId: string, page: Page): Promise<RemovalRow[]> {
  return from.sql<RemovalRow>`
    SELECT ${removalColumns} WHERE m."site_id" = ${siteId} AND m."voided_by" IS NULL AND m."id" < ${page.before ?? '~'}
    ORDER BY m."id" DESC LIMIT ${page.limit}`;
}

/** The good counts of a run, newest first, by key. */
export async function countPage(from: ReadFrom, runId: string, page: Page): Promise<CountRow[]> {
  return from.sql<CountRow>`
    SELECT "id", "run_id" AS "runId", "pack_count" AS "packCount", "counted_at" AS "countedAt", "occasion"
    FROM "pack_count" WHERE "run_id" = ${runId} AND "voided_by" IS NULL AND "id" < ${page.before ?? '~'}
    ORDER BY "id" DESC LIMIT ${page.limit}`;
}

/** @throws {NotFound} `lot`, also for a lot of another site */
export async function readLotOfSite(from: ReadFrom, siteId: string, lotId: string): Promise<LotRow> {
  const lot = await lotOf(from, lotId);
  if (lot.siteId !== siteId) throw new NotFound('lot', lotId);
  return lot;
}

/** A run of a line, from its start to its close; open ones to their last count. */
export interface RunSpan {
  readonly id: string;
  readonly lineId: string;
  readonly formatId: string;
  readonly startedAt: string;
  readonly endedAt: string;
}

/** The runs of a site that began within a time, the latest first, 500 at most. */
export async function runSpans(from: ReadFrom, siteId: string, fromAt: string, untilAt: string): Promise<RunSpan[]> {
  return from.sql<RunSpan>`
    SELECT r."id", r."line_id" AS "lineId", r."format_id" AS "formatId", r."started_at" AS "startedAt",
      COALESCE(c."closed_at", s."last_counted_at") AS "endedAt"
    FROM "packing_run" r JOIN "packing_run_state" s ON s."run_id" = r."id"
    LEFT JOIN "packing_run_close" c ON c."run_id" = r."id" AND c."voided_by" IS NULL
    WHERE r."site_id" = ${siteId} AND r."voided_by" IS NULL AND r."started_at" >= ${fromAt}
      AND r."started_at" <= ${untilAt} ORDER BY r."id" DESC LIMIT 500`;
}

/** A run of a line with its packs so far. */
export interface RunOfLine {
  readonly id: string;
  /** Its close, or its last count while it is open. */
  readonly endedAt: string;
  readonly packCount: number;
}

/** The runs of a line that ran at any time from an instant until another; null: until now. */
export async function runsOfLineWithin(
  from: ReadFrom,
  { lineId, fromAt, untilAt }: { readonly lineId: string; readonly fromAt: string; readonly untilAt: string | null },
): Promise<readonly RunOfLine[]> {
  return from.sql<RunOfLine>`
    SELECT r."id", COALESCE(c."closed_at", s."last_counted_at") AS "endedAt", s."pack_count" AS "packCount"
    FROM "packing_run" r JOIN "packing_run_state" s ON s."run_id" = r."id"
    LEFT JOIN "packing_run_close" c ON c."run_id" = r."id" AND c."voided_by" IS NULL
    WHERE r."line_id" = ${lineId} AND r."voided_by" IS NULL AND r."started_at" <= ${untilAt ?? '9999'}
      AND COALESCE(c."closed_at", s."last_counted_at") >= ${fromAt} ORDER BY r."started_at", r."id"`;
}

/** When packs of some runs were rejected. */
export async function rejectTimes(from: ReadFrom, runIds: readonly string[]): Promise<readonly string[]> {
  const rows = await inChunks(
    runIds,
    (chunk) => from.sql<{ removedAt: string }>`
      SELECT "removed_at" AS "removedAt" FROM "removal"
      WHERE "run_id" IN (${() => chunk}) AND "kind" = 'reject' AND "voided_by" IS NULL`,
  );
  return rows.map(({ removedAt }) => removedAt);
}
