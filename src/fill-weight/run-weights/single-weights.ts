import { headsOfWeights, type HeadsOfWeights } from '../../core/weight-blocks/heads-of-weights.js';
import {
  planSubgroups,
  subgroupsOfWeights,
  type Subgroup,
  type SubgroupPlan,
} from '../../core/weight-blocks/subgroups-of-weights.js';
import { joinWeights, type WeightColumns } from '../../core/weight-blocks/weight-columns.js';
import type { Yardstick } from '../../core/weight-blocks/weight-summary.js';
import type { Instant } from '../../platform/clock.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { groupBy } from '../../platform/group-by.js';
import { weightsOfRun, type ReadableWeights, type UnreadableWeights } from '../kept/kept-weights.js';
import { shiftsOf } from '../kept/tare-corrections.js';

/** Subgroups of the weigher that weighed most of the run, as long as its weights are kept. */
export interface SubgroupsOfRun extends SubgroupPlan {
  readonly weigherId: string;
  readonly subgroups: readonly Subgroup[];
}

/** Packs from here on count with another tare than was taken. */
export interface TareChange {
  readonly at: Instant;
  readonly addedMilligrams: number;
}

/** What only the single weights of a run say, and no sums of them. */
export interface SingleWeights {
  /** Null where no weight can be read. */
  readonly charted: SubgroupsOfRun | null;
  /** None of them where the weigher tells no heads apart. */
  readonly byHead: HeadsOfWeights;
  readonly tareChanges: readonly TareChange[];
  /** Weights that were dropped or are damaged, by their block. */
  readonly unreadable: readonly UnreadableWeights[];
}

interface Counter {
  readonly weigherId: string;
  readonly series: string;
  readonly columns: WeightColumns;
}

/** Reads all weights of a run that are kept: what takes longer than its sums, so it is asked beside the server. */
export async function readSingleWeights(from: ReadFrom, runId: string, yardstick: Yardstick): Promise<SingleWeights> {
  const { parts, unreadable } = await weightsOfRun(from, runId);
  const byHead = headsOfWeights(
    parts.map(({ columns }) => columns),
    yardstick,
  );
  const heads = byHead.heads.length > 1 ? byHead.heads : [];
  const counters = countersOf(parts);
  return {
    charted: chartedOf(counters, heads.length === 0 ? null : heads.length),
    byHead: { ...byHead, heads },
    tareChanges: await tareChangesOf(from, runId, counters),
    unreadable,
  };
}

function countersOf(parts: readonly ReadableWeights[]): readonly Counter[] {
  return [...groupBy(parts, ({ weigherId, series }) => JSON.stringify([weigherId, series])).values()].flatMap((own) => {
    const [first] = own;
    if (first === undefined) return [];
    const { weigherId, series } = first;
    return [{ weigherId, series, columns: joinWeights(own.map(({ columns }) => columns)) }];
  });
}

function chartedOf(counters: readonly Counter[], headCount: number | null): SubgroupsOfRun | null {
  const byWeigher = groupBy(counters, ({ weigherId }) => weigherId);
  const countOf = (own: readonly Counter[]): number => own.reduce((sum, { columns }) => sum + columns.count, 0);
  const [most] = [...byWeigher.entries()].sort(([, one], [, other]) => countOf(other) - countOf(one));
  if (most === undefined) return null;
  const [weigherId, own] = most;
  const plan = planSubgroups(spanOf(own), headCount);
  const subgroups = own
    .flatMap(({ columns }) => subgroupsOfWeights(columns, plan))
    .sort((one, other) => one.atCentiseconds - other.atCentiseconds);
  return { ...plan, weigherId, subgroups };
}

function spanOf(counters: readonly Counter[]): number {
  let [first, last] = [Infinity, -Infinity];
  for (const { columns } of counters) {
    for (const at of columns.atCentiseconds) {
      if (at < first) first = at;
      if (at > last) last = at;
    }
  }
  return Math.max(0, last - first);
}

/** At the first pack that each correction is about. */
async function tareChangesOf(
  from: ReadFrom,
  runId: string,
  counters: readonly Counter[],
): Promise<readonly TareChange[]> {
  const found: TareChange[] = [];
  for (const { weigherId, series, columns } of counters) {
    for (const { fromSequence, addedMilligrams } of await shiftsOf(from, { runId, weigherId, series })) {
      const place = columns.sequences.findIndex((sequence) => sequence >= fromSequence);
      const at = columns.atCentiseconds[place];
      if (at !== undefined) found.push({ at: new Date(at * 10).toISOString(), addedMilligrams });
    }
  }
  return found;
}
