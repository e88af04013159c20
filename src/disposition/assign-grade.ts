import { Injectable } from '@nestjs/common';
import { findBag } from '../drying/bulk-bags.js';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { gradeOf } from '../plant/plant-facts.js';
import { Ids } from '../platform/ids.js';
import { settleOccurredAt } from '../platform/occurred-at.js';
import { Refusal } from '../platform/refusal.js';
import { Decision } from './decision.entity.js';
import type { AssignGradeForm } from './decision.form.js';
import { GradeAssignment } from './grade-assignment.entity.js';
import { bagStandingOf } from './standings.js';

export interface AssignedGrade {
  readonly id: string;
  readonly bagId: string;
  readonly gradeId: string;
  /** What was decided for another grade does not stand. */
  readonly verdict: 'waiting';
}

/**
 * A bag is given another grade than it has. What was decided for the old grade says nothing about the new one, so the
 * bag waits again.
 * Refusals: `bag-not-closed`, `grade-already-so`, `later-decision-stands`; not found: bulk-bag, grade.
 */
@Injectable()
export class AssignGrade {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: AssignGradeForm): Promise<AssignedGrade> {
    return this.changes.run(asked, form, async (tx, change) => {
      const { reason, gradeId } = form;
      const { occurredAt, statedAt } = settleOccurredAt(form.assignedAt ?? null, change.recordedAt, reason);
      const bag = await findBag(tx, asked.actor.siteId, form.bag);
      const grade = await gradeOf(tx, gradeId);
      if (bag.status === 'filling') throw new Refusal('bag-not-closed', { bag: bag.number });
      const before = await bagStandingOf(tx, bag);
      const { decidedAt, verdict } = before.decision;
      if (before.gradeId === gradeId) throw new Refusal('grade-already-so', { bag: bag.number, grade: grade.code });
      if (decidedAt !== null && occurredAt < decidedAt) {
        throw new Refusal('later-decision-stands', { subject: bag.number, verdict, decidedAt });
      }
      const id = this.ids.next();
      await tx.insert(GradeAssignment, { id, bagId: bag.id, gradeId, reason, assignedAt: occurredAt, voidedBy: null });
      if (verdict !== 'waiting') {
        const subject = { subjectKind: 'bulk-bag', subjectId: bag.id, verdict: 'waiting' } as const;
        const row = { id: this.ids.next(), siteId: bag.siteId, ...subject, reason, decidedAt: occurredAt };
        await tx.insert(Decision, { ...row, voidedBy: null });
      }
      return {
        answer: { id, bagId: bag.id, gradeId, verdict: 'waiting' },
        entry: {
          action: 'assign-grade',
          subject: { kind: 'bulk-bag', id: bag.id },
          touches: [{ kind: 'grade', id: gradeId }],
          before: { gradeId: before.gradeId, verdict },
          after: { gradeId, verdict: 'waiting' },
          reason,
          occurredAt,
          statedAt,
        },
      };
    });
  }
}
