import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { Ids } from '../platform/ids.js';
import { StorePlace } from './store-place.entity.js';
import { insertCoded } from './insert-coded.js';
import type { AddStorePlaceForm } from './customer.form.js';

/**
 * A place in the store is set up: a lane, the dock, the end of a line.
 * Refusals: `code-taken`.
 */
@Injectable()
export class AddStorePlace {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: AddStorePlaceForm): Promise<{ readonly id: string }> {
    return this.changes.run(asked, form, async (tx) => {
      const id = this.ids.next();
      const row = { code: form.code, kind: form.kind as StorePlace['kind'] };
      await insertCoded(tx, StorePlace, { id, siteId: asked.actor.siteId, ...row });
      return { answer: { id }, entry: { action: 'add-store-place', subject: { kind: 'store-place', id }, after: row } };
    });
  }
}
