import { mean } from '../core/statistics/mean.js';
import { standardDeviation } from '../core/statistics/standard-deviation.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { Refusal } from '../platform/refusal.js';

/** So many results make a habit, and so many of the latest are looked at. Our own values, no source. */
const fewestResults = 12;
const latestResults = 200;

/** So many standard deviations from the mean a figure is asked about again. Our own value, no source. */
const spreads = 4;

/** Where the latest figures of a property by a method lie. */
export interface UsualRange {
  readonly least: number;
  readonly most: number;
}

/** Mean and four standard deviations on both sides; null while too few results are known or all are equal. */
export async function usualRangeOf(
  from: ReadFrom,
  siteId: string,
  asked: { readonly property: string; readonly method: string },
): Promise<UsualRange | null> {
  const rows = await from.sql<{ amount: string }>`
    SELECT r."amount" FROM "result" r JOIN "sample" s ON s."id" = r."sample_id"
    WHERE s."site_id" = ${siteId} AND r."property" = ${asked.property} AND r."method" = ${asked.method}
      AND r."voided_by" IS NULL AND s."voided_by" IS NULL
    ORDER BY r."id" DESC LIMIT ${latestResults}`;
  const amounts = rows.map(({ amount }) => Number(amount));
  if (amounts.length < fewestResults) return null;
  const half = spreads * standardDeviation(amounts);
  if (half === 0) return null;
  const centre = mean(amounts);
  return { least: centre - half, most: centre + half };
}

/**
 * A figure far from all that is usual was perhaps typed wrong: it is asked about once, and taken when it is said to be
 * what was measured.
 *
 * @throws {Refusal} `result-unusual`
 */
export async function refuseUnusual(
  from: ReadFrom,
  siteId: string,
  result: { readonly property: string; readonly method: string; readonly amount: string; readonly isSure: boolean },
): Promise<void> {
  if (result.isSure) return;
  const usual = await usualRangeOf(from, siteId, result);
  const amount = Number(result.amount);
  if (usual === null || (amount >= usual.least && amount <= usual.most)) return;
  const { property } = result;
  throw new Refusal('result-unusual', {
    property,
    amount: result.amount,
    least: rounded(Math.max(0, usual.least)),
    most: rounded(usual.most),
  });
}

function rounded(value: number): string {
  return String(Number(value.toPrecision(3)));
}
