import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { Ids } from '../platform/ids.js';
import type { WeigherWayForm } from './pack-weigher.form.js';
import { packWeigherOf } from './pack-weighers.js';
import { WeigherWay } from './weigher-way.entity.js';

/** Says whether a pack weigher may send by MQTT, from now on. Not found: pack weigher. */
@Injectable()
export class SetWeigherWay {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, weigherId: string, form: WeigherWayForm): Promise<{ readonly id: string }> {
    return this.changes.run(asked, { weigherId, ...form }, async (tx, change) => {
      const weigher = await packWeigherOf(tx, asked.actor.siteId, weigherId);
      const takesMqtt = form.takesMqtt ?? false;
      const id = this.ids.next();
      await tx.insert(WeigherWay, { id, weigherId, takesMqtt, setAt: change.recordedAt });
      return {
        answer: { id },
        entry: {
          action: 'set-weigher-way',
          subject: { kind: 'pack-weigher', id: weigherId },
          before: { takesMqtt: weigher.takesMqtt },
          after: { takesMqtt },
        },
      };
    });
  }
}
