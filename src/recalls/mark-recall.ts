import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { isTakenKey } from '../platform/database/constraint-errors.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { Refusal } from '../platform/refusal.js';
import { openRecallOf } from './recall-in-unit.js';
import { RecallMark } from './recall-mark.entity.js';
import type { MarkRecallForm } from './recall.form.js';
import type { RecallMark as Mark } from './recall-words.js';

export interface RecallMarked {
  readonly recallId: string;
  readonly number: string;
  readonly mark: Mark;
  readonly markedAt: string;
}

/**
 * The first list of customers is out, the stock is blocked, or the clock is stopped.
 * Refusals: `recall-marked-already`, `recall-signed`; not found: recall.
 */
@Injectable()
export class MarkRecall {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, recallId: string, { mark }: MarkRecallForm): Promise<RecallMarked> {
    return this.changes.run(asked, { recallId, mark }, async (tx, change) => {
      const { id, number } = await openRecallOf(tx, asked.actor.siteId, recallId);
      const { recordedAt: markedAt } = change;
      await insertMark(tx, { id: this.ids.next(), recallId: id, mark, markedAt }, number);
      return {
        answer: { recallId: id, number, mark, markedAt },
        entry: { action: actions[mark], subject: { kind: 'recall', id }, after: { number, mark, markedAt } },
      };
    });
  }
}

const actions = {
  'customers-listed': 'list-recall-customers',
  'stock-blocked': 'block-recall-stock',
  'clock-stopped': 'stop-recall-clock',
} as const;

/** Of two at once one stands. @throws {Refusal} `recall-marked-already` */
export async function insertMark(tx: Tx, mark: Omit<RecallMark, 'voidedBy'>, number: string): Promise<void> {
  try {
    await tx.insert(RecallMark, { ...mark, voidedBy: null });
  } catch (error) {
    if (isTakenKey(error)) throw new Refusal('recall-marked-already', { recall: number, mark: mark.mark });
    throw error;
  }
}
