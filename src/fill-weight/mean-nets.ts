import type { Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { inChunks } from '../platform/database/in-chunks.js';
import { NotFound } from '../platform/refusal.js';

/** What a run's packs hold on average, with hard limits, and what that rests on. */
export interface RunMeanNet {
  readonly meanMilligrams: number;
  readonly lowerMilligrams: number;
  readonly upperMilligrams: number;
  /** `assumed`: nothing was weighed, so it is the nominal quantity with the limits that the format sets. */
  readonly basis: 'measured' | 'assumed';
  /** 0 where assumed. */
  readonly samplePackCount: number;
  readonly weighedAt: Instant | null;
}

export async function meanNetOf(from: ReadFrom, runId: string): Promise<RunMeanNet> {
  const found = (await meanNetsOf(from, [runId])).get(runId);
  if (found === undefined) throw new NotFound('packing-run', runId);
  return found;
}

/** The same of several runs: for each its latest good hand sample, else what is assumed. */
export async function meanNetsOf(from: ReadFrom, runIds: readonly string[]): Promise<Map<string, RunMeanNet>> {
  if (runIds.length === 0) return new Map();
  const assumed = await from.sql<Omit<RunMeanNet, 'basis' | 'samplePackCount' | 'weighedAt'> & { runId: string }>`
    SELECT r."id" AS "runId", f."nominal_grams" * 1000 AS "meanMilligrams",
      f."assumed_lower_milligrams" AS "lowerMilligrams", f."assumed_upper_milligrams" AS "upperMilligrams"
    FROM "packing_run" r JOIN "pack_format" f ON f."id" = r."format_id" WHERE r."id" IN (${() => [...runIds]})`;
  const measured = await from.sql<Omit<RunMeanNet, 'basis'> & { runId: string }>`
    SELECT "run_id" AS "runId", "mean_milligrams" AS "meanMilligrams", "lower_milligrams" AS "lowerMilligrams",
      "upper_milligrams" AS "upperMilligrams", "sample_pack_count" AS "samplePackCount", "weighed_at" AS "weighedAt"
    FROM "mean_net" WHERE "run_id" IN (${() => [...runIds]}) AND "voided_by" IS NULL ORDER BY "weighed_at", "id"`;
  return new Map<string, RunMeanNet>([
    ...assumed.map(({ runId, ...net }): [string, RunMeanNet] => [
      runId,
      { ...net, basis: 'assumed', samplePackCount: 0, weighedAt: null },
    ]),
    // In the order of time: the latest of a run stays.
    ...measured.map(({ runId, ...net }): [string, RunMeanNet] => [runId, { ...net, basis: 'measured' }]),
  ]);
}

/** A good hand sample of a run. */
export interface HandSampleRow {
  readonly id: string;
  readonly scaleId: string | null;
  readonly samplePackCount: number;
  readonly meanMilligrams: number;
  readonly lowerMilligrams: number;
  readonly upperMilligrams: number;
  readonly netDecigrams: readonly number[];
  readonly weighedAt: Instant;
}

/** The good hand samples of a run in the order of time: the last one is its mean net. */
export async function handSamplesOf(from: ReadFrom, runId: string): Promise<HandSampleRow[]> {
  const rows = await from.sql<Omit<HandSampleRow, 'netDecigrams'> & { netDecigrams: string }>`
    SELECT "id", "scale_id" AS "scaleId", "sample_pack_count" AS "samplePackCount",
      "mean_milligrams" AS "meanMilligrams", "lower_milligrams" AS "lowerMilligrams",
      "upper_milligrams" AS "upperMilligrams", "net_decigrams" AS "netDecigrams", "weighed_at" AS "weighedAt"
    FROM "mean_net" WHERE "run_id" = ${runId} AND "voided_by" IS NULL ORDER BY "weighed_at", "id"`;
  return rows.map((row) => ({ ...row, netDecigrams: JSON.parse(row.netDecigrams) as number[] }));
}

/** The good hand samples of some runs, in the order of time. */
export async function handSamplesOfRuns(
  from: ReadFrom,
  runIds: readonly string[],
): Promise<
  readonly (Pick<HandSampleRow, 'id' | 'meanMilligrams' | 'samplePackCount' | 'weighedAt'> & { runId: string })[]
> {
  const rows = await inChunks(
    runIds,
    (chunk) => from.sql<
      Pick<HandSampleRow, 'id' | 'meanMilligrams' | 'samplePackCount' | 'weighedAt'> & { runId: string }
    >`
      SELECT "id", "run_id" AS "runId", "mean_milligrams" AS "meanMilligrams",
        "sample_pack_count" AS "samplePackCount", "weighed_at" AS "weighedAt"
      FROM "mean_net" WHERE "run_id" IN (${() => chunk}) AND "voided_by" IS NULL`,
  );
  return rows.sort((one, other) => (one.weighedAt + one.id < other.weighedAt + other.id ? -1 : 1));
}
