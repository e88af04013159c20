import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { canonicalText } from '../platform/canonical-text.js';
import { Ids } from '../platform/ids.js';
import { GradeSpecification } from './grade-specification.entity.js';
import { Grade } from './grade.entity.js';
import type { SetUpGradeForm } from './grade.form.js';
import { insertCoded } from './insert-coded.js';
import { readSpecification } from './set-specification.js';
import { insertVersion } from './valid-from.js';

/**
 * A grade is set up whole: how its bags are tipped, and the first limits of its results.
 * Refusals: `code-taken`, `specification-line-twice`, `specification-limits-crossed`.
 */
@Injectable()
export class SetUpGrade {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: SetUpGradeForm): Promise<{ readonly id: string }> {
    return this.changes.run(asked, form, async (tx, change) => {
      const id = this.ids.next();
      const tippingRule = form.tippingRule as Grade['tippingRule'];
      const row = { code: form.code, name: form.name, tippingRule };
      const lines = readSpecification(form.lines).map((line) => ({ ...line }));
      const validFrom = change.recordedAt;
      await insertCoded(tx, Grade, { id, siteId: asked.actor.siteId, ...row });
      const version = { id: this.ids.next(), gradeId: id, validFrom, limits: canonicalText(lines) };
      await insertVersion(tx, GradeSpecification, version);
      return {
        answer: { id },
        entry: {
          action: 'set-up-grade',
          subject: { kind: 'grade', id },
          after: { ...row, specificationId: version.id, validFrom, limits: lines },
        },
      };
    });
  }
}
