import type { DamageReason } from '../core/weight-blocks/damaged-weights.js';
import type { WeightColumns } from '../core/weight-blocks/weight-columns.js';
import { toWhole } from '../platform/database/stored-values.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { readBytes } from './kept/kept-weights.js';
import type { SeriesKey } from './received-ranges.js';
import type { SequenceRange } from './sequence-ranges.js';

/** Weights of one run as they were received, by ascending sequence. */
export interface StoredWeights {
  readonly runId: string;
  readonly columns: WeightColumns;
}

/** A batch or a block of a series, with the sequences between which its weights lie. */
export interface StoredPart {
  readonly runId: string;
  readonly extent: SequenceRange;
  /** The weights as they were received, or why they cannot be read. */
  readonly read: WeightColumns | DamageReason | 'dropped';
}

/**
 * What is kept of a machine's series between two sequences, sealed or not, one part after the other: never more than one
 * in memory. As it was received, without corrections of the tare. Parts that are damaged or were dropped are left out.
 */
export async function* storedWeights(
  from: ReadFrom,
  key: SeriesKey,
  between: SequenceRange,
): AsyncGenerator<StoredWeights> {
  for await (const { runId, read } of storedParts(from, key, between)) {
    if (typeof read !== 'string') yield { runId, columns: read };
  }
}

/** The same, with the parts that cannot be read. */
export async function* storedParts(
  from: ReadFrom,
  { deviceId, series }: SeriesKey,
  { from: first, to: last }: SequenceRange,
): AsyncGenerator<StoredPart> {
  const parts = await from.sql<{ id: string; first: number; last: number }>`
    SELECT b."id", b."first_sequence" AS "first", b."last_sequence" AS "last"
    FROM "weight_batch" b JOIN "pack_weigher" w ON w."id" = b."weigher_id"
    WHERE w."device_id" = ${deviceId} AND b."series" = ${series}
      AND b."first_sequence" <= ${last} AND b."last_sequence" >= ${first}
    UNION ALL
    SELECT b."id", b."first_sequence", b."last_sequence"
    FROM "weight_block" b JOIN "pack_weigher" w ON w."id" = b."weigher_id"
    WHERE w."device_id" = ${deviceId} AND b."series" = ${series}
      AND b."first_sequence" <= ${last} AND b."last_sequence" >= ${first}`;
  for (const part of parts) {
    const [row] = await from.sql<{ runId: string; weights: Uint8Array | null }>`
      SELECT "run_id" AS "runId", "weights" FROM "weight_batch" WHERE "id" = ${part.id}
      UNION ALL SELECT "run_id", "weights" FROM "weight_block" WHERE "id" = ${part.id}`;
    const extent = { from: toWhole(part.first), to: toWhole(part.last) };
    if (row !== undefined) yield { runId: row.runId, extent, read: readBytes(row.weights) };
  }
}
