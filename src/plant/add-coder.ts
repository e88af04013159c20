import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { Ids } from '../platform/ids.js';
import { Coder } from './coder.entity.js';
import { insertCoded } from './insert-coded.js';
import type { AddCoderForm } from './machine.form.js';
import { ofSite } from './of-site.js';
import { lineOf } from './plant-facts.js';

/**
 * A coder is set up on a line; it takes the place of the one before it there.
 * Refusals: `code-taken`.
 */
@Injectable()
export class AddCoder {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: AddCoderForm): Promise<{ readonly id: string }> {
    return this.changes.run(asked, form, async (tx) => {
      const line = ofSite(asked.actor, 'packing-line', await lineOf(tx, form.lineId));
      const id = this.ids.next();
      const row = { lineId: line.id, code: form.code };
      await insertCoded(tx, Coder, { id, siteId: line.siteId, ...row });
      return {
        answer: { id },
        entry: {
          action: 'add-coder',
          subject: { kind: 'coder', id },
          touches: [{ kind: 'packing-line', id: line.id }],
          after: row,
        },
      };
    });
  }
}
