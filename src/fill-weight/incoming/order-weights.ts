import type { LineFaults } from './line-faults.js';
import { fault } from './sent-weight.js';
import type { CheckedWeights } from './check-weights.js';
import { sortInParts } from './sort-in-parts.js';
import type { WeightRows } from './weight-rows.js';

/** Room for the place of a row behind its sequence: sequences of a batch within 2^33 of each other sort as numbers. */
const placeRoom = 2 ** 20;
const mostSpan = 2 ** 33;

/** Places in the order of their sequences; those of one sequence in the order in which they came. */
async function inSequence(rows: WeightRows, places: Uint32Array): Promise<Uint32Array> {
  let [least, most, isAscending] = [Infinity, -Infinity, true];
  for (let place = 0; place < places.length; place += 1) {
    const sequence = rows.sequences[places[place] as number] as number;
    if (sequence <= most) isAscending = false;
    if (sequence < least) least = sequence;
    if (sequence > most) most = sequence;
  }
  if (isAscending) return places;
  if (most - least >= mostSpan) {
    return places.toSorted(
      (one, other) => (rows.sequences[one] as number) - (rows.sequences[other] as number) || one - other,
    );
  }
  const keys = new Float64Array(places.length);
  for (let index = 0; index < places.length; index += 1) {
    const row = places[index] as number;
    keys[index] = ((rows.sequences[row] as number) - least) * placeRoom + row;
  }
  const sorted = await sortInParts(keys);
  const ordered = new Uint32Array(places.length);
  for (let index = 0; index < ordered.length; index += 1) ordered[index] = (sorted[index] as number) % placeRoom;
  return ordered;
}

/** Whether two rows say the same of a pack. Times may differ: a repeat may come with another clock offset. */
export function saysSame(rows: WeightRows, { runOfRow }: CheckedWeights, one: number, other: number): boolean {
  return (
    rows.netMilligrams[one] === rows.netMilligrams[other] &&
    rows.heads[one] === rows.heads[other] &&
    (rows.rejected[one] === 1) === (rows.rejected[other] === 1) &&
    runOfRow[one] === runOfRow[other]
  );
}

/** Each sequence once: what a batch says twice counts once, what it says in two ways is a fault of the later line. */
export async function eachOnce(
  rows: WeightRows,
  checked: CheckedWeights,
  faults: LineFaults,
): Promise<{ readonly places: Uint32Array; readonly repeatedCount: number }> {
  const ordered = await inSequence(rows, checked.places);
  const kept = new Uint32Array(ordered.length);
  let [count, repeatedCount] = [0, 0];
  for (let place = 0; place < ordered.length; place += 1) {
    const row = ordered[place] as number;
    const before = kept[count - 1];
    if (count === 0 || before === undefined || rows.sequences[before] !== rows.sequences[row]) {
      kept[count] = row;
      count += 1;
    } else if (saysSame(rows, checked, before, row)) {
      repeatedCount += 1;
    } else {
      const facts = { sequence: rows.sequences[row] ?? 0, line: rows.lineNumbers[before] ?? 0 };
      faults.add(rows.lineNumbers[row] as number, fault('sequence', 'weight-sequence-twice', facts));
    }
  }
  return { places: kept.subarray(0, count), repeatedCount };
}
