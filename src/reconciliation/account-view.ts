import type { Mistake } from '../core/mass-balance/suspects.js';
import type { Verdict } from '../core/mass-balance/account.js';
import type { Instant } from '../platform/clock.js';

/** What a line of an account is of. */
export type LineKind =
  | 'opening'
  | 'bag-tipped'
  | 'rework'
  | 'accepted-packs'
  | 'rejects'
  | 'samples'
  | 'sweepings'
  | 'weighed-back'
  | 'closing';

/** The counts that packs of a line stand between, and what they are taken to hold. */
export interface LinePacks {
  readonly fromCount: number;
  readonly toCount: number;
  readonly meanMilligrams: number;
  /** Of these packs, those on belts and tables when they were last counted loose; null: nobody counted them. */
  readonly loosePackCount: number | null;
  /** So many packs more or less it may be, because the counter was not read at the very start or end; 0: it was. */
  readonly doubtPackCount: number;
}

/** One weight of an account with the record it was read from. Whole numbers and text only, so that it can be frozen. */
export interface AccountLine {
  readonly side: 'in' | 'out';
  readonly kind: LineKind;
  /** The tip, run, removal, level seen or proven empty. */
  readonly recordId: string;
  /** What its thread is asked with: a bag's, bin's or run's number; null where it has none. */
  readonly code: string | null;
  readonly at: Instant;
  readonly grams: number;
  readonly basis: 'measured' | 'assumed';
  readonly standardMilligrams: number;
  /** The scale whose error sits in it. */
  readonly sharedBy: string | null;
  readonly sharedStandardMilligrams: number;
  /** The scale was overdue for its check, or had failed it. */
  readonly isDoubtful: boolean;
  readonly packs: LinePacks | null;
}

/** Accepted packs by the lot of what they were packed in. */
export interface PackagingLine {
  readonly filmLotId: string;
  readonly code: string;
  readonly kind: string;
  readonly packCount: number;
}

/** A single mistake that would explain the difference, and the record to look at. */
export interface SuspectView {
  readonly mistake: Mistake;
  readonly recordId: string | null;
  readonly code: string | null;
  readonly grams: number;
  readonly standardGrams: number;
  readonly remainingGrams: number;
}

/** Why the content of the hopper is not known at the start or the end. */
export type NotSeen = 'nobody-looked' | 'bag-hanging';

/** Which hopper, and over which time. */
export interface AccountSpan {
  readonly hopperId: string;
  /** The first instant. */
  readonly fromAt: Instant;
  /** The first instant that is no longer in it. */
  readonly untilAt: Instant;
}

/** The account of a hopper and all lines it feeds, as computed, shown, and frozen when it is signed. */
export interface AccountView extends AccountSpan {
  readonly hopperCode: string;
  readonly hopperName: string;
  /** When the hopper was looked at: bags by their opening and packs by their count are taken between these two. */
  readonly drawnFromAt: Instant;
  readonly drawnUntilAt: Instant;
  readonly openingNotSeen: NotSeen | null;
  readonly closingNotSeen: NotSeen | null;
  /** Opening first, closing last, where they were observed. */
  readonly lines: readonly AccountLine[];
  readonly packaging: readonly PackagingLine[];
  /** Bags opened in it that nobody has recorded as off. */
  readonly hangingBags: readonly string[];
  readonly inGrams: number;
  readonly outGrams: number;
  /** In less out; null: not observed. */
  readonly differenceGrams: number | null;
  /** Of what went through, with four decimals. */
  readonly differencePercent: string | null;
  readonly standardUncertaintyGrams: number | null;
  readonly verdict: Verdict;
  readonly hasAssumed: boolean;
  readonly suspects: readonly SuspectView[];
}
