import type { EntityTarget, ObjectLiteral } from 'typeorm';
import type { Tx } from '../platform/database/unit-of-work.js';
import { BadForm, Refusal } from '../platform/refusal.js';
import type { Change } from './entry-draft.js';

/** The two reasons of a correction, in the words of the open event standard (EPCIS 2.0, errorDeclaration). */
export const correctionReasons = ['did-not-occur', 'incorrect-data'] as const;
export type CorrectionReason = (typeof correctionReasons)[number];

/** What stands beside what is right: why, and who says so. */
const besideWhatIsRight = ['why', 'reason', 'secondPersonId'];

/**
 * What did not occur has nothing right in its place: a correction that says both is refused, and not read as one of them.
 *
 * @throws {BadForm} `correction-contradicts-itself`
 */
export function refuseContradiction(form: { readonly why: CorrectionReason }): void {
  if (form.why !== 'did-not-occur') return;
  const isGiven = (value: unknown): boolean =>
    Array.isArray(value) ? value.length > 0 : value !== undefined && value !== null;
  const given = Object.entries(form).filter(([field, value]) => isGiven(value) && !besideWhatIsRight.includes(field));
  if (given.length === 0) return;
  throw new BadForm(given.map(([field]) => ({ field, code: 'correction-contradicts-itself', facts: {} })));
}

/**
 * Makes a fact void by the change that is being recorded. The row stays; it only names its correction.
 *
 * @throws {Refusal} `already-corrected` when it was void before
 */
export async function voidFact<Row extends ObjectLiteral & { id: string; voidedBy: string | null }>(
  tx: Tx,
  entity: EntityTarget<Row>,
  id: string,
  change: Change,
): Promise<void> {
  const where = { id, voidedBy: null } as Partial<Row>;
  const changed = await tx.update(entity, where, { voidedBy: change.entryId } as Partial<Row>);
  if (changed !== 1) throw new Refusal('already-corrected', { id });
}
