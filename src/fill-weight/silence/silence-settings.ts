import type { Instant } from '../../platform/clock.js';
import type { ReadFrom } from '../../platform/database/reading.js';

/** How long a weigher may send nothing while packs are counted, where nobody set it. Our own value, no source. */
export const usualSilenceMinutes = 10;

/** A pack weigher with how long it may be silent. */
export interface WatchedWeigher {
  readonly id: string;
  readonly siteId: string;
  readonly lineId: string;
  readonly lineCode: string;
  readonly code: string;
  readonly setUpAt: Instant;
  /** Null: nobody waits for it. */
  readonly silentAfterMinutes: number | null;
}

/** The pack weighers that are set up, of all sites or of one, by code. */
export async function watchedWeighers(
  from: ReadFrom,
  siteId: string | null = null,
): Promise<readonly WatchedWeigher[]> {
  const rows = await from.sql<WatchedWeigher & { settingId: string | null }>`
    SELECT w."id", w."site_id" AS "siteId", w."line_id" AS "lineId", l."code" AS "lineCode", w."code",
      w."set_up_at" AS "setUpAt", s."id" AS "settingId", s."silent_after_minutes" AS "silentAfterMinutes"
    FROM "pack_weigher" w JOIN "packing_line" l ON l."id" = w."line_id"
    LEFT JOIN "silence_setting" s ON s."id" = (
      SELECT x."id" FROM "silence_setting" x WHERE x."weigher_id" = w."id" AND x."voided_by" IS NULL
      ORDER BY x."set_at" DESC, x."id" DESC LIMIT 1)
    WHERE w."voided_by" IS NULL AND w."site_id" = COALESCE(${siteId}, w."site_id") ORDER BY w."code"`;
  return rows.map(({ settingId, ...weigher }) =>
    settingId === null ? { ...weigher, silentAfterMinutes: usualSilenceMinutes } : weigher,
  );
}
