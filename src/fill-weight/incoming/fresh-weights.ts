import type { ReadFrom } from '../../platform/database/reading.js';
import { rangesBetween, type SeriesKey } from '../received-ranges.js';
import { storedWeights } from '../stored-weights.js';
import { noHead, zeroOrNoHead, type WeightColumns } from '../../core/weight-blocks/weight-columns.js';
import type { CheckedWeights } from './check-weights.js';
import type { LineFaults } from './line-faults.js';
import { fault } from './sent-weight.js';
import type { WeighedRun } from './weighed-runs.js';
import type { WeightRows } from './weight-rows.js';

/** Rows of a batch by ascending sequence, each sequence once. */
export interface OrderedWeights {
  readonly rows: WeightRows;
  readonly checked: CheckedWeights;
  readonly places: Uint32Array;
}

/** Which of them were never received, and how many were. */
export interface FreshWeights {
  readonly places: Uint32Array;
  readonly repeatedCount: number;
}

/**
 * Parts what is new from what was received before. The same sequence with the same weight counts once; with another
 * weight, head, mark or run it is a fault: one of the two is wrong, and no machine can know which.
 */
export async function freshWeights(
  from: ReadFrom,
  key: SeriesKey,
  { rows, checked, places }: OrderedWeights,
  faults: LineFaults,
): Promise<FreshWeights> {
  const [first, last] = [places[0], places.at(-1)];
  if (first === undefined || last === undefined) return { places, repeatedCount: 0 };
  const sequenceOf = (row: number): number => rows.sequences[row] as number;
  const received = await rangesBetween(from, key, { from: sequenceOf(first), to: sequenceOf(last) });
  if (received.length === 0) return { places, repeatedCount: 0 };
  const fresh = new Uint32Array(places.length);
  const known = new Uint32Array(places.length);
  let [freshCount, knownCount, range] = [0, 0, 0];
  for (let place = 0; place < places.length; place += 1) {
    const row = places[place] as number;
    const sequence = sequenceOf(row);
    while (range < received.length && (received[range]?.to ?? 0) < sequence) range += 1;
    const isKnown = range < received.length && (received[range]?.from ?? 0) <= sequence;
    if (isKnown) known[knownCount++] = row;
    else fresh[freshCount++] = row;
  }
  const others = await saidOtherwise(from, key, { rows, checked, places: known.subarray(0, knownCount) }, faults);
  return { places: fresh.subarray(0, freshCount), repeatedCount: knownCount - others };
}

/** Counts, and names as faults, the rows whose sequence is kept with something else. */
async function saidOtherwise(
  from: ReadFrom,
  key: SeriesKey,
  { rows, checked, places }: OrderedWeights,
  faults: LineFaults,
): Promise<number> {
  const [first, last] = [places[0], places.at(-1)];
  if (first === undefined || last === undefined) return 0;
  const span = { from: rows.sequences[first] as number, to: rows.sequences[last] as number };
  let count = 0;
  for await (const { runId, columns } of storedWeights(from, key, span)) {
    let stored = 0;
    for (const row of places) {
      const sequence = rows.sequences[row] as number;
      while (stored < columns.count && (columns.sequences[stored] as number) < sequence) stored += 1;
      if (stored === columns.count) break;
      if (columns.sequences[stored] !== sequence) continue;
      const run = checked.runs[checked.runOfRow[row] as number] as WeighedRun;
      if (run.id === runId && isSame(rows, row, columns, stored)) continue;
      count += 1;
      const facts = { sequence, keptGrams: (columns.netMilligrams[stored] as number) / 1000, run: run.number };
      faults.add(rows.lineNumbers[row] as number, fault('sequence', 'weight-sequence-of-other', facts));
    }
  }
  return count;
}

function isSame(rows: WeightRows, row: number, columns: WeightColumns, stored: number): boolean {
  return (
    rows.netMilligrams[row] === columns.netMilligrams[stored] &&
    isSameHead(rows.heads[row] as number, columns.heads?.[stored] ?? noHead) &&
    (rows.rejected[row] === 1) === (columns.isRejected?.[stored] === 1)
  );
}

/** A head that is kept as "0 or none" agrees with both. */
function isSameHead(sent: number, kept: number): boolean {
  return kept === zeroOrNoHead ? sent <= 0 : sent === kept;
}

/** The sequences of some rows, in the order of their places. */
export function sequencesOf(rows: WeightRows, places: Uint32Array): Float64Array {
  const sequences = new Float64Array(places.length);
  for (let place = 0; place < places.length; place += 1) {
    sequences[place] = rows.sequences[places[place] as number] as number;
  }
  return sequences;
}
