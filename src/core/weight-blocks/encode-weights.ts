import { BitWriter } from './bit-writer.js';
import { crc32c } from './crc32c.js';
import { highestHead, writeHeads } from './head-column.js';
import { middleOf, stepOf } from './lattice.js';
import { writeTimes } from './time-column.js';
import { latestCentiseconds, mostWeightsInBlock, zeroOrNoHead, type WeightColumns } from './weight-columns.js';
import { chooseColumn } from './whole-column.js';

/** The edition of the format; `docs/weight-blocks.md` describes it. */
export const blockVersion = 2;
export const checksumBytes = 4;

/**
 * Writes weights as one block of bytes: each column in the fewest bits that its own step and spread allow, and a checksum
 * over all. The same columns always give the same bytes; every weight reads back exactly.
 *
 * @param columns 1 to 65 536 weights; their ranges stand at `WeightColumns`
 * @throws RangeError outside of these ranges, or where sequences do not ascend
 * @see docs/weight-blocks.md
 * @example decodeWeights(encodeWeights(columns)).netMilligrams // those of the columns
 */
export function encodeWeights(columns: WeightColumns): Uint8Array {
  assertWritable(columns);
  const { count, sequences, atCentiseconds, netMilligrams, heads, isRejected } = columns;
  const writer = new BitWriter();
  writer.put(blockVersion, 8);
  writer.put(heads === null ? 0 : 1, 1);
  writer.put(isRejected === null ? 0 : 1, 1);
  writer.putNumber(count);
  writeSequences(writer, sequences);
  writeTimes(writer, atCentiseconds);
  writeNets(writer, netMilligrams);
  if (heads !== null) writeHeads(writer, heads);
  if (isRejected !== null) chooseColumn(Float64Array.from(isRejected)).write(writer);
  return withChecksum(writer.end(checksumBytes));
}

/** The first, then what each is beyond the one before plus one. */
function writeSequences(writer: BitWriter, sequences: Float64Array): void {
  const skipped = new Float64Array(sequences.length - 1);
  for (let place = 0; place < skipped.length; place += 1) {
    skipped[place] = (sequences[place + 1] ?? 0) - (sequences[place] ?? 0) - 1;
  }
  writer.putNumber(sequences[0] ?? 0);
  chooseColumn(skipped).write(writer);
}

/** A middle one, then how many steps each is from it. */
function writeNets(writer: BitWriter, nets: Int32Array): void {
  const step = stepOf(nets);
  const middle = middleOf(nets);
  const distances = new Float64Array(nets.length);
  for (let place = 0; place < distances.length; place += 1) distances[place] = ((nets[place] ?? 0) - middle) / step;
  writer.putSigned(middle);
  writer.putNumber(step);
  chooseColumn(distances).write(writer);
}

function withChecksum(bytes: Uint8Array): Uint8Array {
  const content = bytes.length - checksumBytes;
  new DataView(bytes.buffer).setUint32(content, crc32c(bytes.subarray(0, content)));
  return bytes;
}

function assertWritable(columns: WeightColumns): void {
  const { count, sequences, atCentiseconds, netMilligrams, heads, isRejected } = columns;
  if (!(count >= 1 && count <= mostWeightsInBlock)) throw new RangeError(`a block of ${count} weights`);
  const lengths = [sequences, atCentiseconds, netMilligrams, heads, isRejected].map(
    (column) => column?.length ?? count,
  );
  if (lengths.some((length) => length !== count))
    throw new RangeError(`columns of ${lengths.join()} for ${count} weights`);
  let before = -1;
  // Indexed loops: an iterator over a column makes an object for each weight.
  for (let place = 0; place < count; place += 1) {
    const sequence = sequences[place] ?? 0;
    if (!(sequence > before) || !Number.isSafeInteger(sequence)) {
      throw new RangeError(`sequence ${sequence} after ${before}`);
    }
    before = sequence;
  }
  for (let place = 0; place < count; place += 1) {
    const at = atCentiseconds[place] ?? 0;
    if (!(at >= 0 && at <= latestCentiseconds) || !Number.isInteger(at)) throw new RangeError(`a time of ${at}`);
  }
  if (heads !== null && !isEachWithin(heads, zeroOrNoHead, highestHead)) {
    throw new RangeError('a head beyond 0 to 255');
  }
  if (isRejected !== null && !isEachWithin(isRejected, 0, 1)) {
    throw new RangeError('a reject flag that is neither 0 nor 1');
  }
}

function isEachWithin(values: Int16Array | Uint8Array, least: number, most: number): boolean {
  for (let place = 0; place < values.length; place += 1) {
    const value = values[place] ?? 0;
    if (value < least || value > most) return false;
  }
  return true;
}
