import type { NamedRow } from '../../plant/plant-rows.js';
import type { ReadFrom } from '../../platform/database/reading.js';

/** The packing lines of a site by their codes. */
export function linesOf(from: ReadFrom, siteId: string): Promise<NamedRow[]> {
  return from.sql<NamedRow>`
    SELECT "id", "site_id" AS "siteId", "code", "name" FROM "packing_line" WHERE "site_id" = ${siteId} ORDER BY "code"`;
}

/** The pack formats of a site by their codes. */
export function formatsOf(from: ReadFrom, siteId: string): Promise<NamedRow[]> {
  return from.sql<NamedRow>`
    SELECT "id", "site_id" AS "siteId", "code", "name" FROM "pack_format" WHERE "site_id" = ${siteId} ORDER BY "code"`;
}
