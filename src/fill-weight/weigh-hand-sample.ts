import { Injectable } from '@nestjs/common';
import { leaveReachJob } from '../open-points/reach-job.js';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { Ids } from '../platform/ids.js';
import { settleOccurredAt } from '../platform/occurred-at.js';
import { leaveCountedJob } from '../packing/counted-job.js';
import { findRun } from '../packing/packing-runs.js';
import { addHandSample, type HandSampleAnswer } from './add-hand-sample.js';
import type { WeighHandSampleForm } from './hand-sample.form.js';

/**
 * Packs of a run are weighed by hand: the mean net of its packs, with hard limits, until a later sample.
 * Refusals: `net-far-from-nominal`, `scale-has-failed`, `before-run-start`, those of the time.
 */
@Injectable()
export class WeighHandSample {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: WeighHandSampleForm): Promise<HandSampleAnswer> {
    return this.changes.run(asked, form, async (tx, change) => {
      const run = await findRun(tx, asked.actor.siteId, form.run);
      const reason = form.reason ?? null;
      const { occurredAt, statedAt } = settleOccurredAt(form.weighedAt ?? null, change.recordedAt, reason);
      const answer = await addHandSample(tx, {
        id: this.ids.next(),
        run,
        netDecigrams: form.netDecigrams,
        scaleId: form.scaleId,
        weighedAt: occurredAt,
      });
      // What left the hopper is count times mean, so its level is to be looked at again.
      const look = { id: this.ids.next(), runId: run.id, lineId: run.lineId, at: change.recordedAt };
      await leaveCountedJob(tx, look);
      await leaveReachJob(tx, { id: this.ids.next(), siteId: asked.actor.siteId, holdId: null, at: change.recordedAt });
      return {
        answer,
        entry: {
          action: 'weigh-hand-sample',
          subject: { kind: 'packing-run', id: run.id },
          touches: [{ kind: 'scale', id: form.scaleId }],
          after: { ...answer, netDecigrams: form.netDecigrams },
          reason,
          occurredAt,
          statedAt,
        },
      };
    });
  }
}
