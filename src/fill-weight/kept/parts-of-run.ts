import type { DamageReason } from '../../core/weight-blocks/damaged-weights.js';
import type { WeightColumns } from '../../core/weight-blocks/weight-columns.js';
import { toBoolean, toWhole } from '../../platform/database/stored-values.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { readBytes, type UnreadableWeights } from './kept-weights.js';

/** A block or a batch of a run, its weights not read. What it holds never changes; it may be dropped. */
export interface PartOfRun extends Omit<UnreadableWeights, 'reason'> {
  readonly isDropped: boolean;
}

const columns =
  '"run_id" AS "runId", "weigher_id" AS "weigherId", "series", "first_sequence" AS "firstSequence", ' +
  '"last_sequence" AS "lastSequence", "weight_count" AS "weightCount", "weights" IS NULL AS "isDropped"';

/** All parts of a run, by weigher, counter and first sequence. */
export async function partsOfRun(from: ReadFrom, runId: string): Promise<readonly PartOfRun[]> {
  const rows = await from.sql<PartOfRun>`
    SELECT "id", 'block' AS "kind", ${() => columns} FROM "weight_block" WHERE "run_id" = ${runId}
    UNION ALL
    SELECT "id", 'batch' AS "kind", ${() => columns} FROM "weight_batch" WHERE "run_id" = ${runId}`;
  return rows
    .map((row) => ({
      ...row,
      firstSequence: toWhole(row.firstSequence),
      lastSequence: toWhole(row.lastSequence),
      isDropped: toBoolean(row.isDropped),
    }))
    .sort(inOrder);
}

function inOrder(one: PartOfRun, other: PartOfRun): number {
  const [place, otherPlace] = [one.weigherId + one.series, other.weigherId + other.series];
  if (place !== otherPlace) return place < otherPlace ? -1 : 1;
  return one.firstSequence - other.firstSequence;
}

/** The weights of a part as they were received, or why they cannot be read. */
export async function weightsOfPart(
  from: ReadFrom,
  { id, kind }: PartOfRun,
): Promise<WeightColumns | DamageReason | 'dropped'> {
  const table = kind === 'block' ? '"weight_block"' : '"weight_batch"';
  const [row] = await from.sql<{ weights: Uint8Array | null }>`
    SELECT "weights" FROM ${() => table} WHERE "id" = ${id}`;
  return readBytes(row?.weights ?? null);
}
