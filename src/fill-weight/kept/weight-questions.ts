import { addHistogram } from '../../core/weight-blocks/histogram-bytes.js';
import {
  addSummaries,
  noWeights,
  type WeightSummary,
  type Yardstick,
} from '../../core/weight-blocks/weight-summary.js';
import type { Instant } from '../../platform/clock.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { monthAfter, monthOf } from './months-of-utc.js';
import { summaryOf, summedUp, type RawSums } from './summed-rows.js';
import { wordOf, yardstickIn } from './yardsticks.js';

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

const yardstickColumns = ['nominal_milligrams', 't1_milligrams', 't2_milligrams', 'bin_milligrams'];
const ofBoth = (columns: readonly string[]): string[] =>
  ['accepted', 'rejected'].flatMap((of) => columns.map((column) => `${of}_${column}`));
const sumColumns = ofBoth(Object.keys(summedUp));
const quoted = (columns: readonly string[], table = ''): string =>
  columns.map((column) => `${table}"${column}"`).join(', ');
const eachSummedUp = ['accepted', 'rejected']
  .flatMap((of) => Object.entries(summedUp).map(([column, sum]) => `${sum}("${of}_${column}") AS "${of}_${column}"`))
  .join(', ');

/** A stretch as full months of UTC in its middle, and what is left before and after them; without one, all is left. */
interface Parted {
  readonly months: LineStretch | null;
  readonly rest: readonly LineStretch[];
}

function partedByMonths({ lineId, fromAt, toAt }: LineStretch): Parted {
  const first = fromAt === monthOf(fromAt) ? fromAt : monthAfter(fromAt);
  const end = monthOf(toAt);
  if (first >= end) return { months: null, rest: [{ lineId, fromAt, toAt }] };
  const rest = [
    { lineId, fromAt, toAt: first },
    { lineId, fromAt: end, toAt },
  ];
  return { months: { lineId, fromAt: first, toAt: end }, rest: rest.filter((part) => part.fromAt < part.toAt) };
}

/** The rows of full months. */
function monthsOfLine(from: ReadFrom, { lineId, fromAt, toAt }: LineStretch, columns: string[]): Promise<RawSums[]> {
  return from.sql<RawSums>`
    SELECT ${() => quoted([...yardstickColumns, ...columns], 'm.')}
    FROM "pack_weigher" w JOIN "weight_month" m ON m."weigher_id" = w."id"
    WHERE w."line_id" = ${lineId} AND m."month_at" >= ${fromAt} AND m."month_at" < ${toAt}`;
}

/**
 * Rows of a line in a stretch of time: of runs that lie wholly within it their own, of the others those of their hours.
 * The cross join has SQLite look for the few runs across the edges first, and not for all hours.
 * @param asks the columns that are wanted of both, and what stands around the rows
 */
function rowsOfLine(
  from: ReadFrom,
  { lineId, fromAt, toAt }: LineStretch,
  asks: { readonly columns: readonly string[]; readonly head: string; readonly tail: string },
): Promise<RawSums[]> {
  const measuredBy = (): string => quoted(yardstickColumns, 'r.');
  return from.sql<RawSums>`
    ${() => asks.head} (
      SELECT ${measuredBy}, ${() => quoted(asks.columns, 'r.')}
      FROM "pack_weigher" w JOIN "weight_run" r ON r."weigher_id" = w."id"
      WHERE w."line_id" = ${lineId} AND r."first_at" >= ${fromAt} AND r."last_at" < ${toAt}
      UNION ALL
      SELECT ${measuredBy}, ${() => quoted(asks.columns, 'h.')}
      FROM "pack_weigher" w JOIN "weight_run" r ON r."weigher_id" = w."id"
        CROSS JOIN "weight_hour" h
      WHERE w."line_id" = ${lineId} AND h."run_id" = r."run_id" AND h."weigher_id" = r."weigher_id"
        AND h."hour_at" >= ${fromAt} AND h."hour_at" < ${toAt}
        AND ((r."first_at" < ${fromAt} AND r."last_at" >= ${fromAt})
          OR (r."first_at" >= ${fromAt} AND r."first_at" < ${toAt} AND r."last_at" >= ${toAt}))
    ) AS "part" ${() => asks.tail}`;
}

/**
 * The weights of a line in a stretch of time, by what they were measured by: formats of one nominal quantity together,
 * without their histogram.
 */
export async function summariesOfLine(from: ReadFrom, stretch: LineStretch): Promise<SummedWeights[]> {
  const { months, rest } = partedByMonths(stretch);
  const rows = months === null ? [] : await monthsOfLine(from, months, sumColumns);
  const measuredBy = quoted(yardstickColumns);
  for (const part of rest) {
    const head = `SELECT ${measuredBy}, ${eachSummedUp} FROM`;
    rows.push(...(await rowsOfLine(from, part, { columns: sumColumns, head, tail: `GROUP BY ${measuredBy}` })));
  }
  const found = new Map<string, SummedWeights>();
  for (const row of rows) {
    const yardstick = yardstickIn(row);
    const [key, summary] = [wordOf(yardstick), summaryOf(row)];
    const before = found.get(key)?.summary;
    found.set(key, { yardstick, summary: before === undefined ? summary : addSummaries(before, summary) });
  }
  return [...found.values()].sort(byNominal);
}

/** Packs by bins of their error, accepted apart from rejected (`WeightSums.histogram`). */
export interface LineHistogram {
  readonly yardstick: Yardstick;
  readonly accepted: Float64Array;
  readonly rejected: Float64Array;
}

/** The histograms of the same weights. */
export async function histogramsOfLine(from: ReadFrom, stretch: LineStretch): Promise<LineHistogram[]> {
  const { months, rest } = partedByMonths(stretch);
  const columns = ofBoth(['histogram']);
  const rows = months === null ? [] : await monthsOfLine(from, months, columns);
  for (const part of rest) rows.push(...(await rowsOfLine(from, part, { columns, head: 'SELECT * FROM', tail: '' })));
  const found = new Map<string, LineHistogram>();
  for (const row of rows) {
    const yardstick = yardstickIn(row);
    const key = wordOf(yardstick);
    const { accepted, rejected } = found.get(key) ?? emptyHistograms();
    addHistogram(accepted, row['accepted_histogram'] as Uint8Array);
    addHistogram(rejected, row['rejected_histogram'] as Uint8Array);
    found.set(key, { yardstick, accepted, rejected });
  }
  return [...found.values()].sort(byNominal);
}

function byNominal(one: { readonly yardstick: Yardstick }, other: { readonly yardstick: Yardstick }): number {
  return one.yardstick.nominalMilligrams - other.yardstick.nominalMilligrams;
}

function emptyHistograms(): Pick<LineHistogram, 'accepted' | 'rejected'> {
  const { accepted, rejected } = noWeights();
  return { accepted: accepted.histogram, rejected: rejected.histogram };
}
