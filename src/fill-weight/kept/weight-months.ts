import { addSummaries, type WeightSummary, type Yardstick } from '../../core/weight-blocks/weight-summary.js';
import type { Instant } from '../../platform/clock.js';
import type { Tx } from '../../platform/database/unit-of-work.js';
import { monthOf } from './months-of-utc.js';
import { rowOf, summaryOf, summedUp, type RawSums } from './summed-rows.js';
import { WeightMonth } from './weight-month.entity.js';
import { wordOf } from './yardsticks.js';

/** Weights of one hour, to be added to their month. */
export interface MonthPart {
  readonly weigherId: string;
  readonly hourAt: Instant;
  readonly yardstick: Yardstick;
  readonly summary: WeightSummary;
}

/** What one yardstick measured of a weigher in a month. */
export interface SummedMonth {
  readonly weigherId: string;
  readonly monthAt: Instant;
  readonly yardstick: Yardstick;
  readonly summary: WeightSummary;
}

/** Adds weights to the sums of their months, each month once, in one order for all units. */
export async function addToMonths(tx: Tx, parts: readonly MonthPart[]): Promise<void> {
  for (const month of monthsOf(parts)) {
    const before = await takeMonth(tx, month);
    await tx.update(WeightMonth, keyOf(month), rowOf(addSummaries(summaryOf(before), month.summary)));
  }
}

/** Hours added up by month, in the order of weigher, month and yardstick. */
export function monthsOf(parts: readonly MonthPart[]): SummedMonth[] {
  const months = new Map<string, SummedMonth>();
  for (const { weigherId, hourAt, yardstick, summary } of parts) {
    const monthAt = monthOf(hourAt);
    const key = `${weigherId} ${monthAt} ${wordOf(yardstick)}`;
    const earlier = months.get(key);
    const whole = earlier === undefined ? summary : addSummaries(earlier.summary, summary);
    months.set(key, { weigherId, monthAt, yardstick, summary: whole });
  }
  return [...months].sort(([one], [other]) => (one < other ? -1 : 1)).map(([, month]) => month);
}

/** The key of a month's row. */
export function keyOf({ weigherId, monthAt, yardstick }: SummedMonth) {
  return { weigherId, monthAt, measuredBy: wordOf(yardstick) };
}

const ofBoth = (columns: readonly string[]): string =>
  ['accepted', 'rejected'].flatMap((of) => columns.map((column) => `"${of}_${column}"`)).join(', ');
const sumNames = ofBoth(Object.keys(summedUp));
const noSums = ['accepted', 'rejected']
  .flatMap(() => Object.values(summedUp).map((how) => (how === 'SUM' ? '0' : 'NULL')))
  .join(', ');

/** The row of a month, an empty one where there was none; other units wait for it from here on. */
async function takeMonth(tx: Tx, month: SummedMonth): Promise<RawSums> {
  const { weigherId, monthAt, measuredBy } = keyOf(month);
  const { nominalMilligrams, t1Milligrams, t2Milligrams, binMilligrams } = month.yardstick;
  const nothing = Buffer.alloc(0);
  const [row] = await tx.sql<RawSums>`
    INSERT INTO "weight_month" ("weigher_id", "month_at", "measured_by",
      "nominal_milligrams", "t1_milligrams", "t2_milligrams", "bin_milligrams",
      ${() => sumNames}, "accepted_histogram", "rejected_histogram")
    VALUES (${weigherId}, ${monthAt}, ${measuredBy},
      ${nominalMilligrams}, ${t1Milligrams}, ${t2Milligrams}, ${binMilligrams}, ${() => noSums}, ${nothing}, ${nothing})
    ON CONFLICT ("weigher_id", "month_at", "measured_by") DO UPDATE SET "measured_by" = excluded."measured_by"
    RETURNING *`;
  return row ?? {};
}
