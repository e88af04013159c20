import type { Instant } from '../platform/clock.js';
import { onlyRow, type ReadFrom } from '../platform/database/reading.js';
import { NotFound } from '../platform/refusal.js';
import type { ReworkBin } from './rework-bin.entity.js';
import { readBinNumber } from './rework-bin-number.js';

/** A closed rework bin; `tipId` null while it was not tipped. */
export interface ReworkBinRow {
  readonly id: string;
  readonly siteId: string;
  readonly number: string;
  readonly content: ReworkBin['content'];
  readonly netGrams: number;
  readonly scaleId: string | null;
  readonly closedAt: Instant;
  readonly tipId: string | null;
  readonly hopperId: string | null;
  readonly openedAt: Instant | null;
}

const binSelect = (): string => `
  SELECT b."id", b."site_id" AS "siteId", b."number", b."content", b."net_grams" AS "netGrams",
    b."scale_id" AS "scaleId", b."closed_at" AS "closedAt", t."id" AS "tipId", p."hopper_id" AS "hopperId",
    t."opened_at" AS "openedAt"
  FROM "rework_bin" b
  LEFT JOIN "tip" t ON t."bin_id" = b."id" AND t."voided_by" IS NULL
  LEFT JOIN "hopper_period" p ON p."id" = t."period_id"`;

/** @throws {NotFound} `rework-bin` */
export async function reworkBinOf(from: ReadFrom, binId: string): Promise<ReworkBinRow> {
  const row = onlyRow(await from.sql<ReworkBinRow>`${binSelect} WHERE b."id" = ${binId} AND b."voided_by" IS NULL`);
  if (row === null) throw new NotFound('rework-bin', binId);
  return row;
}

/**
 * A bin of a site by its number, however spaced or cased, or its id.
 *
 * @throws {NotFound} `rework-bin`
 */
export async function findReworkBin(from: ReadFrom, siteId: string, text: string): Promise<ReworkBinRow> {
  const number = readBinNumber(text) ?? '';
  const row = onlyRow(
    await from.sql<ReworkBinRow>`
      ${binSelect} WHERE b."site_id" = ${siteId} AND b."voided_by" IS NULL
        AND (b."number" = ${number} OR b."id" = ${text.trim().toLowerCase()})`,
  );
  if (row === null) throw new NotFound('rework-bin', text);
  return row;
}

/** Bins of a site, the newest first, by key. */
export async function reworkBinPage(
  from: ReadFrom,
  siteId: string,
  page: { readonly before?: string | null; readonly limit?: number | null },
): Promise<ReworkBinRow[]> {
  return from.sql<ReworkBinRow>`
    ${binSelect} WHERE b."site_id" = ${siteId} AND b."voided_by" IS NULL AND b."id" < ${page.before ?? '~'}
    ORDER BY b."id" DESC LIMIT ${page.limit ?? 50}`;
}

/** Where the rework bins that came from some runs were tipped: the bin and the period. */
export async function tippedBinsOfRuns(
  from: ReadFrom,
  runIds: readonly string[],
): Promise<{ readonly binId: string; readonly periodId: string }[]> {
  if (runIds.length === 0) return [];
  return from.sql<{ binId: string; periodId: string }>`
    SELECT DISTINCT t."bin_id" AS "binId", t."period_id" AS "periodId"
    FROM "rework_parent" r JOIN "tip" t ON t."bin_id" = r."bin_id" AND t."voided_by" IS NULL
    WHERE r."run_id" IN (${() => [...runIds]}) AND r."voided_by" IS NULL ORDER BY t."period_id", t."bin_id"`;
}
