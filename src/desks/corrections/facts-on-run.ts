import type { ReadFrom } from '../../platform/database/reading.js';
import { standing, type MayBeVoid } from './standing.js';

interface CountOnRun {
  readonly runId: string;
  readonly packCount: number;
  readonly countedAt: string;
}

/**
 * @throws {NotFound} `pack-count`, also for one of another site
 * @throws {Refusal} `already-corrected`
 */
export async function countOf(from: ReadFrom, siteId: string, countId: string): Promise<CountOnRun> {
  const [row] = await from.sql<CountOnRun & MayBeVoid>`
    SELECT c."run_id" AS "runId", c."pack_count" AS "packCount", c."counted_at" AS "countedAt",
      c."voided_by" AS "voidedBy"
    FROM "pack_count" c JOIN "packing_run" r ON r."id" = c."run_id"
    WHERE c."id" = ${countId} AND r."site_id" = ${siteId}`;
  return standing(row, 'pack-count', countId);
}

interface FilmOnRun {
  readonly runId: string;
  readonly code: string;
  readonly firstPack: number;
  readonly fittedAt: string;
}

/** @throws {NotFound} `film-use`, likewise */
export async function filmUseOf(from: ReadFrom, siteId: string, useId: string): Promise<FilmOnRun> {
  const [row] = await from.sql<FilmOnRun & MayBeVoid>`
    SELECT u."run_id" AS "runId", l."code", u."first_pack" AS "firstPack", u."fitted_at" AS "fittedAt",
      u."voided_by" AS "voidedBy"
    FROM "film_use" u JOIN "film_lot" l ON l."id" = u."film_lot_id" JOIN "packing_run" r ON r."id" = u."run_id"
    WHERE u."id" = ${useId} AND r."site_id" = ${siteId}`;
  return standing(row, 'film-use', useId);
}

interface CodeOnRun {
  readonly runId: string;
  readonly code: string;
  readonly firstPack: number;
  readonly changedAt: string;
}

/** @throws {NotFound} `coder-change`, likewise */
export async function coderChangeOf(from: ReadFrom, siteId: string, changeId: string): Promise<CodeOnRun> {
  const [row] = await from.sql<CodeOnRun & MayBeVoid>`
    SELECT c."run_id" AS "runId", l."code", c."first_pack" AS "firstPack", c."changed_at" AS "changedAt",
      c."voided_by" AS "voidedBy"
    FROM "coder_change" c JOIN "lot" l ON l."id" = c."lot_id" JOIN "packing_run" r ON r."id" = c."run_id"
    WHERE c."id" = ${changeId} AND r."site_id" = ${siteId}`;
  return standing(row, 'coder-change', changeId);
}
