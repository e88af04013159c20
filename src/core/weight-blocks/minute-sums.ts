import { pushNumber } from './histogram-bytes.js';
import type { WeightColumns } from './weight-columns.js';

export const minutesInHour = 60;
const minuteCentiseconds = 6000;

/** Accepted packs of each minute of an hour of UTC; exact, so that neither order nor parts can be told from them. */
export interface MinuteSums {
  /** By the minute, `minutesInHour` of them. */
  readonly packCounts: Float64Array;
  /** Of net less nominal quantity, by the minute. */
  readonly errorSumsMilligrams: Float64Array;
}

/** The sums of an hour in which nothing was weighed. */
export function noMinutes(): MinuteSums {
  return { packCounts: new Float64Array(minutesInHour), errorSumsMilligrams: new Float64Array(minutesInHour) };
}

/**
 * Adds the accepted packs of an hour to the sums of its minutes. Where the columns do not say what was rejected, all
 * count as accepted.
 *
 * @param into is changed
 * @param columns weights of one hour of UTC (`hoursOfWeights`)
 * @param nominalMilligrams what the errors are taken from
 * @example addToMinutes(noMinutes(), columns, 1_000_000)
 */
export function addToMinutes(into: MinuteSums, columns: WeightColumns, nominalMilligrams: number): MinuteSums {
  const { atCentiseconds, netMilligrams, isRejected } = columns;
  const { packCounts, errorSumsMilligrams } = into;
  for (let place = 0; place < columns.count; place += 1) {
    if (isRejected?.[place] === 1) continue;
    const minute = Math.floor((atCentiseconds[place] ?? 0) / minuteCentiseconds) % minutesInHour;
    (packCounts[minute] as number) += 1;
    (errorSumsMilligrams[minute] as number) += (netMilligrams[place] ?? 0) - nominalMilligrams;
  }
  return into;
}

/**
 * The sums as bytes: for each minute with packs how many empty ones come before it, its packs, and its sum twice over
 * (one less where it is below zero), as numbers in groups of seven bits, the lowest group first. About three to five bytes
 * a minute.
 */
export function writeMinutes({ packCounts, errorSumsMilligrams }: MinuteSums): Uint8Array {
  const bytes: number[] = [];
  let last = -1;
  packCounts.forEach((packCount, minute) => {
    if (packCount === 0) return;
    const sum = errorSumsMilligrams[minute] ?? 0;
    for (const value of [minute - last - 1, packCount, sum < 0 ? -2 * sum - 1 : 2 * sum]) pushNumber(bytes, value);
    last = minute;
  });
  return Uint8Array.from(bytes);
}

/**
 * Adds sums that `writeMinutes` wrote to others.
 *
 * @param into is changed
 * @throws RangeError where the bytes speak of more minutes than an hour has, or end within a number
 * @example addWrittenMinutes(noMinutes(), writeMinutes(sums)) // equals the sums
 */
export function addWrittenMinutes(into: MinuteSums, bytes: Uint8Array): MinuteSums {
  let [minute, place] = [-1, 0];
  const next = (): number => {
    let [value, unit] = [0, 1];
    for (;;) {
      const byte = bytes[place];
      place += 1;
      if (byte === undefined) throw new RangeError('the sums of minutes end within a number');
      value += (byte & 127) * unit;
      if (byte < 128) return value;
      unit *= 128;
    }
  };
  while (place < bytes.length) {
    minute += 1 + next();
    if (minute >= minutesInHour) throw new RangeError(`packs in minute ${minute} of an hour`);
    (into.packCounts[minute] as number) += next();
    const doubled = next();
    (into.errorSumsMilligrams[minute] as number) += doubled % 2 === 1 ? -(doubled + 1) / 2 : doubled / 2;
  }
  return into;
}
