import type { DamageReason } from '../../core/weight-blocks/damaged-weights.js';
import { headsOfWeights, type HeadsOfWeights } from '../../core/weight-blocks/heads-of-weights.js';
import { shiftNets, type NetShift } from '../../core/weight-blocks/shift-nets.js';
import { firstPacksOf, type FirstPacks } from '../../core/weight-blocks/subgroups-of-weights.js';
import type { Yardstick } from '../../core/weight-blocks/weight-summary.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { weightsOfPart, type PartOfRun } from '../kept/parts-of-run.js';
import { wordOf } from '../kept/yardsticks.js';

/** What the page of a run needs of one part of its weights, once they are read. */
export interface GistOfPart {
  readonly firstAtCentiseconds: number;
  readonly lastAtCentiseconds: number;
  readonly byHead: HeadsOfWeights;
  readonly firstPacks: readonly FirstPacks[];
}

/** What weights count by: tare corrections, and the nominal quantity with its limits. */
export interface CountedBy {
  readonly shifts: readonly NetShift[];
  readonly yardstick: Yardstick;
}

/** Intervals and heads that are kept of all parts: some ten megabytes in each thread. Our own value, no source. */
const mostKept = 20_000;
/** The parts that were asked for last stand last. */
const kept = new Map<string, GistOfPart>();
let keptCount = 0;

/**
 * The gist of a part, read once for each way of counting: a part never changes under its id. One that was damaged on disk
 * after it was read is noticed by everybody who reads its weights, and here by the next server.
 *
 * @returns why it cannot be read, where it cannot
 */
export async function gistOfPart(
  from: ReadFrom,
  part: PartOfRun,
  { shifts, yardstick }: CountedBy,
): Promise<GistOfPart | DamageReason | 'dropped'> {
  if (part.isDropped) return 'dropped';
  const key = JSON.stringify([part.id, wordOf(yardstick), shifts]);
  const known = kept.get(key);
  if (known !== undefined) {
    kept.delete(key);
    kept.set(key, known);
    return known;
  }
  const columns = await weightsOfPart(from, part);
  if (typeof columns === 'string') return columns;
  const gist = {
    ...endsOf(columns.atCentiseconds),
    byHead: headsOfWeights([shiftNets(columns, shifts)], yardstick),
    firstPacks: firstPacksOf(shiftNets(columns, shifts)),
  };
  keep(key, gist);
  return gist;
}

function keep(key: string, gist: GistOfPart): void {
  kept.set(key, gist);
  keptCount += sizeOf(gist);
  for (const [oldest, old] of kept) {
    if (keptCount <= mostKept || oldest === key) return;
    kept.delete(oldest);
    keptCount -= sizeOf(old);
  }
}

function sizeOf({ byHead, firstPacks }: GistOfPart): number {
  return 1 + byHead.heads.length + firstPacks.length;
}

function endsOf(at: Float64Array): Pick<GistOfPart, 'firstAtCentiseconds' | 'lastAtCentiseconds'> {
  let [first, last] = [Infinity, -Infinity];
  for (let place = 0; place < at.length; place += 1) {
    first = Math.min(first, at[place] ?? 0);
    last = Math.max(last, at[place] ?? 0);
  }
  return { firstAtCentiseconds: first, lastAtCentiseconds: last };
}
