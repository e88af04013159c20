import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { voidFact } from '../journal/void-fact.js';
import { Ids } from '../platform/ids.js';
import { BadForm, NotFound } from '../platform/refusal.js';
import { customerOf } from '../plant/plant-facts.js';
import { RecallAnswer } from './recall-answer.entity.js';
import { openRecallOf } from './recall-in-unit.js';
import type { RecallAnswerForm, WithdrawRecallAnswerForm } from './recall.form.js';
import { answerOf } from './recalls.js';

/**
 * A customer says what became of what it got. More than it got is recorded too: the sums say that they contradict.
 * Refusals: `recall-signed`; not found: recall, customer.
 */
@Injectable()
export class AnswerRecall {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, recallId: string, form: RecallAnswerForm): Promise<{ readonly id: string }> {
    return this.changes.run(asked, { recallId, ...form }, async (tx, change) => {
      const { siteId } = asked.actor;
      const recall = await openRecallOf(tx, siteId, recallId);
      const customer = await customerOf(tx, form.customerId);
      if (customer.siteId !== siteId) throw new NotFound('customer', form.customerId);
      const { answer } = form;
      const [packCount, bagGrams] = [form.packCount ?? 0, form.bagGrams ?? 0];
      refuseEmptyAnswer(form, packCount + bagGrams);
      const id = this.ids.next();
      const said = { customerId: customer.id, answer, packCount, bagGrams };
      await tx.insert(RecallAnswer, {
        ...{ id, recallId: recall.id, ...said, remarks: form.remarks ?? null },
        ...{ answeredAt: change.recordedAt, voidedBy: null },
      });
      return {
        answer: { id },
        entry: {
          action: 'answer-recall',
          subject: { kind: 'recall', id: recall.id },
          touches: [{ kind: 'customer', id: customer.id }],
          after: { number: recall.number, answerId: id, ...said },
        },
      };
    });
  }
}

/** "Nothing yet" is about nothing; everything else is about something. @throws {BadForm} */
function refuseEmptyAnswer({ answer }: RecallAnswerForm, amount: number): void {
  const problem = (code: string): BadForm => new BadForm([{ field: 'packCount', code, facts: {} }]);
  if (answer === 'nothing-yet' && amount > 0) throw problem('recall-nothing-has-no-amount');
  if (answer !== 'nothing-yet' && amount === 0) throw problem('field-missing');
}

/**
 * An answer was not given, or was entered wrongly. It stays to be read in the journal.
 * Refusals: `already-corrected`, `recall-signed`; not found: the answer.
 */
@Injectable()
export class WithdrawRecallAnswer {
  constructor(private readonly changes: RecordChange) {}

  execute(asked: Asked, answerId: string, form: WithdrawRecallAnswerForm): Promise<{ readonly id: string }> {
    return this.changes.run(asked, { answerId, ...form }, async (tx, change) => {
      const said = await answerOf(tx, answerId);
      const recall = await openRecallOf(tx, asked.actor.siteId, said.recallId);
      await voidFact(tx, RecallAnswer, said.id, change);
      const { customerId, answer, packCount, bagGrams } = said;
      return {
        answer: { id: said.id },
        entry: {
          action: 'withdraw-recall-answer',
          subject: { kind: 'recall', id: recall.id },
          touches: [{ kind: 'customer', id: customerId }],
          before: { answerId: said.id, customerId, answer, packCount, bagGrams },
          after: { why: form.why },
          reason: form.reason,
        },
      };
    });
  }
}
