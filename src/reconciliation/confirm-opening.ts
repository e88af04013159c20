import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { clearPoints } from '../open-points/raise-point.js';
import { Ids } from '../platform/ids.js';
import { BadForm, NotPermitted, Refusal } from '../platform/refusal.js';
import { addAnswer } from './add-answer.js';
import type { AnswerHandoverForm } from './handover.form.js';
import { handoverOf } from './handovers.js';
import { notConfirmedCause } from './sign-handover.js';

/**
 * Whoever opens a line that was handed over alone confirms what was found, or says what is not as it was written.
 * Refusals: `handover-answered-already`, `opening-by-outgoing`.
 */
@Injectable()
export class ConfirmOpening {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, handoverId: string, form: AnswerHandoverForm): Promise<{ readonly id: string }> {
    return this.changes.run(asked, { handoverId, ...form }, async (tx, change) => {
      const { siteId, personId } = asked.actor;
      if (personId === null) throw new NotPermitted('not-permitted');
      const handover = await handoverOf(tx, siteId, handoverId);
      const line = { code: handover.lineCode };
      if (handover.answeredBy !== null) throw new Refusal('handover-answered-already', { line: line.code });
      if (handover.outgoingPersonId === personId) throw new Refusal('opening-by-outgoing', { line: line.code });
      const incoming = { personId, ...agreementOf(form) };
      const nextId = (): string => this.ids.next();
      await addAnswer(tx, nextId, { handoverId, siteId, line, incoming, how: 'at-opening', change });
      const subject = { kind: 'handover', id: handoverId };
      await clearPoints(tx, { nextId, siteId, cause: notConfirmedCause, subject, personId, at: change.recordedAt });
      return {
        answer: { id: handoverId },
        entry: {
          action: 'confirm-opening',
          subject,
          touches: [{ kind: 'packing-line', id: handover.lineId }],
          after: { agrees: incoming.agrees },
          reason: incoming.disagreement,
        },
      };
    });
  }
}

/** Words of disagreement are a disagreement; a disagreement needs its words. */
export function agreementOf(form: AnswerHandoverForm): {
  readonly agrees: boolean;
  readonly disagreement: string | null;
} {
  const disagreement = form.disagreement ?? null;
  const agrees = disagreement === null && (form.agrees ?? true);
  if (!agrees && disagreement === null) {
    throw new BadForm([{ field: 'disagreement', code: 'field-missing', facts: {} }]);
  }
  return { agrees, disagreement };
}
