import { decodeWeights } from '../core/weight-blocks/decode-weights.js';
import type { WeightColumns } from '../core/weight-blocks/weight-columns.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { SeriesKey } from './received-ranges.js';
import type { SequenceRange } from './sequence-ranges.js';

/** Weights of one run as they are kept, by ascending sequence. */
export interface StoredWeights {
  readonly runId: string;
  readonly columns: WeightColumns;
}

/** What is kept of a series between two sequences, one part after the other: never more than one in memory. */
export async function* storedWeights(
  from: ReadFrom,
  { deviceId, series }: SeriesKey,
  { from: first, to: last }: SequenceRange,
): AsyncGenerator<StoredWeights> {
  const parts = await from.sql<{ id: string }>`
    SELECT b."id" FROM "weight_batch" b JOIN "pack_weigher" w ON w."id" = b."weigher_id"
    WHERE w."device_id" = ${deviceId} AND b."series" = ${series}
      AND b."first_sequence" <= ${last} AND b."last_sequence" >= ${first} ORDER BY b."first_sequence", b."id"`;
  for (const { id } of parts) {
    const [row] = await from.sql<{ runId: string; weights: Uint8Array }>`
      SELECT "run_id" AS "runId", "weights" FROM "weight_batch" WHERE "id" = ${id}`;
    if (row !== undefined) yield { runId: row.runId, columns: decodeWeights(row.weights) };
  }
}
