import type { EntityTarget, ObjectLiteral } from 'typeorm';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Refusal } from '../platform/refusal.js';
import type { Change } from './entry-draft.js';

/** The two reasons of a correction, in the words of the open event standard (EPCIS 2.0, errorDeclaration). */
export const correctionReasons = ['did-not-occur', 'incorrect-data'] as const;
export type CorrectionReason = (typeof correctionReasons)[number];

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
