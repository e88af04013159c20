import { Injectable } from '@nestjs/common';
import type { TrialFit } from '../core/hopper-flow/fit-tracer-trial.js';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { leaveReachJob } from '../open-points/reach-job.js';
import { insertVersion, settleFactBeginning } from '../plant/valid-from.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { NotFound, Refusal } from '../platform/refusal.js';
import type { ChooseFlowModelForm } from './flow-model.form.js';
import { modelsOfHopper } from './flow-models.js';
import { HopperModel } from './hopper-model.entity.js';
import { takeHopper } from './take-period.js';
import { trialOf, type TrialRow } from './tracer-trials.js';

type Numbers = Pick<HopperModel, 'trialId' | 'zoneCount' | 'zoneCountStandard' | 'holdUpGrams' | 'holdUpStandardGrams'>;

/**
 * From an instant on a hopper is taken to flow so. It moves only *likely*: what is sure and what is possible stay.
 * Refusals: `model-needs-trial`, `trial-says-nothing`, `trial-mixes-otherwise`, `valid-from-not-later`, those of a time
 * that is set back; not found: hopper, trial.
 */
@Injectable()
export class ChooseFlowModel {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, hopperId: string, form: ChooseFlowModelForm): Promise<{ id: string; validFrom: string }> {
    return this.changes.run(asked, { hopperId, ...form }, async (tx, change) => {
      const { siteId, personId } = asked.actor;
      const hopper = await takeHopper(tx, siteId, hopperId);
      const numbers = await numbersOf(tx, siteId, hopper.id, form);
      const [last] = await modelsOfHopper(tx, hopper.id);
      const reason = form.reason ?? null;
      const beginning = { validFrom: form.validFrom ?? null, reason, now: change.recordedAt };
      const validFrom = settleFactBeginning({ ...beginning, latest: last?.validFrom ?? null });
      const id = this.ids.next();
      const { kind } = form;
      const chosen = { kind, ...numbers };
      await insertVersion(tx, HopperModel, {
        ...{ id, hopperId: hopper.id, ...chosen, reason, validFrom, personId, voidedBy: null },
      });
      // What is likely moves, and a quality hold covers what is likely.
      await leaveReachJob(tx, { id: this.ids.next(), siteId, holdId: null, at: change.recordedAt });
      return {
        answer: { id, validFrom },
        entry: {
          action: 'choose-flow-model',
          subject: { kind: 'hopper', id: hopper.id },
          touches: numbers.trialId === null ? [] : [{ kind: 'tracer-trial', id: numbers.trialId }],
          before: { kind: last?.kind ?? hopper.flowModel },
          after: { model: id, ...chosen, validFrom },
          reason,
          occurredAt: validFrom,
        },
      };
    });
  }
}

async function numbersOf(tx: Tx, siteId: string, hopperId: string, form: ChooseFlowModelForm): Promise<Numbers> {
  const none = {
    trialId: null,
    zoneCount: null,
    zoneCountStandard: null,
    holdUpGrams: null,
    holdUpStandardGrams: null,
  };
  if (form.kind === 'first-in-first-out') return none;
  if (form.trialId == null) throw new Refusal('model-needs-trial', { kind: form.kind });
  const { trial, fit } = await trialOf(tx, siteId, form.trialId);
  if (trial.hopperId !== hopperId) throw new NotFound('tracer-trial', form.trialId);
  if (!fit.ok) throw new Refusal('trial-says-nothing', { trial: trial.number, problem: fit.problem });
  if (form.kind === 'stirred-zones') return zonesOf(trial, fit);
  refuseMoreThanOneZone(trial, fit);
  return { ...none, trialId: trial.id };
}

/** Pour and drain is one zone with nothing waiting above it. @throws {Refusal} `trial-mixes-otherwise` */
function refuseMoreThanOneZone(trial: TrialRow, { zones, plugGrams }: TrialFit): void {
  if (zones.zoneCount === 1 && plugGrams === null) return;
  throw new Refusal('trial-mixes-otherwise', { trial: trial.number, zones: zones.zoneCount });
}

function zonesOf({ id }: TrialRow, { zones, zoneCount, holdUpGrams }: TrialFit): Numbers {
  return {
    trialId: id,
    zoneCount: zones.zoneCount,
    // A doubt so small that it would be written as none is still a doubt.
    zoneCountStandard: Math.max(0.0001, zoneCount.standard).toFixed(4),
    holdUpGrams: Math.max(1, Math.round(zones.holdUpGrams)),
    holdUpStandardGrams: Math.max(1, Math.ceil(holdUpGrams.standard)),
  };
}
