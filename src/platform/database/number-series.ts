import { toWhole } from './stored-values.js';
import type { Tx } from './unit-of-work.js';

/**
 * Takes the next number of a site's series, from 1 on. It is taken inside the unit, so a unit that fails takes none
 * and no number is missing.
 */
export async function takeNumber(tx: Tx, siteId: string, name: string): Promise<number> {
  await tx.sql`INSERT INTO "number_series" ("site_id", "name", "next_number") VALUES (${siteId}, ${name}, 1) ON CONFLICT DO NOTHING`;
  const rows = await tx.sql<{ taken: number | string }>`
    UPDATE "number_series" SET "next_number" = "next_number" + 1
    WHERE "site_id" = ${siteId} AND "name" = ${name} RETURNING "next_number" - 1 AS "taken"`;
  const row = (Array.isArray(rows[0]) ? rows[0][0] : rows[0]) as { taken: number | string } | undefined;
  if (row === undefined) throw new Error(`number series ${name} is gone`);
  return toWhole(row.taken);
}
