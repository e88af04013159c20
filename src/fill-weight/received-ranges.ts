import type { Instant } from '../platform/clock.js';
import { toWhole } from '../platform/database/stored-values.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { unitedRanges, type SequenceRange } from './sequence-ranges.js';
import { WeightRange } from './weight-range.entity.js';

/** One counter of a machine: another series where it began again. */
export interface SeriesKey {
  readonly deviceId: string;
  readonly series: string;
}

/** The received ranges that hold, or lie between, two sequences, ascending. */
export async function rangesBetween(
  from: ReadFrom,
  { deviceId, series }: SeriesKey,
  { from: first, to: last }: SequenceRange,
): Promise<SequenceRange[]> {
  const rows = await from.sql<{ from: number | string; to: number | string }>`
    SELECT "from_sequence" AS "from", "to_sequence" AS "to" FROM "weight_range"
    WHERE "device_id" = ${deviceId} AND "series" = ${series} AND "to_sequence" >= ${first}
      AND "from_sequence" <= ${last} AND "from_sequence" >= COALESCE((
        SELECT MAX(x."from_sequence") FROM "weight_range" x
        WHERE x."device_id" = ${deviceId} AND x."series" = ${series} AND x."from_sequence" <= ${first}), ${first})
    ORDER BY "from_sequence"`;
  return rows.map((row) => ({ from: toWhole(row.from), to: toWhole(row.to) }));
}

/** Takes the series for this unit and counts what is added to it. */
export async function countReceived(
  tx: Tx,
  { deviceId, series }: SeriesKey,
  { count, at }: { readonly count: number; readonly at: Instant },
): Promise<void> {
  await tx.sql`
    INSERT INTO "weight_series" ("device_id", "series", "weight_count", "last_received_at")
    VALUES (${deviceId}, ${series}, ${count}, ${at})
    ON CONFLICT ("device_id", "series") DO UPDATE SET
      "weight_count" = "weight_series"."weight_count" + excluded."weight_count",
      "last_received_at" = excluded."last_received_at"`;
}

const rowsAtOnce = 500;

/**
 * Adds ranges to those that were received; what touches becomes one.
 *
 * @param touched the received ranges from one before the first of them to one after the last
 */
export async function addRanges(
  tx: Tx,
  key: SeriesKey,
  { added, touched }: { readonly added: readonly SequenceRange[]; readonly touched: readonly SequenceRange[] },
): Promise<void> {
  const united = unitedRanges(touched, added);
  const [least, most, whole] = [touched[0], touched.at(-1), united[0]];
  if (touched.length === 1 && united.length === 1 && whole !== undefined && whole.from === least?.from) {
    await tx.sql`UPDATE "weight_range" SET "to_sequence" = ${whole.to}
      WHERE "device_id" = ${key.deviceId} AND "series" = ${key.series} AND "from_sequence" = ${whole.from}`;
    return;
  }
  if (least !== undefined && most !== undefined) {
    await tx.sql`DELETE FROM "weight_range" WHERE "device_id" = ${key.deviceId} AND "series" = ${key.series}
      AND "from_sequence" >= ${least.from} AND "from_sequence" <= ${most.from}`;
  }
  const rows = united.map(({ from, to }) => ({ ...key, fromSequence: from, toSequence: to }));
  for (let start = 0; start < rows.length; start += rowsAtOnce) {
    await tx.insert(WeightRange, rows.slice(start, start + rowsAtOnce));
  }
}
