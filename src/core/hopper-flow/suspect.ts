/**
 * Which single mistake it would be: a tip that nobody entered; one entered twice, too late, with a wrong tare, or at
 * another hopper than it went into; packs (rejects, sweepings) that nobody counted, or that were none; a level or an
 * empty that was seen, but was none.
 */
export type SuspectKind =
  | 'tip-missing'
  | 'tip-entered-twice'
  | 'tip-late'
  | 'wrong-tare'
  | 'wrong-hopper'
  | 'exits-missing'
  | 'exits-too-many'
  | 'empty-was-none';

/** One single mistake that would explain the findings. */
export interface Suspect {
  readonly kind: SuspectKind;
  /** The record's id, where exactly one fits; null where no single record can be named. */
  readonly id: string | null;
  /** What the tip holds where it is named; else the least that the mistake must come to. */
  readonly grams: number;
  /** The mistake lies after this event (null: since the period's start, or before it) … */
  readonly afterEventId: string | null;
  /** … and at the latest where it shows: had it been later, it would not explain this. */
  readonly byEventId: string;
  /** Whether putting it right leaves no finding in the whole period. */
  readonly cures: boolean;
  /** Of the ways in which this mistake happens, the share that leaves no finding: 0 (none cures) to 1. */
  readonly fit: number;
  /** What the findings still come to when the best way of this mistake is put right; 0 where it cures. */
  readonly remainingGrams: number;
  /** It fits as well as the best, or too nearly as well to be told from it; always false where nothing cures. */
  readonly isTied: boolean;
}
