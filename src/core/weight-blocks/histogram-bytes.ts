import { binCount } from './weight-summary.js';

/**
 * A histogram as bytes: for each bin that holds packs, how many empty ones come before it and how many packs it holds,
 * both as numbers in groups of seven bits, the lowest group first. No packs give no bytes.
 *
 * @param histogram `binCount` whole counts, each below 2^53
 */
export function writeHistogram(histogram: Float64Array): Uint8Array {
  const bytes: number[] = [];
  let last = -1;
  histogram.forEach((packCount, bin) => {
    if (packCount === 0) return;
    pushNumber(bytes, bin - last - 1);
    pushNumber(bytes, packCount);
    last = bin;
  });
  return Uint8Array.from(bytes);
}

/** Appends a whole number from 0 on, in groups of seven bits, the lowest group first. */
export function pushNumber(bytes: number[], value: number): void {
  let rest = value;
  for (; rest >= 128; rest = Math.floor(rest / 128)) bytes.push(128 + (rest % 128));
  bytes.push(rest);
}

/**
 * Adds a histogram that `writeHistogram` wrote to counts.
 *
 * @param into `binCount` counts, which are changed
 * @throws RangeError when the bytes speak of more bins than there are, or end within a number
 */
export function addHistogram(into: Float64Array, bytes: Uint8Array): void {
  let [bin, place] = [-1, 0];
  const next = (): number => {
    let [value, unit] = [0, 1];
    for (;;) {
      const byte = bytes[place];
      place += 1;
      if (byte === undefined) throw new RangeError('a histogram ends within a number');
      value += (byte & 127) * unit;
      if (byte < 128) return value;
      unit *= 128;
    }
  };
  while (place < bytes.length) {
    bin += 1 + next();
    if (bin >= binCount) throw new RangeError(`a histogram with packs in bin ${bin} of ${binCount}`);
    into[bin] = (into[bin] ?? 0) + next();
  }
}
