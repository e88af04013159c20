import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { Ids } from '../platform/ids.js';
import { Dryer } from './dryer.entity.js';
import { insertCoded } from './insert-coded.js';
import type { AddDryerForm } from './machine.form.js';

/**
 * A dryer is set up.
 * Refusals: `code-taken`.
 */
@Injectable()
export class AddDryer {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: AddDryerForm): Promise<{ readonly id: string }> {
    return this.changes.run(asked, form, async (tx) => {
      const id = this.ids.next();
      const row = { code: form.code, name: form.name };
      await insertCoded(tx, Dryer, { id, siteId: asked.actor.siteId, ...row });
      return { answer: { id }, entry: { action: 'add-dryer', subject: { kind: 'dryer', id }, after: row } };
    });
  }
}
