import type { BitReader } from './bit-reader.js';
import type { BitWriter } from './bit-writer.js';
import { DamagedWeights } from './damaged-weights.js';
import { chooseColumn, readColumn } from './whole-column.js';

const bitsOfWidth = 4;

/**
 * Writes which head filled each pack. Heads that fill by turns follow each other: what is written is by how much each
 * differs from the one that came after the same head the last time, which is almost always nothing. Heads in no order
 * are written as they are, in as many bits as the highest needs.
 */
export function writeHeads(writer: BitWriter, heads: Uint8Array): void {
  const width = 32 - Math.clz32(heads.reduce((highest, head) => Math.max(highest, head), 0));
  const inTurn = chooseColumn(surprises(heads));
  if (inTurn.bits <= width * heads.length || width === 0) {
    writer.put(0, bitsOfWidth);
    inTurn.write(writer);
    return;
  }
  writer.put(width, bitsOfWidth);
  for (const head of heads) writer.put(head, width);
}

function surprises(heads: Uint8Array): Float64Array {
  const after = new Uint8Array(256);
  const values = new Float64Array(heads.length);
  let before = 0;
  heads.forEach((head, place) => {
    values[place] = head - (after[before] ?? 0);
    after[before] = head;
    before = head;
  });
  return values;
}

/**
 * Reads what `writeHeads` wrote.
 *
 * @throws DamagedWeights
 */
export function readHeads(reader: BitReader, count: number): Uint8Array {
  const width = reader.take(bitsOfWidth);
  if (width > 8) throw new DamagedWeights('impossible-value', `heads of ${width} bits`);
  const heads = new Uint8Array(count);
  if (width > 0) {
    for (let place = 0; place < count; place += 1) heads[place] = reader.take(width);
    return heads;
  }
  const after = new Uint8Array(256);
  let before = 0;
  readColumn(reader, count).forEach((surprise, place) => {
    const head = (after[before] ?? 0) + surprise;
    if (!(head >= 0 && head <= 255)) throw new DamagedWeights('impossible-value', `head ${head}`);
    heads[place] = head;
    after[before] = head;
    before = head;
  });
  return heads;
}
