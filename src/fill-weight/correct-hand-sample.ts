import { Injectable } from '@nestjs/common';
import { leaveReachJob } from '../open-points/reach-job.js';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { voidFact } from '../journal/void-fact.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { BadForm, NotFound } from '../platform/refusal.js';
import { leaveCountedJob } from '../packing/counted-job.js';
import type { RunRow } from '../packing/packing-run-rows.js';
import { runOf } from '../packing/packing-runs.js';
import { addHandSample, type HandSampleAnswer } from './add-hand-sample.js';
import type { CorrectHandSampleForm } from './hand-sample.form.js';
import { MeanNet } from './mean-net.entity.js';

export interface CorrectHandSampleAnswer {
  readonly runId: string;
  /** What stands in its place; null: it did not occur. */
  readonly sample: HandSampleAnswer | null;
}

/**
 * A hand sample was recorded wrongly, or never weighed. What the form leaves out stays as it was.
 * Refusals: `already-corrected`, `net-far-from-nominal`, `scale-has-failed`.
 */
@Injectable()
export class CorrectHandSample {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, sampleId: string, form: CorrectHandSampleForm): Promise<CorrectHandSampleAnswer> {
    return this.changes.run(asked, { sampleId, ...form }, async (tx, change) => {
      const old = await tx.findOne(MeanNet, { id: sampleId });
      const run = old === null ? null : await runOf(tx, old.runId);
      if (old === null || run?.siteId !== asked.actor.siteId) throw new NotFound('hand-sample', sampleId);
      await voidFact(tx, MeanNet, sampleId, change);
      const sample = form.why === 'incorrect-data' ? await this.replace(tx, run, old, form) : null;
      await leaveCountedJob(tx, { id: this.ids.next(), runId: run.id, lineId: run.lineId, at: change.recordedAt });
      await leaveReachJob(tx, { id: this.ids.next(), siteId: asked.actor.siteId, holdId: null, at: change.recordedAt });
      return {
        answer: { runId: run.id, sample },
        entry: {
          action: 'correct-hand-sample',
          subject: { kind: 'packing-run', id: run.id },
          before: { id: sampleId, meanMilligrams: old.meanMilligrams, netDecigrams: old.netDecigrams },
          after: { sample: sample === null ? null : { ...sample }, why: form.why },
          reason: form.reason,
        },
      };
    });
  }

  private replace(tx: Tx, run: RunRow, old: MeanNet, form: CorrectHandSampleForm): Promise<HandSampleAnswer> {
    const [nets, scaleId] = [form.netDecigrams ?? null, form.scaleId ?? old.scaleId];
    if (nets === null && (form.scaleId ?? null) === null) {
      throw new BadForm([{ field: 'netDecigrams', code: 'correction-without-change', facts: {} }]);
    }
    return addHandSample(tx, {
      id: this.ids.next(),
      run,
      netDecigrams: nets ?? (JSON.parse(old.netDecigrams) as number[]),
      scaleId: scaleId ?? '',
      weighedAt: old.weighedAt,
    });
  }
}
