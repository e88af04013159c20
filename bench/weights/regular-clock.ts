import { encodeWeights } from '../../src/core/weight-blocks/encode-weights.js';
import { entropyOfNetBits, madeYear } from './made-year.js';

const blockSize = 4096;
const weightCount = 100 * blockSize;
/** 38 packs a minute: the interval of the clock. */
const intervalCentiseconds = 157.89;

/** Bytes a weight takes in blocks where packs come by a regular clock, and what it cannot take less. */
export function regularClock(): { readonly bytes: number; readonly entropyBytes: number } {
  let [bytes, place] = [0, 0];
  for (const { columns } of madeYear(weightCount).batches()) {
    const atCentiseconds = columns.atCentiseconds.map(() => Math.round((place += 1) * intervalCentiseconds));
    bytes += encodeWeights({ ...columns, atCentiseconds }).length;
  }
  return { bytes: bytes / weightCount, entropyBytes: entropyOfNetBits / 8 };
}
