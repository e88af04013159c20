import type { RunRow } from '../../packing/packing-run-rows.js';
import type { Instant } from '../../platform/clock.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { toWhole } from '../../platform/database/stored-values.js';

/** A list on paper has so many lines at most; how many more there are is said. */
export const mostListed = 60;

/** A pack beyond T2. */
export interface ShortPackRow {
  readonly weighedAt: Instant;
  readonly sequence: number;
  /** Null: none was told; -2: head 0 or none (`zeroOrNoHead` of core/weight-blocks). */
  readonly head: number | null;
  readonly netMilligrams: number;
}

/** The lightest accepted packs beyond T2 of a run, and how many there are in all. */
export async function shortPacksOf(
  from: ReadFrom,
  runId: string,
): Promise<{ readonly count: number; readonly packs: readonly ShortPackRow[] }> {
  const [row] = await from.sql<{ count: number | string }>`
    SELECT COUNT(*) AS "count" FROM "short_pack" WHERE "run_id" = ${runId}`;
  const packs = await from.sql<ShortPackRow>`
    SELECT "weighed_at" AS "weighedAt", "sequence", "head", "net_milligrams" AS "netMilligrams" FROM "short_pack"
    WHERE "run_id" = ${runId} ORDER BY "net_milligrams", "weighed_at", "sequence" LIMIT ${mostListed}`;
  return {
    count: toWhole(row?.count ?? 0),
    packs: packs.map((pack) => ({ ...pack, sequence: toWhole(pack.sequence) })),
  };
}

/** A tare of some packs that was corrected later. */
export interface TareChangeEntry {
  readonly recordedAt: Instant;
  /** It was taken back since. */
  readonly isWithdrawn: boolean;
  readonly addedMilligrams: number;
  readonly fromSequence: number;
  readonly toSequence: number;
  readonly packCount: number;
  readonly reason: string | null;
}

interface StoredChange {
  readonly recordedAt: Instant;
  readonly after: string;
  readonly reason: string | null;
}

type ChangeFacts = Omit<TareChangeEntry, 'recordedAt' | 'isWithdrawn' | 'reason'> & { readonly id: string };

/** Every tare correction of a run in the order in which they were recorded, those too that were taken back. */
export async function tareChangesOf(from: ReadFrom, run: RunRow): Promise<readonly TareChangeEntry[]> {
  const entries = await from.sql<StoredChange>`
    SELECT e."recorded_at" AS "recordedAt", e."after", e."reason" FROM "journal_subject" s
    JOIN "journal_entry" e ON e."site_id" = s."site_id" AND e."sequence" = s."sequence"
    WHERE s."kind" = 'packing-run' AND s."id" = ${run.id} AND s."site_id" = ${run.siteId}
      AND e."action" = 'correct-tare' ORDER BY e."sequence"`;
  const good = await from.sql<{ id: string }>`
    SELECT "id" FROM "tare_correction" WHERE "run_id" = ${run.id} AND "voided_by" IS NULL`;
  const standing = new Set(good.map(({ id }) => id));
  return entries.map(({ recordedAt, after, reason }) => {
    const { id, addedMilligrams, fromSequence, toSequence, packCount } = JSON.parse(after) as ChangeFacts;
    const isWithdrawn = !standing.has(id);
    return { recordedAt, reason, isWithdrawn, addedMilligrams, fromSequence, toSequence, packCount };
  });
}
