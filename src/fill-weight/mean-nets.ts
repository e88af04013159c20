import type { Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { weighedMeanNet } from '../core/average-quantity/weighed-mean-net.js';
import { inChunks } from '../platform/database/in-chunks.js';
import { NotFound } from '../platform/refusal.js';
import { weighedMinutesOf, type RunMinutes } from './kept/weighed-minutes.js';

/** What a run's packs hold on average, with hard limits, and what that rests on. */
export interface RunMeanNet {
  readonly meanMilligrams: number;
  readonly lowerMilligrams: number;
  readonly upperMilligrams: number;
  /** `assumed`: most packs were not weighed and no sample was: the nominal quantity with the limits that the format sets. */
  readonly basis: 'measured' | 'assumed';
  /** Packs of the hand sample; 0: there is none. */
  readonly samplePackCount: number;
  /** When the hand sample was weighed. */
  readonly weighedAt: Instant | null;
  /** Packs that a weigher weighed one by one and let pass. */
  readonly weighedPackCount: number;
  /** Counted and not weighed: they are taken as the hand sample has it, or as assumed. */
  readonly unweighedPackCount: number;
  /** The weigher that weighed most of them; null: none. */
  readonly weigher: MeanNetWeigher | null;
}

interface MeanNetWeigher {
  readonly id: string;
  readonly maximumPermissibleErrorMilligrams: number;
}

export async function meanNetOf(from: ReadFrom, runId: string): Promise<RunMeanNet> {
  const found = (await meanNetsOf(from, [runId])).get(runId);
  if (found === undefined) throw new NotFound('packing-run', runId);
  return found;
}

/**
 * The same of several runs: by the weights of all packs; of those that were not weighed, and of runs without weights, by
 * the latest good hand sample, else what is assumed. One statement a kind, for however many runs.
 */
export async function meanNetsOf(from: ReadFrom, runIds: readonly string[]): Promise<Map<string, RunMeanNet>> {
  if (runIds.length === 0) return new Map();
  const formats = await from.sql<FormatOfRun>`
    SELECT r."id" AS "runId", f."nominal_grams" * 1000 AS "nominalMilligrams",
      f."assumed_lower_milligrams" AS "lowerMilligrams", f."assumed_upper_milligrams" AS "upperMilligrams",
      s."pack_count" AS "packCount"
    FROM "packing_run" r JOIN "pack_format" f ON f."id" = r."format_id"
    JOIN "packing_run_state" s ON s."run_id" = r."id" WHERE r."id" IN (${() => [...runIds]})`;
  const rows = await from.sql<HandSampled & { runId: string }>`
    SELECT "run_id" AS "runId", "mean_milligrams" AS "meanMilligrams", "lower_milligrams" AS "lowerMilligrams",
      "upper_milligrams" AS "upperMilligrams", "sample_pack_count" AS "samplePackCount", "weighed_at" AS "weighedAt"
    FROM "mean_net" WHERE "run_id" IN (${() => [...runIds]}) AND "voided_by" IS NULL ORDER BY "weighed_at", "id"`;
  // In the order of time: the latest of a run stays.
  const sampled = new Map(rows.map(({ runId, ...sample }) => [runId, sample]));
  const weighed = await weighedMinutesOf(from, runIds);
  return new Map(
    formats.map((format) => [
      format.runId,
      meanNetFrom(format, sampled.get(format.runId) ?? null, weighed.get(format.runId) ?? null),
    ]),
  );
}

interface FormatOfRun {
  readonly runId: string;
  readonly nominalMilligrams: number;
  readonly lowerMilligrams: number;
  readonly upperMilligrams: number;
  readonly packCount: number;
}

type HandSampled = Pick<
  RunMeanNet,
  'meanMilligrams' | 'lowerMilligrams' | 'upperMilligrams' | 'samplePackCount' | 'weighedAt'
>;

function meanNetFrom(format: FormatOfRun, sample: HandSampled | null, weighed: RunMinutes | null): RunMeanNet {
  const { nominalMilligrams, lowerMilligrams, upperMilligrams, packCount } = format;
  const otherwise = sample ?? { meanMilligrams: nominalMilligrams, lowerMilligrams, upperMilligrams };
  const net = weighedMeanNet({
    ...{ nominalMilligrams, countedPackCount: packCount, otherwise },
    minutes: weighed?.minutes ?? [],
  });
  const isMostWeighed = weighed !== null && net.weighedPackCount >= net.unweighedPackCount;
  return {
    ...net,
    basis: isMostWeighed || sample !== null ? 'measured' : 'assumed',
    samplePackCount: sample?.samplePackCount ?? 0,
    weighedAt: sample?.weighedAt ?? null,
    weigher: weighed?.weigher ?? null,
  };
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
