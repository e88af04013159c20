import type { WeightColumns } from '../core/weight-blocks/weight-columns.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { readBytes } from './kept/kept-weights.js';
import type { SeriesKey } from './received-ranges.js';
import type { SequenceRange } from './sequence-ranges.js';

/** Weights of one run as they were received, by ascending sequence. */
export interface StoredWeights {
  readonly runId: string;
  readonly columns: WeightColumns;
}

/**
 * What is kept of a machine's series between two sequences, sealed or not, one part after the other: never more than one
 * in memory. As it was received, without corrections of the tare. Parts that are damaged or were dropped are left out.
 */
export async function* storedWeights(
  from: ReadFrom,
  { deviceId, series }: SeriesKey,
  { from: first, to: last }: SequenceRange,
): AsyncGenerator<StoredWeights> {
  const parts = await from.sql<{ id: string }>`
    SELECT b."id" FROM "weight_batch" b JOIN "pack_weigher" w ON w."id" = b."weigher_id"
    WHERE w."device_id" = ${deviceId} AND b."series" = ${series}
      AND b."first_sequence" <= ${last} AND b."last_sequence" >= ${first}
    UNION ALL
    SELECT b."id" FROM "weight_block" b JOIN "pack_weigher" w ON w."id" = b."weigher_id"
    WHERE w."device_id" = ${deviceId} AND b."series" = ${series}
      AND b."first_sequence" <= ${last} AND b."last_sequence" >= ${first}`;
  for (const { id } of parts) {
    const [row] = await from.sql<{ runId: string; weights: Uint8Array | null }>`
      SELECT "run_id" AS "runId", "weights" FROM "weight_batch" WHERE "id" = ${id}
      UNION ALL SELECT "run_id", "weights" FROM "weight_block" WHERE "id" = ${id}`;
    const columns = readBytes(row?.weights ?? null);
    if (row !== undefined && typeof columns !== 'string') yield { runId: row.runId, columns };
  }
}
