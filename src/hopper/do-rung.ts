import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { lockRun } from '../packing/run-states.js';
import { Ids } from '../platform/ids.js';
import { Refusal } from '../platform/refusal.js';
import { ChangeoverRung } from './changeover-rung.entity.js';
import type { RungWord } from './changeover-rungs.js';
import type { DoRungForm } from './changeover.form.js';
import { changeoverOf } from './changeovers.js';
import { proofOfRung } from './proof-of-rung.js';

export interface RungAnswer {
  readonly changeoverId: string;
  readonly rung: RungWord;
  readonly recordId: string | null;
}

/**
 * The next rung of a changeover is done; its proof is a record that is there, or what was counted.
 * Refusals: `rung-not-next`, `last-pack-not-out`, `hopper-not-empty-yet`, `bin-not-closed-yet`, `new-run-not-started`,
 * `new-film-not-fitted`, `new-code-not-read`, `second-person-same`.
 */
@Injectable()
export class DoRung {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, changeoverId: string, form: DoRungForm): Promise<RungAnswer> {
    return this.changes.run(asked, { changeoverId, ...form }, async (tx, change) => {
      const { siteId } = asked.actor;
      const { fromRunId } = await changeoverOf(tx, siteId, changeoverId);
      await lockRun(tx, fromRunId);
      const changeover = await changeoverOf(tx, siteId, changeoverId);
      const { next, lineCode } = changeover;
      if (next !== form.rung) {
        throw new Refusal('rung-not-next', { line: lineCode, rung: form.rung, next });
      }
      const { recordId, count } = await proofOfRung(tx, asked.actor, { changeover, form });
      const secondPersonId = form.secondPersonId ?? null;
      const [note, doneAt] = [form.note ?? null, change.recordedAt];
      const proof = { rung: form.rung, recordId, count, secondPersonId, note };
      await tx.insert(ChangeoverRung, { id: this.ids.next(), changeoverId, ...proof, doneAt });
      return {
        answer: { changeoverId, rung: form.rung, recordId },
        entry: {
          action: 'do-rung',
          subject: { kind: 'changeover', id: changeoverId },
          touches: [{ kind: 'packing-line', id: changeover.lineId }],
          after: proof,
        },
      };
    });
  }
}
