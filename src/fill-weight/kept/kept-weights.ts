import { DamagedWeights, type DamageReason } from '../../core/weight-blocks/damaged-weights.js';
import { decodeWeights } from '../../core/weight-blocks/decode-weights.js';
import { shiftNets } from '../../core/weight-blocks/shift-nets.js';
import { pickWeights, type WeightColumns } from '../../core/weight-blocks/weight-columns.js';
import type { Instant } from '../../platform/clock.js';
import { toBoolean, toWhole } from '../../platform/database/stored-values.js';
import { plannedOnce, type ReadFrom } from '../../platform/database/reading.js';
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
  /** Whether the tare of any weight of the run was corrected. */
  readonly isCorrected: boolean | number;
}

/** Weights as they count: with tare corrections. */
export interface ReadableWeights extends Omit<StoredWeights, 'weights' | 'isCorrected'> {
  readonly columns: WeightColumns;
}

/** Weights that cannot be read, and why. */
export interface UnreadableWeights extends Omit<StoredWeights, 'weights' | 'isCorrected'> {
  readonly reason: DamageReason | 'dropped';
}

export interface KeptWeights {
  /** By weigher, counter and first sequence; the sequences of two parts may reach into each other. */
  readonly parts: readonly ReadableWeights[];
  readonly unreadable: readonly UnreadableWeights[];
}

const stored = (kind: 'block' | 'batch') => (): string => `
  SELECT p."id", '${kind}' AS "kind", p."run_id" AS "runId", p."weigher_id" AS "weigherId", p."series",
    p."first_sequence" AS "firstSequence", p."last_sequence" AS "lastSequence", p."weight_count" AS "weightCount",
    p."weights", EXISTS (SELECT 1 FROM "tare_correction" c
      WHERE c."run_id" = p."run_id" AND c."voided_by" IS NULL) AS "isCorrected"
  FROM "weight_${kind}" p`;
const [blocks, batches] = [stored('block'), stored('batch')];

/** All weights of a run. What is damaged or dropped is named, and the rest is read. */
export async function weightsOfRun(from: ReadFrom, runId: string): Promise<KeptWeights> {
  const rows = await from.sql<StoredWeights>`
    ${plannedOnce} ${blocks} WHERE p."run_id" = ${runId}
    UNION ALL ${batches} WHERE p."run_id" = ${runId}`;
  return readStored(from, rows);
}

/** The weights of one weigher within one hour of UTC, of all its runs. */
export async function weightsOfHour(
  from: ReadFrom,
  { weigherId, hourAt }: { readonly weigherId: string; readonly hourAt: Instant },
): Promise<KeptWeights> {
  const endAt = new Date(Date.parse(hourAt) + 3_600_000).toISOString();
  const rows = await from.sql<StoredWeights>`
    ${plannedOnce} ${blocks} WHERE p."run_id" IN (
      SELECT "run_id" FROM "weight_hour" WHERE "weigher_id" = ${weigherId} AND "hour_at" = ${hourAt})
      AND p."weigher_id" = ${weigherId} AND p."first_at" < ${endAt} AND p."last_at" >= ${hourAt}
    UNION ALL ${batches}
    WHERE p."weigher_id" = ${weigherId} AND p."first_at" < ${endAt} AND p."last_at" >= ${hourAt}`;
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
    ${plannedOnce} ${blocks} WHERE p."run_id" = ${runId} AND p."weigher_id" = ${weigherId}
      AND p."first_at" <= ${untilAt} AND p."last_at" >= ${fromAt}
    UNION ALL ${batches} WHERE p."run_id" = ${runId} AND p."weigher_id" = ${weigherId}
      AND p."first_at" <= ${untilAt} AND p."last_at" >= ${fromAt}`;
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

/** A weigher's counter, and what it counted. */
interface SequenceKey {
  readonly weigherId: string;
  readonly series: string;
  readonly sequence: number;
}

/**
 * The weight of one sequence of a weigher's counter, in the part that holds it; none where it was never received. Where it
 * is not found, the parts that might hold it and cannot be read are named.
 */
export async function weightOfSequence(from: ReadFrom, of: SequenceKey): Promise<KeptWeights> {
  const nearest = onlySequence(await readStored(from, await nearestParts(from, of)), of.sequence);
  if (nearest.parts.length > 0) return { ...nearest, unreadable: [] };
  return onlySequence(await readStored(from, await partsAround(from, of)), of.sequence);
}

/**
 * Of blocks and of batches within which it lies the one that begins closest before it: it holds it, but where weights came
 * late.
 */
function nearestParts(from: ReadFrom, { weigherId, series, sequence }: SequenceKey): Promise<StoredWeights[]> {
  return from.sql<StoredWeights>`
    ${plannedOnce} SELECT * FROM (${blocks} WHERE p."weigher_id" = ${weigherId} AND p."series" = ${series}
      AND p."first_sequence" <= ${sequence} AND p."last_sequence" >= ${sequence}
      ORDER BY p."first_sequence" DESC LIMIT 1) AS "block"
    UNION ALL SELECT * FROM (${batches} WHERE p."weigher_id" = ${weigherId} AND p."series" = ${series}
      AND p."first_sequence" <= ${sequence} AND p."last_sequence" >= ${sequence}
      ORDER BY p."first_sequence" DESC LIMIT 1) AS "batch"`;
}

/** All within which it lies. */
function partsAround(from: ReadFrom, { weigherId, series, sequence }: SequenceKey): Promise<StoredWeights[]> {
  return from.sql<StoredWeights>`
    ${blocks} WHERE p."weigher_id" = ${weigherId} AND p."series" = ${series}
      AND p."first_sequence" <= ${sequence} AND p."last_sequence" >= ${sequence}
    UNION ALL ${batches} WHERE p."weigher_id" = ${weigherId} AND p."series" = ${series}
      AND p."first_sequence" <= ${sequence} AND p."last_sequence" >= ${sequence}`;
}

function onlySequence(kept: KeptWeights, sequence: number): KeptWeights {
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
  for (const { weights, isCorrected, ...row } of rows) {
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
    const own = shifts.get(key) ?? (toBoolean(isCorrected) ? await shiftsOf(from, of) : []);
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
