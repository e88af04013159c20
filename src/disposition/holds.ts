import { makeDocumentNumber, readDocumentNumber } from '../core/identifiers/document-number.js';
import type { Page } from '../platform/web/listed.js';
import { inChunks } from '../platform/database/in-chunks.js';
import { isId } from '../platform/is-id.js';
import { onlyRow, type ReadFrom } from '../platform/database/reading.js';
import { NotFound } from '../platform/refusal.js';
import type { HoldRow } from './standings.js';

/** A hold as it is shown, lifted ones too. */
export interface HoldLine extends Omit<HoldRow, 'hazard' | 'isNarrowed'> {
  /** Null: nobody has set it, so it is a safety hold. */
  readonly hazardSet: 'safety' | 'quality' | null;
  readonly classReason: string | null;
  readonly liftedAt: string | null;
  readonly liftReason: string | null;
}

/**
 * A hold of the site by its number or id.
 *
 * @throws {NotFound} `hold`
 */
export async function findHold(from: ReadFrom, siteId: string, text: string): Promise<HoldLine> {
  const read = readDocumentNumber(text, 'H');
  const column = isId(text) ? 'h."id"' : 'h."number"';
  const key = read === null ? text.trim().toLowerCase() : makeDocumentNumber(read);
  const rows = await from.sql<HoldLine>`
    ${() => holdLineSelect} WHERE h."site_id" = ${siteId} AND h."voided_by" IS NULL
      AND ${() => column} = ${key}`;
  const hold = onlyRow(rows);
  if (hold === null) throw new NotFound('hold', text);
  return hold;
}

/** Holds of a site, latest recorded first, those before the key `before`. */
export function holdPage(from: ReadFrom, siteId: string, page: Page): Promise<readonly HoldLine[]> {
  return from.sql<HoldLine>`
    ${() => holdLineSelect} WHERE h."site_id" = ${siteId} AND h."voided_by" IS NULL AND h."id" < ${page.before ?? '~'}
    ORDER BY h."id" DESC LIMIT ${Math.min(page.limit, 200)}`;
}

/** The holds of a site that are open, latest placed first. */
export function openHoldsOfSite(from: ReadFrom, siteId: string, limit: number): Promise<readonly HoldLine[]> {
  return from.sql<HoldLine>`
    ${() => holdLineSelect} WHERE h."site_id" = ${siteId} AND h."voided_by" IS NULL AND l."id" IS NULL
    ORDER BY h."placed_at" DESC, h."id" DESC LIMIT ${limit}`;
}

const holdLineSelect = `
  SELECT h."id", h."number", h."scope_kind" AS "scopeKind", h."scope_id" AS "scopeId", h."from_count" AS "fromCount",
    h."to_count" AS "toCount", h."from_at" AS "fromAt", h."until_at" AS "untilAt", h."reason", h."placed_at" AS "placedAt", c."hazard" AS "hazardSet",
    c."reason" AS "classReason", l."lifted_at" AS "liftedAt", l."reason" AS "liftReason"
  FROM "hold" h
  LEFT JOIN "hold_lift" l ON l."hold_id" = h."id" AND l."voided_by" IS NULL
  LEFT JOIN "hold_class" c ON c."id" = (
    SELECT x."id" FROM "hold_class" x WHERE x."hold_id" = h."id" AND x."voided_by" IS NULL
    ORDER BY x."set_at" DESC, x."id" DESC LIMIT 1)`;

/** Every hold that was ever placed on one of these things, lifted ones too. */
export function holdsEverOn(from: ReadFrom, scopeIds: readonly string[]): Promise<readonly HoldLine[]> {
  return inChunks(
    scopeIds,
    (chunk) => from.sql<HoldLine>`
      ${() => holdLineSelect} WHERE h."scope_id" IN (${() => chunk}) AND h."voided_by" IS NULL ORDER BY h."id"`,
  );
}
