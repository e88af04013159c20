import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { voidFact } from '../journal/void-fact.js';
import { leaveReachJob } from '../open-points/reach-job.js';
import { Ids } from '../platform/ids.js';
import { Refusal } from '../platform/refusal.js';
import type { WithdrawFlowFactForm } from './flow-model.form.js';
import { modelOf, modelsOfHopper } from './flow-models.js';
import { HopperModel } from './hopper-model.entity.js';
import { takeHopper } from './take-period.js';
import { TracerTrial } from './tracer-trial.entity.js';
import { trialOf } from './tracer-trials.js';

/**
 * A trial was not made, or was written down wrongly. The right one is entered anew.
 * Refusals: `trial-in-use`, `already-corrected`; not found: the trial.
 */
@Injectable()
export class WithdrawTrial {
  constructor(private readonly changes: RecordChange) {}

  execute(asked: Asked, trialId: string, form: WithdrawFlowFactForm): Promise<{ readonly id: string }> {
    return this.changes.run(asked, { trialId, ...form }, async (tx, change) => {
      const { siteId } = asked.actor;
      const { trial } = await trialOf(tx, siteId, trialId);
      await takeHopper(tx, siteId, trial.hopperId);
      const model = (await modelsOfHopper(tx, trial.hopperId)).find((one) => one.trialId === trial.id);
      if (model !== undefined) {
        throw new Refusal('trial-in-use', { trial: trial.number, kind: model.kind, since: model.validFrom });
      }
      await voidFact(tx, TracerTrial, trial.id, change);
      return {
        answer: { id: trial.id },
        entry: {
          action: 'withdraw-tracer-trial',
          subject: { kind: 'hopper', id: trial.hopperId },
          touches: [{ kind: 'tracer-trial', id: trial.id }],
          before: { trial: trial.id, number: trial.number },
          after: { why: form.why },
          reason: form.reason,
        },
      };
    });
  }
}

/**
 * A flow model was not chosen, or wrongly: the one before is in force again, back to when this one began.
 * Refusals: `already-corrected`; not found: the choice.
 */
@Injectable()
export class WithdrawFlowModel {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, modelId: string, form: WithdrawFlowFactForm): Promise<{ readonly id: string }> {
    return this.changes.run(asked, { modelId, ...form }, async (tx, change) => {
      const { siteId } = asked.actor;
      const { id, hopperId, kind, trialId, validFrom } = await modelOf(tx, modelId);
      await takeHopper(tx, siteId, hopperId);
      await voidFact(tx, HopperModel, id, change);
      await leaveReachJob(tx, { id: this.ids.next(), siteId, holdId: null, at: change.recordedAt });
      return {
        answer: { id },
        entry: {
          action: 'withdraw-flow-model',
          subject: { kind: 'hopper', id: hopperId },
          before: { model: id, kind, trialId, validFrom },
          after: { why: form.why },
          reason: form.reason,
        },
      };
    });
  }
}
