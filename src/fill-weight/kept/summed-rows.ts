import type { WeightSums, WeightSummary } from '../../core/weight-blocks/weight-summary.js';
import { addHistogram, writeHistogram } from '../../core/weight-blocks/histogram-bytes.js';
import { noSums } from '../../core/weight-blocks/weight-summary.js';
import { toWhole } from '../../platform/database/stored-values.js';
import type { SumColumns } from './sum-columns.js';

const squaresUnit = 2n ** 32n;

/** The columns of sums as they are called in the database after `accepted_` or `rejected_`, and how SQL adds rows up. */
export const summedUp = {
  pack_count: 'SUM',
  error_sum_milligrams: 'SUM',
  squares_high: 'SUM',
  squares_low: 'SUM',
  smallest_milligrams: 'MIN',
  largest_milligrams: 'MAX',
  beyond_t1_count: 'SUM',
  beyond_t2_count: 'SUM',
} as const;

export function sumColumnsOf(sums: WeightSums): SumColumns {
  return {
    packCount: sums.packCount,
    errorSumMilligrams: sums.errorSumMilligrams,
    squaresHigh: Number(sums.errorSquareSum / squaresUnit),
    squaresLow: Number(sums.errorSquareSum % squaresUnit),
    smallestMilligrams: sums.smallestMilligrams,
    largestMilligrams: sums.largestMilligrams,
    beyondT1Count: sums.beyondT1Count,
    beyondT2Count: sums.beyondT2Count,
  };
}

/** A row of raw SQL with the columns of one or both sums under their own names in the database. */
export type RawSums = Readonly<Record<string, unknown>>;

/** The summary in a row, also of rows that SQL summed up; no rows at all give nothing weighed. */
export function summaryOf(row: RawSums): WeightSummary {
  return { accepted: sumsOf(row, 'accepted'), rejected: sumsOf(row, 'rejected') };
}

function sumsOf(row: RawSums, of: 'accepted' | 'rejected'): WeightSums {
  const raw = (name: string): string | number | null => (row[`${of}_${name}`] ?? null) as string | number | null;
  const whole = (name: string): number => toWhole(raw(name) ?? 0);
  const orNull = (name: string): number | null => {
    const value = raw(name);
    return value === null ? null : toWhole(value);
  };
  const { histogram } = noSums();
  const bytes = row[`${of}_histogram`];
  if (bytes instanceof Uint8Array) addHistogram(histogram, bytes);
  return {
    packCount: whole('pack_count'),
    errorSumMilligrams: whole('error_sum_milligrams'),
    errorSquareSum: BigInt(whole('squares_high')) * squaresUnit + BigInt(whole('squares_low')),
    smallestMilligrams: orNull('smallest_milligrams'),
    largestMilligrams: orNull('largest_milligrams'),
    beyondT1Count: whole('beyond_t1_count'),
    beyondT2Count: whole('beyond_t2_count'),
    histogram,
  };
}

/** A summary as the columns of a row. */
export function rowOf({ accepted, rejected }: WeightSummary): SummaryRow {
  return {
    accepted: sumColumnsOf(accepted),
    rejected: sumColumnsOf(rejected),
    acceptedHistogram: Buffer.from(writeHistogram(accepted.histogram)),
    rejectedHistogram: Buffer.from(writeHistogram(rejected.histogram)),
  };
}

export interface SummaryRow {
  readonly accepted: SumColumns;
  readonly rejected: SumColumns;
  readonly acceptedHistogram: Buffer;
  readonly rejectedHistogram: Buffer;
}
