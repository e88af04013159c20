/** What a number means that is a thousand times off, where its field says grams. */
export type UnitMeant = 'kg' | 'mg';

/** A weight this many times the expected one, or such a part of it, was given in the next unit. Our own value, no source. */
const [leastTimes, mostTimes] = [700, 1400];

/**
 * In which other unit a weight looks as if it were given, by what was expected: kilograms where it is a thousandth of
 * it, milligrams where it is the thousandfold, each from 700 to 1400 times. Null: in none; also for zero and below.
 *
 * @param milligrams the weight as it would be, were its unit right
 * @param expectedMilligrams above zero
 * @example
 * unitItLooksLike(2001, 2_000_000) // 'kg'
 */
export function unitItLooksLike(milligrams: number, expectedMilligrams: number): UnitMeant | null {
  // Far from both: so almost all weights are.
  if (milligrams * leastTimes > expectedMilligrams && milligrams < expectedMilligrams * leastTimes) return null;
  if (milligrams > 0) {
    const below = expectedMilligrams / milligrams;
    if (below >= leastTimes && below <= mostTimes) return 'kg';
  }
  const above = milligrams / expectedMilligrams;
  return above >= leastTimes && above <= mostTimes ? 'mg' : null;
}
