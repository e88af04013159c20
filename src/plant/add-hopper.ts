import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { Ids } from '../platform/ids.js';
import { Hopper } from './hopper.entity.js';
import { insertCoded } from './insert-coded.js';
import type { AddHopperForm } from './machine.form.js';

/**
 * A hopper is set up. How it flows is first in, first out until a tracer trial says otherwise.
 * Refusals: `code-taken`.
 */
@Injectable()
export class AddHopper {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: AddHopperForm): Promise<{ readonly id: string }> {
    return this.changes.run(asked, form, async (tx) => {
      const id = this.ids.next();
      const row = {
        code: form.code,
        name: form.name,
        capacityGrams: form.capacityGrams,
        flowModel: 'first-in-first-out',
        // One in a thousand: our own value, no source.
        likelyPermille: form.likelyPermille ?? 1,
      };
      await insertCoded(tx, Hopper, { id, siteId: asked.actor.siteId, ...row });
      return { answer: { id }, entry: { action: 'add-hopper', subject: { kind: 'hopper', id }, after: row } };
    });
  }
}
