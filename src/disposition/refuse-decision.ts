import type { BagRow } from '../drying/bulk-bags.js';
import { laboratoryStandingOf } from '../laboratory/bag-results.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { Refusal } from '../platform/refusal.js';
import type { DecisionSubject } from './decision-subjects.js';
import { bagStandingOf, openHolds, type DecisionRow, type Verdict } from './standings.js';

/** A decision as it is about to be taken. */
export interface IntendedDecision {
  readonly label: string;
  readonly verdict: Verdict;
  readonly reason: string | null;
  readonly decidedAt: string;
}

/**
 * What holds for every decision: all but a plain release say why, and none is put before one that stands.
 *
 * @throws {Refusal} `decision-needs-reason`, `later-decision-stands`
 */
export function refuseOutOfOrder(standing: DecisionRow, intended: IntendedDecision): void {
  const { label, verdict, reason, decidedAt } = intended;
  const isPlain = verdict === 'released' && standing.verdict !== 'rejected';
  if (!isPlain && reason === null) throw new Refusal('decision-needs-reason', { subject: label, verdict });
  if (standing.decidedAt === null || standing.decidedAt <= decidedAt) return;
  const facts = { subject: label, verdict: standing.verdict, decidedAt: standing.decidedAt };
  throw new Refusal('later-decision-stands', facts);
}

/**
 * A bag is decided on when it is closed, and released when its results are complete and within.
 *
 * @throws {Refusal} `bag-not-closed`, `results-outside`, `results-missing`
 */
export async function refuseForBag(from: ReadFrom, bag: BagRow, verdict: Verdict): Promise<void> {
  if (bag.status === 'filling') throw new Refusal('bag-not-closed', { bag: bag.number });
  if (verdict !== 'released') return;
  const { gradeId } = await bagStandingOf(from, bag);
  const { outside, missing } = await laboratoryStandingOf(from, bag, gradeId);
  if (outside.length > 0) throw new Refusal('results-outside', { bag: bag.number, outside: outside.join(', ') });
  if (missing.length > 0) throw new Refusal('results-missing', { bag: bag.number, missing: missing.join(', ') });
}

/**
 * Nothing is measured on a lot or a pallet in itself, so its release would say no more than that nothing speaks
 * against it: not while a hold on it is open.
 *
 * @throws {Refusal} `subject-on-hold`
 */
export async function refuseForUnit(
  from: ReadFrom,
  subject: DecisionSubject & { readonly kind: 'lot' | 'pallet' },
  verdict: Verdict,
): Promise<void> {
  if (verdict !== 'released') return;
  const [hold] = await openHolds(from, [{ kind: subject.kind, id: subject.id }]);
  if (hold !== undefined) throw new Refusal('subject-on-hold', { subject: subject.label, hold: hold.number });
}
