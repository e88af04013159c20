import type { ReadFrom } from '../platform/database/reading.js';
import type { FilmRange, LooseCountRow, LotRange, RemovalRow, RunRow, StopRow } from './packing-run-rows.js';
import { filmRangesOfRuns, looseCounts, lotRanges, removalsOfRun, stopsOf } from './packing-runs.js';

/** A run with all that was recorded of it but its counts. */
export interface RunView {
  readonly run: RunRow;
  readonly lots: readonly LotRange[];
  readonly films: readonly FilmRange[];
  readonly stops: readonly StopRow[];
  readonly removals: readonly RemovalRow[];
  readonly loose: readonly LooseCountRow[];
}

export async function readRunView(from: ReadFrom, run: RunRow): Promise<RunView> {
  return {
    run,
    lots: await lotRanges(from, run.id),
    films: await filmRangesOfRuns(from, [run.id]),
    stops: await stopsOf(from, [run.id]),
    removals: await removalsOfRun(from, run.id),
    loose: await looseCounts(from, [run.id]),
  };
}
