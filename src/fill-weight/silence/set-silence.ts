import { Injectable } from '@nestjs/common';
import type { Asked } from '../../journal/entry-draft.js';
import { RecordChange } from '../../journal/record-change.js';
import { Ids } from '../../platform/ids.js';
import { NotFound } from '../../platform/refusal.js';
import { leaveLookAtWeighing } from '../look-job.js';
import { PackWeigher } from '../pack-weigher.entity.js';
import type { SetSilenceForm } from './set-silence.form.js';
import { SilenceSetting } from './silence-setting.entity.js';
import { watchedWeighers } from './silence-settings.js';

/**
 * How long a pack weigher may send nothing while packs are counted. One that sends its weights at the end of the shift is
 * not waited for.
 * Refusals: none; not found: pack weigher, also one that was withdrawn.
 */
@Injectable()
export class SetSilence {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, weigherId: string, form: SetSilenceForm): Promise<{ readonly id: string }> {
    return this.changes.run(asked, { weigherId, ...form }, async (tx, change) => {
      const { siteId } = asked.actor;
      const weigher = await tx.findOne(PackWeigher, { id: weigherId, siteId, voidedBy: null });
      if (weigher === null) throw new NotFound('pack-weigher', weigherId);
      const before = (await watchedWeighers(tx, siteId)).find(({ id }) => id === weigherId);
      const silentAfterMinutes = form.silentAfterMinutes ?? null;
      const id = this.ids.next();
      await tx.insert(SilenceSetting, { id, weigherId, silentAfterMinutes, setAt: change.recordedAt });
      await leaveLookAtWeighing(tx, { id: this.ids.next(), at: change.recordedAt });
      return {
        answer: { id: weigherId },
        entry: {
          action: 'set-weigher-silence',
          subject: { kind: 'pack-weigher', id: weigherId },
          touches: [{ kind: 'packing-line', id: weigher.lineId }],
          before: { silentAfterMinutes: before?.silentAfterMinutes ?? null },
          after: { silentAfterMinutes },
        },
      };
    });
  }
}
