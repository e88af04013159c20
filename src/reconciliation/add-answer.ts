import type { Change } from '../journal/entry-draft.js';
import { raisePoint } from '../open-points/raise-point.js';
import { isTakenKey } from '../platform/database/constraint-errors.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Refusal } from '../platform/refusal.js';
import { HandoverAnswer } from './handover-answer.entity.js';

/** Who takes a line over, and whether they agree with what was handed over. */
export interface IncomingLead {
  readonly personId: string;
  readonly agrees: boolean;
  readonly disagreement: string | null;
}

export interface AnswerDraft {
  readonly handoverId: string;
  readonly siteId: string;
  readonly line: { readonly code: string };
  readonly incoming: IncomingLead;
  readonly how: HandoverAnswer['how'];
  readonly change: Change;
}

/**
 * The incoming lead takes over. Not agreeing blocks nothing: somebody above looks at it.
 *
 * @throws {Refusal} `handover-answered-already`
 */
export async function addAnswer(tx: Tx, nextId: () => string, draft: AnswerDraft): Promise<void> {
  const { handoverId, siteId, line, incoming, how, change } = draft;
  const { personId, agrees, disagreement } = incoming;
  try {
    await tx.insert(HandoverAnswer, {
      ...{ id: nextId(), handoverId, personId, how, agrees, disagreement, answeredAt: change.recordedAt },
    });
  } catch (error) {
    throw isTakenKey(error) ? new Refusal('handover-answered-already', { line: line.code }) : error;
  }
  if (agrees) return;
  await raisePoint(tx, {
    id: nextId(),
    siteId,
    cause: 'handover-not-agreed',
    facts: { line: line.code, says: disagreement },
    subject: { kind: 'handover', id: handoverId },
    role: 'plant-manager',
    at: change.recordedAt,
  });
}
