import { repeatabilityOf, type Repeatability } from '../core/sugar-analysis/repeatability.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { groupBy } from '../platform/group-by.js';

/** So many of the last results are looked through for repeats: a matter of a millisecond. Our own value, no source. */
const lastResults = 1000;

/** Which property by which method. */
export const methodKey = (of: { readonly property: string; readonly method: string }): string =>
  `${of.property} ${of.method}`;

/**
 * How far the results of each method scatter, by the samples of a site that were analysed again lately. What has too few
 * repeats is not there.
 */
export async function recentRepeatability(from: ReadFrom, siteId: string): Promise<ReadonlyMap<string, Repeatability>> {
  // A cross join keeps the order on SQLite: from the repeats to their samples, not through all samples of the site.
  const rows = await from.sql<{ id: string; sampleId: string; property: string; method: string; amount: string }>`
    SELECT DISTINCT r."id", r."sample_id" AS "sampleId", r."property", r."method", r."amount"
    FROM (SELECT "sample_id", "property", "method" FROM "result"
      WHERE "retest_number" > 0 AND "voided_by" IS NULL AND "id" > COALESCE(
        (SELECT "id" FROM "result" ORDER BY "id" DESC LIMIT 1 OFFSET ${lastResults}), '')) n
    CROSS JOIN "sample" s
    JOIN "result" r ON r."sample_id" = n."sample_id" AND r."property" = n."property" AND r."method" = n."method"
      AND r."voided_by" IS NULL
    WHERE s."id" = n."sample_id" AND s."site_id" = ${siteId} AND s."voided_by" IS NULL`;
  const found = new Map<string, Repeatability>();
  for (const [key, ofMethod] of groupBy(rows, methodKey)) {
    const samples = [...groupBy(ofMethod, ({ sampleId }) => sampleId).values()];
    const scatter = repeatabilityOf(samples.map((results) => results.map(({ amount }) => Number(amount))));
    if (scatter !== null) found.set(key, scatter);
  }
  return found;
}
