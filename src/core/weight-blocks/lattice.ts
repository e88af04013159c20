/** So many values are looked at to find the middle one. */
const sampleSize = 255;

/**
 * The largest step that all of some whole numbers, counted from the first of them, are multiples of: the resolution that
 * the data have by themselves.
 *
 * @param values whole; not empty
 * @returns 1 or more; 1 where all are equal
 * @example stepOf(Int32Array.of(1000200, 999800, 1000000)) // 200
 */
export function stepOf(values: Float64Array | Int32Array): number {
  const first = values[0] ?? 0;
  let step = 0;
  for (let place = 1; place < values.length && step !== 1; place += 1) {
    const distance = Math.abs((values[place] ?? 0) - first);
    // Division and multiplication are exact here, and many times faster than the remainder of two large numbers.
    if (step === 0 ? distance > 0 : Math.floor(distance / step) * step !== distance) {
      step = greatestCommonDivisor(distance, step);
    }
  }
  return step === 0 ? 1 : step;
}

function greatestCommonDivisor(one: number, other: number): number {
  let [large, small] = [one, other];
  while (small > 0) [large, small] = [small, large % small];
  return large;
}

/**
 * The middle one of some numbers, about: of up to 255 that lie evenly among them. It is always one of them.
 *
 * @param values not empty
 */
export function middleOf(values: Float64Array | Int32Array): number {
  const size = Math.min(sampleSize, values.length);
  const sample = new Float64Array(size);
  for (let index = 0; index < size; index += 1) sample[index] = values[Math.floor((index * values.length) / size)] ?? 0;
  sample.sort();
  return sample[size >>> 1] ?? 0;
}
