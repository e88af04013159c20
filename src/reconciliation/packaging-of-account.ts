import { filmRangesOfRuns } from '../packing/packing-runs.js';
import type { FilmRange } from '../packing/packing-run-rows.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { AccountLine, PackagingLine } from './account-view.js';

/**
 * How many of the accepted packs were packed with each lot of film, label or glue. Where nobody recorded a lot, none is
 * named. What was issued and returned is not recorded, so this is a count and no balance.
 */
export async function packagingOfAccount(
  from: ReadFrom,
  lines: readonly AccountLine[],
): Promise<readonly PackagingLine[]> {
  const packed = lines.flatMap(({ recordId, packs }) => (packs === null ? [] : [{ runId: recordId, ...packs }]));
  const films = await filmRangesOfRuns(from, [...new Set(packed.map(({ runId }) => runId))]);
  const byLot = new Map<string, PackagingLine>();
  for (const { filmLotId, code, kind, ...film } of films) {
    const packCount = packed.reduce((sum, range) => sum + sharedPacks(film, range), 0);
    if (packCount === 0) continue;
    const before = byLot.get(filmLotId)?.packCount ?? 0;
    byLot.set(filmLotId, { filmLotId, code, kind, packCount: before + packCount });
  }
  return [...byLot.values()];
}

function sharedPacks(
  film: Pick<FilmRange, 'runId' | 'fromCount' | 'toCount'>,
  packed: { readonly runId: string; readonly fromCount: number; readonly toCount: number },
): number {
  if (film.runId !== packed.runId) return 0;
  const until = film.toCount === null ? packed.toCount : Math.min(film.toCount, packed.toCount);
  return Math.max(0, until - Math.max(film.fromCount, packed.fromCount));
}
