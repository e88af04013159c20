import type { CheckKind } from '../../line-checks/check-words.js';
import type { Permission } from '../../platform/actor.js';

/** What a sheet is written for when the server is away: each kind has rows of its own. */
export const formKinds = ['tips', 'pallets', 'stops', 'counts', 'removals', 'checks'] as const;
export type FormKind = (typeof formKinds)[number];

/**
 * How many rows a page of each kind holds: a shift's worth on one page at rows that can be written in with gloves on, nine
 * millimetres and more. Our own values, no source.
 */
export const rowCounts: Readonly<Record<FormKind, number>> = {
  tips: 18,
  pallets: 12,
  stops: 18,
  counts: 18,
  removals: 18,
  checks: 14,
};

/** What a sheet says, frozen when it was printed. */
export interface PaperFormFacts {
  readonly number: string;
  readonly kind: FormKind;
  /** Of who had it printed: those who write on it speak it too. */
  readonly language: 'en' | 'es';
  readonly siteName: string;
  readonly lineCode: string;
  readonly lineName: string;
  /** In the plant's time. */
  readonly printedAtText: string;
  readonly rowCount: number;
  /** Numbers set aside for the pallets of this sheet, one a row; none on other sheets. */
  readonly ssccs: readonly string[];
  /** The checks of the line, on sheets of checks. */
  readonly checks?: readonly PrintedCheck[];
}

/** A check as a sheet names it, in the sheet's language. */
export interface PrintedCheck {
  readonly planId: string;
  /** What a row names it by. */
  readonly letter: string;
  readonly kind: CheckKind;
  readonly title: string;
  readonly oftenText: string;
  readonly needsSecondPerson: boolean;
  /** What is put through or looked at, by number; none: the one thing that the check is named after. */
  readonly pieces: readonly string[];
}

export const paperFormKind = 'paper-form';
export const paperFormEdition = '1';

/** What somebody may who keys in the rows of a kind. */
export const permissionOf: Readonly<Record<FormKind, Permission>> = {
  tips: 'tip-bags',
  pallets: 'build-pallets',
  stops: 'run-line',
  counts: 'count-packs',
  removals: 'run-line',
  checks: 'check-line',
};
