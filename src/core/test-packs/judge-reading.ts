import { unitItLooksLike } from '../units/unit-it-looks-like.js';

/** A pack whose weight is known, put over a weigher to see what it shows. */
export interface TestPack {
  /** Its known weight, above zero. */
  readonly knownMilligrams: number;
  /** How far the reading may be off, exactly so much too. */
  readonly allowedMilligrams: number;
}

/** Why a reading cannot be meant: a thousandth or the thousandfold of the known weight, less than nothing, or far more. */
export type ReadingMistake = 'thousandth' | 'thousandfold' | 'below-zero' | 'absurd';

/** What a reading of a test pack says. */
export interface JudgedReading {
  /** Reading less known weight. */
  readonly offMilligrams: number;
  readonly passed: boolean;
  /** Null: it can be meant. A reading that passes is no mistake. */
  readonly mistake: ReadingMistake | null;
}

/** A weigher that shows more than so many times a test pack was read wrongly. Our own value, no source. */
export const mostTimesKnown = 3;

/**
 * Judges what a weigher showed for a test pack.
 *
 * It passes where it is off by no more than is allowed, exactly so much too. A reading that fails is questioned where
 * it is a thousandth or the thousandfold of the known weight (700 to 1400 times: the unit was mistaken, or a comma
 * parted the thousands), less than nothing, or more than three times the known weight. A reading of zero is none of
 * these: a weigher that is dead shows nothing, and that is a failed check.
 *
 * @example
 * judgeReading({ knownMilligrams: 2_000_000, allowedMilligrams: 2000 }, 2_002_400)
 * // { offMilligrams: 2400, passed: false, mistake: null }
 */
export function judgeReading(pack: TestPack, measuredMilligrams: number): JudgedReading {
  const offMilligrams = measuredMilligrams - pack.knownMilligrams;
  const passed = Math.abs(offMilligrams) <= pack.allowedMilligrams;
  return { offMilligrams, passed, mistake: passed ? null : mistakeOf(pack.knownMilligrams, measuredMilligrams) };
}

function mistakeOf(knownMilligrams: number, measuredMilligrams: number): ReadingMistake | null {
  if (measuredMilligrams < 0) return 'below-zero';
  const unit = unitItLooksLike(measuredMilligrams, knownMilligrams);
  if (unit !== null) return unit === 'kg' ? 'thousandth' : 'thousandfold';
  return measuredMilligrams > knownMilligrams * mostTimesKnown ? 'absurd' : null;
}
