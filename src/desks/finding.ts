import type { ComplaintRow } from '../complaints/complaints.js';
import type { Swap } from '../core/identifiers/look-alike.js';
import type { SentenceFacts } from '../platform/refusal.js';
import type { RecallRow } from '../recalls/recalls.js';
import type { ThreadSubject } from '../tracing/thread.js';

/** Why a thing fits what was typed: a sentence of the catalogue. */
export interface Fit {
  readonly code: string;
  readonly facts: SentenceFacts;
}

/** How well it fits: as typed, by characters that look alike, or by a part of its code only. */
export type FitTier = 'as-typed' | 'look-alike' | 'part';

/** One thing that the typed code may mean; `about` and the fits help a person to choose where there are several. */
export interface Finding {
  readonly subject: ThreadSubject;
  readonly about: string;
  readonly fits: readonly Fit[];
  readonly tier: FitTier;
  /** Something typed does not agree with the records: it is shown to be chosen, never followed by itself. */
  readonly isDoubtful: boolean;
}

/** A complaint that carries the number. */
export interface ComplaintFinding {
  readonly complaint: ComplaintRow;
  readonly fits: readonly Fit[];
}

/** A recall or an exercise that carries the number. */
export interface RecallFinding {
  readonly recall: RecallRow;
  readonly fits: readonly Fit[];
}

/** What tells the choices of one code apart: the thing, which time is meant, and when it was coded where the code came back. */
export function choiceKey({ subject }: Pick<Finding, 'subject'>): string {
  const { id, codedBetween, printedAt } = subject;
  const use = codedBetween === null ? id : `${id}@${codedBetween.fromAt.slice(0, 10)}`;
  return printedAt === null ? use : `${use}~${printedAt}`;
}

export const fit = (code: string, facts: SentenceFacts = {}): Fit => ({ code, facts });

/** One sentence for each character that was read as another. */
export function fitsOfSwaps(swaps: readonly Swap[]): readonly Fit[] {
  return swaps.map(({ place, typed, read }) => fit('fits-look-alike', { place, typed, read }));
}

export function tierOf(swaps: readonly Swap[]): FitTier {
  return swaps.length === 0 ? 'as-typed' : 'look-alike';
}

/** A thing found by a name of its own. */
export function named(
  kind: ThreadSubject['kind'],
  { id, name, about }: { readonly id: string; readonly name: string; readonly about: string },
  fits: readonly Fit[],
  tier: FitTier = 'as-typed',
): Finding {
  const subject = { kind, id, name, localTime: null, printedAt: null, codedBetween: null };
  return { subject, about, fits, tier, isDoubtful: false };
}
