import { leaveReachJob } from '../open-points/reach-job.js';
import { Injectable } from '@nestjs/common';
import type { Asked, Change } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { refuseContradiction, voidFact } from '../journal/void-fact.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { BadForm, Refusal } from '../platform/refusal.js';
import { clearPoints } from '../open-points/raise-point.js';
import { addCoderChange, wrongCodeCause, type CoderChangeAnswer } from './add-coder-change.js';
import { CoderChange } from './coder-change.entity.js';
import type { CorrectCoderChangeForm } from './correction.form.js';
import { leaveCountedJob } from './counted-job.js';
import { takeFactOnRun } from './fact-on-run.js';
import type { RunRow } from './packing-run-rows.js';
import { lotOf } from './packing-runs.js';
import { refuseOutsideRun } from './run-at.js';
import { voidReading } from './void-reading.js';

export interface CorrectCoderChangeAnswer {
  readonly runId: string;
  /** What stands in its place; null: it did not occur. */
  readonly change: CoderChangeAnswer | null;
}

/**
 * A coder change was recorded wrongly, or never happened. The count that was read for it goes with it.
 * Refusals: `already-corrected`, `count-goes-back`, `code-printed-already`, `run-is-closed`, `before-run-start`,
 * `time-ahead`.
 */
@Injectable()
export class CorrectCoderChange {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, changeId: string, form: CorrectCoderChangeForm): Promise<CorrectCoderChangeAnswer> {
    return this.changes.run(asked, { changeId, ...form }, async (tx, change) => {
      refuseContradiction(form);
      const what = { siteId: asked.actor.siteId, kind: 'coder-change', id: changeId };
      const { fact: old, run } = await takeFactOnRun(tx, CoderChange, what);
      await voidFact(tx, CoderChange, changeId, change);
      const { runId, firstPack, changedAt, lotId } = old;
      const reading = { runId, packCount: firstPack, countedAt: changedAt, occasion: 'coder-change' as const };
      const wasRead = await voidReading(tx, reading, change);
      const right = form.why === 'incorrect-data' ? await this.replace(tx, change, { run, old, wasRead, form }) : null;
      await this.clearPoint(tx, asked, change, old);
      await leaveCountedJob(tx, { id: this.ids.next(), runId, lineId: run.lineId, at: change.recordedAt });
      const { siteId } = asked.actor;
      await leaveReachJob(tx, { id: this.ids.next(), siteId, holdId: null, at: change.recordedAt });
      return {
        answer: { runId, change: right },
        entry: {
          action: 'correct-coder-change',
          subject: { kind: 'packing-run', id: runId },
          touches: [lotId, ...(right === null ? [] : [right.lotId])].map((id) => ({ kind: 'lot', id })),
          before: { id: changeId, lotId, firstPack, changedAt },
          after: { change: right === null ? null : { ...right }, why: form.why },
          reason: form.reason,
        },
      };
    });
  }

  private async replace(
    tx: Tx,
    change: Change,
    { run, old, wasRead, form }: { run: RunRow; old: CoderChange; wasRead: boolean; form: CorrectCoderChangeForm },
  ): Promise<CoderChangeAnswer> {
    const [code, packCount, stated] = [form.code ?? null, form.packCount ?? null, form.changedAt ?? null];
    if (code === null && packCount === null && stated === null) {
      throw new BadForm([{ field: 'code', code: 'correction-without-change', facts: {} }]);
    }
    if (stated !== null && stated > change.recordedAt) {
      throw new Refusal('time-ahead', { stated, now: change.recordedAt });
    }
    const changedAt = stated ?? old.changedAt;
    refuseOutsideRun(run, changedAt);
    return addCoderChange(tx, () => this.ids.next(), {
      run,
      typed: code ?? (await lotOf(tx, old.lotId)).code,
      firstPack: packCount ?? old.firstPack,
      wasRead: wasRead || packCount !== null,
      changedAt,
      recordedAt: change.recordedAt,
    });
  }

  /** A wrong code that was no pack's code after all needs no looking at. */
  private async clearPoint(tx: Tx, asked: Asked, change: Change, old: CoderChange): Promise<void> {
    const others = await tx.find(CoderChange, { lotId: old.lotId, isAsIntended: false, voidedBy: null });
    if (others.length > 0) return;
    await clearPoints(tx, {
      nextId: () => this.ids.next(),
      siteId: asked.actor.siteId,
      cause: wrongCodeCause,
      subject: { kind: 'lot', id: old.lotId },
      personId: asked.actor.personId,
      at: change.recordedAt,
    });
  }
}
