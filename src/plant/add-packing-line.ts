import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { Ids } from '../platform/ids.js';
import { PackingLine } from './packing-line.entity.js';
import { insertCoded } from './insert-coded.js';
import type { AddPackingLineForm } from './machine.form.js';

/**
 * A packing line is set up; its code is what the coder prints for it.
 * Refusals: `code-taken`.
 */
@Injectable()
export class AddPackingLine {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: AddPackingLineForm): Promise<{ readonly id: string }> {
    return this.changes.run(asked, form, async (tx) => {
      const id = this.ids.next();
      const row = { code: form.code, name: form.name };
      await insertCoded(tx, PackingLine, { id, siteId: asked.actor.siteId, ...row });
      return {
        answer: { id },
        entry: { action: 'add-packing-line', subject: { kind: 'packing-line', id }, after: row },
      };
    });
  }
}
