import { noHead, type WeightColumns } from '../../core/weight-blocks/weight-columns.js';
import type { Tx } from '../../platform/database/unit-of-work.js';
import { instantOf } from './instants-of-weights.js';
import { ShortPack } from './short-pack.entity.js';

const rowsAtOnce = 500;

export interface WeightsToLookThrough {
  readonly runId: string;
  readonly weigherId: string;
  readonly series: string;
  readonly columns: WeightColumns;
  /** T2; null: no rule says how short a pack may be. */
  readonly belowMilligrams: number | null;
}

/** Keeps each accepted pack that is beyond T2. */
export async function addShortPacks(tx: Tx, weights: WeightsToLookThrough): Promise<void> {
  await insertShortPacks(tx, shortPacksIn(weights));
}

/** Many rows in few statements: each has as many parameters as it has columns. */
export async function insertShortPacks(tx: Tx, rows: readonly ShortPack[]): Promise<void> {
  for (let place = 0; place < rows.length; place += rowsAtOnce) {
    await tx.insert(ShortPack, rows.slice(place, place + rowsAtOnce));
  }
}

export function shortPacksIn({ columns, belowMilligrams, ...of }: WeightsToLookThrough): ShortPack[] {
  if (belowMilligrams === null) return [];
  const { runId, weigherId, series } = of;
  const rows: ShortPack[] = [];
  for (let place = 0; place < columns.count; place += 1) {
    const netMilligrams = columns.netMilligrams[place] ?? 0;
    if (netMilligrams >= belowMilligrams || columns.isRejected?.[place] === 1) continue;
    const head = columns.heads?.[place] ?? noHead;
    rows.push({
      weigherId,
      series,
      sequence: columns.sequences[place] ?? 0,
      runId,
      weighedAt: instantOf(columns.atCentiseconds[place] ?? 0),
      netMilligrams,
      head: head === noHead ? null : head,
    });
  }
  return rows;
}
