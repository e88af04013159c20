import type { EntityManager } from 'typeorm';
import { migration } from '../src/platform/database/migration.js';

type Row = Record<string, string | number | Uint8Array | null>;

const yardstick = ['nominal_milligrams', 't1_milligrams', 't2_milligrams', 'bin_milligrams'];
const added = [
  'pack_count',
  'error_sum_milligrams',
  'squares_high',
  'squares_low',
  'beyond_t1_count',
  'beyond_t2_count',
];
const ofBoth = (names: readonly string[]): string[] =>
  ['accepted', 'rejected'].flatMap((of) => names.map((name) => `${of}_${name}`));
const [sums, least, most, histograms] = [
  ofBoth(added),
  ofBoth(['smallest_milligrams']),
  ofBoth(['largest_milligrams']),
  ofBoth(['histogram']),
];
const columns = ['weigher_id', 'month_at', 'measured_by', ...yardstick, ...sums, ...least, ...most, ...histograms];

/** Sums and histograms over months of weights, and those of what was weighed before. */
export const weightMonths = migration(23, 'weight-months', [
  `CREATE TABLE "weight_month" (
    "weigher_id" varchar NOT NULL,
    "month_at" varchar NOT NULL,
    "measured_by" varchar NOT NULL,
    "nominal_milligrams" integer NOT NULL,
    "t1_milligrams" integer,
    "t2_milligrams" integer,
    "bin_milligrams" integer NOT NULL,
    "accepted_pack_count" bigint NOT NULL,
    "accepted_error_sum_milligrams" bigint NOT NULL,
    "accepted_squares_high" bigint NOT NULL,
    "accepted_squares_low" bigint NOT NULL,
    "accepted_smallest_milligrams" integer,
    "accepted_largest_milligrams" integer,
    "accepted_beyond_t1_count" bigint NOT NULL,
    "accepted_beyond_t2_count" bigint NOT NULL,
    "rejected_pack_count" bigint NOT NULL,
    "rejected_error_sum_milligrams" bigint NOT NULL,
    "rejected_squares_high" bigint NOT NULL,
    "rejected_squares_low" bigint NOT NULL,
    "rejected_smallest_milligrams" integer,
    "rejected_largest_milligrams" integer,
    "rejected_beyond_t1_count" bigint NOT NULL,
    "rejected_beyond_t2_count" bigint NOT NULL,
    "accepted_histogram" {bytes} NOT NULL,
    "rejected_histogram" {bytes} NOT NULL,
    CONSTRAINT "pk_weight_month" PRIMARY KEY ("weigher_id", "month_at", "measured_by")
  )`,
  { work: sumUpHours },
]);

async function sumUpHours(manager: EntityManager): Promise<void> {
  const hours = await manager.sql<Row[]>`
    SELECT h.*, ${() => yardstick.map((name) => `r."${name}"`).join(', ')}
    FROM "weight_hour" h JOIN "weight_run" r ON r."run_id" = h."run_id" AND r."weigher_id" = h."weigher_id"`;
  const months = new Map<string, Row>();
  for (const hour of hours) {
    const month_at = `${String(hour['hour_at']).slice(0, 7)}-01T00:00:00.000Z`;
    const measured_by = yardstick.map((name) => hour[name] ?? 'none').join('/');
    const key = [hour['weigher_id'], month_at, measured_by].join(' ');
    const month = months.get(key);
    months.set(key, month === undefined ? { ...hour, month_at, measured_by } : both(month, hour));
  }
  for (const month of months.values()) {
    await manager.sql`
      INSERT INTO "weight_month" (${() => columns.map((name) => `"${name}"`).join(', ')})
      VALUES (${() => columns.map((name) => month[name] ?? null)})`;
  }
}

function both(month: Row, hour: Row): Row {
  const row = { ...month };
  for (const name of sums) row[name] = Number(month[name]) + Number(hour[name]);
  for (const side of ['accepted', 'rejected']) carrySquares(row, side);
  for (const name of least) row[name] = outermost(Math.min, month[name], hour[name]);
  for (const name of most) row[name] = outermost(Math.max, month[name], hour[name]);
  for (const name of histograms) {
    const counts = new Map<number, number>();
    for (const bytes of [month[name], hour[name]]) addHistogram(counts, bytes as Uint8Array);
    row[name] = histogramBytes(counts);
  }
  return row;
}

/** Sums of squares are kept in two parts, the lower one below 2^32. */
function carrySquares(row: Row, side: string): void {
  const [high, low] = [`${side}_squares_high`, `${side}_squares_low`] as const;
  const sum = Number(row[low]);
  row[high] = Number(row[high]) + Math.floor(sum / 2 ** 32);
  row[low] = sum % 2 ** 32;
}

function outermost(pick: (...values: number[]) => number, ...values: readonly unknown[]): number | null {
  const known = values.filter((value) => value !== null && value !== undefined);
  return known.length === 0 ? null : pick(...known.map(Number));
}

/** Of each bin with packs: how many empty ones come before it and how many packs it holds (docs/weight-blocks.md). */
function addHistogram(counts: Map<number, number>, bytes: Uint8Array): void {
  const numbers: number[] = [];
  let [value, unit] = [0, 1];
  for (const byte of bytes) {
    value += (byte & 127) * unit;
    unit *= 128;
    if (byte >= 128) continue;
    numbers.push(value);
    [value, unit] = [0, 1];
  }
  let bin = -1;
  for (let place = 0; place < numbers.length; place += 2) {
    bin += 1 + (numbers[place] ?? 0);
    counts.set(bin, (counts.get(bin) ?? 0) + (numbers[place + 1] ?? 0));
  }
}

function histogramBytes(counts: ReadonlyMap<number, number>): Buffer {
  const bytes: number[] = [];
  let last = -1;
  for (const [bin, packCount] of [...counts].sort(([one], [other]) => one - other)) {
    for (const number of [bin - last - 1, packCount]) {
      let rest = number;
      for (; rest >= 128; rest = Math.floor(rest / 128)) bytes.push(128 + (rest % 128));
      bytes.push(rest);
    }
    last = bin;
  }
  return Buffer.from(bytes);
}
