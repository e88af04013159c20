import type { NetShift } from '../../core/weight-blocks/shift-nets.js';
import { toWhole } from '../../platform/database/stored-values.js';
import type { ReadFrom } from '../../platform/database/reading.js';

/** The good tare corrections of one counter of a weigher in a run. */
export async function shiftsOf(
  from: ReadFrom,
  of: { readonly runId: string; readonly weigherId: string; readonly series: string },
): Promise<NetShift[]> {
  const rows = await from.sql<NetShift>`
    SELECT "from_sequence" AS "fromSequence", "to_sequence" AS "toSequence", "added_milligrams" AS "addedMilligrams"
    FROM "tare_correction" WHERE "run_id" = ${of.runId} AND "weigher_id" = ${of.weigherId} AND "series" = ${of.series}
      AND "voided_by" IS NULL`;
  return rows.map(({ fromSequence, toSequence, addedMilligrams }) => ({
    fromSequence: toWhole(fromSequence),
    toSequence: toWhole(toSequence),
    addedMilligrams,
  }));
}
