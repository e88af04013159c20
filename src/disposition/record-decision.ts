import type { BagRow } from '../drying/bulk-bags.js';
import type { Asked, Change } from '../journal/entry-draft.js';
import { clearPoints, raisePoint } from '../open-points/raise-point.js';
import { refuseSameOrUnknown } from '../people/second-person.js';
import { ruleSetAt } from '../plant/plant-facts.js';
import type { ConcessionRules } from '../plant/rule-kinds.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Refusal } from '../platform/refusal.js';
import { DecisionSecondPerson } from './decision-second-person.entity.js';
import { Decision } from './decision.entity.js';
import { isUsed } from './is-used.js';
import type { Verdict } from './standings.js';

/** Who decides, and when it is recorded. */
export interface Deciding {
  readonly asked: Asked;
  readonly change: Change;
  readonly nextId: () => string;
}

/** A decision that may be taken. */
export interface DecisionDraft {
  readonly kind: 'bulk-bag' | 'lot' | 'pallet';
  readonly subjectId: string;
  /** Null but for a bag: points are raised and settled on bags. */
  readonly bag: BagRow | null;
  readonly verdict: Verdict;
  readonly reason: string | null;
  readonly decidedAt: string;
  readonly secondPersonId: string | null;
}

/** Keeps a decision, with who stands behind it, and settles what was open about it. Answers its id. */
export async function recordDecision(tx: Tx, deciding: Deciding, draft: DecisionDraft): Promise<string> {
  const { kind: subjectKind, subjectId, bag, verdict, reason, decidedAt, secondPersonId } = draft;
  const id = deciding.nextId();
  const { siteId } = deciding.asked.actor;
  await tx.insert(Decision, { id, siteId, subjectKind, subjectId, verdict, reason, decidedAt, voidedBy: null });
  if (secondPersonId !== null) {
    await tx.insert(DecisionSecondPerson, { id: deciding.nextId(), decisionId: id, personId: secondPersonId });
  }
  if (bag !== null) await settlePoints(tx, deciding, { bag, verdict });
  return id;
}

/**
 * Where the rules of the site ask, a concession takes two persons.
 *
 * @throws {Refusal} `second-person-needed`, `second-person-same`
 * @throws {NotFound} `person`
 */
export async function refuseOnePerson(
  tx: Tx,
  { asked, change }: Deciding,
  form: { readonly verdict: Verdict; readonly secondPersonId: string | null },
): Promise<void> {
  const { verdict, secondPersonId } = form;
  if (secondPersonId !== null) return refuseSameOrUnknown(tx, asked.actor, secondPersonId);
  if (verdict !== 'concession') return;
  const { siteId } = asked.actor;
  const rules = await ruleSetAt<ConcessionRules>(tx, siteId, 'concession', change.recordedAt);
  if ((rules?.concessionPersonCount ?? 1) > 1) throw new Refusal('second-person-needed');
}

/** Who decided has seen the results; what was used of a rejected bag is somewhere else by now. */
async function settlePoints(
  tx: Tx,
  { asked, change, nextId }: Deciding,
  { bag, verdict }: { readonly bag: BagRow; readonly verdict: Verdict },
): Promise<void> {
  const { personId } = asked.actor;
  const about = { siteId: bag.siteId, subject: { kind: 'bulk-bag', id: bag.id }, at: change.recordedAt };
  if (verdict !== 'waiting') await clearPoints(tx, { ...about, nextId, cause: 'results-outside-of-bag', personId });
  const cause = 'rejected-bag-was-used';
  if (verdict === 'rejected' && isUsed(bag)) {
    await raisePoint(tx, { ...about, id: nextId(), cause, facts: { bag: bag.number }, role: 'quality-officer' });
  } else {
    await clearPoints(tx, { ...about, nextId, cause, personId });
  }
}
