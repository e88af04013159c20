/** What a number means that is a thousand times off, where its field says grams. */
export type UnitMeant = 'kg' | 'mg';

/** A weight this many times the nominal, or such a part of it, was given in the next unit. Our own value, no source. */
const [leastTimes, mostTimes] = [700, 1400];

/** Packs of a run in a batch, and how many of them look as if they were given in another unit. */
export interface UnitCounts {
  packCount: number;
  looksLikeKilograms: number;
  looksLikeMilligrams: number;
}

/** In which other unit a weight looks as if it were given; null: in none. */
export function unitItLooksLike(netMilligrams: number, nominalMilligrams: number): UnitMeant | null {
  if (netMilligrams > 0) {
    const below = nominalMilligrams / netMilligrams;
    if (below >= leastTimes && below <= mostTimes) return 'kg';
  }
  const above = netMilligrams / nominalMilligrams;
  return above >= leastTimes && above <= mostTimes ? 'mg' : null;
}

/**
 * Whether a batch mistook the unit: more than half of a run's packs say so. One pack of two grams among full ones is an
 * empty pack; all of them at two grams are kilograms written for grams.
 */
export function unitMistaken(counts: UnitCounts): UnitMeant | null {
  if (counts.looksLikeKilograms * 2 > counts.packCount) return 'kg';
  return counts.looksLikeMilligrams * 2 > counts.packCount ? 'mg' : null;
}
