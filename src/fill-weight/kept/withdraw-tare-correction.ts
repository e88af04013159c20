import { Injectable } from '@nestjs/common';
import type { Asked } from '../../journal/entry-draft.js';
import { RecordChange } from '../../journal/record-change.js';
import { voidFact } from '../../journal/void-fact.js';
import { runOf } from '../../packing/packing-runs.js';
import { Ids } from '../../platform/ids.js';
import { NotFound } from '../../platform/refusal.js';
import { lookAgain, setSummariesAnew } from './correct-tare.js';
import { TareCorrection } from './tare-correction.entity.js';
import type { WithdrawTareCorrectionForm } from './weights.form.js';

/**
 * A tare correction was wrong itself: the nets are again what they were without it, and the sums over them too.
 * Refusals: `already-corrected`, `weights-not-readable`.
 */
@Injectable()
export class WithdrawTareCorrection {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, correctionId: string, form: WithdrawTareCorrectionForm): Promise<{ readonly id: string }> {
    return this.changes.run(asked, { correctionId, ...form }, async (tx, change) => {
      const correction = await tx.findOne(TareCorrection, { id: correctionId });
      const run = correction === null ? null : await runOf(tx, correction.runId);
      if (correction === null || run?.siteId !== asked.actor.siteId) {
        throw new NotFound('tare-correction', correctionId);
      }
      await voidFact(tx, TareCorrection, correctionId, change);
      await setSummariesAnew(tx, run);
      await lookAgain(tx, { run, at: change.recordedAt, ids: this.ids });
      return {
        answer: { id: correctionId },
        entry: {
          action: 'withdraw-tare-correction',
          subject: { kind: 'packing-run', id: run.id },
          touches: [{ kind: 'pack-weigher', id: correction.weigherId }],
          before: { id: correctionId, addedMilligrams: correction.addedMilligrams },
          reason: form.reason,
        },
      };
    });
  }
}
