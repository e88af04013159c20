import { addHistogram } from '../../core/weight-blocks/histogram-bytes.js';
import { noWeights, type WeightSummary, type Yardstick } from '../../core/weight-blocks/weight-summary.js';
import type { Instant } from '../../platform/clock.js';
import { plannedOnce, type ReadFrom } from '../../platform/database/reading.js';
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

/** From an instant to another, which is not included: empty where both are the same. */
type Span = Pick<LineStretch, 'fromAt' | 'toAt'>;

/** A stretch as full months of UTC in its middle, and what is left before and after them. */
interface Parted {
  readonly months: Span;
  readonly before: Span;
  readonly after: Span;
}

function partedByMonths({ fromAt, toAt }: Span): Parted {
  const first = fromAt === monthOf(fromAt) ? fromAt : monthAfter(fromAt);
  const end = monthOf(toAt);
  const [begin, rest] = first < end ? [first, end] : [toAt, toAt];
  return {
    months: { fromAt: begin, toAt: rest },
    before: { fromAt, toAt: begin },
    after: { fromAt: rest, toAt },
  };
}

const fromMonths = '"pack_weigher" w JOIN "weight_month" m ON m."weigher_id" = w."id"';
const fromRuns = '"pack_weigher" w JOIN "weight_run" r ON r."weigher_id" = w."id"';
/** The cross join has SQLite look for the few runs across the edges first, and not for all hours. */
const fromHours = `${fromRuns} CROSS JOIN "weight_hour" h`;
const ofSameRun = 'h."run_id" = r."run_id" AND h."weigher_id" = r."weigher_id"';

/**
 * Rows of a line in a stretch of time, by one statement: of full months their own; before and after these, of runs that
 * lie wholly within the rest their own, of the others those of their hours.
 * @param asks the columns that are wanted of all, and what stands around the rows
 */
function rowsOfLine(
  from: ReadFrom,
  { lineId, ...stretch }: LineStretch,
  asks: { readonly columns: readonly string[]; readonly head: string; readonly tail: string },
): Promise<RawSums[]> {
  const { months, before, after } = partedByMonths(stretch);
  const of = (table: string, measuredIn: string) => (): string =>
    `${quoted(yardstickColumns, measuredIn)}, ${quoted(asks.columns, table)}`;
  return from.sql<RawSums>`
    ${plannedOnce} ${() => asks.head} (
      SELECT ${of('m.', 'm.')} FROM ${() => fromMonths}
      WHERE w."line_id" = ${lineId} AND m."month_at" >= ${months.fromAt} AND m."month_at" < ${months.toAt}
      UNION ALL SELECT ${of('r.', 'r.')} FROM ${() => fromRuns}
      WHERE w."line_id" = ${lineId} AND r."first_at" >= ${before.fromAt} AND r."last_at" < ${before.toAt}
      UNION ALL SELECT ${of('r.', 'r.')} FROM ${() => fromRuns}
      WHERE w."line_id" = ${lineId} AND r."first_at" >= ${after.fromAt} AND r."last_at" < ${after.toAt}
      UNION ALL SELECT ${of('h.', 'r.')} FROM ${() => fromHours}
      WHERE w."line_id" = ${lineId} AND ${() => ofSameRun}
        AND h."hour_at" >= ${before.fromAt} AND h."hour_at" < ${before.toAt} AND ${before.fromAt} < ${before.toAt}
        AND ((r."first_at" < ${before.fromAt} AND r."last_at" >= ${before.fromAt})
          OR (r."first_at" >= ${before.fromAt} AND r."first_at" < ${before.toAt} AND r."last_at" >= ${before.toAt}))
      UNION ALL SELECT ${of('h.', 'r.')} FROM ${() => fromHours}
      WHERE w."line_id" = ${lineId} AND ${() => ofSameRun}
        AND h."hour_at" >= ${after.fromAt} AND h."hour_at" < ${after.toAt} AND ${after.fromAt} < ${after.toAt}
        AND ((r."first_at" < ${after.fromAt} AND r."last_at" >= ${after.fromAt})
          OR (r."first_at" >= ${after.fromAt} AND r."first_at" < ${after.toAt} AND r."last_at" >= ${after.toAt}))
    ) AS "part" ${() => asks.tail}`;
}

/**
 * The weights of a line in a stretch of time, by what they were measured by: formats of one nominal quantity together,
 * without their histogram.
 */
export async function summariesOfLine(from: ReadFrom, stretch: LineStretch): Promise<SummedWeights[]> {
  const measuredBy = quoted(yardstickColumns);
  const head = `SELECT ${measuredBy}, ${eachSummedUp} FROM`;
  const rows = await rowsOfLine(from, stretch, { columns: sumColumns, head, tail: `GROUP BY ${measuredBy}` });
  return rows.map((row) => ({ yardstick: yardstickIn(row), summary: summaryOf(row) })).sort(byNominal);
}

/** Packs by bins of their error, accepted apart from rejected (`WeightSums.histogram`). */
export interface LineHistogram {
  readonly yardstick: Yardstick;
  readonly accepted: Float64Array;
  readonly rejected: Float64Array;
}

/** The histograms of the same weights. */
export async function histogramsOfLine(from: ReadFrom, stretch: LineStretch): Promise<LineHistogram[]> {
  const rows = await rowsOfLine(from, stretch, { columns: ofBoth(['histogram']), head: 'SELECT * FROM', tail: '' });
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
