import type { BitReader } from './bit-reader.js';
import type { BitWriter } from './bit-writer.js';
import { DamagedWeights } from './damaged-weights.js';
import { zeroOrNoHead } from './weight-columns.js';
import { chooseColumn, readColumn } from './whole-column.js';

const bitsOfWidth = 4;
export const highestHead = 255;
/** Where some heads are not told, each is written as so much more: 0 is `zeroOrNoHead`, 1 is `noHead`, 2 is head 0. */
const untoldValues = -zeroOrNoHead;

/**
 * Writes which head filled each pack: whether all are told, then the heads. Heads that fill by turns follow each other:
 * what is written is by how much each differs from the one that came after the same head the last time, which is almost
 * always nothing. Heads in no order are written as they are, in as many bits as the highest needs.
 *
 * @param heads 0 to 255, `noHead` or `zeroOrNoHead`
 */
export function writeHeads(writer: BitWriter, heads: Int16Array): void {
  const isUntold = leastOf(heads) < 0;
  writer.put(isUntold ? 1 : 0, 1);
  const values = isUntold ? heads.map((head) => head + untoldValues) : heads;
  const width = 32 - Math.clz32(mostOf(values));
  const inTurn = chooseColumn(surprises(values));
  if (inTurn.bits <= width * values.length || width === 0) {
    writer.put(0, bitsOfWidth);
    inTurn.write(writer);
    return;
  }
  writer.put(width, bitsOfWidth);
  for (let place = 0; place < values.length; place += 1) writer.put(values[place] ?? 0, width);
}

function leastOf(heads: Int16Array): number {
  let least = 0;
  for (let place = 0; place < heads.length; place += 1) least = Math.min(least, heads[place] ?? 0);
  return least;
}

function mostOf(values: Int16Array): number {
  let most = 0;
  for (let place = 0; place < values.length; place += 1) most = Math.max(most, values[place] ?? 0);
  return most;
}

function surprises(values: Int16Array): Float64Array {
  const after = new Int16Array(highestHead + untoldValues + 1);
  const found = new Float64Array(values.length);
  let before = 0;
  for (let place = 0; place < values.length; place += 1) {
    const value = values[place] ?? 0;
    found[place] = value - (after[before] ?? 0);
    after[before] = value;
    before = value;
  }
  return found;
}

/**
 * Reads what `writeHeads` wrote.
 *
 * @throws DamagedWeights
 */
export function readHeads(reader: BitReader, count: number): Int16Array {
  const untold = reader.take(1) * untoldValues;
  const heads = readValues(reader, count, highestHead + untold);
  return untold === 0 ? heads : heads.map((value) => value - untold);
}

/**
 * Reads the heads of a block of version 1, which has 0 for head 0 and for none alike.
 *
 * @throws DamagedWeights
 */
export function readHeadsOfVersion1(reader: BitReader, count: number): Int16Array {
  return readValues(reader, count, highestHead).map((head) => (head === 0 ? zeroOrNoHead : head));
}

function readValues(reader: BitReader, count: number, most: number): Int16Array {
  const width = reader.take(bitsOfWidth);
  const values = new Int16Array(count);
  if (width > 32 - Math.clz32(most)) throw new DamagedWeights('impossible-value', `heads of ${width} bits`);
  if (width > 0) {
    for (let place = 0; place < count; place += 1) values[place] = possible(reader.take(width), most);
    return values;
  }
  const after = new Int16Array(most + 1);
  let before = 0;
  readColumn(reader, count).forEach((surprise, place) => {
    const value = possible((after[before] ?? 0) + surprise, most);
    values[place] = value;
    after[before] = value;
    before = value;
  });
  return values;
}

function possible(value: number, most: number): number {
  if (!(value >= 0 && value <= most)) throw new DamagedWeights('impossible-value', `head ${value} of at most ${most}`);
  return value;
}
