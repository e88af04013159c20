import { DamagedWeights, type DamageReason } from '../../core/weight-blocks/damaged-weights.js';
import { decodeWeights } from '../../core/weight-blocks/decode-weights.js';
import { shiftNets } from '../../core/weight-blocks/shift-nets.js';
import { pickWeights, type WeightColumns } from '../../core/weight-blocks/weight-columns.js';
import type { Instant } from '../../platform/clock.js';
import { toWhole } from '../../platform/database/stored-values.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { takingTurns } from '../../platform/taking-turns.js';
import { shiftsOf } from './tare-corrections.js';

const hourCentiseconds = 360_000;

/** A block, or a batch of the tail that is not sealed yet. */
interface StoredWeights {
  readonly id: string;
  readonly kind: 'block' | 'batch';
  readonly runId: string;
  readonly weigherId: string;
  readonly series: string;
  readonly firstSequence: number;
  readonly lastSequence: number;
  readonly weightCount: number;
  /** Null once they were dropped. */
  readonly weights: Uint8Array | null;
}

/** Weights as they count: with tare corrections. */
export interface ReadableWeights extends Omit<StoredWeights, 'weights'> {
  readonly columns: WeightColumns;
}

/** Weights that cannot be read, and why. */
export interface UnreadableWeights extends Omit<StoredWeights, 'weights'> {
  readonly reason: DamageReason | 'dropped';
}

export interface KeptWeights {
  /** By weigher, counter and first sequence; the sequences of two parts may reach into each other. */
  readonly parts: readonly ReadableWeights[];
  readonly unreadable: readonly UnreadableWeights[];
}

const storedColumns =
  '"run_id" AS "runId", "weigher_id" AS "weigherId", "series", "first_sequence" AS "firstSequence", ' +
  '"last_sequence" AS "lastSequence", "weight_count" AS "weightCount", "weights"';
const ofBlocks = (): string => `SELECT "id", 'block' AS "kind", ${storedColumns} FROM "weight_block"`;
const ofBatches = (): string => `SELECT "id", 'batch' AS "kind", ${storedColumns} FROM "weight_batch"`;

/** All weights of a run. What is damaged or dropped is named, and the rest is read. */
export async function weightsOfRun(from: ReadFrom, runId: string): Promise<KeptWeights> {
  const rows = await from.sql<StoredWeights>`
    ${ofBlocks} WHERE "run_id" = ${runId}
    UNION ALL
    ${ofBatches} WHERE "run_id" = ${runId}`;
  return readStored(from, rows);
}

/** The weights of one weigher within one hour of UTC, of all its runs. */
export async function weightsOfHour(
  from: ReadFrom,
  { weigherId, hourAt }: { readonly weigherId: string; readonly hourAt: Instant },
): Promise<KeptWeights> {
  const endAt = new Date(Date.parse(hourAt) + 3_600_000).toISOString();
  const rows = await from.sql<StoredWeights>`
    ${ofBlocks}
    WHERE "run_id" IN (SELECT "run_id" FROM "weight_hour" WHERE "weigher_id" = ${weigherId} AND "hour_at" = ${hourAt})
      AND "weigher_id" = ${weigherId} AND "first_at" < ${endAt} AND "last_at" >= ${hourAt}
    UNION ALL
    ${ofBatches} WHERE "weigher_id" = ${weigherId} AND "first_at" < ${endAt} AND "last_at" >= ${hourAt}`;
  const kept = await readStored(from, rows);
  const begin = Date.parse(hourAt) / 10;
  const parts = kept.parts.map((part) => ({ ...part, columns: within(part.columns, begin, begin + hourCentiseconds) }));
  return { ...kept, parts: parts.filter(({ columns }) => columns.count > 0) };
}

/** The weights of one weigher in a run between two instants, both included. */
export async function weightsOfRunBetween(
  from: ReadFrom,
  of: { readonly runId: string; readonly weigherId: string; readonly fromAt: Instant; readonly untilAt: Instant },
): Promise<KeptWeights> {
  const { runId, weigherId, fromAt, untilAt } = of;
  const rows = await from.sql<StoredWeights>`
    ${ofBlocks} WHERE "run_id" = ${runId} AND "weigher_id" = ${weigherId}
      AND "first_at" <= ${untilAt} AND "last_at" >= ${fromAt}
    UNION ALL
    ${ofBatches} WHERE "run_id" = ${runId} AND "weigher_id" = ${weigherId}
      AND "first_at" <= ${untilAt} AND "last_at" >= ${fromAt}`;
  const kept = await readStored(from, rows);
  const [begin, end] = [Date.parse(fromAt) / 10, Date.parse(untilAt) / 10];
  // One hundredth more: `within` leaves its end out.
  const parts = kept.parts.map((part) => ({ ...part, columns: within(part.columns, begin, end + 1) }));
  return { ...kept, parts: parts.filter(({ columns }) => columns.count > 0) };
}

function within(columns: WeightColumns, begin: number, end: number): WeightColumns {
  const places: number[] = [];
  columns.atCentiseconds.forEach((at, place) => {
    if (at >= begin && at < end) places.push(place);
  });
  return pickWeights(columns, Uint32Array.from(places));
}

/** The weight of one sequence of a weigher's counter, in the part that holds it; none where it was never received. */
export async function weightOfSequence(
  from: ReadFrom,
  { weigherId, series, sequence }: { readonly weigherId: string; readonly series: string; readonly sequence: number },
): Promise<KeptWeights> {
  const rows = await from.sql<StoredWeights>`
    ${ofBlocks} WHERE "weigher_id" = ${weigherId} AND "series" = ${series}
      AND "first_sequence" <= ${sequence} AND "last_sequence" >= ${sequence}
    UNION ALL
    ${ofBatches} WHERE "weigher_id" = ${weigherId} AND "series" = ${series}
      AND "first_sequence" <= ${sequence} AND "last_sequence" >= ${sequence}`;
  const kept = await readStored(from, rows);
  const parts = kept.parts.map((part) => {
    const place = part.columns.sequences.indexOf(sequence);
    return { ...part, columns: pickWeights(part.columns, place < 0 ? new Uint32Array(0) : Uint32Array.of(place)) };
  });
  return { ...kept, parts: parts.filter(({ columns }) => columns.count > 0) };
}

/** Ordered here: asked for the order, SQLite looks through all blocks of a weigher in the order of an index. */
function inOrder(one: StoredWeights, other: StoredWeights): number {
  const [place, otherPlace] = [one.weigherId + one.series, other.weigherId + other.series];
  if (place !== otherPlace) return place < otherPlace ? -1 : 1;
  return one.firstSequence - other.firstSequence;
}

async function readStored(from: ReadFrom, found: readonly StoredWeights[]): Promise<KeptWeights> {
  const rows = [...found].sort(inOrder);
  const parts: ReadableWeights[] = [];
  const unreadable: UnreadableWeights[] = [];
  const turn = takingTurns();
  const shifts = new Map<string, Awaited<ReturnType<typeof shiftsOf>>>();
  for (const { weights, ...row } of rows) {
    const of = {
      ...row,
      firstSequence: toWhole(row.firstSequence),
      lastSequence: toWhole(row.lastSequence),
    };
    const read = readBytes(weights);
    if (typeof read === 'string') {
      unreadable.push({ ...of, reason: read });
      continue;
    }
    const key = [of.runId, of.weigherId, of.series].join();
    const own = shifts.get(key) ?? (await shiftsOf(from, of));
    shifts.set(key, own);
    parts.push({ ...of, columns: shiftNets(read, own) });
    await turn();
  }
  return { parts, unreadable };
}

/** Weights as they were received, or why they cannot be read. */
export function readBytes(weights: Uint8Array | null): WeightColumns | DamageReason | 'dropped' {
  if (weights === null) return 'dropped';
  try {
    return decodeWeights(weights);
  } catch (error) {
    if (error instanceof DamagedWeights) return error.reason;
    throw error;
  }
}
