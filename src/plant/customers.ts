import type { Page } from '../platform/web/listed.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { CustomerRow } from './plant-rows.js';

/** The customers of a site, the latest first; `before` is the id after which the list goes on. */
export async function customersOf(from: ReadFrom, siteId: string, page: Page): Promise<CustomerRow[]> {
  // Ids are hexadecimal, so every one of them stands before a "g".
  const before = page.before ?? 'g';
  return from.sql<CustomerRow>`
    SELECT c."id", c."site_id" AS "siteId", c."code", c."gln", k."name", k."address", k."telephone",
      (SELECT p."language" FROM "paper_language" p WHERE p."customer_id" = c."id"
        ORDER BY p."id" DESC LIMIT 1) AS "paperLanguage"
    FROM "customer" c LEFT JOIN "customer_contact" k ON k."customer_id" = c."id"
    WHERE c."site_id" = ${siteId} AND c."id" < ${before} ORDER BY c."id" DESC LIMIT ${page.limit}`;
}
