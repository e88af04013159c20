import { Injectable } from '@nestjs/common';
import { leaveReachJob } from '../open-points/reach-job.js';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { settleAsked } from '../journal/settle-asked.js';
import { Ids } from '../platform/ids.js';
import { leaveCountedJob } from '../packing/counted-job.js';
import type { RunRow } from '../packing/packing-run-rows.js';
import { findRun } from '../packing/packing-runs.js';
import { raisePoint } from '../open-points/raise-point.js';
import { scaleStandingAt } from '../plant/plant-facts.js';
import type { Instant } from '../platform/clock.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { addHandSample, type HandSampleAnswer } from './add-hand-sample.js';
import { bringSamplePoint } from './hand-plan/bring-sample-point.js';
import type { WeighHandSampleForm } from './hand-sample.form.js';

/**
 * Packs of a run are weighed by hand: the mean net of its packs, with hard limits, until a later sample.
 * What was kept on a device or on paper is taken from a scale that had failed too, and opens a point.
 * Refusals: `sample-in-kilograms`, `net-far-from-nominal`, `scale-has-failed`, `before-run-start`, those of the time.
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
      const stated = { statedAt: form.weighedAt ?? null, reason: form.reason ?? null };
      const { occurredAt, statedAt, reason, hasHappened } = settleAsked(asked, stated, change.recordedAt);
      const answer = await addHandSample(tx, {
        id: this.ids.next(),
        run,
        netDecigrams: form.netDecigrams,
        scaleId: form.scaleId,
        weighedAt: occurredAt,
        hasHappened,
      });
      if (hasHappened) await this.pointAtScale(tx, { run, sample: answer, at: change.recordedAt });
      // What left the hopper is count times mean, so its level is to be looked at again.
      const look = { id: this.ids.next(), runId: run.id, lineId: run.lineId, at: change.recordedAt };
      await leaveCountedJob(tx, look);
      await leaveReachJob(tx, { id: this.ids.next(), siteId: asked.actor.siteId, holdId: null, at: change.recordedAt });
      const { siteId, personId } = asked.actor;
      await bringSamplePoint(tx, {
        ...{ nextId: () => this.ids.next(), siteId, lineId: run.lineId, personId, at: change.recordedAt },
      });
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

  private async pointAtScale(
    tx: Tx,
    { run, sample, at }: { readonly run: RunRow; readonly sample: HandSampleAnswer; readonly at: Instant },
  ): Promise<void> {
    const { scale, hasFailed } = await scaleStandingAt(tx, sample.scaleId, sample.weighedAt);
    if (!hasFailed) return;
    await raisePoint(tx, {
      id: this.ids.next(),
      siteId: run.siteId,
      cause: 'hand-sample-on-failed-scale',
      facts: { line: run.lineCode, run: run.number, scale: scale.code, at: sample.weighedAt },
      subject: { kind: 'packing-run', id: run.id },
      role: 'quality-officer',
      at,
    });
  }
}
