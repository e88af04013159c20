import type { Instant } from '../../platform/clock.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import type { Tx } from '../../platform/database/unit-of-work.js';
import { monthAfter, monthOf } from './months-of-utc.js';
import { rowOf, summaryOf, type RawSums } from './summed-rows.js';
import { textOfRows } from './text-of-rows.js';
import { keyOf, monthsOf, type SummedMonth } from './weight-months.js';
import { WeightMonth } from './weight-month.entity.js';
import { yardstickIn } from './yardsticks.js';

interface MonthOfWeigher {
  readonly weigherId: string;
  readonly monthAt: Instant;
}

/** The months of weighers that have sums, or hours to be summed up. */
export async function monthsWithWeights(from: ReadFrom): Promise<MonthOfWeigher[]> {
  const rows = await from.sql<{ weigherId: string; month: string }>`
    SELECT "weigher_id" AS "weigherId", SUBSTR("hour_at", 1, 7) AS "month" FROM "weight_hour"
    UNION SELECT "weigher_id", SUBSTR("month_at", 1, 7) FROM "weight_month" ORDER BY 1, 2`;
  return rows.map(({ weigherId, month }) => ({ weigherId, monthAt: monthOf(month) }));
}

/** Sets the months of some hours anew, where they are not the sum of all their hours; answers how many were not. */
export async function rebuildMonths(
  tx: Tx,
  hours: readonly { readonly weigherId: string; readonly hourAt: Instant }[],
): Promise<number> {
  const months = new Map(hours.map(({ weigherId, hourAt }) => [`${weigherId} ${monthOf(hourAt)}`, weigherId]));
  let count = 0;
  for (const [key, weigherId] of [...months].sort()) {
    if (await rebuildMonth(tx, { weigherId, monthAt: key.slice(weigherId.length + 1) })) count += 1;
  }
  return count;
}

/** Sets one month anew, where it is not the sum of its hours; answers whether it was not. */
export async function rebuildMonth(tx: Tx, month: MonthOfWeigher): Promise<boolean> {
  const { weigherId, monthAt } = month;
  // Changes nothing, but whoever adds to the month meanwhile waits (PostgreSQL).
  await tx.sql`
    UPDATE "weight_month" SET "measured_by" = "measured_by"
    WHERE "weigher_id" = ${weigherId} AND "month_at" = ${monthAt}`;
  const truth = (await monthByItsHours(tx, month)).map((summed): WeightMonth => ({
    ...keyOf(summed),
    ...summed.yardstick,
    ...rowOf(summed.summary),
  }));
  if (textOfRows(truth) === textOfRows(await tx.find(WeightMonth, { weigherId, monthAt }))) return false;
  await tx.remove(WeightMonth, { weigherId, monthAt });
  for (const row of truth) await tx.insert(WeightMonth, row);
  return true;
}

async function monthByItsHours(tx: Tx, { weigherId, monthAt }: MonthOfWeigher): Promise<SummedMonth[]> {
  const rows = await tx.sql<RawSums>`
    SELECT h.*, r."nominal_milligrams", r."t1_milligrams", r."t2_milligrams", r."bin_milligrams"
    FROM "weight_hour" h JOIN "weight_run" r ON r."run_id" = h."run_id" AND r."weigher_id" = h."weigher_id"
    WHERE h."weigher_id" = ${weigherId} AND h."hour_at" >= ${monthAt} AND h."hour_at" < ${monthAfter(monthAt)}`;
  return monthsOf(
    rows.map((row) => ({
      weigherId,
      hourAt: row['hour_at'] as Instant,
      yardstick: yardstickIn(row),
      summary: summaryOf(row),
    })),
  );
}
