import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { isTakenKey } from '../platform/database/constraint-errors.js';
import { Ids } from '../platform/ids.js';
import { Refusal } from '../platform/refusal.js';
import type { LetFormatTakeGradeForm } from './grade.form.js';
import { ofSite } from './of-site.js';
import { PackFormatGrade } from './pack-format-grade.entity.js';
import { formatOf, gradeOf } from './plant-facts.js';

/**
 * A format takes one grade more.
 * Refusals: `format-takes-grade-already`.
 */
@Injectable()
export class LetFormatTakeGrade {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: LetFormatTakeGradeForm): Promise<{ readonly id: string }> {
    return this.changes.run(asked, form, async (tx) => {
      const format = ofSite(asked.actor, 'pack-format', await formatOf(tx, form.formatId));
      const grade = ofSite(asked.actor, 'grade', await gradeOf(tx, form.gradeId));
      const id = this.ids.next();
      try {
        await tx.insert(PackFormatGrade, { id, formatId: format.id, gradeId: grade.id });
      } catch (error) {
        if (!isTakenKey(error)) throw error;
        throw new Refusal('format-takes-grade-already', { format: format.code, grade: grade.code });
      }
      return {
        answer: { id },
        entry: {
          action: 'let-format-take-grade',
          subject: { kind: 'pack-format', id: format.id },
          touches: [{ kind: 'grade', id: grade.id }],
          after: { id, gradeId: grade.id },
        },
      };
    });
  }
}
