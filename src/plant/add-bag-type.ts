import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { Ids } from '../platform/ids.js';
import { bagTypeColumns, refuseBagType } from './bag-type-columns.js';
import { BagType } from './bag-type.entity.js';
import type { BagTypeForm } from './bag-type.form.js';
import { insertCoded } from './insert-coded.js';

/**
 * A type of bulk bag is set up: its usual tare with the band around it, and its safe working load.
 * Refusals: `tare-band-crossed`, `tare-above-safe-load`, `code-taken`.
 */
@Injectable()
export class AddBagType {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: BagTypeForm): Promise<{ readonly id: string }> {
    return this.changes.run(asked, form, async (tx) => {
      refuseBagType(form);
      const id = this.ids.next();
      const row = bagTypeColumns(form);
      await insertCoded(tx, BagType, { id, siteId: asked.actor.siteId, ...row, voidedBy: null });
      return { answer: { id }, entry: { action: 'add-bag-type', subject: { kind: 'bag-type', id }, after: row } };
    });
  }
}
