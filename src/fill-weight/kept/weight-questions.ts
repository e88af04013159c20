import { addHistogram } from '../../core/weight-blocks/histogram-bytes.js';
import { noWeights, type WeightSummary, type Yardstick } from '../../core/weight-blocks/weight-summary.js';
import type { Instant } from '../../platform/clock.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { summaryOf, type RawSums } from './sum-columns.js';
import { yardstickIn } from './yardsticks.js';

/** Weights summed up, with what they were measured by. */
export interface SummedWeights {
  readonly yardstick: Yardstick;
  readonly summary: WeightSummary;
}

export interface RunOfWeigher extends SummedWeights {
  readonly weigherId: string;
  readonly firstAt: Instant;
  readonly lastAt: Instant;
}

/** The weights of a run, by weigher; none where nothing was weighed. */
export async function summariesOfRun(from: ReadFrom, runId: string): Promise<RunOfWeigher[]> {
  const rows = await from.sql<RawSums>`
    SELECT * FROM "weight_run" WHERE "run_id" = ${runId} ORDER BY "weigher_id"`;
  return rows.map((row) => ({
    weigherId: row['weigher_id'] as string,
    firstAt: row['first_at'] as Instant,
    lastAt: row['last_at'] as Instant,
    yardstick: yardstickIn(row),
    summary: summaryOf(row),
  }));
}

export interface HourOfRun {
  readonly weigherId: string;
  readonly hourAt: Instant;
  readonly summary: WeightSummary;
}

/** The weights of a run, by hour of UTC and weigher, in the order of time. */
export async function hoursOfRun(from: ReadFrom, runId: string): Promise<HourOfRun[]> {
  const rows = await from.sql<RawSums>`
    SELECT * FROM "weight_hour" WHERE "run_id" = ${runId} ORDER BY "hour_at", "weigher_id"`;
  return rows.map((row) => ({
    weigherId: row['weigher_id'] as string,
    hourAt: row['hour_at'] as Instant,
    summary: summaryOf(row),
  }));
}

/** A stretch of a line's time. Both ends are full hours of UTC; the end is not included. */
export interface LineStretch {
  readonly lineId: string;
  readonly fromAt: Instant;
  readonly toAt: Instant;
}

/**
 * The weights of a line in a stretch of time, by what they were measured by: formats of one nominal quantity together,
 * without their histogram. Runs that lie wholly within it are taken as a whole, of the others the hours. The cross join
 * has SQLite look for the few runs across the edges first, and not for all hours.
 */
export async function summariesOfLine(from: ReadFrom, { lineId, fromAt, toAt }: LineStretch): Promise<SummedWeights[]> {
  const rows = await from.sql<RawSums>`
    SELECT "nominal_milligrams", "t1_milligrams", "t2_milligrams", "bin_milligrams",
      SUM("accepted_pack_count") AS "accepted_pack_count",
      SUM("accepted_error_sum_milligrams") AS "accepted_error_sum_milligrams",
      SUM("accepted_squares_high") AS "accepted_squares_high",
      SUM("accepted_squares_low") AS "accepted_squares_low",
      MIN("accepted_smallest_milligrams") AS "accepted_smallest_milligrams",
      MAX("accepted_largest_milligrams") AS "accepted_largest_milligrams",
      SUM("accepted_beyond_t1_count") AS "accepted_beyond_t1_count",
      SUM("accepted_beyond_t2_count") AS "accepted_beyond_t2_count",
      SUM("rejected_pack_count") AS "rejected_pack_count",
      SUM("rejected_error_sum_milligrams") AS "rejected_error_sum_milligrams",
      SUM("rejected_squares_high") AS "rejected_squares_high",
      SUM("rejected_squares_low") AS "rejected_squares_low",
      MIN("rejected_smallest_milligrams") AS "rejected_smallest_milligrams",
      MAX("rejected_largest_milligrams") AS "rejected_largest_milligrams",
      SUM("rejected_beyond_t1_count") AS "rejected_beyond_t1_count",
      SUM("rejected_beyond_t2_count") AS "rejected_beyond_t2_count"
    FROM (
      SELECT r."nominal_milligrams", r."t1_milligrams", r."t2_milligrams", r."bin_milligrams",
        r."accepted_pack_count", r."accepted_error_sum_milligrams", r."accepted_squares_high",
        r."accepted_squares_low", r."accepted_smallest_milligrams", r."accepted_largest_milligrams",
        r."accepted_beyond_t1_count", r."accepted_beyond_t2_count", r."rejected_pack_count",
        r."rejected_error_sum_milligrams", r."rejected_squares_high", r."rejected_squares_low",
        r."rejected_smallest_milligrams", r."rejected_largest_milligrams", r."rejected_beyond_t1_count",
        r."rejected_beyond_t2_count"
      FROM "pack_weigher" w JOIN "weight_run" r ON r."weigher_id" = w."id"
      WHERE w."line_id" = ${lineId} AND r."first_at" >= ${fromAt} AND r."last_at" < ${toAt}
      UNION ALL
      SELECT r."nominal_milligrams", r."t1_milligrams", r."t2_milligrams", r."bin_milligrams",
        h."accepted_pack_count", h."accepted_error_sum_milligrams", h."accepted_squares_high",
        h."accepted_squares_low", h."accepted_smallest_milligrams", h."accepted_largest_milligrams",
        h."accepted_beyond_t1_count", h."accepted_beyond_t2_count", h."rejected_pack_count",
        h."rejected_error_sum_milligrams", h."rejected_squares_high", h."rejected_squares_low",
        h."rejected_smallest_milligrams", h."rejected_largest_milligrams", h."rejected_beyond_t1_count",
        h."rejected_beyond_t2_count"
      FROM "pack_weigher" w JOIN "weight_run" r ON r."weigher_id" = w."id"
        CROSS JOIN "weight_hour" h
      WHERE w."line_id" = ${lineId} AND h."run_id" = r."run_id" AND h."weigher_id" = r."weigher_id"
        AND h."hour_at" >= ${fromAt} AND h."hour_at" < ${toAt}
        AND ((r."first_at" < ${fromAt} AND r."last_at" >= ${fromAt})
          OR (r."first_at" >= ${fromAt} AND r."first_at" < ${toAt} AND r."last_at" >= ${toAt}))
    ) AS "part"
    GROUP BY "nominal_milligrams", "t1_milligrams", "t2_milligrams", "bin_milligrams"
    ORDER BY "nominal_milligrams"`;
  return rows.map((row) => ({ yardstick: yardstickIn(row), summary: summaryOf(row) }));
}

/** Packs by bins of their error, accepted apart from rejected (`WeightSums.histogram`). */
export interface LineHistogram {
  readonly yardstick: Yardstick;
  readonly accepted: Float64Array;
  readonly rejected: Float64Array;
}

/** The histograms of the same weights. */
export async function histogramsOfLine(
  from: ReadFrom,
  { lineId, fromAt, toAt }: LineStretch,
): Promise<LineHistogram[]> {
  const rows = await from.sql<RawSums>`
    SELECT r."nominal_milligrams", r."t1_milligrams", r."t2_milligrams", r."bin_milligrams", r."accepted_histogram", r."rejected_histogram"
    FROM "pack_weigher" w JOIN "weight_run" r ON r."weigher_id" = w."id"
    WHERE w."line_id" = ${lineId} AND r."first_at" >= ${fromAt} AND r."last_at" < ${toAt}
    UNION ALL
    SELECT r."nominal_milligrams", r."t1_milligrams", r."t2_milligrams", r."bin_milligrams", h."accepted_histogram", h."rejected_histogram"
    FROM "pack_weigher" w JOIN "weight_run" r ON r."weigher_id" = w."id"
      CROSS JOIN "weight_hour" h
    WHERE w."line_id" = ${lineId} AND h."run_id" = r."run_id" AND h."weigher_id" = r."weigher_id"
      AND h."hour_at" >= ${fromAt} AND h."hour_at" < ${toAt}
      AND ((r."first_at" < ${fromAt} AND r."last_at" >= ${fromAt})
        OR (r."first_at" >= ${fromAt} AND r."first_at" < ${toAt} AND r."last_at" >= ${toAt}))`;
  const found = new Map<string, LineHistogram>();
  for (const row of rows) {
    const yardstick = yardstickIn(row);
    const key = JSON.stringify(yardstick);
    const { accepted, rejected } = found.get(key) ?? emptyHistograms();
    addHistogram(accepted, row['accepted_histogram'] as Uint8Array);
    addHistogram(rejected, row['rejected_histogram'] as Uint8Array);
    found.set(key, { yardstick, accepted, rejected });
  }
  return [...found.values()].sort((one, other) => one.yardstick.nominalMilligrams - other.yardstick.nominalMilligrams);
}

function emptyHistograms(): Pick<LineHistogram, 'accepted' | 'rejected'> {
  const { accepted, rejected } = noWeights();
  return { accepted: accepted.histogram, rejected: rejected.histogram };
}
