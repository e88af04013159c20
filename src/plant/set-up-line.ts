import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { Ids } from '../platform/ids.js';
import { Coder } from './coder.entity.js';
import { HopperLine } from './hopper-line.entity.js';
import { insertCoded } from './insert-coded.js';
import type { SetUpLineForm } from './machine.form.js';
import { ofSite } from './of-site.js';
import { PackingLine } from './packing-line.entity.js';
import { hopperOf } from './plant-facts.js';
import { insertVersion } from './valid-from.js';

/**
 * A packing line is set up whole: the hopper that feeds it from now on, and the coder that prints on its packs. A coder
 * that is not named is called after the line.
 * Refusals: `code-taken`; not found: hopper.
 */
@Injectable()
export class SetUpLine {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: SetUpLineForm): Promise<{ readonly id: string }> {
    return this.changes.run(asked, form, async (tx, change) => {
      const { siteId } = asked.actor;
      const hopper = ofSite(asked.actor, 'hopper', await hopperOf(tx, form.hopperId));
      const line = { id: this.ids.next(), code: form.code, name: form.name };
      const coder = { id: this.ids.next(), lineId: line.id, code: form.coderCode ?? `C${form.code}` };
      const validFrom = change.recordedAt;
      await insertCoded(tx, PackingLine, { ...line, siteId });
      await insertCoded(tx, Coder, { ...coder, siteId });
      const link = { id: this.ids.next(), siteId, lineId: line.id, hopperId: hopper.id, validFrom };
      await insertVersion(tx, HopperLine, link);
      return {
        answer: { id: line.id },
        entry: {
          action: 'set-up-line',
          subject: { kind: 'packing-line', id: line.id },
          touches: [
            { kind: 'hopper', id: hopper.id },
            { kind: 'coder', id: coder.id },
          ],
          after: { code: line.code, name: line.name, hopperId: hopper.id, coderId: coder.id, coderCode: coder.code },
        },
      };
    });
  }
}
