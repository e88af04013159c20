import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { Ids } from '../platform/ids.js';
import { addCoderChange, type CoderChangeAnswer } from './add-coder-change.js';
import type { ChangeCodeForm } from './packing-run.form.js';
import { countWithoutReading, takeRunAt } from './run-at.js';

/**
 * The coder of a run prints another code from a pack on: the lot of the packs that follow.
 * Refusals: `run-is-closed`, `before-run-start`, `count-needed`, `count-goes-back`, `code-printed-already`, those of
 * the time.
 */
@Injectable()
export class ChangeCode {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, run: string, form: ChangeCodeForm): Promise<CoderChangeAnswer> {
    return this.changes.run(asked, { run, ...form }, async (tx, change) => {
      const taken = await takeRunAt(tx, change, {
        asked,
        run,
        statedAt: form.changedAt ?? null,
        lateReason: form.reason ?? null,
      });
      const stated = form.packCount ?? null;
      const answer = await addCoderChange(tx, () => this.ids.next(), {
        run: taken.run,
        typed: form.code,
        firstPack: stated ?? (await countWithoutReading(tx, taken.run, taken.occurredAt)),
        wasRead: stated !== null,
        changedAt: taken.occurredAt,
        recordedAt: change.recordedAt,
      });
      return {
        answer,
        entry: {
          action: 'change-code',
          subject: { kind: 'packing-run', id: taken.run.id },
          touches: [
            { kind: 'lot', id: answer.lotId },
            { kind: 'packing-line', id: taken.run.lineId },
          ],
          after: { ...answer },
          reason: form.reason ?? null,
          occurredAt: taken.occurredAt,
          statedAt: taken.statedAt,
        },
      };
    });
  }
}
