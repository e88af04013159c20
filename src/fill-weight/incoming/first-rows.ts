import type { CheckedWeights } from './check-weights.js';
import type { WeightRows } from './weight-rows.js';

/** A line as it was read. */
export interface FirstRow {
  readonly line: number;
  readonly sequence: number;
  readonly atCentiseconds: number;
  readonly netMilligrams: number;
  readonly head: number | null;
  readonly rejected: boolean | null;
}

const shownRows = 5;

/** The first lines that could be read, in the order in which they came. */
export function firstRows(rows: WeightRows): FirstRow[] {
  return Array.from({ length: Math.min(shownRows, rows.count) }, (_, row) => ({
    line: rows.lineNumbers[row] ?? 0,
    sequence: rows.sequences[row] ?? 0,
    atCentiseconds: rows.atCentiseconds[row] ?? 0,
    netMilligrams: rows.netMilligrams[row] ?? 0,
    head: (rows.heads[row] ?? -1) < 0 ? null : (rows.heads[row] ?? null),
    rejected: (rows.rejected[row] ?? -1) < 0 ? null : rows.rejected[row] === 1,
  }));
}

/** How many weights of a batch fall into each run, those that are known already too. */
export function countsByRun({ checked }: { readonly checked: CheckedWeights }) {
  const counts = checked.runs.map(({ number }) => ({ number, weightCount: 0 }));
  for (const row of checked.places) {
    const run = counts[checked.runOfRow[row] ?? 0];
    if (run !== undefined) run.weightCount += 1;
  }
  return counts.filter(({ weightCount }) => weightCount > 0);
}
