import { Injectable } from '@nestjs/common';
import { placeHold } from '../disposition/place-hold.js';
import type { HoldRow } from '../disposition/standings.js';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { Ids } from '../platform/ids.js';
import { Refusal } from '../platform/refusal.js';
import { insertMark } from './mark-recall.js';
import { proposedHolds } from './recall-holds.js';
import { openRecallOf } from './recall-in-unit.js';
import type { HoldRecallForm } from './recall.form.js';

export interface RecallHeld {
  readonly recallId: string;
  readonly number: string;
  readonly holds: readonly Pick<HoldRow, 'id' | 'number' | 'scopeKind' | 'scopeId'>[];
}

/**
 * Quality places the holds that a recall proposes and nobody has placed yet; with the first of them its stock is blocked.
 * Refusals: `exercise-places-no-hold`, `recall-held-already`, `recall-signed`; not found: recall.
 */
@Injectable()
export class HoldRecall {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, recallId: string, form: HoldRecallForm): Promise<RecallHeld> {
    return this.changes.run(asked, { recallId, ...form }, async (tx, change) => {
      const { siteId } = asked.actor;
      const recall = await openRecallOf(tx, siteId, recallId);
      const { id, number } = recall;
      if (recall.kind === 'exercise') throw new Refusal('exercise-places-no-hold', { recall: number });
      const missing = (await proposedHolds(tx, recall)).filter(({ heldBy }) => heldBy === null);
      if (missing.length === 0) throw new Refusal('recall-held-already', { recall: number });
      const reason = `${number}: ${form.reason ?? recall.reason}`;
      const common = { nextId: () => this.ids.next(), siteId, reason, placedAt: change.recordedAt };
      const holds: HoldRow[] = [];
      for (const { scope, fromCount, toCount } of missing) {
        holds.push(await placeHold(tx, change, { ...common, scope, fromCount, toCount }));
      }
      if (recall.stockBlockedAt === null) {
        const mark = { id: this.ids.next(), recallId: id, mark: 'stock-blocked', markedAt: change.recordedAt } as const;
        await insertMark(tx, mark, number);
      }
      return {
        answer: { recallId: id, number, holds: holds.map(brief) },
        entry: {
          action: 'hold-recall',
          subject: { kind: 'recall', id },
          touches: holds.flatMap((hold) => [
            { kind: 'hold', id: hold.id },
            { kind: hold.scopeKind, id: hold.scopeId },
          ]),
          after: {
            number,
            holds: holds.map(({ fromCount, toCount, ...hold }) => ({ ...brief(hold), fromCount, toCount })),
          },
          reason,
        },
      };
    });
  }
}

function brief({ id, number, scopeKind, scopeId }: Pick<HoldRow, 'id' | 'number' | 'scopeKind' | 'scopeId'>) {
  return { id, number, scopeKind, scopeId };
}
