import { BitReader } from './bit-reader.js';
import { crc32c } from './crc32c.js';
import { DamagedWeights } from './damaged-weights.js';
import { blockVersion, checksumBytes } from './encode-weights.js';
import { readHeads, readHeadsOfVersion1 } from './head-column.js';
import { readTimes } from './time-column.js';
import { mostWeightsInBlock, type WeightColumns } from './weight-columns.js';
import { readColumn } from './whole-column.js';

/**
 * Reads a block of bytes of any version back into columns. Whatever the bytes, it ends, and sets aside no more memory than a block of
 * 65 536 weights needs.
 *
 * @throws DamagedWeights with the reason
 * @example decodeWeights(encodeWeights(columns)) // the columns
 */
export function decodeWeights(bytes: Uint8Array): WeightColumns {
  const reader = new BitReader(checkedContent(bytes));
  const version = reader.take(8);
  const hasHeads = reader.take(1) === 1;
  const hasRejects = reader.take(1) === 1;
  const count = reader.takeNumber();
  if (count < 1 || count > mostWeightsInBlock) throw new DamagedWeights('impossible-value', `${count} weights`);
  const columns = {
    count,
    sequences: readSequences(reader, count),
    atCentiseconds: readTimes(reader, count),
    netMilligrams: readNets(reader, count),
    heads: hasHeads ? (version === 1 ? readHeadsOfVersion1 : readHeads)(reader, count) : null,
    isRejected: hasRejects ? readRejects(reader, count) : null,
  };
  reader.end();
  return columns;
}

/** All but the checksum. */
function checkedContent(bytes: Uint8Array): Uint8Array {
  const length = bytes.length - checksumBytes;
  if (length < 1) throw new DamagedWeights('too-short', `${bytes.length} bytes`);
  const version = bytes[0] ?? 0;
  if (version < 1 || version > blockVersion) {
    throw new DamagedWeights('unknown-version', `version ${version}; this reader knows version 1 to ${blockVersion}`);
  }
  const content = bytes.subarray(0, length);
  const written = new DataView(bytes.buffer, bytes.byteOffset + length).getUint32(0);
  const found = crc32c(content);
  if (found !== written)
    throw new DamagedWeights('wrong-checksum', `${found.toString(16)}, not ${written.toString(16)}`);
  return content;
}

function readSequences(reader: BitReader, count: number): Float64Array {
  const sequences = new Float64Array(count);
  let sequence = reader.takeNumber();
  sequences[0] = sequence;
  readColumn(reader, count - 1).forEach((skipped, place) => {
    sequence += 1 + skipped;
    if (skipped < 0 || !Number.isSafeInteger(sequence)) {
      throw new DamagedWeights('impossible-value', `sequence ${sequence} after ${skipped} skipped`);
    }
    sequences[place + 1] = sequence;
  });
  return sequences;
}

function readNets(reader: BitReader, count: number): Int32Array {
  const middle = reader.takeSigned();
  const step = reader.takeNumber();
  const nets = new Int32Array(count);
  readColumn(reader, count).forEach((steps, place) => {
    const net = middle + steps * step;
    if ((net | 0) !== net) throw new DamagedWeights('impossible-value', `a net of ${net} mg`);
    nets[place] = net;
  });
  return nets;
}

function readRejects(reader: BitReader, count: number): Uint8Array {
  const isRejected = new Uint8Array(count);
  readColumn(reader, count).forEach((flag, place) => {
    if (flag !== 0 && flag !== 1) throw new DamagedWeights('impossible-value', `a reject flag of ${flag}`);
    isRejected[place] = flag;
  });
  return isRejected;
}
