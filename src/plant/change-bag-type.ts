import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { voidFact } from '../journal/void-fact.js';
import { Ids } from '../platform/ids.js';
import { NotFound } from '../platform/refusal.js';
import { bagTypeColumns, refuseBagType } from './bag-type-columns.js';
import { BagType } from './bag-type.entity.js';
import type { BagTypeForm } from './bag-type.form.js';
import { insertCoded } from './insert-coded.js';

/**
 * What is known of a type of bag is otherwise from now on; bags that were filled keep what was recorded with them.
 * Refusals: `tare-band-crossed`, `tare-above-safe-load`, `code-taken`, `already-corrected`; not found: bag-type.
 */
@Injectable()
export class ChangeBagType {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, bagTypeId: string, form: BagTypeForm): Promise<{ readonly id: string }> {
    return this.changes.run(asked, { bagTypeId, ...form }, async (tx, change) => {
      const { siteId } = asked.actor;
      const old = await tx.findOne(BagType, { id: bagTypeId, siteId });
      if (old === null) throw new NotFound('bag-type', bagTypeId);
      refuseBagType(form);
      await voidFact(tx, BagType, old.id, change);
      const id = this.ids.next();
      const row = bagTypeColumns(form);
      await insertCoded(tx, BagType, { id, siteId, ...row, voidedBy: null });
      return {
        answer: { id },
        entry: {
          action: 'change-bag-type',
          subject: { kind: 'bag-type', id },
          touches: [{ kind: 'bag-type', id: old.id }],
          before: { id: old.id, ...bagTypeColumns(old) },
          after: row,
        },
      };
    });
  }
}
