import { removalsOfRun } from '../packing/packing-runs.js';
import type { RemovalRow } from '../packing/packing-run-rows.js';
import type { RunRange } from '../packing/run-ranges.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { countsByRun } from '../tracing/packed-parts.js';
import { timesOfRange } from '../packing/ranges-in-time.js';

/** What was used up of a recall: sugar that never came to the counter of accepted packs. */
export type UsedUp = 'rejects' | 'samples' | 'retained' | 'scrapped';

export interface RecalledRemoval extends RemovalRow {
  readonly usedUp: UsedUp;
}

/** Rejects, samples and sweepings of the runs within the time in which the recalled packs were packed. */
export async function removedWithin(from: ReadFrom, ranges: readonly RunRange[]): Promise<readonly RecalledRemoval[]> {
  const counts = await countsByRun(from, ranges);
  const removed = new Map<string, RecalledRemoval>();
  for (const range of ranges) {
    const when = timesOfRange(range, counts.get(range.runId) ?? []);
    if (when === null) continue;
    for (const removal of await removalsOfRun(from, range.runId)) {
      if (removal.removedAt < when.fromAt || removal.removedAt > when.untilAt) continue;
      removed.set(removal.id, { ...removal, usedUp: usedUpBy(removal) });
    }
  }
  return [...removed.values()];
}

function usedUpBy({ kind, fate }: RemovalRow): UsedUp {
  if (kind === 'reject') return 'rejects';
  if (kind === 'sweepings') return 'scrapped';
  return fate === 'retained' ? 'retained' : 'samples';
}
