import type { ReadFrom } from '../../platform/database/reading.js';

/** A check that a weigher sent before, under its sequence. */
export interface KnownWeigherCheck {
  readonly checkId: string;
  readonly digest: string;
}

/** What came under a sequence before; null: nothing did. */
export async function knownWeigherCheck(
  from: ReadFrom,
  { deviceId, series, sequence }: { readonly deviceId: string; readonly series: string; readonly sequence: number },
): Promise<KnownWeigherCheck | null> {
  const [row] = await from.sql<KnownWeigherCheck>`
    SELECT "check_id" AS "checkId", "digest" FROM "weigher_check"
    WHERE "device_id" = ${deviceId} AND "series" = ${series} AND "sequence" = ${sequence}`;
  return row ?? null;
}

/** Which of some checks a weigher sent itself: its code, by the id of the check. */
export async function weighersOfChecks(
  from: ReadFrom,
  checkIds: readonly string[],
): Promise<ReadonlyMap<string, string>> {
  if (checkIds.length === 0) return new Map();
  const rows = await from.sql<{ checkId: string; code: string }>`
    SELECT c."check_id" AS "checkId", w."code" FROM "weigher_check" c
    JOIN "pack_weigher" w ON w."id" = c."weigher_id" WHERE c."check_id" IN (${() => [...checkIds]})`;
  return new Map(rows.map(({ checkId, code }) => [checkId, code]));
}
