import { readCode } from '../core/identifiers/read-code.js';
import { addDays } from '../core/shift-calendar/calendar-day.js';
import type { Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { formatOf, shiftAt } from '../plant/plant-facts.js';
import { bestBeforeOn } from './best-before.js';
import type { LotRow } from './packing-run-rows.js';
import { lotOf } from './packing-runs.js';
import { codeWindowDays } from './printed-codes.js';

/** When the first packs of a lot were made, and until when its packs are best. */
export interface LotDates {
  readonly firstPackedAt: Instant;
  readonly productionOn: string;
  readonly shiftCode: string;
  /** As printed where the code holds a whole day; null where the format has none. */
  readonly bestBeforeOn: string | null;
}

/** Null: no pack carries the lot's code by the records. */
export async function lotDates(from: ReadFrom, lot: LotRow): Promise<LotDates | null> {
  const [first] = await from.sql<{ changedAt: Instant }>`
    SELECT "changed_at" AS "changedAt" FROM "coder_change" WHERE "lot_id" = ${lot.id} AND "voided_by" IS NULL
    ORDER BY "changed_at", "id" LIMIT 1`;
  if (first === undefined) return null;
  const { productionOn, shiftCode } = await shiftAt(from, lot.siteId, first.changedAt);
  const { bestBeforeMonths, codePattern } = await formatOf(from, lot.formatId);
  const dates = { firstPackedAt: first.changedAt, productionOn, shiftCode };
  if (bestBeforeMonths === null) return { ...dates, bestBeforeOn: null };
  const printed = printedBestBefore(codePattern, lot.code, productionOn);
  return { ...dates, bestBeforeOn: printed ?? bestBeforeOn(productionOn, bestBeforeMonths) };
}

/** The best-before day of a lot, `YYYY-MM-DD`; null where the format has none or no pack carries the code. */
export async function bestBeforeOfLot(from: ReadFrom, lotId: string): Promise<string | null> {
  return (await lotDates(from, await lotOf(from, lotId)))?.bestBeforeOn ?? null;
}

function printedBestBefore(pattern: string, code: string, productionOn: string): string | null {
  const window = {
    earliestOn: addDays(productionOn, -codeWindowDays),
    latestOn: addDays(productionOn, codeWindowDays),
  };
  const reading = readCode(pattern, code, window).find((one) => one.bestBefore?.length === 10);
  return reading?.bestBefore ?? null;
}
