import type { BitReader } from './bit-reader.js';
import type { BitWriter } from './bit-writer.js';
import { DamagedWeights } from './damaged-weights.js';

/** So many ones in a row announce a number that is written out in full. */
const onesBeforeFull = 24;
/** A sign and 53 bits. */
const fullBits = onesBeforeFull + 54;
/** From here on a number is written out in full: its code would not fit into 32 bits. */
const fullFrom = 2 ** 30;
const mostLowBits = 24;
const bitsOfParameter = 5;
const twoTo32 = 2 ** 32;
/** Lengths of 0 to 31 bits, and longer. */
const lengthCount = 33;

/** What a number of each length takes, by the count of low bits. */
const codeCosts = Array.from({ length: mostLowBits + 1 }, (_, lowBits) =>
  Float64Array.from({ length: lengthCount }, (_, length) => codeBits(length, lowBits)),
);

/** What a number of so many bits takes, taken from the middle of their range. */
function codeBits(length: number, lowBits: number): number {
  const middle = length === 0 ? 0 : 1.5 * 2 ** (length - 1);
  const ones = length > lowBits ? middle / 2 ** lowBits - 0.5 * Number(length > lowBits + 1) : 0;
  return ones < onesBeforeFull ? 1 + lowBits + Math.floor(ones) : fullBits;
}

/** How many low bits of each number are written as they are, and what all of them take about. */
export interface RiceChoice {
  readonly lowBits: number;
  readonly bits: number;
}

/**
 * The Rice code that suits some whole numbers near zero, and about how many bits they take in it. A few numbers far off
 * hardly change the choice.
 *
 * @param values whole, within ± 2^53
 * @example chooseRice(Float64Array.of(0, 0, 1)).lowBits // 0
 */
export function chooseRice(values: Float64Array): RiceChoice {
  const counts = countLengths(values);
  let best: RiceChoice = { lowBits: 0, bits: Number.POSITIVE_INFINITY };
  for (const [lowBits, costs] of codeCosts.entries()) {
    let bits = bitsOfParameter;
    for (let length = 0; length < lengthCount; length += 1) bits += (counts[length] ?? 0) * (costs[length] ?? 0);
    if (bits < best.bits) best = { lowBits, bits };
  }
  return best;
}

/** How many of the numbers have so many bits, once their sign stands in the lowest one; 32 and more together. */
function countLengths(values: Float64Array): Int32Array {
  const counts = new Int32Array(lengthCount);
  for (let place = 0; place < values.length; place += 1) {
    const value = values[place] ?? 0;
    const length = value >= -fullFrom && value < fullFrom ? 32 - Math.clz32((value << 1) ^ (value >> 31)) : 32;
    counts[length] = (counts[length] ?? 0) + 1;
  }
  return counts;
}

/**
 * Writes whole numbers near zero: each as its high bits in ones closed by a zero, then its low bits; one too far off as
 * 24 ones and the number in full.
 *
 * @param values whole, within ± 2^53
 */
export function writeRice(writer: BitWriter, values: Float64Array, lowBits: number): void {
  writer.put(lowBits, bitsOfParameter);
  const mask = 2 ** lowBits - 1;
  for (let place = 0; place < values.length; place += 1) {
    const value = values[place] ?? 0;
    const folded = value >= -fullFrom && value < fullFrom ? (value << 1) ^ (value >> 31) : -1;
    const ones = folded >>> lowBits;
    const bits = ones + 1 + lowBits;
    if (ones >= onesBeforeFull || folded < 0) writeFull(writer, value);
    else if (bits <= 31) writer.put((((1 << ones) - 1) << (lowBits + 1)) | (folded & mask), bits);
    else {
      writer.put(((1 << ones) - 1) << 1, ones + 1);
      writer.put(folded & mask, lowBits);
    }
  }
}

function writeFull(writer: BitWriter, value: number): void {
  const size = Math.abs(value);
  writer.put(2 ** onesBeforeFull - 1, onesBeforeFull);
  writer.put(value < 0 ? 1 : 0, 1);
  writer.put(Math.floor(size / twoTo32), 21);
  writer.put((size % twoTo32) | 0, 32);
}

/**
 * Reads what `writeRice` wrote.
 *
 * @param count how many numbers; the caller has seen to it that memory may be set aside for them
 * @throws DamagedWeights
 */
export function readRice(reader: BitReader, count: number): Float64Array {
  const lowBits = reader.take(bitsOfParameter);
  if (lowBits > mostLowBits) throw new DamagedWeights('impossible-value', `a code of ${lowBits} low bits`);
  const values = new Float64Array(count);
  for (let place = 0; place < count; place += 1) {
    const word = reader.look();
    const ones = Math.clz32(~word);
    const bits = ones + 1 + lowBits;
    if (ones >= onesBeforeFull) {
      values[place] = readFull(reader);
      continue;
    }
    let folded = ones;
    if (bits > 32) {
      reader.skip(ones + 1);
      folded = ones * 2 ** lowBits + reader.take(lowBits);
    } else {
      if (lowBits > 0) folded = (ones << lowBits) | ((word << (ones + 1)) >>> (32 - lowBits));
      reader.skip(bits);
    }
    values[place] = (folded >>> 1) ^ -(folded & 1);
  }
  return values;
}

function readFull(reader: BitReader): number {
  reader.skip(onesBeforeFull);
  const sign = reader.take(1) === 1 ? -1 : 1;
  const size = reader.take(21) * twoTo32 + reader.take(32);
  return size === 0 ? 0 : sign * size;
}
