import { Injectable } from '@nestjs/common';
import { placeHold } from '../disposition/place-hold.js';
import type { HoldRow } from '../disposition/standings.js';
import type { Asked, EntryDraft } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { Ids } from '../platform/ids.js';
import { settleScope } from './hold-scope.js';
import type { PlaceHoldForm } from './hold.form.js';

/**
 * Somebody places a hold: a safety hold until a quality officer sets its class.
 * Refusals: `hold-range-not-usable`, `hold-times-not-usable`; not found when the thing is not known.
 */
@Injectable()
export class PlaceHold {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: PlaceHoldForm): Promise<HoldRow> {
    return this.changes.run(asked, form, async (tx, change) => {
      const { reason } = form;
      const { kind, id, ...part } = await settleScope(tx, asked.actor.siteId, form);
      const hold = await placeHold(tx, change, {
        nextId: () => this.ids.next(),
        siteId: asked.actor.siteId,
        scope: { kind, id },
        ...part,
        reason,
        placedAt: change.recordedAt,
      });
      const after = { number: hold.number, scopeKind: kind, scopeId: id, ...part };
      const entry: EntryDraft = {
        action: 'place-hold',
        subject: { kind: 'hold', id: hold.id },
        touches: [{ kind, id }],
        after,
        reason,
      };
      return { answer: hold, entry };
    });
  }
}
