import { addHeads, type HeadsOfWeights } from '../../core/weight-blocks/heads-of-weights.js';
import {
  planSubgroups,
  subgroupsOf,
  type Subgroup,
  type SubgroupPlan,
} from '../../core/weight-blocks/subgroups-of-weights.js';
import type { NetShift } from '../../core/weight-blocks/shift-nets.js';
import type { Yardstick } from '../../core/weight-blocks/weight-summary.js';
import type { Instant } from '../../platform/clock.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { groupBy } from '../../platform/group-by.js';
import type { UnreadableWeights } from '../kept/kept-weights.js';
import { partsOfRun, weightsOfPart, type PartOfRun } from '../kept/parts-of-run.js';
import { shiftsOf } from '../kept/tare-corrections.js';
import { gistOfPart, type GistOfPart } from './gist-of-part.js';

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

/** Parts of one counter of a weigher that can be read, with what they say. */
interface Counter {
  readonly weigherId: string;
  readonly series: string;
  readonly shifts: readonly NetShift[];
  readonly parts: readonly (PartOfRun & { readonly gist: GistOfPart })[];
}

/**
 * What the single weights of a run say that are kept: each part is read once and its gist kept, so that a run that goes on
 * costs what has come since. It still takes longer than sums, so it is asked beside the server.
 */
export async function readSingleWeights(from: ReadFrom, runId: string, yardstick: Yardstick): Promise<SingleWeights> {
  const unreadable: UnreadableWeights[] = [];
  const counters: Counter[] = [];
  const parts = groupBy(await partsOfRun(from, runId), ({ weigherId, series }) => JSON.stringify([weigherId, series]));
  for (const own of parts.values()) {
    const counter = await counterOf(from, own, yardstick);
    if (counter === null) continue;
    unreadable.push(...counter.unreadable);
    if (counter.parts.length > 0) counters.push(counter);
  }
  const byHead = addHeads(counters.flatMap((counter) => counter.parts.map(({ gist }) => gist.byHead)));
  const heads = byHead.heads.length > 1 ? byHead.heads : [];
  return {
    charted: chartedOf(counters, heads.length === 0 ? null : heads.length),
    byHead: { ...byHead, heads },
    tareChanges: await tareChangesOf(from, counters),
    unreadable,
  };
}

async function counterOf(
  from: ReadFrom,
  parts: readonly PartOfRun[],
  yardstick: Yardstick,
): Promise<(Counter & { readonly unreadable: readonly UnreadableWeights[] }) | null> {
  const [first] = parts;
  if (first === undefined) return null;
  const { weigherId, series } = first;
  const shifts = await shiftsOf(from, first);
  const unreadable: UnreadableWeights[] = [];
  const readable: (PartOfRun & { readonly gist: GistOfPart })[] = [];
  for (const part of parts) {
    const gist = await gistOfPart(from, part, { shifts, yardstick });
    if (typeof gist === 'string') unreadable.push(unreadableOf(part, gist));
    else readable.push({ ...part, gist });
  }
  return { weigherId, series, shifts, parts: readable, unreadable };
}

function unreadableOf(part: PartOfRun, reason: UnreadableWeights['reason']): UnreadableWeights {
  const { id, kind, runId, weigherId, series, firstSequence, lastSequence, weightCount } = part;
  return { id, kind, runId, weigherId, series, firstSequence, lastSequence, weightCount, reason };
}

function chartedOf(counters: readonly Counter[], headCount: number | null): SubgroupsOfRun | null {
  const byWeigher = groupBy(counters, ({ weigherId }) => weigherId);
  const countOf = (own: readonly Counter[]): number =>
    own.reduce((sum, { parts }) => parts.reduce((count, { weightCount }) => count + weightCount, sum), 0);
  const [most] = [...byWeigher.entries()].sort(([, one], [, other]) => countOf(other) - countOf(one));
  if (most === undefined) return null;
  const [weigherId, own] = most;
  const plan = planSubgroups(spanOf(own), headCount);
  const subgroups = own
    .flatMap(({ parts }) =>
      subgroupsOf(
        parts.flatMap(({ gist }) => gist.firstPacks),
        plan,
      ),
    )
    .sort((one, other) => one.atCentiseconds - other.atCentiseconds);
  return { ...plan, weigherId, subgroups };
}

function spanOf(counters: readonly Counter[]): number {
  let [first, last] = [Infinity, -Infinity];
  for (const { gist } of counters.flatMap(({ parts }) => parts)) {
    first = Math.min(first, gist.firstAtCentiseconds);
    last = Math.max(last, gist.lastAtCentiseconds);
  }
  return Math.max(0, last - first);
}

/** At the first pack that each correction is about. */
async function tareChangesOf(from: ReadFrom, counters: readonly Counter[]): Promise<readonly TareChange[]> {
  const found: TareChange[] = [];
  for (const counter of counters) {
    for (const { fromSequence, addedMilligrams } of counter.shifts) {
      const at = await firstAtFrom(from, counter, fromSequence);
      if (at !== null) found.push({ at: new Date(at * 10).toISOString(), addedMilligrams });
    }
  }
  return found;
}

/** When the first pack was weighed whose sequence is not below this; null: there is none. Parts may reach into each other. */
async function firstAtFrom(from: ReadFrom, { parts }: Counter, fromSequence: number): Promise<number | null> {
  let best: { readonly sequence: number; readonly at: number } | null = null;
  for (const part of parts) {
    if (part.lastSequence < fromSequence) continue;
    if (best !== null && part.firstSequence >= best.sequence) continue;
    const columns = await weightsOfPart(from, part);
    if (typeof columns === 'string') continue;
    const place = columns.sequences.findIndex((sequence) => sequence >= fromSequence);
    const [sequence, at] = [columns.sequences[place], columns.atCentiseconds[place]];
    if (sequence === undefined || at === undefined) continue;
    if (best === null || sequence < best.sequence) best = { sequence, at };
  }
  return best?.at ?? null;
}
