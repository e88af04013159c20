import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import type { Instant } from '../platform/clock.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { Refusal } from '../platform/refusal.js';
import { ofSite } from '../plant/of-site.js';
import { lineOf } from '../plant/plant-facts.js';
import { settleRuleBeginning } from '../plant/valid-from.js';
import type { AddCheckPlanForm } from './check-plan.form.js';
import { CheckPlan } from './check-plan.entity.js';
import { CheckPlanState } from './check-plan-state.entity.js';
import { plansOfLine } from './check-plans.js';
import { leaveLookAtChecks } from './look-job.js';
import { planContent, refuseUnknownFormat } from './plan-content.js';

export interface CheckPlanAnswer {
  readonly planId: string;
  /** The version that was recorded now. */
  readonly id: string;
  readonly validFrom: Instant;
}

/**
 * What is checked at a line, how often and with what.
 * Refusals: `check-plan-there-already`, `check-plan-never-due`, `test-pieces-needed`, `test-piece-twice`,
 * `test-piece-incomplete`; not found: line, format.
 */
@Injectable()
export class AddCheckPlan {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: AddCheckPlanForm): Promise<CheckPlanAnswer> {
    return this.changes.run(asked, form, async (tx, change) => {
      const { siteId, personId } = asked.actor;
      const { kind } = form;
      const line = ofSite(asked.actor, 'packing-line', await lineOf(tx, form.lineId));
      const formatId = form.formatId ?? null;
      await refuseUnknownFormat(tx, siteId, formatId);
      const content = planContent(kind, form);
      const beginning = { validFrom: form.validFrom ?? null, reason: null, now: change.recordedAt, latest: null };
      const validFrom = settleRuleBeginning(beginning);
      await refuseSecond(tx, { lineId: line.id, kind, formatId, station: content.station, at: validFrom });
      const id = this.ids.next();
      const kept = { lineId: line.id, formatId, kind, ...content, isInForce: true, validFrom };
      await tx.insert(CheckPlan, { id, planId: id, siteId, ...kept, personId });
      await tx.insert(CheckPlanState, { planId: id, checkCount: 0 });
      await leaveLookAtChecks(tx, { id: this.ids.next(), siteId, at: change.recordedAt });
      return {
        answer: { planId: id, id, validFrom },
        entry: {
          action: 'add-check-plan',
          subject: { kind: 'check-plan', id },
          touches: [{ kind: 'packing-line', id: line.id }],
          after: { planVersionId: id, ...kept },
        },
      };
    });
  }
}

/** One plan for one thing at a time; plans of two formats stand side by side. */
async function refuseSecond(
  tx: Tx,
  like: Pick<CheckPlan, 'lineId' | 'kind' | 'formatId' | 'station'> & { readonly at: Instant },
): Promise<void> {
  const station = like.station.toLowerCase();
  const there = (await plansOfLine(tx, like.lineId, like.at)).some(
    (plan) => plan.kind === like.kind && plan.formatId === like.formatId && plan.station.toLowerCase() === station,
  );
  if (there) throw new Refusal('check-plan-there-already', { station: like.station });
}
