import type { ReadFrom } from '../platform/database/reading.js';
import type { GradeRow, NamedRow } from './plant-rows.js';

/** The grades of a site, by code: for a list to choose from. */
export function gradesOfSite(from: ReadFrom, siteId: string): Promise<GradeRow[]> {
  return from.sql<GradeRow>`
    SELECT "id", "site_id" AS "siteId", "code", "name", "tipping_rule" AS "tippingRule"
    FROM "grade" WHERE "site_id" = ${siteId} ORDER BY "code"`;
}

/** The packing lines of a site, by code. */
export function linesOfSite(from: ReadFrom, siteId: string): Promise<NamedRow[]> {
  return from.sql<NamedRow>`
    SELECT "id", "site_id" AS "siteId", "code", "name" FROM "packing_line" WHERE "site_id" = ${siteId} ORDER BY "code"`;
}

/** The dryers of a site, by code. */
export function dryersOfSite(from: ReadFrom, siteId: string): Promise<NamedRow[]> {
  return from.sql<NamedRow>`
    SELECT "id", "site_id" AS "siteId", "code", "name" FROM "dryer" WHERE "site_id" = ${siteId} ORDER BY "code"`;
}

/** The pack formats of a site, by code. */
export function formatsOfSite(from: ReadFrom, siteId: string): Promise<NamedRow[]> {
  return from.sql<NamedRow>`
    SELECT "id", "site_id" AS "siteId", "code", "name" FROM "pack_format" WHERE "site_id" = ${siteId} ORDER BY "code"`;
}
