import type { Instant } from '../platform/clock.js';
import { toWhole } from '../platform/database/stored-values.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { textOfRows } from './kept/text-of-rows.js';
import { addRanges, rangesBetween, type SeriesKey } from './received-ranges.js';
import { rangesOf, rangesWithin, unitedRanges, type SequenceRange } from './sequence-ranges.js';
import { storedParts } from './stored-weights.js';
import { WeightRange } from './weight-range.entity.js';
import { WeightSeries } from './weight-series.entity.js';

const whole: SequenceRange = { from: 0, to: Number.MAX_SAFE_INTEGER };
const entriesAtOnce = 500;

/** Every counter of which something was received, or of which it is said. */
export async function seriesReceived(from: ReadFrom): Promise<SeriesKey[]> {
  return from.sql<SeriesKey>`
    SELECT w."device_id" AS "deviceId", b."series" FROM "weight_batch" b JOIN "pack_weigher" w ON w."id" = b."weigher_id"
    UNION SELECT w."device_id", b."series" FROM "weight_block" b JOIN "pack_weigher" w ON w."id" = b."weigher_id"
    UNION SELECT "device_id", "series" FROM "weight_series"
    UNION SELECT "device_id", "series" FROM "weight_range" ORDER BY 1, 2`;
}

/**
 * Sets what is known as received of a counter anew by the weights that are kept and the journal, where it is not as they
 * say. Between the sequences of a part that was dropped or is damaged, what is stored stays.
 */
export async function rebuildReceived(tx: Tx, key: SeriesKey): Promise<'as-stored' | 'written-anew'> {
  const stored = await rangesBetween(tx, key, whole);
  const ranges = await rangesByWeights(tx, key, stored);
  const received = await tx.find(WeightSeries, { ...key });
  const lastReceivedAt = (await lastReceived(tx, key)) ?? received[0]?.lastReceivedAt ?? null;
  const weightCount = ranges.reduce((sum, { from, to }) => sum + to - from + 1, 0);
  const truth = lastReceivedAt === null ? [] : [{ ...key, weightCount, lastReceivedAt }];
  if (textOfRows(truth) === textOfRows(received) && textOfRows(ranges) === textOfRows(stored)) return 'as-stored';
  await tx.remove(WeightSeries, { ...key });
  await tx.remove(WeightRange, { ...key });
  await tx.insert(WeightSeries, truth);
  await addRanges(tx, key, { added: ranges, touched: [] });
  return 'written-anew';
}

async function rangesByWeights(
  tx: Tx,
  key: SeriesKey,
  stored: readonly SequenceRange[],
): Promise<readonly SequenceRange[]> {
  const ranges: SequenceRange[] = [];
  for await (const { extent, read } of storedParts(tx, key, whole)) {
    ranges.push(...(typeof read === 'string' ? rangesWithin(stored, extent) : rangesOf(read.sequences)));
  }
  return unitedRanges(ranges, []);
}

/** When the journal last says that weights of the counter were received. */
async function lastReceived(tx: Tx, { deviceId, series }: SeriesKey): Promise<Instant | null> {
  let last: Instant | null = null;
  for (let after = -1; ;) {
    const entries = await tx.sql<{ sequence: number | string; recordedAt: Instant; after: string }>`
      SELECT e."sequence", e."recorded_at" AS "recordedAt", e."after"
      FROM "pack_weigher" w JOIN "journal_subject" s ON s."kind" = 'pack-weigher' AND s."id" = w."id"
        JOIN "journal_entry" e ON e."site_id" = s."site_id" AND e."sequence" = s."sequence"
          AND e."action" = 'receive-weights'
      WHERE w."device_id" = ${deviceId} AND e."sequence" > ${after} ORDER BY e."sequence" LIMIT ${entriesAtOnce}`;
    for (const entry of entries) {
      if ((JSON.parse(entry.after) as { series: string }).series !== series) continue;
      if (last === null || entry.recordedAt > last) last = entry.recordedAt;
    }
    if (entries.length < entriesAtOnce) return last;
    after = toWhole(entries.at(-1)?.sequence ?? after);
  }
}
