import type { BitReader } from './bit-reader.js';
import type { BitWriter } from './bit-writer.js';
import { DamagedWeights } from './damaged-weights.js';
import { chooseRice, readRice, writeRice } from './rice.js';

/** How a column of whole numbers near zero is written. */
const manner = { allZero: 0, fewNotZero: 1, each: 2 } as const;
const bitsOfManner = 2;

/** A column whose way of writing has been chosen: about how many bits it takes, and the writing itself. */
export interface ChosenColumn {
  readonly bits: number;
  write(writer: BitWriter): void;
}

/**
 * Chooses how a column of whole numbers near zero is written: nothing where all are zero, the places of the others
 * where most are, each in a Rice code otherwise.
 *
 * @param values whole, within ± 2^53
 */
export function chooseColumn(values: Float64Array): ChosenColumn {
  let others = 0;
  for (let place = 0; place < values.length; place += 1) if (values[place] !== 0) others += 1;
  if (others === 0) {
    return {
      bits: bitsOfManner,
      write: (writer) => {
        writer.put(manner.allZero, bitsOfManner);
      },
    };
  }
  const each = chooseEach(values);
  if (others > values.length / 2) return each;
  const few = chooseFew(values, others);
  return few.bits < each.bits ? few : each;
}

function chooseEach(values: Float64Array): ChosenColumn {
  const { lowBits, bits } = chooseRice(values);
  return {
    bits: bitsOfManner + bits,
    write: (writer) => {
      writer.put(manner.each, bitsOfManner);
      writeRice(writer, values, lowBits);
    },
  };
}

/** The zeros before each number that is not zero, then these numbers. */
function chooseFew(values: Float64Array, others: number): ChosenColumn {
  const zeros = new Float64Array(others);
  const sizes = new Float64Array(others);
  let [found, last] = [0, -1];
  for (let place = 0; place < values.length; place += 1) {
    const value = values[place] ?? 0;
    if (value === 0) continue;
    zeros[found] = place - last - 1;
    sizes[found] = value;
    last = place;
    found += 1;
  }
  const [forZeros, forSizes] = [chooseRice(zeros), chooseRice(sizes)];
  return {
    bits: bitsOfManner + 16 + forZeros.bits + forSizes.bits,
    write: (writer) => {
      writer.put(manner.fewNotZero, bitsOfManner);
      writer.putNumber(others);
      writeRice(writer, zeros, forZeros.lowBits);
      writeRice(writer, sizes, forSizes.lowBits);
    },
  };
}

/**
 * Reads a column that `chooseColumn` wrote.
 *
 * @param count how many numbers; the caller has seen to it that memory may be set aside for them
 * @throws DamagedWeights
 */
export function readColumn(reader: BitReader, count: number): Float64Array {
  const found = reader.take(bitsOfManner);
  if (found === manner.allZero) return new Float64Array(count);
  if (found === manner.each) return readRice(reader, count);
  if (found === manner.fewNotZero) return readFew(reader, count);
  throw new DamagedWeights('impossible-value', `a column of manner ${found}`);
}

function readFew(reader: BitReader, count: number): Float64Array {
  const others = reader.takeNumber();
  if (others > count) throw new DamagedWeights('impossible-value', `${others} of ${count} weights`);
  const zeros = readRice(reader, others);
  const sizes = readRice(reader, others);
  const values = new Float64Array(count);
  let place = -1;
  zeros.forEach((before, index) => {
    place += 1 + before;
    if (before < 0 || place >= count) throw new DamagedWeights('impossible-value', `place ${place} of ${count}`);
    values[place] = sizes[index] ?? 0;
  });
  return values;
}
