import type { UnitMeant } from '../../core/units/unit-it-looks-like.js';

/** Packs of a run in a batch, and how many of them look as if they were given in another unit. */
export interface UnitCounts {
  packCount: number;
  looksLikeKilograms: number;
  looksLikeMilligrams: number;
}

/**
 * Whether a batch mistook the unit: more than half of a run's packs say so. One pack of two grams among full ones is an
 * empty pack; all of them at two grams are kilograms written for grams.
 */
export function unitMistaken(counts: UnitCounts): UnitMeant | null {
  if (counts.looksLikeKilograms * 2 > counts.packCount) return 'kg';
  return counts.looksLikeMilligrams * 2 > counts.packCount ? 'mg' : null;
}
