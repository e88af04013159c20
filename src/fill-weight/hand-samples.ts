import { readHandSample, type HandSampleReading } from '../core/average-quantity/read-hand-sample.js';
import type { RunRow } from '../packing/packing-run-rows.js';
import { runOf } from '../packing/packing-runs.js';
import { toBoolean } from '../platform/database/stored-values.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { NotFound } from '../platform/refusal.js';
import { handSamplesOf, type HandSampleRow } from './mean-nets.js';
import { yardstickFor } from './kept/yardsticks.js';

/** A hand sample with what it says. */
export interface ReadSample extends HandSampleRow {
  readonly reading: HandSampleReading;
}

/** One of a run, good or taken back. */
export interface SampleOfRun extends ReadSample {
  readonly run: RunRow;
  readonly isVoid: boolean;
  readonly scaleCode: string | null;
}

/** The good hand samples of a run, the latest first. */
export async function samplesRead(from: ReadFrom, run: RunRow): Promise<readonly ReadSample[]> {
  return (await handSamplesOf(from, run.id)).reverse().map((row) => readOf(row, run));
}

/** @throws {NotFound} `hand-sample`, also for one of another site */
export async function sampleOf(from: ReadFrom, siteId: string, id: string): Promise<SampleOfRun> {
  const [row] = await from.sql<
    Omit<HandSampleRow, 'netDecigrams'> & {
      runId: string;
      siteId: string;
      netDecigrams: string;
      isVoid: boolean | number;
      scaleCode: string | null;
    }
  >`
    SELECT m."id", m."run_id" AS "runId", r."site_id" AS "siteId", m."scale_id" AS "scaleId", s."code" AS "scaleCode",
      m."sample_pack_count" AS "samplePackCount", m."mean_milligrams" AS "meanMilligrams",
      m."lower_milligrams" AS "lowerMilligrams", m."upper_milligrams" AS "upperMilligrams",
      m."net_decigrams" AS "netDecigrams", m."weighed_at" AS "weighedAt",
      CASE WHEN m."voided_by" IS NULL THEN 0 ELSE 1 END AS "isVoid"
    FROM "mean_net" m JOIN "packing_run" r ON r."id" = m."run_id" LEFT JOIN "scale" s ON s."id" = m."scale_id"
    WHERE m."id" = ${id}`;
  if (row?.siteId !== siteId) throw new NotFound('hand-sample', id);
  const run = await runOf(from, row.runId);
  const sample = { ...row, netDecigrams: JSON.parse(row.netDecigrams) as number[] };
  return { ...readOf(sample, run), run, isVoid: toBoolean(row.isVoid), scaleCode: row.scaleCode };
}

function readOf(row: HandSampleRow, run: RunRow): ReadSample {
  return { ...row, reading: readHandSample(row.netDecigrams, yardstickFor(run.nominalGrams * 1000)) };
}
