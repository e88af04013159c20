import { takingTurns } from '../../platform/taking-turns.js';

/** So many are sorted in a few milliseconds. */
const keysAtOnce = 65_536;

/** Numbers in ascending order. Sorted in parts, and the parts merged: in between others have their turn. Uses `keys` up. */
export async function sortInParts(keys: Float64Array): Promise<Float64Array> {
  const turn = takingTurns();
  for (let from = 0; from < keys.length; from += keysAtOnce) {
    keys.subarray(from, from + keysAtOnce).sort();
    await turn();
  }
  const room = new Float64Array(keys.length > keysAtOnce ? keys.length : 0);
  let [merged, spare]: [Float64Array, Float64Array] = [keys, room];
  for (let size = keysAtOnce; size < keys.length; size *= 2) {
    for (let from = 0; from < keys.length; from += 2 * size) {
      merge(merged, spare, { from, middle: from + size, end: Math.min(keys.length, from + 2 * size) });
      await turn();
    }
    [merged, spare] = [spare, merged];
  }
  return merged;
}

/** Two parts that stand side by side, each in order, into the same place of another array. */
function merge(
  keys: Float64Array,
  into: Float64Array,
  { from, middle, end }: { readonly from: number; readonly middle: number; readonly end: number },
): void {
  let [one, other] = [from, middle];
  for (let place = from; place < end; place += 1) {
    const isOne = other >= end || (one < middle && (keys[one] as number) <= (keys[other] as number));
    into[place] = keys[isOne ? one++ : other++] as number;
  }
}
