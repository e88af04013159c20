import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { Ids } from '../platform/ids.js';
import { Refusal } from '../platform/refusal.js';
import { usualNetOf } from './bag-types.js';
import { GradeUsualNet } from './grade-usual-net.entity.js';
import type { SetUsualNetForm } from './grade.form.js';
import { ofSite } from './of-site.js';
import { gradeOf } from './plant-facts.js';

/**
 * Says between what net weights a full bag of a grade usually is: what lies outside is asked about once more.
 * Refusals: `usual-net-crossed`; not found: grade.
 */
@Injectable()
export class SetUsualNet {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: SetUsualNetForm): Promise<{ readonly id: string }> {
    return this.changes.run(asked, form, async (tx, change) => {
      const grade = ofSite(asked.actor, 'grade', await gradeOf(tx, form.gradeId));
      const { leastNetGrams, mostNetGrams } = form;
      if (leastNetGrams > mostNetGrams) {
        throw new Refusal('usual-net-crossed', { least: leastNetGrams, most: mostNetGrams });
      }
      const before = await usualNetOf(tx, grade.id);
      const id = this.ids.next();
      const band = { leastNetGrams, mostNetGrams };
      await tx.insert(GradeUsualNet, { id, gradeId: grade.id, ...band, setAt: change.recordedAt });
      return {
        answer: { id },
        entry: {
          action: 'set-usual-net',
          subject: { kind: 'grade', id: grade.id },
          ...(before === null ? {} : { before: { ...before } }),
          after: band,
        },
      };
    });
  }
}
