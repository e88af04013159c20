import { readCode } from '../core/identifiers/read-code.js';
import { addDays } from '../core/shift-calendar/calendar-day.js';
import { bestBeforeOn } from '../packing/best-before.js';
import { lotOf } from '../packing/packing-runs.js';
import type { Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { formatOf, shiftAt } from '../plant/plant-facts.js';

/** A coder may be set years off; what it printed is still read by the pattern. */
const windowDays = 3653;

/**
 * The best-before day of a lot, `YYYY-MM-DD`: as printed where the code holds a whole day, else by the production day on which the
 * coder began to print it. Null where the format has none.
 */
export async function bestBeforeOfLot(from: ReadFrom, lotId: string): Promise<string | null> {
  const lot = await lotOf(from, lotId);
  const format = await formatOf(from, lot.formatId);
  if (format.bestBeforeMonths === null) return null;
  const [first] = await from.sql<{ changedAt: Instant }>`
    SELECT "changed_at" AS "changedAt" FROM "coder_change" WHERE "lot_id" = ${lotId} AND "voided_by" IS NULL
    ORDER BY "changed_at", "id" LIMIT 1`;
  if (first === undefined) return null;
  const { productionOn } = await shiftAt(from, lot.siteId, first.changedAt);
  const window = { earliestOn: addDays(productionOn, -windowDays), latestOn: addDays(productionOn, windowDays) };
  const printed = readCode(format.codePattern, lot.code, window).find((reading) => reading.bestBefore?.length === 10);
  return printed?.bestBefore ?? bestBeforeOn(productionOn, format.bestBeforeMonths);
}
