import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { voidFact } from '../journal/void-fact.js';
import { Refusal } from '../platform/refusal.js';
import { Changeover } from './changeover.entity.js';
import type { DropChangeoverForm } from './changeover.form.js';
import { changeoverOf } from './changeovers.js';

/**
 * A changeover that was begun does not take place; what was done on it stays recorded.
 * Refusals: `changeover-climbed-already`, `already-corrected`.
 */
@Injectable()
export class DropChangeover {
  constructor(private readonly changes: RecordChange) {}

  execute(asked: Asked, changeoverId: string, form: DropChangeoverForm): Promise<{ readonly id: string }> {
    return this.changes.run(asked, { changeoverId, ...form }, async (tx, change) => {
      const changeover = await changeoverOf(tx, asked.actor.siteId, changeoverId);
      if (changeover.next === null) throw new Refusal('changeover-climbed-already', { line: changeover.lineCode });
      await voidFact(tx, Changeover, changeoverId, change);
      return {
        answer: { id: changeoverId },
        entry: {
          action: 'drop-changeover',
          subject: { kind: 'changeover', id: changeoverId },
          touches: [{ kind: 'packing-line', id: changeover.lineId }],
          before: { toFormatId: changeover.toFormatId, rungs: changeover.rungs.map(({ rung }) => rung) },
          reason: form.reason,
        },
      };
    });
  }
}
