import { Injectable } from '@nestjs/common';
import type { Asked, Change } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { refuseContradiction, voidFact } from '../journal/void-fact.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import type { CorrectStopForm } from './correction.form.js';
import { neededValue, takeFactOnRun } from './fact-on-run.js';
import { LineRestart } from './line-restart.entity.js';
import { LineStop } from './line-stop.entity.js';

export interface CorrectStopAnswer {
  readonly runId: string;
  /** The stop that stands in its place; null: the line did not stop. */
  readonly stopId: string | null;
}

/**
 * A stop got the wrong reason, or the line never stopped.
 * Refusals: `already-corrected`.
 */
@Injectable()
export class CorrectStop {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, stopId: string, form: CorrectStopForm): Promise<CorrectStopAnswer> {
    return this.changes.run(asked, { stopId, ...form }, async (tx, change) => {
      refuseContradiction(form);
      const what = { siteId: asked.actor.siteId, kind: 'line-stop', id: stopId };
      const { fact: old, run } = await takeFactOnRun(tx, LineStop, what);
      await voidFact(tx, LineStop, stopId, change);
      const reason = form.why === 'incorrect-data' ? neededValue('stopReason', form.stopReason) : null;
      const newId = await this.replace(tx, change, old, reason);
      return {
        answer: { runId: run.id, stopId: newId },
        entry: {
          action: 'correct-stop',
          subject: { kind: 'packing-run', id: run.id },
          touches: [{ kind: 'packing-line', id: run.lineId }],
          before: { id: stopId, reason: old.reason, stoppedAt: old.stoppedAt },
          after: { id: newId, reason, why: form.why },
          reason: form.reason,
        },
      };
    });
  }

  /** The restart goes with its stop. */
  private async replace(tx: Tx, change: Change, old: LineStop, reason: string | null): Promise<string | null> {
    const newId = reason === null ? null : this.ids.next();
    const { runId, stoppedAt } = old;
    if (newId !== null && reason !== null) await tx.insert(LineStop, { id: newId, runId, reason, stoppedAt });
    const restart = await tx.findOne(LineRestart, { stopId: old.id, voidedBy: null });
    if (restart === null) return newId;
    await voidFact(tx, LineRestart, restart.id, change);
    if (newId !== null) {
      const { startedAgainAt } = restart;
      await tx.insert(LineRestart, { id: this.ids.next(), stopId: newId, startedAgainAt });
    }
    return newId;
  }
}
