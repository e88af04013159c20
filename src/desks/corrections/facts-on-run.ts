import type { ReadFrom } from '../../platform/database/reading.js';
import { NotFound } from '../../platform/refusal.js';

interface CountOnRun {
  readonly runId: string;
  readonly packCount: number;
  readonly countedAt: string;
}

/** @throws {NotFound} `pack-count`, also for one that was corrected, or of another site */
export async function countOf(from: ReadFrom, siteId: string, countId: string): Promise<CountOnRun> {
  const [row] = await from.sql<CountOnRun>`
    SELECT c."run_id" AS "runId", c."pack_count" AS "packCount", c."counted_at" AS "countedAt"
    FROM "pack_count" c JOIN "packing_run" r ON r."id" = c."run_id"
    WHERE c."id" = ${countId} AND c."voided_by" IS NULL AND r."site_id" = ${siteId}`;
  if (row === undefined) throw new NotFound('pack-count', countId);
  return row;
}

interface FilmOnRun {
  readonly runId: string;
  readonly code: string;
  readonly firstPack: number;
  readonly fittedAt: string;
}

/** @throws {NotFound} `film-use`, likewise */
export async function filmUseOf(from: ReadFrom, siteId: string, useId: string): Promise<FilmOnRun> {
  const [row] = await from.sql<FilmOnRun>`
    SELECT u."run_id" AS "runId", l."code", u."first_pack" AS "firstPack", u."fitted_at" AS "fittedAt"
    FROM "film_use" u JOIN "film_lot" l ON l."id" = u."film_lot_id" JOIN "packing_run" r ON r."id" = u."run_id"
    WHERE u."id" = ${useId} AND u."voided_by" IS NULL AND r."site_id" = ${siteId}`;
  if (row === undefined) throw new NotFound('film-use', useId);
  return row;
}
