import { countsOf } from '../../packing/packing-runs.js';
import type { Instant } from '../../platform/clock.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { NotFound } from '../../platform/refusal.js';
import { measureSilence, type Measured } from './measure-silence.js';

/** A time in which a pack weigher sent nothing while packs of a run were counted. */
export interface SilenceRow {
  readonly id: string;
  readonly siteId: string;
  readonly weigherId: string;
  readonly weigherCode: string;
  readonly runId: string;
  readonly sinceAt: Instant;
  /** Null: no weights yet. */
  readonly untilAt: Instant | null;
  /** When the silence before it ended, of the same weigher and run. */
  readonly beforeUntilAt: Instant | null;
  readonly runClosedAt: Instant | null;
}

/** The same with what is unverified of its packs now. */
export interface Silence extends SilenceRow, Measured {}

const columns = (): string => `
  s."id", w."site_id" AS "siteId", s."weigher_id" AS "weigherId", w."code" AS "weigherCode", s."run_id" AS "runId",
  s."since_at" AS "sinceAt", s."until_at" AS "untilAt", c."closed_at" AS "runClosedAt",
  (SELECT MAX(e."until_at") FROM "weigher_silence" e WHERE e."weigher_id" = s."weigher_id" AND e."run_id" = s."run_id"
    AND e."since_at" < s."since_at") AS "beforeUntilAt"
  FROM "weigher_silence" s
  JOIN "pack_weigher" w ON w."id" = s."weigher_id"
  JOIN "packing_run" r ON r."id" = s."run_id" AND r."voided_by" IS NULL
  LEFT JOIN "packing_run_close" c ON c."run_id" = s."run_id" AND c."voided_by" IS NULL`;

/** When the last silence of a weigher on a run ended; null: it had none. */
export async function lastSilenceUntil(from: ReadFrom, runId: string, weigherId: string): Promise<Instant | null> {
  const [row] = await from.sql<{ untilAt: Instant | null }>`
    SELECT MAX("until_at") AS "untilAt" FROM "weigher_silence"
    WHERE "run_id" = ${runId} AND "weigher_id" = ${weigherId}`;
  return row?.untilAt ?? null;
}

/** The silences of a run in the order of time, each measured by the counts and weights of now. */
export async function silencesOfRun(from: ReadFrom, runId: string): Promise<readonly Silence[]> {
  const rows = await from.sql<SilenceRow>`
    SELECT ${columns} WHERE s."run_id" = ${runId} ORDER BY s."since_at", s."id"`;
  if (rows.length === 0) return [];
  const counts = await countsOf(from, [runId]);
  const silences: Silence[] = [];
  for (const row of rows) silences.push({ ...row, ...(await measureSilence(from, { runId, counts }, row)) });
  return silences;
}

/** Silences that are not over, or whose point is still open. */
export async function silencesToLookAt(from: ReadFrom): Promise<readonly SilenceRow[]> {
  return from.sql<SilenceRow>`
    SELECT ${columns} WHERE s."until_at" IS NULL OR EXISTS (
      SELECT 1 FROM "open_point_state" p WHERE p."site_id" = w."site_id" AND p."subject_kind" = 'weigher-silence'
        AND p."subject_id" = s."id")
    ORDER BY s."id"`;
}

/** @throws {NotFound} `weigher-silence`, also for one of another site */
export async function silenceOf(from: ReadFrom, siteId: string, id: string): Promise<SilenceRow> {
  const [row] = await from.sql<SilenceRow>`SELECT ${columns} WHERE s."id" = ${id}`;
  if (row?.siteId !== siteId) throw new NotFound('weigher-silence', id);
  return row;
}
