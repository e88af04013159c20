import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { Ids } from '../platform/ids.js';
import { Grade } from './grade.entity.js';
import { insertCoded } from './insert-coded.js';
import type { AddGradeForm } from './grade.form.js';

/**
 * A grade is set up: whether its bags wait for their results before they are tipped, or may be tipped at risk.
 * Refusals: `code-taken`.
 */
@Injectable()
export class AddGrade {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: AddGradeForm): Promise<{ readonly id: string }> {
    return this.changes.run(asked, form, async (tx) => {
      const id = this.ids.next();
      const row = { code: form.code, name: form.name, tippingRule: form.tippingRule as Grade['tippingRule'] };
      await insertCoded(tx, Grade, { id, siteId: asked.actor.siteId, ...row });
      return { answer: { id }, entry: { action: 'add-grade', subject: { kind: 'grade', id }, after: row } };
    });
  }
}
