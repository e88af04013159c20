import type { RunRow } from '../../packing/packing-run-rows.js';
import { countsOf, runColumns } from '../../packing/packing-runs.js';
import { shifted, type Instant } from '../../platform/clock.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { measureSilence } from './measure-silence.js';
import type { WatchedWeigher } from './silence-settings.js';
import { lastSilenceUntil } from './silences.js';

const minute = 60_000;
/** A run that was closed so recently may have ended in silence. Our own value, no source. */
const lookBackMinutes = 120;

/** A silence that begins: packs were counted long enough ago, and no weight came since. */
export interface FoundSilence {
  readonly run: RunRow;
  readonly sinceAt: Instant;
  readonly unverifiedPackCount: number;
}

/** The runs of a line that are open, or were until a while ago. */
export function runsToLookAt(from: ReadFrom, lineId: string, now: Instant): Promise<RunRow[]> {
  return from.sql<RunRow>`
    SELECT ${runColumns} WHERE r."line_id" = ${lineId} AND r."voided_by" IS NULL
      AND (c."closed_at" IS NULL OR c."closed_at" >= ${shifted(now, -lookBackMinutes * minute)})
    ORDER BY r."started_at", r."id"`;
}

/** When the last pack of a run was weighed; null: none was. */
export async function lastWeightAt(from: ReadFrom, runId: string, weigherId: string): Promise<Instant | null> {
  const [row] = await from.sql<{ lastAt: Instant }>`
    SELECT "last_at" AS "lastAt" FROM "weight_run" WHERE "run_id" = ${runId} AND "weigher_id" = ${weigherId}`;
  return row?.lastAt ?? null;
}

/**
 * Whether a weigher has fallen silent on a run: some count shows packs that no weigher of the line weighed, it is as old
 * as the setting says, and no weight came after it. A line that stands counts nothing, so it is never silent.
 */
export async function findSilence(
  from: ReadFrom,
  { weigher, run, now }: { readonly weigher: WatchedWeigher; readonly run: RunRow; readonly now: Instant },
): Promise<FoundSilence | null> {
  const { silentAfterMinutes, setUpAt } = weigher;
  if (silentAfterMinutes === null) return null;
  const beganAt = run.startedAt > setUpAt ? run.startedAt : setUpAt;
  const lastAt = await lastWeightAt(from, run.id, weigher.id);
  const sinceAt = lastAt !== null && lastAt > beganAt ? lastAt : beganAt;
  const latestAt = shifted(now, -silentAfterMinutes * minute);
  if (sinceAt > latestAt || run.lastCountedAt <= sinceAt) return null;
  const silent = { sinceAt, untilAt: null, beforeUntilAt: await lastSilenceUntil(from, run.id, weigher.id) };
  const counts = await countsOf(from, [run.id]);
  const old = counts.filter(({ countedAt }) => countedAt <= latestAt);
  const byThen = await measureSilence(from, { runId: run.id, counts: old }, silent);
  if (byThen.isVerified) return null;
  const { unverifiedPackCount } = await measureSilence(from, { runId: run.id, counts }, silent);
  return { run, sinceAt, unverifiedPackCount };
}
