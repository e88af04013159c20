import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { Ids } from '../platform/ids.js';
import { insertCoded } from './insert-coded.js';
import { nextCheckDueAt } from './next-check-due.js';
import { leaveLooksAtScale } from './scale-job.js';
import { Scale } from './scale.entity.js';
import type { AddScaleForm } from './scale.form.js';

/**
 * A scale is set up. Until its first check what it weighs is doubtful; an hour later somebody is told.
 * Refusals: `code-taken`.
 */
@Injectable()
export class AddScale {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: AddScaleForm): Promise<{ readonly id: string }> {
    return this.changes.run(asked, form, async (tx, change) => {
      const id = this.ids.next();
      const { siteId } = asked.actor;
      const { code, name, intervalMilligrams, maximumPermissibleErrorMilligrams, checkEveryHours } = form;
      const row = { code, name, intervalMilligrams, maximumPermissibleErrorMilligrams, checkEveryHours };
      await insertCoded(tx, Scale, { id, siteId, ...row });
      const at = [nextCheckDueAt(change.recordedAt, 1)];
      await leaveLooksAtScale(tx, () => this.ids.next(), { siteId, scaleId: id, at });
      return { answer: { id }, entry: { action: 'add-scale', subject: { kind: 'scale', id }, after: row } };
    });
  }
}
